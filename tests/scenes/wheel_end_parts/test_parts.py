"""Outlines of the parts of a wheel end: they fit together and their geometry is that of the data."""

from dataclasses import replace
from itertools import combinations
from math import cos, radians, sin, tan

import numpy as np
import pytest
from matplotlib.path import Path

from hubwright.scenes.wheel_end_parts.assembly import Assembly, Piece, assembly
from hubwright.scenes.wheel_end_parts.bearing import bearing_section
from hubwright.scenes.wheel_end_parts.measures import BearingMeasures, Measures
from hubwright.scenes.wheel_end_parts.outlines import rounded, thickened
from hubwright.scenes.wheel_end_parts.roller_row import roller_axis

# sizes in millimetres; the numbers are the example of the file format, the rest is invented
BALLS = BearingMeasures("two-row ball", False, 62, 12.7, 12.7, radians(35), 24, 0.52, 0.52, 41.7, 82.6, False)
ROLLERS = replace(
    BALLS, kind="tapered pair", pitch=65, element=10.5, roller_length=17, angle=radians(16), row_spacing=32, bore=40,
    outside=90,
)  # fmt: skip
STOCK = Measures(
    section_width=245, section_height=183.75, rim_radius=203.2, rim_half_width=88.9, deflection=21, load_line=12,
    offset=30, spacer=0, face=42, bolt_radius=67.5, stud_radius=6.5, disc_radius=141, disc_plane=None, driven=True,
    bearing=BALLS,
)  # fmt: skip


def changed(**values: object) -> Measures:
    """Return the stock wheel end with other sizes, its load line following from them."""
    m = replace(STOCK, **values)  # type: ignore[arg-type]
    return replace(m, load_line=m.face + m.spacer - m.offset)


WHEEL_ENDS = {
    "stock": STOCK,
    "thin spacer": changed(spacer=5),
    "thick spacer": changed(spacer=25),
    "deep spacer, wheel far out": changed(spacer=50, offset=-50),
    "wheel far in": changed(offset=60),
    "face beside the bearing": changed(face=15),
    "face far out": changed(face=80),
    "tapered": changed(bearing=ROLLERS),
    "stub axle": changed(bearing=replace(ROLLERS, outer_turns=True)),
    "stub axle with balls, face far in": changed(face=20, bearing=replace(BALLS, outer_turns=True)),
    "large balls": changed(bearing=replace(BALLS, pitch=80, element=19, row_spacing=34, bore=50, outside=111)),
    "small trailer": changed(
        section_width=145, section_height=116, rim_radius=165.1, rim_half_width=50.8, face=30, offset=10,
        bolt_radius=50, stud_radius=6, disc_radius=None, driven=False,
        bearing=replace(ROLLERS, outer_turns=True, pitch=45, bore=30, outside=59, element=8, roller_length=12),
    ),
    "low wide tire": changed(
        section_width=305, section_height=91, rim_radius=279, rim_half_width=127, deflection=10, offset=45,
        bolt_radius=92, disc_radius=217,
    ),
}  # fmt: skip

# a stud goes through flange, hat, spacer and disc, a wheel nut's cone lies in the disc; the rest is painted behind
PASSES = {"studs", "wheel-nuts", "tire-beyond", "tire-inside", "rim-beyond", "disc-vanes", "bead-wires"}


def covered(piece: Piece, grid: np.ndarray) -> np.ndarray:
    """Return which points of a grid a piece covers, a tenth of a millimetre inside its outline."""
    inside = np.zeros(len(grid), dtype=bool)
    for ring in piece.rings:
        path = Path(np.vstack([ring, ring[:1]]), closed=True)
        inside ^= path.contains_points(grid)
    return inside


def overlaps(parts: Assembly, step: float = 1.0) -> dict[tuple[str, str], float]:
    """Return the areas that two parts share [mm2], upper half only and near the hub or the rim."""
    solid = [piece for piece in parts.pieces if piece.name not in PASSES]
    outline = np.vstack([ring for piece in solid for ring in piece.rings])
    a = np.arange(outline[:, 0].min(), outline[:, 0].max(), step) + 0.137
    r = np.arange(0.0, parts.measures.free_radius, step) + 0.291
    grid = np.array(np.meshgrid(a, r)).reshape(2, -1).T
    cover = {piece.name: covered(piece, grid) for piece in solid}
    return {pair: float(np.count_nonzero(cover[pair[0]] & cover[pair[1]])) * step**2 for pair in combinations(cover, 2)}


@pytest.mark.parametrize("name", WHEEL_ENDS)
def test_no_two_parts_share_room(name: str) -> None:
    shared = overlaps(assembly(WHEEL_ENDS[name]))
    # bead and rim press on one another, the disc is welded to the well, seals bend against their seats:
    # a grid of one millimetre sees a few points of such contacts
    limit = {("tire", "rim"): 40.0, ("wheel-disc", "rim"): 40.0}
    assert {pair: area for pair, area in shared.items() if area > limit.get(pair, 12.0)} == {}


