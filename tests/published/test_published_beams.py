"""Overhung beams and cantilevers against the formulas of a design text, from both of our beam solvers."""

import math

import pytest
from published_checks import published

from hubwright.mechanics.beam import PointForce, Support, solve_beam
from hubwright.mechanics.spindle_beam import SpindleBeam, cantilever_deflection


def overhung(check):
    """Return the two values that each beam solver of ours gives for a check."""
    l, a, F, EI = (check.si(key) for key in ("l", "a", "F", "EI"))
    # the text's load points down at the right end, a beyond the right support
    general = solve_beam(
        length=l + a,
        supports=[Support(0.0, "pin"), Support(l, "roller")],
        loads=[PointForce(l + a, -F)],
        flexural_rigidity=EI,
    )
    spindle = SpindleBeam(load=-F, load_at=l + a, spread=l)
    crest = l / math.sqrt(3)
    return {
        "ovh_R1": (general.reactions[0].force, spindle.reaction_outboard),
        "ovh_R2": (general.reactions[1].force, spindle.reaction_inboard),
        "ovh_tip": (-general.deflection(l + a), -spindle.deflection(l + a, flexural_rigidity=EI)),
        "ovh_M": (abs(general.maximum_moment.value), abs(spindle.peak_moment)),
        "ovh_up": (general.deflection(crest), spindle.deflection(crest, flexural_rigidity=EI)),
    }[check.id]


@published("ovh_")
def test_overhanging_load(check):
    for value in overhung(check):
        check.agrees(value)


@published("cant_")
def test_cantilever_with_a_load_at_its_end(check):
    l, F, EI = (check.si(key) for key in ("l", "F", "EI"))
    check.agrees(cantilever_deflection(load=F, overhang=l, flexural_rigidity=EI))
    beam = solve_beam(length=l, supports=[Support(0.0, "fixed")], loads=[PointForce(l, F)], flexural_rigidity=EI)
    check.agrees(beam.maximum_deflection.value)
    assert beam.maximum_deflection.at == pytest.approx(l)
