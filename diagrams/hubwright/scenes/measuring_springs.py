"""Wheel rate and travels: how far a known mass on the axle lowers the arch over the wheel, and how far it can go.

Side views in real millimetres from the wheel's centre: x to the left on the sheet, z up. The wheel
stays, the arch moves.
"""

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.vehicle_outline import circle, standing_tire
from hubwright.scenes.vocabulary import (
    Column,
    Dimension,
    Dot,
    Ground,
    Item,
    Label,
    Line,
    LineStyle,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Step,
    Tone,
    Units,
    View,
)

_WIDTH, _FOOT, _HEAD, _TALL = 310.0, 28.0, 16.0, 96.0
_LOADED, _TRAVEL = 86.0, 222.0  # middles of the two wheels on the sheet
_ROW = 8.0  # between two upright dimensions
_PEOPLE = ("one person", "two people", "three people", "four people")  # over the axle: half on each wheel
_PERSON = 75.0  # kg
_ENOUGH = 0.015  # m, a change that a tape tells well
_GAP, _ARCH = 1.30, 0.82  # arch over the free radius, standing; half its width over it


def measuring_springs(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of a corner that a known mass lowers, and of its travels; the case plays no part."""
    suspension = results.setup.suspension
    assert suspension is not None
    rate = float(results.inputs["suspension.wheel_rate"].value)
    each = _PERSON / 2 * STANDARD_GRAVITY / rate
    count = next((n for n in range(1, len(_PEOPLE)) if n * each >= _ENOUGH), len(_PEOPLE))
    sinks = count * each * 1e3
    person = format_quantity(_PERSON, "mass", units)
    people = f"{_PEOPLE[count - 1]} of {person}"
    bump, droop = suspension.bump_travel * 1e3, suspension.droop_travel * 1e3
    geometry = results.wheel_geometry
    free, loaded, rim = (
        value * 1e3 for value in (geometry.free_diameter / 2, geometry.loaded_radius, geometry.rim_diameter / 2)
    )
    arch = _GAP * free + max(0.0, bump - 0.22 * free)  # full bump leaves the tire some air
    tall = loaded + arch + max(droop, 0.0)
    scale, ratio = drawing_scale(tall, _TALL, ((1, 5), (1, 6), (1, 8), (1, 10), (1, 15), (1, 20)))
    low = _FOOT + 8.0 + loaded * scale
    first, second = (
        View(name, (x, low), scale, mirrored=True, heading=heading, level_with="loaded")
        for name, x, heading in (("loaded", _LOADED, "Under a known load"), ("travel", _TRAVEL, "From stop to stop"))
    )
    items: list[Item] = []
    for view in (first, second):
        items += _wheel(view, free, loaded, rim)
    right = free * scale + 9.0
    above = low + (arch + max(droop, 0.0)) * scale + 4.0
    items += [
        _arch("standing", first, arch, free, "outline", "before", 1),
        _arch("loaded", first, arch - sinks, free, "outline", "changed", 2),
        _arch("standing", second, arch, free, "outline", "before", 3),
        _arch("full-bump", second, arch - bump, free, "phantom", "ink", 3),
        _arch("full-droop", second, arch + droop, free, "phantom", "ink", 3),
        _length("centre-to-arch", first, 1, (0.0, arch), first.origin[0] + right + _ROW, "read this", units),
        _length("sinks", first, 2, (arch - sinks, arch), first.origin[0] + right, "change", units),
        _length("bump", second, 3, (arch - bump, arch), second.origin[0] - right, "bump", units),
        _length("droop", second, 3, (arch, arch + droop), second.origin[0] - right - _ROW, "droop", units),
    ]
    named: tuple[tuple[View, int, Tone, float, tuple[str, ...]], ...] = (
        (first, 1, "before", arch, ("standing",)),
        (first, 2, "changed", arch - sinks, (f"with {_PEOPLE[count - 1]}", f"of {person}")),
        (second, 3, "ink", arch + droop, ("full droop",)),
        (second, 3, "before", arch, ("standing",)),
        (second, 3, "ink", arch - bump, ("full bump",)),
    )
    items += [_named(*name, free=free) for name in named]
    down = format_quantity(sinks / 1e3, "length", units)
    title = f"{people[:1].upper()}{people[1:]} over the axle would lower the body by {down}"
    return Scene(
        name="measuring-springs",
        title=title,
        caption="Left: what stands over the middle of the axle puts half of its weight on each wheel. Tape from the "
        "hub’s centre to the arch before and after: half the weight over that change is the wheel rate. Right: the "
        "travels to the stops, by the file or its estimate; the arch is drawn anywhere.",
        description=f"{title}. Travel up {_mm(bump, units)}, down {_mm(droop, units)}.",
        units=units,
        size=(_WIDTH, above + _HEAD - 4.0),
        views=(first, second),
        items=tuple(items),
        steps=(
            Step("Read the height", "From the hub’s centre straight up to the arch."),
            Step("Load the axle", "A known mass, over the axle and in the middle."),
            Step("Find the stops", "From the maker’s data, or by a workshop with the vehicle on a hoist."),
        ),
        columns=(
            Column("left", first.origin[0] - right, low, above),
            Column("right", second.origin[0] + right, low, above),
        ),
        scale_bars=(ScaleBar("loaded", "length", f"Both views {ratio}"),),
    )


def _mm(length: float, units: Units) -> str:
    return format_quantity(length / 1e3, "length", units)


def _wheel(view: View, free: float, loaded: float, rim: float) -> list[Item]:
    name = view.name
    tire = tuple((x, z - loaded) for x, z in standing_tire(free_radius=free, loaded_radius=loaded, at=0.0))
    reach = free + 60.0
    return [
        Ground(f"ground-{name}", name, start=(reach, -loaded), end=(-reach, -loaded)),
        Part(f"part-tire-{name}", name, rings=(tire,), material="rubber", outline=0.35, level=0.1),
        Part(f"part-rim-{name}", name, rings=(circle((0.0, 0.0), rim),), material="turning", outline=0.25, level=0.2),
        Part(
            f"part-hub-{name}", name, rings=(circle((0.0, 0.0), 0.42 * rim),), material="paper", outline=0.2, level=0.3
        ),
        Dot(f"centre-{name}", name, at=(0.0, 0.0), radius=0.9, level=2.0),
    ]


def _arch(name: str, view: View, height: float, free: float, style: LineStyle, tone: Tone, step: int) -> Line:
    """Return the edge of the wheel arch at a height over the wheel's centre."""
    points = _arch_points(height, free)
    return Line(f"arch-{name}-{view.name}", view.name, step, points=points, style=style, tone=tone, level=1.0)


def _arch_points(height: float, free: float) -> tuple[Point, ...]:
    """Return the corners of an arch from the front, which is on the left of the sheet, to the rear."""
    half = _ARCH * free
    return (
        *((1.12 * half, height - 0.5 * half), (0.9 * half, height - 0.12 * half), (0.55 * half, height)),
        *((-0.55 * half, height), (-0.9 * half, height - 0.12 * half), (-1.12 * half, height - 0.5 * half)),
    )


def _named(view: View, step: int, tone: Tone, height: float, lines: tuple[str, ...], *, free: float) -> Note:
    """Return an arch's name, in its tone, at that end of it which lies away from the other view."""
    outside = view.name == "loaded"
    end = _arch_points(height, free)[0 if outside else -1]
    label = Label(lines, "left column" if outside else "right column", end, tone=tone, size=2.4)
    return Note(f"label-{view.name}-{lines[0].replace(' ', '-')}", view.name, step, label=label)


def _length(
    name: str, view: View, step: int, ends: tuple[float, float], line: float, word: str, units: Units
) -> Dimension:
    length = _mm(ends[1] - ends[0], units)
    return Dimension(
        f"dimension-{name}",
        view.name,
        step,
        start=(0.0, ends[0]),
        end=(0.0, ends[1]),
        direction="vertical",
        line_at=line,
        text=word if name == "centre-to-arch" else f"{word} {length}",
        side="start" if name in ("bump", "sinks") else "end",
    )
