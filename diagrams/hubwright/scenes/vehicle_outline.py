"""A plain outline of a vehicle or trailer seen from its left side, made from its dimensions alone.

Millimetres: x forward from the axle that places are counted from, z up from the road.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from hubwright.scenes.vocabulary import Point

# Share of a vehicle's height at which its centre of mass lies: common practice, the estimate of `setup`.
_CENTRE_SHARE = 0.39
COUPLING_HEIGHT = 430.0  # of a coupling above the road: common practice
_ARCH = 1.14  # radius of a wheel arch over that of the tire


@dataclass(frozen=True)
class Outline:
    """What is seen of a body: its closed outline, windows and a drawbar, edges on it, and how far it reaches."""

    body: tuple[Point, ...]
    windows: tuple[tuple[Point, ...], ...]
    edges: tuple[tuple[Point, ...], ...]
    front: float
    rear: float
    top: float
    drawbar: tuple[Point, ...] = ()
    coupling: Point | None = None


def vehicle_outline(*, wheelbase: float, free_radius: float, centre_height: float) -> Outline:
    """Return a two-axle vehicle's outline: a wagon with a bonnet, or the taller the more of a van."""
    height = max(centre_height / _CENTRE_SHARE, 2.6 * free_radius, 0.45 * wheelbase)
    van = min(max((height - 1800.0) / 300.0, 0.0), 1.0)  # 0: long bonnet, sloping tail; 1: box
    front = max((0.27 - 0.02 * van) * wheelbase, 1.30 * free_radius)
    tail = -wheelbase - max((0.27 + 0.03 * van) * wheelbase, 1.30 * free_radius)
    sill, belt = 0.62 * free_radius, _between(0.585, 0.50, van) * height
    cowl = _between(-0.17, 0.06, van) * wheelbase
    screen = _between(-0.38, -0.12, van) * wheelbase
    roof_end = tail + _between(0.13, 0.012, van) * wheelbase
    upper = [
        ((front, sill + 0.03 * height), 60.0),
        ((front, 0.86 * belt), 140.0),
        ((front - 0.06 * wheelbase, belt - 0.035 * height), 160.0),
        ((cowl, belt + 0.02 * height), 90.0),
        ((screen, 0.975 * height), 170.0),
        ((_between(screen, roof_end, 0.45), height), 900.0),
        ((roof_end, 0.97 * height), 200.0),
        ((tail + 0.01 * wheelbase, belt), 120.0),
        ((tail, 0.80 * belt), 80.0),
        ((tail, sill + 0.05 * height), 70.0),
    ]
    body = _rounded(upper) + _lower_edge((-wheelbase, 0.0), _ARCH * free_radius, free_radius, sill)
    glass_low, glass_high = belt + 0.045 * height, 0.925 * height
    lean = (screen - cowl) / (0.955 * height - belt)  # of the windscreen, x per z
    front_low = cowl + lean * (glass_low - belt) - 0.035 * wheelbase
    pillar = _between(-0.60, -0.24, van) * wheelbase
    panes = [_pane(front_low, front_low + lean * (glass_high - glass_low), pillar, pillar, glass_low, glass_high)]
    if van < 0.5:
        second, last = pillar - 0.02 * wheelbase, -1.02 * wheelbase
        panes.append(_pane(second, second, last, last, glass_low, glass_high))
        third = last - 0.02 * wheelbase
        panes.append(_pane(third, third, tail + 0.045 * wheelbase, roof_end + 0.02 * wheelbase, glass_low, glass_high))
    crease = max(0.80 * belt, 1.08 * (1 + _ARCH) * free_radius)  # clear of the wheel arches
    edges = (
        ((front - 0.02 * wheelbase, crease), (tail + 0.02 * wheelbase, crease)),
        ((pillar - 0.01 * wheelbase, glass_high), (pillar - 0.01 * wheelbase, sill + 0.04 * height)),
    )
    return Outline(body, tuple(panes), edges, front, tail, height)


