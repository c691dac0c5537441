"""Ratings and effective spread of a setup's bearing; a catalogue's ratings win over computed ones."""

from hubwright.mechanics.bearing_rating import effective_spread
from hubwright.results.model import BearingResult
from hubwright.setup.model import BallBearing, TaperedPair


def bearing_result(bearing: BallBearing | TaperedPair) -> BearingResult:
    """Return ratings and effective spread, None where the file does not say enough."""
    spread = None
    if None not in (bearing.row_spacing, bearing.pitch_diameter, bearing.contact_angle):
        spread = float(
            effective_spread(
                row_spacing=bearing.row_spacing,
                pitch_diameter=bearing.pitch_diameter,
                contact_angle=bearing.contact_angle,
            )
        )
    return BearingResult(bearing.dynamic_rating, bearing.static_rating, spread)
