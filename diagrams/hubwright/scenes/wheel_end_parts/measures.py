"""The dimensions in millimetres from which every part of a wheel end is drawn, taken from solved results.

What the data leave open (bolt circle, thicknesses) is a proportion of what they give; such sizes carry no number
in the figure.
"""

from dataclasses import dataclass
from math import tan

from hubwright.results.model import Results
from hubwright.setup.model import BallBearing, TaperedPair

_MM = 1e3


@dataclass(frozen=True)
class BearingMeasures:
    """The two rows in section; `schematic` when sizes had to be assumed."""

    kind: str  # "two-row ball" or "tapered pair"
    outer_turns: bool
    pitch: float  # diameter
    element: float  # diameter of ball or roller (mean)
    roller_length: float
    angle: float  # rad
    row_spacing: float
    inner_conformity: float
    outer_conformity: float
    bore: float
    outside: float
    schematic: bool

    @property
    def apex(self) -> float:
        """Where the contact lines of the outboard row meet the axis: half the effective spread."""
        return self.row_spacing / 2 + self.pitch / 2 * tan(self.angle)


@dataclass(frozen=True)
class Measures:
    """Everything that shapes the section of one wheel end."""

    section_width: float
    section_height: float
    rim_radius: float
    rim_half_width: float
    deflection: float
    load_line: float
    offset: float
    spacer: float
    face: float
    bolt_radius: float
    stud_radius: float
    disc_radius: float | None  # brake disc; None without one
    disc_plane: float | None  # its middle outboard of the bearing centre, where the data say
    driven: bool  # a drive shaft comes through the hub
    bearing: BearingMeasures

    @property
    def free_radius(self) -> float:
        """Radius of the unloaded tire."""
        return self.rim_radius + self.section_height

    @property
    def loaded_radius(self) -> float:
        """Height of the axle above the road."""
        return self.free_radius - self.deflection

    @property
    def wheel_face(self) -> float:
        """Mounting face of the wheel: that of the hub, or of the spacer on it."""
        return self.face + self.spacer


def measures(results: Results, *, hanging: bool = False) -> Measures:
    """Return the section's dimensions; a hanging wheel's tire is drawn unloaded."""
    setup, geometry = results.setup, results.wheel_geometry
    rim_radius = geometry.rim_diameter / 2 * _MM
    joint, brake = setup.joint, setup.brake
    bolt = joint.stud_circle / 2 * _MM if joint else 0.332 * rim_radius
    # a disc needs an air gap to the rim and a hat inside it: small trailer wheels have no room for one
    has_disc = setup.kind == "vehicle" or brake is not None
    return Measures(
        section_width=geometry.section_width * _MM,
        section_height=geometry.section_height * _MM,
        rim_radius=rim_radius,
        rim_half_width=geometry.rim_width / 2 * _MM,
        deflection=0.0 if hanging else (geometry.free_diameter / 2 - geometry.loaded_radius) * _MM,
        load_line=geometry.load_line_offset * _MM,
        offset=geometry.offset * _MM,
        spacer=setup.wheel.spacer * _MM,
        face=setup.hub.face_to_bearing_centre * _MM,
        bolt_radius=bolt,
        stud_radius=joint.thread.diameter / 2 * _MM if joint else min(6.5, 0.05 * rim_radius),
        disc_radius=_disc_radius(rim_radius, brake.effective_radius * _MM if brake else None) if has_disc else None,
        disc_plane=brake.disc_to_bearing_centre * _MM if brake else None,
        driven=setup.kind == "vehicle",
        bearing=bearing_measures(setup.bearing),
    )


def _disc_radius(rim_radius: float, effective: float | None) -> float:
    largest = rim_radius - 62.0
    return largest if effective is None else min(effective + 22.0, largest)


def bearing_measures(bearing: BallBearing | TaperedPair) -> BearingMeasures:
    """Return the bearing's sizes; those that a tapered pair leaves out are assumed and mark it schematic."""
    if isinstance(bearing, BallBearing):
        D, P = bearing.ball_diameter * _MM, bearing.pitch_diameter * _MM
        bore, outside = bearing.bore * _MM, bearing.outside_diameter * _MM
        return BearingMeasures(
            kind="two-row ball",
            outer_turns=bearing.turning_ring == "outer",
            pitch=P,
            element=D,
            roller_length=D,
            angle=bearing.contact_angle,
            row_spacing=bearing.row_spacing * _MM,
            inner_conformity=bearing.inner_conformity,
            outer_conformity=bearing.outer_conformity,
            # listed rings may belong to other balls: they are drawn only where they hold these
            bore=bore if P - 2.3 * D < bore < P - 1.3 * D else P - 1.60 * D,
            outside=outside if P + 1.3 * D < outside < P + 2.3 * D else P + 1.62 * D,
            schematic=False,
        )
    return _tapered(bearing)


def _tapered(bearing: TaperedPair) -> BearingMeasures:
    given = (bearing.pitch_diameter, bearing.roller_diameter, bearing.roller_length)
    known = (*given, bearing.contact_angle, bearing.row_spacing)
    if bearing.pitch_diameter:
        P = bearing.pitch_diameter * _MM
    elif bearing.bore and bearing.outside_diameter:
        P = (bearing.bore + bearing.outside_diameter) / 2 * _MM
    else:
        P = (bearing.bore or 0.040) * _MM + 22.0
    D = bearing.roller_diameter * _MM if bearing.roller_diameter else 0.15 * P
    length = bearing.roller_length * _MM if bearing.roller_length else 1.5 * D
    angle = bearing.contact_angle or 0.26
    rows = bearing.row_spacing * _MM if bearing.row_spacing else 1.7 * length
    bore = (bearing.bore or 0.0) * _MM
    outside = (bearing.outside_diameter or 0.0) * _MM
    # the rings must still have flesh where the roller reaches deepest
    lean = length * angle
    return BearingMeasures(
        kind="tapered pair",
        outer_turns=bearing.turning_ring == "outer",
        pitch=P,
        element=D,
        roller_length=length,
        angle=angle,
        row_spacing=rows,
        inner_conformity=0.0,
        outer_conformity=0.0,
        bore=bore if 0 < bore < P - D - lean - 3 else P - D - lean - 8,
        outside=outside if outside > P + D + lean + 3 else P + D + lean + 8,
        schematic=any(value is None for value in known),
    )
