"""What is felt and heard of a setup's bearing: play at the tread, defect frequencies over road speed. SI units."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hubwright.errors import MissingDataError
from hubwright.mechanics.bearing_noise import DefectFrequencies, defect_frequencies, wheel_frequency
from hubwright.mechanics.play import end_play, end_play_from_tread, radial_play, rocking_angle, tread_travel
from hubwright.results.model import Results

_SPREAD = ("bearing.row_spacing", "bearing.pitch_diameter", "bearing.contact_angle")


@dataclass(frozen=True)
class PlayResult:
    """An end play [m] and what it makes: radial play [m], rocking to either side [rad], travel at the tread [m]."""

    end_play: float
    radial_play: float
    rocking_angle: float
    tread_travel: float


def own_end_play(results: Results) -> tuple[float, float, float]:
    """Return the end play that the file's preload means, with its least and largest over the preload's range [m]."""
    preload = results.setup.bearing.preload
    entry = results.inputs.get("bearing.preload")
    tight = preload if entry is None or entry.high is None else entry.high
    slack = preload if entry is None or entry.low is None else entry.low
    value, least, largest = (float(end_play(preload=each)) for each in (preload, tight, slack))
    return value, least, largest


def play_result(results: Results, play: float) -> PlayResult:
    """Return what an end play makes at hub and tread; raises `MissingDataError` where the rows' places are unknown."""
    angle, spread = _rows(results, "the play at the tread")
    free_radius = results.wheel_geometry.free_diameter / 2
    return PlayResult(
        end_play=play,
        radial_play=float(radial_play(end_play=play, contact_angle=angle)),
        rocking_angle=float(rocking_angle(end_play=play, contact_angle=angle, effective_spread=spread)),
        tread_travel=float(
            tread_travel(end_play=play, contact_angle=angle, effective_spread=spread, free_radius=free_radius)
        ),
    )


def play_from_tread(results: Results, travel: float) -> PlayResult:
    """Return the play that a travel at the tread comes from, if all of it is the bearing's."""
    angle, spread = _rows(results, "the play at the tread")
    free_radius = results.wheel_geometry.free_diameter / 2
    play = end_play_from_tread(
        tread_travel=travel, contact_angle=angle, effective_spread=spread, free_radius=free_radius
    )
    return play_result(results, float(play))


def noise_result(results: Results, speed: float | NDArray[np.float64]) -> DefectFrequencies:
    """Return the defect frequencies at a road speed, or at many; raises `MissingDataError` for an unknown row."""
    bearing = results.setup.bearing
    count, diameter = bearing.elements_per_row, bearing.element_diameter
    pitch, angle = bearing.pitch_diameter, bearing.contact_angle
    if count is None or diameter is None or pitch is None or angle is None:
        parts = {"rollers_per_row": count, "roller_diameter": diameter, "pitch_diameter": pitch, "contact_angle": angle}
        missing = [f"bearing.{name}" for name, value in parts.items() if value is None]
        raise MissingDataError(result="the defect frequencies", missing=missing)
    turns = wheel_frequency(speed=speed, rolling_circumference=results.wheel_geometry.rolling_circumference)
    return defect_frequencies(
        wheel_frequency=turns,
        elements_per_row=count,
        element_diameter=diameter,
        pitch_diameter=pitch,
        contact_angle=angle,
        turning_ring=bearing.turning_ring,
    )


def _rows(results: Results, what: str) -> tuple[float, float]:
    angle, spread = results.setup.bearing.contact_angle, results.bearing.effective_spread
    if angle is None or spread is None:
        missing = [key for key in _SPREAD if getattr(results.setup.bearing, key.split(".")[1]) is None]
        raise MissingDataError(result=what, missing=missing)
    return angle, spread