@pytest.mark.parametrize("bearing", [BALLS, ROLLERS, replace(BALLS, angle=radians(45)), replace(ROLLERS, angle=0.2)])
def test_contact_lines_meet_the_axis_at_half_the_effective_spread(bearing: BearingMeasures) -> None:
    section = bearing_section(bearing)
    spread = bearing.row_spacing + bearing.pitch * tan(bearing.angle)
    (outboard, inboard) = (line[1] for line in section.contact_lines)
    assert outboard == pytest.approx((spread / 2, 0.0), abs=1e-9)
    assert inboard == pytest.approx((-spread / 2, 0.0), abs=1e-9)


def test_a_groove_touches_its_ball_only_where_the_contact_line_crosses_it() -> None:
    section = bearing_section(BALLS)
    centre = np.array([BALLS.row_spacing / 2, BALLS.pitch / 2])
    for ring in (*section.inner[:1], *section.outer):
        distance = np.hypot(*(ring - centre).T)
        nearest = ring[distance.argmin()]
        # the outline's points stand about a twentieth of the groove apart, where ball and groove part by micrometres
        assert distance.min() == pytest.approx(BALLS.element / 2, abs=0.02)
        along = (nearest - centre) / distance.min()
        assert abs(along @ np.array([sin(BALLS.angle), -cos(BALLS.angle)])) > cos(radians(6))


def test_raceways_and_roller_axis_of_a_tapered_row_share_one_tip_on_the_axis() -> None:
    axis, taper = roller_axis(pitch=65, roller=10.5, cup_angle=radians(16))
    assert axis + taper == pytest.approx(radians(16))
    # the tip lies where the roller's axis meets the bearing's; there the roller's own half angle must close
    tip = 65 / 2 / sin(axis)
    assert tan(taper) == pytest.approx(10.5 / 2 / tip, rel=1e-9)


def test_tapered_rows_open_outboard() -> None:
    cup = bearing_section(ROLLERS).outer[0]
    inside = cup[cup[:, 1] < ROLLERS.outside / 2 - 1]
    assert inside[inside[:, 0].argmax(), 1] > inside[inside[:, 0].argmin(), 1]


def test_a_spacer_moves_the_wheel_and_leaves_the_hub() -> None:
    plain, spaced = assembly(STOCK), assembly(changed(spacer=25))
    ring = {name: {piece.name: piece for piece in parts.pieces} for name, parts in (("a", plain), ("b", spaced))}
    assert np.array_equal(ring["a"]["hub"].rings[0], ring["b"]["hub"].rings[0])
    assert ring["b"]["tire"].rings[0][:, 0] - ring["a"]["tire"].rings[0][:, 0] == pytest.approx(25.0)


def test_the_tire_has_its_sizes() -> None:
    parts = assembly(STOCK)
    above, below = next(piece for piece in parts.pieces if piece.name == "tire").rings
    assert above[:, 1].max() == pytest.approx(STOCK.free_radius)
    assert below[:, 1].min() == pytest.approx(-STOCK.loaded_radius)
    assert np.ptp(above[:, 0]) == pytest.approx(STOCK.section_width)
    assert (above[:, 0].max() + above[:, 0].min()) / 2 == pytest.approx(STOCK.load_line)


@pytest.mark.parametrize("name", WHEEL_ENDS)
def test_colour_draws_the_cut(name: str) -> None:
    outer_turns = WHEEL_ENDS[name].bearing.outer_turns
    turning = {piece.name: piece.turns for piece in assembly(WHEEL_ENDS[name]).pieces}
    materials = {piece.name: piece.material for piece in assembly(WHEEL_ENDS[name]).pieces}
    assert turning["outer-rings"] is outer_turns
    assert turning["inner-rings"] is not outer_turns
    for part in ("inner-rings", "outer-rings", "knuckle", "hub"):
        assert materials[part].startswith("turning" if turning[part] else "fixed")


def test_a_rim_too_small_for_a_brake_disc_has_none() -> None:
    parts = assembly(changed(rim_radius=127.0, section_height=116, disc_radius=65.0, bolt_radius=42))
    assert "brake-disc" not in {piece.name for piece in parts.pieces}


def test_rounding_keeps_corners_inside_and_thickness_even() -> None:
    square = rounded([(0, 0), (10, 0), (10, 10), (0, 10)], 2, closed=True)
    assert square.min() == pytest.approx(0)
    assert square.max() == pytest.approx(10)
    assert np.hypot(*(square - 0).T).min() == pytest.approx(2 * (2**0.5 - 1), abs=1e-9)
    sheet = thickened(np.column_stack([np.linspace(0, 10, 6), np.zeros(6)]), 3.0)
    assert np.ptp(sheet[:, 1]) == pytest.approx(3.0)
