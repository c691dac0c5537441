"""Overhung beams and cantilevers against the formulas of a design text, from both of our beam solvers."""

import math

from hubwright.mechanics.beam import PointForce, Support, solve_beam
from hubwright.mechanics.constants import Value
from hubwright.mechanics.spindle_beam import SpindleBeam, cantilever_deflection
from hubwright.published.check import Calculation, Check, Subject


def _overhung(check: Check) -> tuple[float, ...]:
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
    pairs: dict[str, tuple[Value, Value]] = {
        "ovh_R1": (general.reactions[0].force, spindle.reaction_outboard),
        "ovh_R2": (general.reactions[1].force, spindle.reaction_inboard),
        "ovh_tip": (-float(general.deflection(l + a)), -float(spindle.deflection(l + a, flexural_rigidity=EI))),
        "ovh_M": (abs(general.maximum_moment.value), abs(float(spindle.peak_moment))),
        "ovh_up": (float(general.deflection(crest)), spindle.deflection(crest, flexural_rigidity=EI)),
    }
    return tuple(float(value) for value in pairs[check.id])


def _cantilever(check: Check) -> tuple[float, ...]:
    l, F, EI = (check.si(key) for key in ("l", "F", "EI"))
    beam = solve_beam(length=l, supports=[Support(0.0, "fixed")], loads=[PointForce(l, F)], flexural_rigidity=EI)
    return (float(cantilever_deflection(load=F, overhang=l, flexural_rigidity=EI)), beam.maximum_deflection.value)


SUBJECT = Subject(
    "Beams",
    (
        Calculation(("ovh_",), _overhung, (solve_beam, SpindleBeam)),
        Calculation(("cant_",), _cantilever, (cantilever_deflection, solve_beam)),
    ),
)
