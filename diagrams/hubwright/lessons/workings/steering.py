"""Workings of what a moved load line does to track, scrub radius and steering."""

from collections.abc import Callable, Mapping

from hubwright.errors import MissingDataError
from hubwright.lessons.rough_views import Steered
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.quantities import Quantity
from hubwright.results import Results
from hubwright.setup.model import TrailerChassis


def track(steered: Steered) -> Working:
    """Return how the track grows: the load line moves at both wheels."""
    return Working(
        what="Track of the axle",
        lines=(_CHANGE, Line("T", "t + 2*c")),
        symbols={
            **_change(steered),
            "T": Symbol("T", "track of the axle", Quantity(steered.found.track, "m", kind="vehicle length"), "mm"),
            "t": Symbol("t", "track as it was measured", Quantity(_own_track(steered.results), "m"), "mm"),
        },
        source="Geometry: the load line moves outward at both wheels.",
        function="steering.moved_track",
    )


def scrub_radius(steered: Steered) -> Working:
    """Return how the scrub radius follows the load line."""
    steering, found = steered.results.setup.steering, steered.found.scrub_radius
    if steering is None or steering.scrub_radius is None or found is None:
        raise MissingDataError(result="the scrub radius", missing=["steering.scrub_radius"])
    if found == steering.scrub_radius:
        given = Symbol("s", "scrub radius as the file gives it", Quantity(found, "m", kind="small length"), "mm")
        return Working("Scrub radius", (Line("r", "s"),), {"r": _scrub(found), "s": given}, "As the file gives it.")
    return Working(
        what="Scrub radius",
        lines=(_CHANGE, Line("r", "s + c")),
        symbols={
            **_change(steered),
            "r": _scrub(found),
            "s": Symbol("s", "scrub radius as it was measured", Quantity(steering.scrub_radius, "m"), "mm"),
        },
        source="Geometry: the steering axis stays, the load line moves.",
        function="steering.moved_scrub_radius",
    )


_CHANGE = Line("c", "y - y_0")


def _scrub(value: float) -> Symbol:
    words = "from the steering axis out to the load line, on the ground"
    return Symbol("r_s", words, Quantity(value, "m", kind="small length"), "mm")


def _change(steered: Steered) -> dict[str, Symbol]:
    now, before = (one.wheel_geometry.load_line_offset for one in (steered.results, steered.base))
    return {
        "c": Symbol(r"\Delta y", "how far the load line moved outward", Quantity(now - before, "m"), "mm"),
        "y": Symbol("y_L", "load line outboard of the bearing centre", Quantity(now, "m"), "mm", "load_line_offset"),
        "y_0": Symbol("y_0", "load line where track and scrub radius were measured", Quantity(before, "m"), "mm"),
    }


def _own_track(results: Results) -> float:
    chassis = results.setup.chassis
    if isinstance(chassis, TrailerChassis):
        return chassis.track
    return chassis.rear_track if results.wheel.startswith("rear") else chassis.front_track


WORKINGS: Mapping[str, Callable[[Steered], Working]] = {"track": track, "scrub_radius": scrub_radius}
