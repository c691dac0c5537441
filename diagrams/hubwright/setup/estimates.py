"""What is taken for values that owners do not have, each with its range.

Values and ranges are engineering judgement (common practice, no source), to be widened when in
doubt. SI units throughout.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from hubwright.mechanics import tire_geometry
from hubwright.mechanics.constants import INCH, STANDARD_GRAVITY
from hubwright.setup.model import Input

RATING_RANGE = 0.20  # of ratings computed from geometry, either way
STIFFNESS_RANGE = 0.25  # of a tire stiffness found from the loaded radius
RIDE_FREQUENCY = (1.3, 1.0, 1.6)  # Hz: value, low, high
DAMPING_RATIO = (0.3, 0.2, 0.4)
UNSPRUNG_SHARE = (0.10, 0.07, 0.13)  # of the corner
BUMP_STOP_OVER_WHEEL_RATE = (8.0, 5.6, 10.4)


@dataclass(frozen=True, slots=True)
class Estimate:
    """A value with its range and how it came about."""

    value: float
    low: float | None
    high: float | None
    note: str

    def as_input(self, unit: str) -> Input:
        """Return it as an estimated input."""
        return Input(self.value, unit, self.low, self.high, "estimated", self.note)


def _spread(value: float, share: float, note: str) -> Estimate:
    return Estimate(value, value * (1 - share), value * (1 + share), note)


FRONT_SHARE = Estimate(0.55, 0.47, 0.63, "usual share of the front axle")
FRONT_ROLL_SHARE = Estimate(0.55, 0.45, 0.65, "usual share of the front axle")
FACE_TO_BEARING_CENTRE = Estimate(0.042, 0.034, 0.050, "usual hub unit")
ROTATING_MASS = Estimate(13.0, 9.0, 17.0, "usual hub flange and disc")
WHEEL_MASS = Estimate(9.0, 6.0, 12.0, "usual wheel")
TRAVEL = Estimate(0.080, 0.056, 0.104, "usual travel")
CONTACT_ANGLE = Estimate(math.radians(35), math.radians(30), math.radians(40), "usual two-row ball bearing")
CONFORMITY = Estimate(0.52, None, None, "usual groove")
PRELOAD = Estimate(0.0, -15e-6, 15e-6, "neither preload nor clearance")
USUAL_BORE, USUAL_OUTSIDE_DIAMETER, USUAL_WIDTH = 0.042, 0.082, 0.040  # of a two-row ball hub bearing


def centre_of_mass_height(*, overall_height: float | None) -> Estimate:
    """Return the height of the centre of mass from the roof's height, else a usual one."""
    if overall_height is None:
        return _spread(0.65, 0.15, "usual height")
    return _spread(0.39 * overall_height, 0.10, "0.39 × overall height")


def height_from_stability_figure(*, track: float, static_stability_figure: float) -> float:
    """Return h = t/(2 SSF) [m], the definition of the figure turned round."""
    return track / (2 * static_stability_figure)


def tire_mass(*, free_diameter: float, rim_diameter: float, section_width: float) -> Estimate:
    """Return the mass of a tire from its dimensions."""
    value = tire_geometry.tire_mass_estimate(
        free_diameter=free_diameter, rim_diameter=rim_diameter, section_width=section_width
    )
    return _spread(float(value), 0.20, "200 kg/m³ of the ring between rim and tread")


def rim_diameter(*, free_diameter: float, section_width: float) -> Estimate:
    """Return the rim's diameter of a tire of which only diameter and width were measured."""
    inches = max(round((free_diameter - 1.5 * section_width) / INCH), 4)
    value = min(inches * INCH, free_diameter * 0.8)
    return Estimate(value, value - INCH, value + INCH, "free diameter − 1.5 × section width, to the inch")


def ball_diameter(*, bore: float, outside_diameter: float) -> Estimate:
    """Return the ball diameter from the bearing's bore and outside diameter."""
    return _spread(0.31 * (outside_diameter - bore), 0.06, "0.31 × (outside diameter − bore)")


def pitch_diameter(*, bore: float, outside_diameter: float) -> Estimate:
    """Return the pitch diameter from the bearing's bore and outside diameter."""
    return Estimate((outside_diameter + bore) / 2, None, None, "(outside diameter + bore)/2")


def row_spacing(*, width: float, ball_diameter: float) -> Estimate:
    """Return the distance of the rows from the bearing's width."""
    value = width - 1.24 * ball_diameter
    return Estimate(value, value - 0.004, value + 0.004, "width − 1.24 × ball diameter")


def balls_per_row(*, pitch_diameter: float, ball_diameter: float) -> Estimate:
    """Return how many balls a cage spaces on the pitch circle."""
    number = math.floor(math.pi * pitch_diameter / (1.18 * ball_diameter))
    return Estimate(number, number - 1, number + 1, "as many as a cage spaces on the pitch circle")


def most_balls(*, pitch_diameter: float, ball_diameter: float) -> int:
    """Return the most balls or rollers that touch one another round the pitch circle without overlap."""
    if ball_diameter >= pitch_diameter:
        return 1
    return math.floor(math.pi / math.asin(ball_diameter / pitch_diameter) + 1e-9)


