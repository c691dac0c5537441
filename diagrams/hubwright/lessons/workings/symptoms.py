"""Workings of play and noise: the tread of a raised wheel, and how often a damaged part is struck."""

from collections.abc import Callable, Mapping
from functools import partial
from typing import Literal, get_args

from hubwright.errors import MissingDataError
from hubwright.lessons.symptom_views import Heard, Played
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.bearing_rating import gamma
from hubwright.quantities import Quantity
from hubwright.results.bearings import missing_dimensions

Part = Literal["outer_ring", "inner_ring", "element", "cage"]
_WORDS: Mapping[Part, str] = {
    "outer_ring": "strikes on a mark in the outer ring",
    "inner_ring": "strikes on a mark in the inner ring",
    "element": "strikes of a mark on a rolling element",
    "cage": "turns of the cage",
}


def tread_travel(played: Played) -> Working:
    """Return how an end play becomes a travel at the tread."""
    symbols = _symbols(played)
    return Working(
        what="Travel at the tread",
        lines=(Line("s", "2*R*d*tan(a)/l"),),
        symbols=symbols,
        source="Geometry of the contact lines; small angles. Tire, joints and bushings add theirs.",
        function="play.tread_travel",
    )


def end_play(played: Played) -> Working:
    """Return the end play behind a travel at the tread: the same lever turned round."""
    return Working(
        what="End play behind it",
        lines=(Line("d", "s*l/(2*R*tan(a))"),),
        symbols=_symbols(played),
        source="The same lever turned round. All else that gives is in the travel too: it is the most it can be.",
        function="play.end_play_from_tread",
    )


def radial_play(played: Played) -> Working:
    """Return how far a ring can move across its axis."""
    symbols = _symbols(played)
    return Working(
        what="Radial play at each row",
        lines=(Line("r", "d*tan(a)"),),
        symbols={
            "r": Symbol(
                r"\delta_\mathrm{r}", "radial play", Quantity(played.play.radial_play, "m", kind="deflection"), "mm"
            ),
            **{name: symbols[name] for name in "da"},
        },
        source="Geometry of the contact lines.",
        function="play.radial_play",
    )


def rocking_angle(played: Played) -> Working:
    """Return how far the hub rocks to either side."""
    symbols = _symbols(played)
    return Working(
        what="Rocking to either side",
        lines=(Line("t", "d*tan(a)/l"),),
        symbols={
            "t": Symbol(
                r"\theta", "angle that the hub rocks", Quantity(played.play.rocking_angle, "rad", kind="slope")
            ),
            **{name: symbols[name] for name in "dal"},
        },
        source="Geometry of the contact lines; small angles.",
        function="play.rocking_angle",
    )


def _symbols(played: Played) -> dict[str, Symbol]:
    results, play = played.results, played.play
    angle, spread = results.setup.bearing.contact_angle, results.bearing.effective_spread
    assert angle is not None  # a play has been computed from them
    assert spread is not None
    return {
        "s": Symbol("s", "travel at the tread, pushing and pulling", Quantity(play.tread_travel, "m"), "mm"),
        "d": Symbol(r"\delta", "end play, all the way in and out", Quantity(play.end_play, "m"), "mm"),
        "R": Symbol(
            "R", "radius of the tire, off the ground", Quantity(results.wheel_geometry.free_diameter / 2, "m"), "mm"
        ),
        "a": Symbol(r"\alpha", "contact angle", Quantity(angle, "rad")),
        "l": Symbol(
            r"\ell", "between the two pressure centres", Quantity(spread, "m"), "mm", "bearing.effective_spread"
        ),
    }


def wheel_turns(heard: Heard) -> Working:
    """Return how often a second the wheel turns."""
    return Working(
        what="Turns of the wheel in a second",
        lines=(_TURNS,),
        symbols=_turning(heard),
        source="The wheel rolls without slip.",
        function="bearing_noise.wheel_frequency",
    )


_TURNS = Line("f", "v/U", us="inches_a_second_in_a_mile_an_hour*v/U")


def struck(heard: Heard, part: Part) -> Working:
    """Return how often a second a damaged part is struck."""
    bearing, parts = heard.results.setup.bearing, heard.parts
    count, diameter = bearing.elements_per_row, bearing.element_diameter
    pitch, angle = bearing.pitch_diameter, bearing.contact_angle
    if parts is None or count is None or diameter is None or pitch is None or angle is None:
        raise MissingDataError(result="the defect frequencies", missing=missing_dimensions(bearing))
    γ = float(gamma(element_diameter=diameter, pitch_diameter=pitch, contact_angle=angle))
    cage = "f/2*(1 - g)" if bearing.turning_ring == "inner" else "f/2*(1 + g)"
    expressions: Mapping[Part, str] = {
        "outer_ring": "Z*f/2*(1 - g)",
        "inner_ring": "Z*f/2*(1 + g)",
        "element": "f*D/d*(1 - g**2)",
        "cage": cage,
    }
    return Working(
        what=f"{_WORDS[part].capitalize()} in a second",
        lines=(_TURNS, Line("g", "d*cos(a)/D"), Line("h", expressions[part])),
        symbols={
            **_turning(heard),
            "h": Symbol("h", _WORDS[part], Quantity(float(getattr(parts, part)), "Hz")),
            "g": Symbol(r"\gamma", "element over pitch diameter, along the slant", Quantity(γ, "1")),
            "Z": Symbol("Z", "rolling elements in a row", Quantity(count, "1")),
            "d": Symbol("D", "diameter of a rolling element", Quantity(diameter, "m"), "mm"),
            "D": Symbol(r"D_\mathrm{pw}", "pitch diameter", Quantity(pitch, "m"), "mm"),
            "a": Symbol(r"\alpha", "contact angle", Quantity(angle, "rad")),
        },
        source="Rolling without slip. Every element strikes a mark on a ring; a mark on an element strikes both rings.",
        function="bearing_noise.defect_frequencies",
    )


def _turning(heard: Heard) -> dict[str, Symbol]:
    turn = heard.results.wheel_geometry.rolling_circumference
    return {
        "f": Symbol("f", "turns of the wheel in a second", Quantity(heard.turns, "Hz")),
        "v": Symbol("v", "road speed", Quantity(heard.speed, "m/s")),
        "U": Symbol("U", "distance in one turn of the wheel", Quantity(turn, "m"), path="rolling_circumference"),
    }


PLAY_WORKINGS: Mapping[str, Callable[[Played], Working]] = {
    "tread_travel": tread_travel,
    "end_play": end_play,
    "radial_play": radial_play,
    "rocking_angle": rocking_angle,
}
NOISE_WORKINGS: Mapping[str, Callable[[Heard], Working]] = {
    "wheel": wheel_turns,
    **{part: partial(struck, part=part) for part in get_args(Part)},
}
