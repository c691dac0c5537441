"""Drawing refuses a free body that does not close."""

from dataclasses import replace

import pytest

from drawing.example_scene import every_item
from hubwright.drawing import draw
from hubwright.errors import OpenFreeBody
from hubwright.scenes.vocabulary import ClosedBody


def test_a_closed_body_is_drawn() -> None:
    assert draw(every_item()).layers


def test_a_missing_newton_is_refused_with_what_is_left_over() -> None:
    scene = every_item()
    assert scene.body is not None
    name, force, point = scene.body.forces[0]
    open_body = replace(
        scene.body, forces=((name, (force[0], force[1], force[2] + 1.0), point), *scene.body.forces[1:])
    )
    with pytest.raises(OpenFreeBody, match=r"'every-item' does not close: 1 N and"):
        draw(replace(scene, body=open_body))


def test_a_couple_left_over_is_refused_though_forces_balance() -> None:
    body = ClosedBody(forces=(("up", (0, 0, 1000.0), (0, 0.1, 0)), ("down", (0, 0, -1000.0), (0, 0, 0))))
    with pytest.raises(OpenFreeBody, match=r"100 N·m are left over"):
        draw(replace(every_item(), body=body))
    closed = replace(body, couples=(("holds", (-100.0, 0, 0)),))
    assert draw(replace(every_item(), body=closed)).layers


def test_a_force_left_over_at_the_origin_is_refused_though_it_turns_nothing() -> None:
    body = ClosedBody(forces=(("up", (0, 0, 1000.0), (0, 0, 0)), ("down", (0, 0, -999.0), (0, 0, 0))))
    with pytest.raises(OpenFreeBody, match=r"1 N and 0 N·m are left over"):
        draw(replace(every_item(), body=body))


def test_each_of_several_bodies_closes_for_itself() -> None:
    scene = every_item()
    assert scene.body is not None
    up = ClosedBody((("F", (0.0, 0.0, 100.0), (0.0, 0.0, 0.0)),), name="one")
    down = ClosedBody((("F", (0.0, 0.0, -100.0), (0.0, 0.0, 0.0)),), name="other")  # together they would close
    with pytest.raises(OpenFreeBody):
        draw(replace(scene, further_bodies=(up, down)))