def late_estimates(
    *,
    standing_load: float,
    free_diameter: float,
    loaded_radius: float | None,
    vertical_stiffness: float | None,
    wheel_rate: float | None,
    bump_damping: float | None,
    rebound_damping: float | None,
    bump_stop_stiffness: float | None,
    unsprung_mass: float | None,
    corner_mass_change: float = 0.0,
    unsprung_mass_as_it_stands: bool = False,
) -> dict[str, Input]:
    """Return the inputs that can only be estimated once a wheel's standing load is known.

    Pass the values of `Setup.tire` and `Setup.suspension`; what is None is estimated, what is given
    comes back not at all. The caller puts them into the setup with `variants.with_inputs`.

    Parameters
    ----------
    standing_load
        F₀, contact force of the wheel described, standing, everything on board [N].
    free_diameter
        Of the tire [m].
    loaded_radius, vertical_stiffness
        Of the tire, None where not given [m], [N/m].
    wheel_rate, bump_damping, rebound_damping, bump_stop_stiffness, unsprung_mass
        Of the suspension, None where not given [N/m], [N·s/m], [N·s/m], [N/m], [kg].
    corner_mass_change
        `Setup.corner_mass_change`: joins the unsprung mass [kg].
    unsprung_mass_as_it_stands
        Whether that change is in the unsprung mass already.

    Returns
    -------
    dict[str, Input]
        By dotted key ("tire.vertical_stiffness", "suspension.wheel_rate", …), origin "estimated".
        "tire.loaded_radius" is there only where neither radius nor stiffness was given. The unsprung
        mass is that before `corner_mass_change`, as a file would give it.

    Notes
    -----
    The ranges of wheel rate and damping follow ride frequency and damping ratio at the estimated
    sprung mass. Rebound is twice bump, their mean has the damping ratio stated.

    Examples
    --------
    >>> late = late_estimates(
    ...     standing_load=4903.325, free_diameter=0.8, loaded_radius=None, vertical_stiffness=None,
    ...     wheel_rate=30e3, bump_damping=1500.0, rebound_damping=3000.0, bump_stop_stiffness=None, unsprung_mass=None)
    >>> {key: round(value.value, 3) for key, value in late.items()}  # 500 kg on the wheel
    {'tire.loaded_radius': 0.372, 'tire.vertical_stiffness': 175118.75, \
'suspension.unsprung_mass': 50.0, 'suspension.bump_stop_stiffness': 240000.0}
    """
    late: dict[str, Input] = {}

    def estimate(key: str, unit: str, values: tuple[float, float, float], note: str) -> float:
        value, low, high = values
        late[key] = Input(value, unit, low, high, "estimated", note)
        return value

    free_radius = free_diameter / 2
    if vertical_stiffness is None:
        radius = loaded_radius
        if radius is None:
            radius = float(tire_geometry.usual_loaded_radius(free_radius=free_radius))
            give = free_radius - radius
            ends = (free_radius - give / (1 - STIFFNESS_RANGE), free_radius - give / (1 + STIFFNESS_RANGE))
            estimate("tire.loaded_radius", "m", (radius, *ends), "0.93 × free radius")
        if radius < free_radius:
            stiffness = float(
                tire_geometry.vertical_stiffness(
                    free_radius=free_radius, loaded_radius=radius, standing_load=standing_load
                )
            )
            ends = (stiffness * (1 - STIFFNESS_RANGE), stiffness * (1 + STIFFNESS_RANGE))
            estimate("tire.vertical_stiffness", "N/m", (stiffness, *ends), "standing load over free less loaded radius")
    corner = standing_load / STANDARD_GRAVITY
    if unsprung_mass is None:
        before = corner - corner_mass_change
        value, low, high = (before * share for share in UNSPRUNG_SHARE)
        unsprung_mass = estimate("suspension.unsprung_mass", "kg", (value, low, high), "10 % of the corner")
    sprung = corner - unsprung_mass - (0.0 if unsprung_mass_as_it_stands else corner_mass_change)
    if sprung <= 0:
        return late  # the drop itself refuses this, by name
    if wheel_rate is None:
        value, low, high = (sprung * (2 * math.pi * frequency) ** 2 for frequency in RIDE_FREQUENCY)
        wheel_rate = estimate("suspension.wheel_rate", "N/m", (value, low, high), "ride frequency 1.3 Hz")
    mean, low, high = (2 * ratio * math.sqrt(wheel_rate * sprung) for ratio in DAMPING_RATIO)
    if bump_damping is None:
        scale = 2 / 3 if rebound_damping is None else rebound_damping / 2 / mean
        note = "damping ratio 0.3, rebound twice bump" if rebound_damping is None else "half the rebound damping"
        bump_damping = estimate("suspension.bump_damping", "N*s/m", (mean * scale, low * scale, high * scale), note)
    if rebound_damping is None:
        ends = (2 * bump_damping * low / mean, 2 * bump_damping * high / mean)
        estimate("suspension.rebound_damping", "N*s/m", (2 * bump_damping, *ends), "twice the bump damping")
    if bump_stop_stiffness is None:
        value, low, high = (wheel_rate * factor for factor in BUMP_STOP_OVER_WHEEL_RATE)
        estimate("suspension.bump_stop_stiffness", "N/m", (value, low, high), "8 × wheel rate")
    return late
