"""Ratings and effective spread of a setup's bearing; a catalogue's ratings win over computed ones."""

from dataclasses import dataclass

from hubwright.mechanics.ball_rating import ball_dynamic_rating, ball_static_rating, closer_than_the_standard
from hubwright.mechanics.bearing_rating import effective_spread
from hubwright.mechanics.constants import Value
from hubwright.mechanics.roller_rating import roller_dynamic_rating, roller_static_rating
from hubwright.results.model import BearingResult
from hubwright.setup.model import BallBearing, TaperedPair

_ROWS = 2.0
_GEOMETRY = ("pitch_diameter", "contact_angle", "row_spacing")
_ROLLERS = ("rollers_per_row", "roller_diameter", "roller_length")


@dataclass(frozen=True)
class BearingValues:
    """Ratings of the whole bearing [N] and effective spread [m]: numbers or arrays, None where not known."""

    dynamic_rating: Value | None
    static_rating: Value | None
    effective_spread: Value | None


def bearing_values(bearing: BallBearing | TaperedPair) -> BearingValues:
    """Return ratings and effective spread of a bearing whose dimensions may be arrays."""
    dynamic, static = _ball_ratings(bearing) if isinstance(bearing, BallBearing) else _roller_ratings(bearing)
    return BearingValues(
        dynamic_rating=dynamic if bearing.dynamic_rating is None else bearing.dynamic_rating,
        static_rating=static if bearing.static_rating is None else bearing.static_rating,
        effective_spread=_spread(bearing),
    )


def bearing_result(bearing: BallBearing | TaperedPair) -> BearingResult:
    """Return ratings and effective spread, None where the file does not say enough."""
    values = bearing_values(bearing)
    return BearingResult(
        *(
            None if value is None else float(value)
            for value in (values.dynamic_rating, values.static_rating, values.effective_spread)
        )
    )


def rating_remark(bearing: BallBearing | TaperedPair) -> str:
    """Return that a computed rating is above what the standard grants; empty where it is not, or was given."""
    if not isinstance(bearing, BallBearing) or bearing.dynamic_rating is not None:
        return ""
    if not closer_than_the_standard(
        inner_conformity=bearing.inner_conformity, outer_conformity=bearing.outer_conformity
    ):
        return ""
    return "Grooves closer than 0.52 of the ball's diameter: the computed rating is higher than ISO 281 grants."


def missing_dimensions(bearing: BallBearing | TaperedPair) -> tuple[str, ...]:
    """Return the dotted keys without which a bearing's rows cannot be computed; a ball bearing lacks none."""
    names = (*_ROLLERS, *_GEOMETRY) if isinstance(bearing, TaperedPair) else ()
    return tuple(f"bearing.{name}" for name in names if getattr(bearing, name) is None)


def _spread(bearing: BallBearing | TaperedPair) -> Value | None:
    row_spacing, pitch, angle = bearing.row_spacing, bearing.pitch_diameter, bearing.contact_angle
    if row_spacing is None or pitch is None or angle is None:
        return None
    return effective_spread(row_spacing=row_spacing, pitch_diameter=pitch, contact_angle=angle)


def _ball_ratings(bearing: BallBearing) -> tuple[Value, Value]:
    dynamic = ball_dynamic_rating(
        rows=_ROWS,
        balls_per_row=bearing.balls_per_row,
        ball_diameter=bearing.ball_diameter,
        pitch_diameter=bearing.pitch_diameter,
        contact_angle=bearing.contact_angle,
        inner_conformity=bearing.inner_conformity,
        outer_conformity=bearing.outer_conformity,
    )
    static = ball_static_rating(
        rows=_ROWS,
        balls_per_row=bearing.balls_per_row,
        ball_diameter=bearing.ball_diameter,
        pitch_diameter=bearing.pitch_diameter,
        contact_angle=bearing.contact_angle,
    )
    return dynamic, static


def _roller_ratings(bearing: TaperedPair) -> tuple[Value | None, Value | None]:
    number, diameter, length = bearing.rollers_per_row, bearing.roller_diameter, bearing.roller_length
    pitch, angle = bearing.pitch_diameter, bearing.contact_angle
    if number is None or diameter is None or length is None or pitch is None or angle is None:
        return None, None
    dynamic = roller_dynamic_rating(
        rows=_ROWS,
        rollers_per_row=number,
        roller_diameter=diameter,
        roller_length=length,
        pitch_diameter=pitch,
        contact_angle=angle,
    )
    static = roller_static_rating(
        rows=_ROWS,
        rollers_per_row=number,
        roller_diameter=diameter,
        roller_length=length,
        pitch_diameter=pitch,
        contact_angle=angle,
    )
    return dynamic, static
