"""What a customer is told to have checked and to watch for, by what a setup changes; from common practice.

It asks for checks and judges nothing: whoever does them goes by the maker's figures.
"""

from collections.abc import Iterable

from hubwright.results.changes import Change
from hubwright.setup.model import Setup

CHECKS: dict[str, str] = {
    "spacer": "Spacers: seat type, thread engagement, fit on the pilot, clean dry faces; torque again after driving.",
    "wheel": "Wheels: seat type, load rating, clearance to brake, arms and body.",
    "tire": "Tires: load and speed rating, inflation, clearance at full lock and full bump; speedometer.",
    "gear": "Gear: fastening of what is carried, axle weights on a scale with all of it aboard.",
    "bearing": "Bearing: the right unit, fitted and torqued by the maker’s procedure.",
    "hub": "Hub: fit, and the nut torqued by the maker’s procedure.",
    "brake": "Brake: fit, lines, and a brake test.",
    "chassis": "Axle weights on a scale, ready to drive.",
}
ALWAYS_CHECKED = "Wheel bearings: slack, noise and heat, by a workshop, before and after the change."
UNCHANGED = "Wheel bearings: slack, noise and heat, by a workshop, when the wheels are off anyway."
WATCH: tuple[str, ...] = (
    "A hum or growl that changes with speed or in bends.",
    "Looseness at a wheel, brake pull, shaking, a warning lamp.",
    "A hub much hotter than the one across the axle; hot hubs burn.",
)
WATCH_SPACER = "Wheel nuts that needed tightening."
STOP = "On looseness, grinding, strong heat, smell or smoke: stop, and do not drive on."


def checks_for(changes: Iterable[Change], setup: Setup) -> list[str]:
    """Return what to have checked, for a setup with some changes."""
    kinds = {change.kind for change in changes}
    if setup.wheel.spacer > 0:
        kinds.add("spacer")
    found = [text for kind, text in CHECKS.items() if kind in kinds]
    return [*found, ALWAYS_CHECKED if kinds else UNCHANGED]


def watch_for(setup: Setup) -> list[str]:
    """Return what to watch for while driving a setup."""
    return [*WATCH, *([WATCH_SPACER] if setup.wheel.spacer > 0 else []), STOP]


def hazards_of(changes: Iterable[Change], setup: Setup, *, estimated: bool) -> list[str]:
    """Return the hazards that a sheet about a setup shows, by the names of the table of cautions."""
    kinds = {change.kind for change in changes}
    found = ["bearing check"]
    if kinds & {"bearing", "hub"}:
        found.append("hub nuts")
    if setup.wheel.spacer > 0 or kinds & {"spacer", "wheel"}:
        found.append("wheel fasteners")
    if "tire" in kinds:
        found.append("tires")
    if len(setup.cases) > 1:
        found.append("slopes drops and corners")
    if setup.gear:
        found.append("gear")
    if estimated:
        found.append("measuring")
    return found
