"""A plain outline of a vehicle or trailer from the rear, made from its dimensions alone.

Millimetres: y to the left from the middle plane, z up from the road.
"""

from dataclasses import replace

import numpy as np

from hubwright.results.model import Results
from hubwright.scenes.vehicle_outline import trailer_outline, vehicle_outline
from hubwright.scenes.vocabulary import Material, Part, Point
from hubwright.scenes.wheel_end_parts.outlines import rounded
from hubwright.setup.model import TrailerChassis

_STEP = 10.0  # millimetres between points of an edge that are looked at


def rear_outline(results: Results, view: str) -> tuple[Part, ...]:
    """Return wheels, body and rear window; the body hides the upper part of the wheels."""
    chassis, geometry = results.setup.chassis, results.wheel_geometry
    radius, width = geometry.free_diameter / 2 * 1e3, geometry.section_width * 1e3
    height = chassis.centre_of_mass_height * 1e3
    if isinstance(chassis, TrailerChassis):
        ahead = chassis.coupling_ahead_of_axle * 1e3
        top = trailer_outline(coupling_ahead=ahead, free_radius=radius, centre_height=height).top
        tracks: tuple[float, ...] = (chassis.track * 1e3,)
        half, sill = tracks[0] / 2 - 0.75 * width, 1.04 * radius
        corners: list[Point] = [(half, sill), (half, top), (-half, top), (-half, sill)]
        window: list[Point] = []
    else:
        base = chassis.wheelbase * 1e3
        top = vehicle_outline(wheelbase=base, free_radius=radius, centre_height=height).top
        tracks = (chassis.front_track * 1e3, chassis.rear_track * 1e3)
        half, sill, belt = max(tracks) / 2 + 0.52 * width, 0.75 * radius, 0.56 * top
        roof = 0.80 * half
        corners = [
            *((half - 60, sill), (half, 0.42 * top), (half - 15, belt), (roof, 0.97 * top), (0.6 * roof, top)),
            *((-0.6 * roof, top), (-roof, 0.97 * top), (-half + 15, belt), (-half, 0.42 * top), (-half + 60, sill)),
        ]
        low, high = belt + 0.04 * top, 0.92 * top
        window = [(0.84 * half, low), (0.86 * roof, high), (-0.86 * roof, high), (-0.84 * half, low)]
    parts = list(wheels_seen(results, view, tuple(s * track / 2 for track in tracks[-1:] for s in (1, -1)), 1))
    parts.append(_part("part-body", view, corners, 90.0, "body", 0.4, 0.4))
    for number, (corner, material) in enumerate(_fittings(half, top, radius) if window else (), start=1):
        parts.append(_part(f"part-fitting-{number}", view, corner, 20.0, material, 0.18, 0.5))
    if window:
        parts.append(_part("part-window", view, window, 60.0, "ghost", 0.18, 0.5))
    return tuple(parts)


def crossed(results: Results, one: Point, other: Point) -> bool:
    """Return whether an edge of the outline runs through the upright rectangle between two corners."""
    (x0, x1), (y0, y1) = sorted((one[0], other[0])), sorted((one[1], other[1]))
    for part in rear_outline(results, ""):
        for ring in part.rings:
            for a, b in zip(ring, (*ring[1:], ring[0]), strict=True):
                along = np.linspace(0.0, 1.0, 2 + int(np.hypot(b[0] - a[0], b[1] - a[1]) / _STEP))
                x, y = a[0] + along * (b[0] - a[0]), a[1] + along * (b[1] - a[1])
                if np.any((x > x0) & (x < x1) & (y > y0) & (y < y1)):
                    return True
    return False


def _fittings(half: float, top: float, radius: float) -> tuple[tuple[list[Point], Material], ...]:
    """Return lamps and bumper of a vehicle."""
    low, high = 0.36 * top, 0.36 * top + 0.075 * top
    sill = 0.75 * radius
    lamps: list[list[Point]] = [
        [(s * 0.93 * half, low), (s * 0.93 * half, high), (s * 0.78 * half, high), (s * 0.78 * half, low)]
        for s in (1, -1)
    ]
    a, b = 0.9 * half, sill + 0.35 * (low - sill)
    bumper: list[Point] = [(a, sill + 20), (a, b), (-a, b), (-a, sill + 20)]
    return (lamps[0], "changed"), (lamps[1], "changed"), (bumper, "fixed")


def axle_seen(results: Results, view: str, places: tuple[float, ...], step: int) -> Part:
    """Return the axle between the wheels as a bar at their height."""
    geometry = results.wheel_geometry
    end = max(places) - geometry.section_width * 500.0
    z, half = geometry.loaded_radius * 1e3, 0.09 * geometry.loaded_radius * 1e3
    ring = ((end, z - half), (end, z + half), (-end, z + half), (-end, z - half))
    return Part(
        f"part-axle-{view}", view, step, rings=(ring,), material="fixed", outline=0.25, level=0.1, kept_clear="edge"
    )


def wheels_seen(results: Results, view: str, places: tuple[float, ...], step: int) -> tuple[Part, ...]:
    """Return tires from the rear at their places across the vehicle, flat where the road stops them."""
    geometry = results.wheel_geometry
    width = geometry.section_width * 1e3
    top = (geometry.free_diameter / 2 + geometry.loaded_radius) * 1e3
    parts = []
    for number, y in enumerate(places, start=1):
        a = width / 2
        corners: list[Point] = [(y - a, 0.0), (y - a, top), (y + a, top), (y + a, 0.0)]
        part = _part(f"part-tire-{number}", view, corners, 0.28 * width, "rubber", 0.3, 0.2)
        parts.append(replace(part, step=step))
    return tuple(parts)


def _part(
    name: str, view: str, corners: list[Point], radius: float, material: Material, outline: float, level: float
) -> Part:
    ring = rounded(corners, radius, closed=True)
    points = tuple((float(y), float(z)) for y, z in np.round(ring, 3))
    return Part(name, view, rings=(points,), material=material, outline=outline, level=level, kept_clear="edge")
