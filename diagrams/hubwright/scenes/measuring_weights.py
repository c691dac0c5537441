"""Public scales: one axle at a time on the platform, and what it shows; a trailer's coupling on a scale of its own.

Side views in real millimetres: x forward from the front axle (a trailer: from its axle), z up from the road.
"""

from dataclasses import replace

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import display_sum, format_quantity
from hubwright.results.model import Results
from hubwright.scenes.scales import drawing_scale, round_scale
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vehicle_outline import COUPLING_HEIGHT, Outline
from hubwright.scenes.vehicle_seen import outline_of, vehicle_seen
from hubwright.scenes.vocabulary import (
    Force,
    Ground,
    Item,
    KeyEntry,
    Label,
    Material,
    Part,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
)
from hubwright.setup.model import TrailerChassis

_WIDTH, _FOOT, _ARROW, _HEAD = 310.0, 24.0, 24.0, 16.0
_ROOMS = ((12.0, 148.0), (162.0, 298.0))
_VEHICLE = "On level public scales, ready to drive, with everybody aboard who usually is."
_TRAILER = (
    "On level ground, loaded as it usually runs. The axle first, with the trailer coupled: the pale post stands for "
    "the vehicle. Then the coupling on a scale at its usual height."
)
_DEEP, _BESIDE = 110.0, 140.0  # mm: depth of a platform, and how far it reaches beyond the tire
_HIDDEN = 2.5  # an arrow shorter than this does not show below the scale


def measuring_weights(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of the weighings that a file asks for; the case plays no part."""
    outline = outline_of(results)
    places = _places(results)
    scale = min(
        drawing_scale(outline.front - outline.rear + 400.0, _ROOMS[0][1] - _ROOMS[0][0])[0],
        drawing_scale(outline.top, 62.0)[0],
    )
    per_mm = round_scale(max(mass for _, _, mass in places) * STANDARD_GRAVITY / _ARROW, 1.0)
    road = _FOOT + _ARROW + 6.0
    views, items = [], []
    pushes, _ = display_sum([mass * STANDARD_GRAVITY for _, _, mass in places], "force", units)  # with like digits
    for number, (room, push, place) in enumerate(zip(_ROOMS, pushes, places, strict=True), start=1):
        middle = sum(room) / 2 + scale * (outline.front + outline.rear) / 2
        view = View(
            f"weighing-{number}", (middle, road), scale, per_mm, mirrored=True, heading=f"Weighing the {place[0]}"
        )
        views.append(view)
        items += _weighed(results, outline, view, number, place, push.text, units)
    top = views[0].on_sheet((0.0, outline.top))[1]
    told = "; ".join(f"{name} {format_quantity(mass, 'mass', units)}" for name, _, mass in places)
    trailer = isinstance(results.setup.chassis, TrailerChassis)
    title = "The axle on the platform, the coupling on a scale" if trailer else "One axle at a time on the platform"
    return Scene(
        name="measuring-weights",
        title=title,
        caption=(_TRAILER if trailer else _VEHICLE) + " Gear that the file lists by itself is not aboard.",
        description=f"{title}. {told[:1].upper()}{told[1:]}.",
        units=units,
        size=(_WIDTH, top + _HEAD),
        views=tuple(views),
        items=tuple(items),
        steps=(
            Step("Weigh the first", f"The {places[0][0]} alone on the platform, all of it level."),
            Step("Weigh the second", f"Then the {places[1][0]} alone."),
        ),
        scale_bars=(
            ScaleBar("weighing-1", "length", f"Both views 1 : {1 / scale:.0f}"),
            ScaleBar("weighing-1", "force", "What the scale pushes up with"),
        ),
        key=(KeyEntry("reaction", "push of the scale"),),
    )


def _places(results: Results) -> tuple[tuple[str, float, float], ...]:
    """Return what is weighed, where it stands and what the scale shows."""
    chassis = results.setup.chassis
    if isinstance(chassis, TrailerChassis):
        return (
            ("axle", 0.0, chassis.axle_mass),
            ("coupling", chassis.coupling_ahead_of_axle * 1e3, chassis.coupling_mass),
        )
    return (
        ("front axle", 0.0, chassis.front_axle_mass),
        ("rear axle", -chassis.wheelbase * 1e3, chassis.rear_axle_mass),
    )


def _weighed(
    results: Results, outline: Outline, view: View, step: int, place: tuple[str, float, float], push: str, units: Units
) -> list[Item]:
    """Return the vehicle with one of its supports on a platform that is let into the ground."""
    name, x, mass = place
    items = [item for item in vehicle_seen(results, outline, view) if item.name != "ground"]
    ends = outline.front + 120.0, outline.rear - 120.0
    half = results.wheel_geometry.free_diameter / 2 * 1e3 + _BESIDE
    high, hitched = COUPLING_HEIGHT - 30.0, outline.coupling
    if name == "coupling":
        half = 120.0
    if hitched is not None:  # coupled while its axle is weighed: what carries the coupling then is not the trailer's
        column = tuple((hitched[0] + dx, z) for dx, z in ((-45.0, 0.0), (-45.0, high), (45.0, high), (45.0, 0.0)))
        material: Material = "fixed" if name == "coupling" else "ghost"
        items.append(
            Part(f"part-column-{step}", view.name, rings=(column,), material=material, outline=0.25, level=0.1)
        )
    ends = max(ends[0], x + half + 100.0), min(ends[1], x - half - 100.0)
    plate = ((x - half, -_DEEP), (x - half, 0.0), (x + half, 0.0), (x + half, -_DEEP))
    items.append(Part("part-platform", view.name, rings=(plate,), material="changed", outline=0.35, level=0.1))
    for side, (start, end) in (("ahead", (ends[0], x + half + 15.0)), ("behind", (x - half - 15.0, ends[1]))):
        items.append(Ground(f"ground-{side}", view.name, start=(start, 0.0), end=(end, 0.0)))
    ahead = outline.front - x > x - outline.rear  # where there is more room
    label = Label(
        (f"*{{F}} = {push}", f"the scale shows {format_quantity(mass, 'mass', units)}", f"{name} alone"),
        place="left" if ahead else "right",
        tone="reaction",
        size=2.6,
        anchor=(x, -_DEEP - 9.0 / view.scale),
        nudge=(-1.4 if ahead else 1.4, -2.0),  # off the platform
    )
    force = Force(
        f"reaction-{step}",
        view.name,
        step,
        at=(x, -_DEEP),
        vector=(0.0, mass * STANDARD_GRAVITY),
        role="reaction",
        label=label,
    )
    return [replace(item, name=f"{item.name}-{step}") for item in items] + [visible(force, view, least=_HIDDEN)]