def trailer_outline(*, coupling_ahead: float, free_radius: float, centre_height: float) -> Outline:
    """Return a one-axle trailer's outline: a covered box over its wheel, and a drawbar to the coupling."""
    bottom = 1.04 * free_radius
    top = max(1.75 * centre_height - 0.25 * free_radius, bottom + 1.1 * free_radius)
    front, rear = 0.52 * coupling_ahead, -0.46 * coupling_ahead
    corners = [((front, bottom), 30.0), ((front, top), 90.0), ((rear, top), 90.0), ((rear, bottom), 30.0)]
    body = _rounded(corners) + _lower_edge((0.0,), _ARCH * free_radius, free_radius, bottom)
    coupling = (coupling_ahead, COUPLING_HEIGHT)
    rail = 0.05 * coupling_ahead
    drawbar = (
        (front, bottom),
        (front, bottom - rail),
        (coupling_ahead - 2 * rail, coupling[1] - 0.4 * rail),
        (coupling_ahead, coupling[1] - 0.4 * rail),
        (coupling_ahead, coupling[1] + 0.4 * rail),
        (coupling_ahead - 2 * rail, coupling[1] + 0.4 * rail),
    )
    lid = bottom + 0.72 * (top - bottom)
    edges = (((front, lid), (rear, lid)),)
    return Outline(body, (), edges, coupling_ahead, rear, top, drawbar, coupling)


def standing_tire(*, free_radius: float, loaded_radius: float, at: float) -> tuple[Point, ...]:
    """Return a tire's outline from the side: a circle about the wheel centre, flat where the road stops it."""
    ring = _arc((at, loaded_radius), free_radius, 0.0, 2 * math.pi, 120)
    return tuple((x, max(z, 0.0)) for x, z in ring)


def circle(at: Point, radius: float) -> tuple[Point, ...]:
    """Return a circle as a closed ring."""
    return _arc(at, radius, 0.0, 2 * math.pi, 120)


def _between(first: float, last: float, share: float) -> float:
    return first + (last - first) * share


def _pane(
    front_low: float, front_high: float, rear_low: float, rear_high: float, low: float, high: float
) -> tuple[Point, ...]:
    corners = [(front_low, low), (front_high, high), (rear_high, high), (rear_low, low)]
    return _rounded([(corner, 45.0) for corner in corners])


def _lower_edge(axles: Sequence[float], arch: float, centre: float, sill: float) -> tuple[Point, ...]:
    """Return the lower edge from the tail to the nose, going round each wheel by its arch."""
    rise = min(max((sill - centre) / arch, -0.95), 0.95)
    low = math.asin(rise)
    points: list[Point] = []
    for axle in axles:
        points.extend(_arc((axle, centre), arch, math.pi - low, low, 32))
    return tuple(points)


def _arc(centre: Point, radius: float, start: float, end: float, steps: int) -> tuple[Point, ...]:
    angles = (start + (end - start) * step / steps for step in range(steps + 1))
    return tuple((centre[0] + radius * math.cos(angle), centre[1] + radius * math.sin(angle)) for angle in angles)


def _rounded(corners: Sequence[tuple[Point, float]]) -> tuple[Point, ...]:
    """Return a polyline whose inner corners are rounded by parabolas that start at most 45 % along each side."""
    points: list[Point] = []
    for index, (corner, radius) in enumerate(corners):
        before, after = corners[index - 1][0], corners[(index + 1) % len(corners)][0]
        start = _toward(corner, before, radius)
        end = _toward(corner, after, radius)
        for step in range(7):
            t = step / 6
            points.append(
                (
                    (1 - t) ** 2 * start[0] + 2 * t * (1 - t) * corner[0] + t**2 * end[0],
                    (1 - t) ** 2 * start[1] + 2 * t * (1 - t) * corner[1] + t**2 * end[1],
                )
            )
    return tuple(points)


def _toward(corner: Point, other: Point, distance: float) -> Point:
    length = math.hypot(other[0] - corner[0], other[1] - corner[1])
    share = min(distance / length, 0.45) if length else 0.0
    return _between(corner[0], other[0], share), _between(corner[1], other[1], share)
