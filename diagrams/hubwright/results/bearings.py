"""Ratings and effective spread of a setup's bearing; a catalogue's ratings win over computed ones."""

from hubwright.mechanics.bearing_rating import effective_spread
from hubwright.results.model import BearingResult
from hubwright.setup.model import BallBearing, TaperedPair


def bearing_result(bearing: BallBearing | TaperedPair) -> BearingResult:
    """Return ratings and effective spread, None where the file does not say enough."""
    spread = None
    row_spacing, pitch, angle = bearing.row_spacing, bearing.pitch_diameter, bearing.contact_angle
    if row_spacing is not None and pitch is not None and angle is not None:
        spread = float(effective_spread(row_spacing=row_spacing, pitch_diameter=pitch, contact_angle=angle))
    return BearingResult(bearing.dynamic_rating, bearing.static_rating, spread)
