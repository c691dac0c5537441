"""Loaded radius and free diameter: a tape from the ground to the hub's centre, and one around a tire off the ground.

Side views in real millimetres from the point under the wheel's centre: x to the left on the sheet, z up.
"""

from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.scenes.scales import drawing_scale
from hubwright.scenes.vehicle_outline import circle, standing_tire
from hubwright.scenes.vocabulary import (
    Dimension,
    Dot,
    Ground,
    Item,
    Label,
    Line,
    Note,
    Part,
    Point,
    ScaleBar,
    Scene,
    Step,
    Units,
    View,
)

_WIDTH, _FOOT, _HEAD, _TALL = 310.0, 26.0, 16.0, 108.0
_STANDS, _FREE = 92.0, 222.0  # middles of the two wheels on the sheet


def measuring_tire(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of a wheel that stands and of one off the ground; the case plays no part."""
    geometry = results.wheel_geometry
    free, loaded, rim = (
        value * 1e3 for value in (geometry.free_diameter / 2, geometry.loaded_radius, geometry.rim_diameter / 2)
    )
    scale, ratio = drawing_scale(2 * free, _TALL, ((1, 5), (1, 6), (1, 8), (1, 10), (1, 12), (1, 15)))
    stands = View("standing", (_STANDS, _FOOT + 8.0), scale, mirrored=True, heading="Standing, inflated")
    hangs = View("free", (_FREE, _FOOT + 8.0), scale, mirrored=True, heading="Off the ground")
    length = {name: format_quantity(value / 1e3, "length", units) for name, value in (("l", loaded), ("f", 2 * free))}
    reach = free + 60.0
    items: list[Item] = [
        *_wheel(stands, standing_tire(free_radius=free, loaded_radius=loaded, at=0.0), loaded, rim),
        *_wheel(hangs, circle((0.0, free + 30.0), free), free + 30.0, rim),
        Ground("ground", stands.name, start=(reach, 0.0), end=(-reach, 0.0)),
        Dimension(
            "dimension-loaded-radius",
            stands.name,
            2,
            start=(reach, 0.0),  # the ground goes on to the line
            end=(0.0, loaded),
            direction="vertical",
            line_at=stands.origin[0] - max(free * scale + 9.0, reach * scale + 3.0),
            text=f"loaded radius {length['l']}",
        ),
        Dimension(
            "dimension-free-diameter",
            hangs.name,
            3,
            start=(0.0, 30.0),
            end=(0.0, 30.0 + 2 * free),
            direction="vertical",
            line_at=hangs.origin[0] + free * scale + 9.0,
            text=f"free diameter {length['f']}",
        ),
        _state("standing", stands, "standing, inflated", loaded + free),
        _state("free", hangs, "off the ground", 2 * free + 30.0),
    ]
    title = f"Standing, the hub’s centre is {length['l']} above the road"
    return Scene(
        name="measuring-tire",
        title=title,
        caption="Left: from the ground straight up to the middle of the hub, on firm level ground. Right: the way "
        "around the tread of an unloaded tire, divided by 3.14, is its free diameter; the size code gives it too.",
        description=f"{title}; the free diameter is {length['f']}.",
        units=units,
        size=(_WIDTH, stands.origin[1] + (2 * free + 40.0) * scale + _HEAD),
        views=(stands, hangs),
        items=tuple(items),
        steps=(
            Step("Stand it level", "Tires at their usual pressure, the usual load aboard."),
            Step("Measure up", "From the ground to the middle of the hub."),
            Step("Measure around", "Of a tire that carries nothing."),
        ),
        scale_bars=(ScaleBar("standing", "length", f"Both views {ratio}"),),
    )


def _state(name: str, view: View, text: str, top: float) -> Note:
    """Return what a view shows, over its tire; on a phone it is the view's heading."""
    label = Label((text,), "above", anchor=(0.0, top), tone="soft", size=2.4)
    return Note(f"label-{name}", view.name, 1, label=label, wide_only=True)


def _wheel(view: View, tire: tuple[Point, ...], height: float, rim: float) -> list[Item]:
    name, centre = view.name, (0.0, height)
    return [
        Part(f"part-tire-{name}", name, rings=(tire,), material="rubber", outline=0.4, level=0.1),
        Part(f"part-rim-{name}", name, rings=(circle(centre, rim),), material="turning", outline=0.25, level=0.2),
        Part(f"part-hub-{name}", name, rings=(circle(centre, 0.42 * rim),), material="paper", outline=0.25, level=0.3),
        Line(f"upright-{name}", name, points=((0.0, 0.0), (0.0, height + rim)), style="centre", tone="soft", level=1.0),
        Dot(f"centre-{name}", name, at=centre, radius=0.9, level=2.0),
    ]
