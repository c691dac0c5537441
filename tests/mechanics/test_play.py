"""Play: the closed form against the bearing model with clearance, and there and back."""

import numpy as np
import pytest
from hypothesis import given
from mechanics_strategies import between

from hubwright.mechanics.bearing_rating import effective_spread
from hubwright.mechanics.bearing_rows import BallRows, RollerRows
from hubwright.mechanics.play import (
    end_play,
    end_play_from_tread,
    radial_play,
    rocking_angle,
    tread_travel,
)
from hubwright.mechanics.two_row_bearing import row_loads

CLEARANCE = 5e-6
# an even number of elements: one stands straight up and one straight down
BEARINGS = {
    "balls": BallRows(
        14, 0.0127, pitch_diameter=0.062, contact_angle=np.radians(35), row_spacing=0.024, preload=-CLEARANCE
    ),
    "rollers": RollerRows(
        16, 0.008, 0.012, pitch_diameter=0.055, contact_angle=np.radians(18), row_spacing=0.030, preload=-CLEARANCE
    ),
}


def moved(rows, **load):
    """Return the displacement under a load of a finger's weight."""
    nothing = dict.fromkeys(("force_x", "force_y", "force_z", "moment_x", "moment_z"), 0.0)
    return row_loads(rows, **{**nothing, **load}).displacement


@pytest.mark.parametrize("rows", BEARINGS.values(), ids=BEARINGS.keys())
def test_two_small_opposite_moments_rock_the_model_as_far_as_the_closed_form(rows):
    spread = effective_spread(
        row_spacing=rows.row_spacing, pitch_diameter=rows.pitch_diameter, contact_angle=rows.contact_angle
    )
    rocking = rocking_angle(
        end_play=end_play(preload=rows.preload), contact_angle=rows.contact_angle, effective_spread=spread
    )
    left, right = (moved(rows, moment_x=way * 1e-3)[3] for way in (1, -1))
    # of balls the contact angle changes a little within the clearance: 5 µm on a groove distance of half a mm
    assert left == pytest.approx(rocking, rel=0.02)
    assert right == pytest.approx(-rocking, rel=0.02)


@pytest.mark.parametrize("rows", BEARINGS.values(), ids=BEARINGS.keys())
def test_two_small_opposite_thrusts_move_the_model_by_the_end_play(rows):
    out, back = (moved(rows, force_y=way * 0.1)[1] for way in (1, -1))
    assert out - back == pytest.approx(end_play(preload=rows.preload), rel=0.02)


@pytest.mark.parametrize("rows", BEARINGS.values(), ids=BEARINGS.keys())
def test_two_small_opposite_forces_move_the_model_by_the_radial_play(rows):
    up, down = (moved(rows, force_z=way * 0.1)[2] for way in (1, -1))
    play = radial_play(end_play=end_play(preload=rows.preload), contact_angle=rows.contact_angle)
    assert up - down == pytest.approx(play, rel=0.02)


@given(between(0, 1e-3), between(0.2, 0.8), between(0.03, 0.1), between(0.25, 0.5))
def test_there_and_back(play, angle, spread, radius):
    lever = {"contact_angle": angle, "effective_spread": spread, "free_radius": radius}
    travel = tread_travel(end_play=play, **lever)
    assert end_play_from_tread(tread_travel=travel, **lever) == pytest.approx(play, abs=1e-15)


def test_a_preloaded_bearing_has_none():
    assert end_play(preload=10e-6) == 0
