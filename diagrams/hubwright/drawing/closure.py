"""The refusal to draw a free body that does not close."""

from __future__ import annotations

from math import sqrt

from hubwright.errors import OpenFreeBody
from hubwright.scenes.vocabulary import ClosedBody, Scene

TOLERANCE = 1e-6  # of the largest force, and of its largest moment about the origin


def refuse_open_body(scene: Scene) -> None:
    """Raise if the forces or the moments of one of the scene's free bodies leave something over."""
    for body in scene.bodies:
        force, moment, largest, largest_moment = left_over(body)
        if force > TOLERANCE * largest or moment > TOLERANCE * largest_moment:
            raise OpenFreeBody(figure=scene.name, force=force, moment=moment)


def left_over(body: ClosedBody) -> tuple[float, float, float, float]:
    """Return what is left of forces [N] and moments [N·m] about the origin, and the largest force and moment."""
    total, turn = [0.0] * 3, [0.0] * 3
    largest = largest_moment = 0.0
    for _, (fx, fy, fz), (x, y, z) in body.forces:
        moment = (y * fz - z * fy, z * fx - x * fz, x * fy - y * fx)
        largest = max(largest, sqrt(fx * fx + fy * fy + fz * fz))
        largest_moment = max(largest_moment, sqrt(sum(m * m for m in moment)))
        total = [a + b for a, b in zip(total, (fx, fy, fz), strict=True)]
        turn = [a + b for a, b in zip(turn, moment, strict=True)]
    for _, couple in body.couples:
        turn = [a + b for a, b in zip(turn, couple, strict=True)]
        largest_moment = max(largest_moment, sqrt(sum(m * m for m in couple)))
    # a body whose forces all pass near the origin still has a lever of millimetres to be judged by
    largest_moment = max(largest_moment, largest * 1e-3)
    return sqrt(sum(f * f for f in total)), sqrt(sum(m * m for m in turn)), largest, largest_moment
