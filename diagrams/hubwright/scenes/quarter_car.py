"""One corner as the model of a drop: body, spring, bump stop and damper side by side, wheel, and the tire as a spring.

A view in sheet millimetres, z up from the road: what hangs on what, not to scale.
"""

from hubwright.mechanics.impact import QuarterCar
from hubwright.quantities import Kind, format_quantity
from hubwright.scenes.vocabulary import (
    Damper,
    Dot,
    Ground,
    Item,
    Label,
    Material,
    Note,
    Part,
    Point,
    Spring,
    Units,
    View,
)

WIDTH = 30.0
_TIRE, _WHEEL, _STRUT, _BODY = 17.0, 8.0, 30.0, 13.0  # heights from the road up
_APART = 8.0  # of spring and damper from the middle
_STOP = (1.6, 6.0)  # half width and height of the bump stop, which hangs from the body with a gap below
HEIGHT = _TIRE + _WHEEL + _STRUT + _BODY


def quarter_car_items(car: QuarterCar, view: View, units: Units, *, step: int = 1) -> list[Item]:
    """Return the model in a view of scale 1, each part with its number."""
    name, top = view.name, _TIRE + _WHEEL
    ends = {"tire": (0.0, _TIRE), "strut": (top, top + _STRUT)}

    def box(part: str, half: float, low: float, tall: float, *, turns: bool) -> Part:
        ring: tuple[Point, ...] = ((-half, low), (half, low), (half, low + tall), (-half, low + tall))
        material: Material = "turning" if turns else "body"
        return Part(f"part-model-{part}", name, step, rings=(ring,), material=material, outline=0.35)

    def told(what: str, value: float, kind: Kind, at: Point, *more: str) -> Note:
        lines = (what, *more, format_quantity(value, kind, units))
        return Note(
            f"label-model-{what.replace(' ', '-')}",
            name,
            step,
            label=Label(lines, "right column", at, tone="soft", size=2.3),
        )

    strut = ends["strut"]
    stop: list[Item] = []
    if float(car.bump_stop_stiffness) > 0:
        half, tall = _STOP
        low = strut[1] - tall
        pad = ((-half, low), (half, low), (half, strut[1]), (-half, strut[1]))
        at = (half, low + 0.3 * tall)
        stop = [
            Part("part-model-bump-stop", name, step, rings=(pad,), material="rubber", hatch=45.0, outline=0.3, level=1),
            told("bump stop", float(car.bump_stop_stiffness), "stiffness", at),
        ]
    return [
        Ground("ground-model", name, step, start=(-WIDTH / 2, 0.0), end=(WIDTH / 2, 0.0)),
        Spring("spring-tire", name, step, start=(0.0, 0.0), end=(0.0, ends["tire"][1]), width=7.0, turns=3),
        box("wheel", 10.0, _TIRE, _WHEEL, turns=True),
        Spring("spring-strut", name, step, start=(-_APART, strut[0]), end=(-_APART, strut[1]), width=6.0),
        Damper("damper-strut", name, step, start=(_APART, strut[0]), end=(_APART, strut[1]), width=5.0),
        box("body", 14.0, top + _STRUT, _BODY, turns=False),
        Dot("mass-wheel", name, step, at=(0.0, _TIRE + _WHEEL / 2), kind="centre of mass", radius=1.1, level=2),
        Dot("mass-body", name, step, at=(0.0, top + _STRUT + _BODY / 2), kind="centre of mass", radius=1.1, level=2),
        told("body", float(car.sprung_mass), "mass", (14.0, top + _STRUT + _BODY / 2)),
        *stop,
        # past the damper's rod, not through its cylinder
        told("spring at the wheel", float(car.wheel_rate), "stiffness", (-_APART, top + 0.74 * _STRUT)),
        told("damper, in bump", float(car.bump_damping), "damping", (_APART + 2.5, top + 0.4 * _STRUT)),
        told("wheel and axle share", float(car.unsprung_mass), "mass", (10.0, _TIRE + _WHEEL / 2)),
        told("tire", float(car.tire_stiffness), "stiffness", (0.0, _TIRE / 2)),
    ]
