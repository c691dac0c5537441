"""What each working leaves out, said beside it wherever it stands or is quoted."""

from collections.abc import Mapping

_BY_CASE: Mapping[str, str] = {
    "standing": "wind, a ground that is not level, and how a parked suspension may bind.",
    "braking": "how springs and dampers let the load move in time; all wheels share one friction.",
    "driving": "how springs and dampers let the load move in time.",
    "cornering": "how springs and dampers let the load move in time; all wheels share one friction.",
    "side_slope": "the give of tires and springs, which moves the weight farther downhill.",
    "two_wheel": "the roll that is left over where the axles' loads differ: the driver's art balances it.",
    "ledge": "the tire that wraps itself round the edge, the wheel's own drive, and what the push moves between axles.",
    "drop": "friction in the suspension, and a rim that strikes through.",
}
_BY_PATH: Mapping[str, str] = {
    "load_line_offset": "camber, and how hub, wheel and tire give under load.",
    "backspacing": "the true width of the rim's flanges.",
    "free_diameter": "growth with speed and pressure, and wear of the tread.",
    "loaded_radius": "pressure, temperature and wear of the tire.",
    "rolling_circumference": "slip, pressure and wear of the tread.",
    "weight.equal_share": "where the weight stands.",
    "weight": "that the vehicle itself may weigh more on one side, and taller tires that lift its weight.",
    "balanced_lateral_g": "load transfer, weights of the turning parts, and camber.",
    "bearing.effective_spread": "how contact angles change under load.",
    "bearing.": "limits that a maker's catalogue may set; factors are those of the standard.",
    "bearing_force": "the wheel's gyroscopic moment, camber, and the patch's shift under the rim.",
    "bearing_moment": "the wheel's gyroscopic moment, camber, and the patch's shift under the rim.",
    "free_body": "camber, and the patch's shift under the rim.",
    "row_load": "the give of spindle and housing, and a preload, which loads both rows.",
    "row_radial_load": "the give of spindle and housing, and a preload, which loads both rows.",
    "beside.row_load": "the give of spindle and housing, and a preload, which loads both rows.",
    "beside.": "dirt, water, dents, slack and bad grease, which usually end a hub sooner.",
    "beam": "the give of rings and housing; the spindle is a slender beam on two points.",
    "life.": "dirt, water, dents, slack and bad grease, which usually end a hub sooner.",
    "play": "tire, joints and bushings, which give as well.",
    "noise": "slip of the elements, and how loud it is.",
    "landing": "the suspension, damping, and a rim that strikes through.",
    "drop": "friction in the suspension, and a rim that strikes through.",
    "ledge": "the tire that wraps itself round the edge, and what the push moves between axles.",
    "footing": "the give of tires and springs, soft ground and motion: a vehicle tips well before.",
    "fastening": "settling, bending of the studs, the seats' own hold, and faces with rust or paint.",
    "ford": "the seal's own lip and spring, and air that finds a way.",
    "steering": "steering that gives, and tires that scrub.",
}


def left_out(path: str, kind: str | None) -> str:
    """Return what the working at a path leaves out, by the kind of its case where the road's push is meant."""
    if path.startswith("contact_force") and kind is not None:
        return _BY_CASE[kind]
    found = [start for start in _BY_PATH if path.startswith(start)]
    return _BY_PATH[max(found, key=len)] if found else ""
