"""What a lesson may ask about play and noise: an end play at hub and tread, and what is heard at a road speed."""

from dataclasses import dataclass

from hubwright.errors import MissingDataError
from hubwright.lessons.named_values import View, constant
from hubwright.mechanics.bearing_noise import DefectFrequencies, wheel_frequency
from hubwright.quantities import Kind, Quantity
from hubwright.results import Results
from hubwright.results.symptoms import PlayResult, noise_result, own_end_play, play_from_tread, play_result

_PLAYS: tuple[tuple[str, str, Kind], ...] = (
    ("end_play", "m", "deflection"),
    ("radial_play", "m", "deflection"),
    ("rocking_angle", "rad", "slope"),
    ("tread_travel", "m", "small length"),
)


@dataclass(frozen=True)
class Played:
    """A setup's bearing with an end play, for its workings."""

    results: Results
    play: PlayResult


@dataclass(frozen=True)
class Heard:
    """A setup's wheel at a road speed [m/s], for its workings; what its parts make, None for an unknown row."""

    results: Results
    speed: float
    turns: float  # of the wheel [Hz]
    parts: DefectFrequencies | None


def own_play(results: Results) -> Quantity:
    """Return the end play that the file's preload means, with its range."""
    value, least, largest = own_end_play(results)
    return Quantity(value, "m", kind="deflection", low=least, high=largest)


def play_view(results: Results, end_play: float, label: str) -> View | None:
    """Return an end play [m] and what it makes at hub and tread; None where the rows' places are not known."""
    try:
        return _play_view(results, play_result(results, end_play), label)
    except MissingDataError:
        return None


def tread_view(results: Results, travel: float, label: str) -> View | None:
    """Return the play that a travel at the tread [m] comes from, if all of it is the bearing's."""
    try:
        return _play_view(results, play_from_tread(results, travel), label)
    except MissingDataError:
        return None


def _play_view(results: Results, play: PlayResult, label: str) -> View:
    names = {name: constant(Quantity(getattr(play, name), unit, kind=kind)) for name, unit, kind in _PLAYS}
    return View(label, names, Played(results, play))


def noise_view(results: Results, speed: float, label: str) -> View:
    """Return how often the parts of a bearing are struck at a road speed [m/s]; None where its rows are not known."""
    turns = float(wheel_frequency(speed=speed, rolling_circumference=results.wheel_geometry.rolling_circumference))
    try:
        parts = noise_result(results, speed)
    except MissingDataError:
        parts = None
    names = {
        name: constant(None if parts is None else Quantity(float(getattr(parts, name)), "Hz"))
        for name in ("cage", "outer_ring", "inner_ring", "element")
    }
    return View(label, {"wheel": constant(Quantity(turns, "Hz")), **names}, Heard(results, speed, turns, parts))
