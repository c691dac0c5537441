"""Every force of a scene as rows of a table: what acts, its components, and where.

Newtons, metres and newton metres along the vehicle's axes: forward, left, up. A scene of no free body has the forces
that it draws, as they lie on the sheet.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from hubwright.scenes.vocabulary import ClosedBody, Force, Scene

Triple = tuple[float, float, float]
_SMALL = 1e-6
_SLICE = re.compile(r"(force-\d+)-\d+")  # one of the slices in which a distributed load is summed

FORCE_NAMES = {
    "contact": "The road",
    "weight": "Weight of the turning parts",
    "weight_wheel": "Weight of tire and wheel",
    "weight_hub": "Weight of hub and disc",
    "inertia_wheel": "Inertia of tire and wheel",
    "inertia_hub": "Inertia of hub and disc",
    "caliper": "The caliper",
    "row_outboard": "Outboard row",
    "row_inboard": "Inboard row",
    "axial": "Thrust on the bearing",
    "bearing": "The bearing",
    "bearing-couple": "The bearing's moment",
    "shaft": "The drive shaft",
    "force-load": "The load",
    "reaction-outboard": "Outboard row",
    "reaction-inboard": "Inboard row",
    "reaction-front": "Road on the front axle",
    "reaction-rear": "Road on the rear axle",
}
_BEAMS = ("beam-alone", "spindle-beam")


@dataclass(frozen=True, slots=True)
class ForceRow:
    """A force at a point, or a couple, which has none."""

    name: str
    components: tuple[float, ...]
    point: tuple[float, ...] | None


def force_rows(scene: Scene) -> tuple[ForceRow, ...]:
    """Return everything on the free body of a scene that is not nothing, a distributed load as its resultant."""
    if scene.body is None:
        return tuple(row for row in _drawn(scene) if any(abs(value) >= _SMALL for value in row.components))
    rows: list[ForceRow] = []
    for body in scene.bodies:
        of = f"{body.name}: " if body.name else ""
        rows += [ForceRow(of + _words(name), force, point) for name, force, point in _summed(body)]
        rows += [ForceRow(of + _words(name), couple, None) for name, couple in body.couples]
    return tuple(row for row in rows if any(abs(value) >= _SMALL for value in row.components))


def ways(scene: Scene) -> tuple[str, ...]:
    """Return what the components of a row are called."""
    if scene.body is None:
        return "to the right", "up"
    return ("along", "aside", "up") if scene.name in _BEAMS else ("forward", "left", "up")


def _drawn(scene: Scene) -> Iterator[ForceRow]:
    for item in scene.items:
        if isinstance(item, Force):
            sign = -1.0 if scene.view(item.view).mirrored else 1.0
            at = (sign * item.at[0] / 1e3, item.at[1] / 1e3)
            yield ForceRow(_words(item.name), (sign * item.vector[0], item.vector[1]), at)


def _summed(body: ClosedBody) -> Iterator[tuple[str, Triple, Triple]]:
    """Yield forces, the slices of a distributed load as one at the middle of their parallel forces."""
    slices: dict[str, list[tuple[Triple, Triple]]] = {}
    for name, force, point in body.forces:
        found = _SLICE.fullmatch(name)
        if found:
            slices.setdefault(found[1], []).append((force, point))
        else:
            yield name, force, point
    for name, parts in slices.items():
        total = tuple(sum(force[i] for force, _ in parts) for i in range(3))
        shares = [sum(force) for force, _ in parts]
        whole = sum(shares) or 1.0
        middle = tuple(
            sum(share * point[i] for share, (_, point) in zip(shares, parts, strict=True)) / whole for i in range(3)
        )
        yield name, (total[0], total[1], total[2]), (middle[0], middle[1], middle[2])


def _words(name: str) -> str:
    if name in FORCE_NAMES:
        return FORCE_NAMES[name]
    counted = re.fullmatch(r"(force|reaction)-(\d+)", name)
    if counted:
        return f"{'Load' if counted[1] == 'force' else 'Reaction'} {counted[2]}"
    return re.sub(r"^(?:force|reaction)[-_]", "", name).replace("_", " ").replace("-", " ").capitalize()
