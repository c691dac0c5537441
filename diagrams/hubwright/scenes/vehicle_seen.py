"""The vehicle or trailer of a setup as it is seen from its left side, standing on the road.

Real millimetres: x forward from the front axle (a trailer: from its axle), z up from the road.
"""

from functools import partial

from hubwright.results.model import Results
from hubwright.scenes.vehicle_loads import axle_places
from hubwright.scenes.vehicle_outline import Outline, circle, standing_tire, trailer_outline, vehicle_outline
from hubwright.scenes.vocabulary import Dot, Ground, Item, Line, Part, View
from hubwright.setup.model import TrailerChassis


def outline_of(results: Results) -> Outline:
    """Return the outline of the vehicle or trailer of a solved setup."""
    chassis, radius = results.setup.chassis, results.wheel_geometry.free_diameter / 2 * 1e3
    height = chassis.centre_of_mass_height * 1e3
    if isinstance(chassis, TrailerChassis):
        ahead = chassis.coupling_ahead_of_axle * 1e3
        return trailer_outline(coupling_ahead=ahead, free_radius=radius, centre_height=height)
    return vehicle_outline(wheelbase=chassis.wheelbase * 1e3, free_radius=radius, centre_height=height)


def vehicle_seen(results: Results, outline: Outline, view: View) -> list[Item]:
    """Return outline, windows and standing wheels on the road, in real millimetres from the front axle."""
    geometry = results.wheel_geometry
    free, loaded = geometry.free_diameter / 2 * 1e3, geometry.loaded_radius * 1e3
    items: list[Item] = []
    silhouette = partial(Part, view=view.name, kept_clear="edge")
    if outline.drawbar:
        items.append(silhouette("part-drawbar", rings=(outline.drawbar,), material="body", outline=0.3))
    items.append(silhouette("part-body", rings=(outline.body,), material="body", outline=0.4))
    for number, window in enumerate(outline.windows, start=1):
        items.append(silhouette(f"part-window-{number}", rings=(window,), material="ghost", outline=0.18, level=0.1))
    for number, edge in enumerate(outline.edges, start=1):
        items.append(Line(f"edge-{number}", view.name, points=edge, style="hair", tone="faint", level=0.1))
    for name, x in axle_places(results).items():
        tire = standing_tire(free_radius=free, loaded_radius=loaded, at=x)
        rim = circle((x, loaded), geometry.rim_diameter / 2 * 1e3)
        hub = circle((x, loaded), 0.22 * geometry.rim_diameter * 1e3)
        items.append(silhouette(f"part-tire-{name}", rings=(tire,), material="rubber", outline=0.35, level=0.2))
        items.append(Part(f"part-rim-{name}", view.name, rings=(rim,), material="turning", outline=0.2, level=0.3))
        items.append(Part(f"part-hub-{name}", view.name, rings=(hub,), material="paper", outline=0.2, level=0.4))
    if outline.coupling:
        items.append(Dot("coupling", view.name, at=outline.coupling, kind="ring", radius=1.3, level=0.3))
    ends = (outline.front + 120.0, 0.0), (outline.rear - 120.0, 0.0)
    items.append(Ground("ground", view.name, start=ends[0], end=ends[1]))
    return items
