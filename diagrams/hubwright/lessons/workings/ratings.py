"""Workings of a bearing's ratings from its geometry; a catalogue's rating in the file stands as it is given."""

from collections.abc import Callable, Mapping

from hubwright.errors import MissingDataError
from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.ball_rating import LARGE_BALL, ball_rating_factor, ball_static_factor
from hubwright.mechanics.ball_rating import MATERIAL_FACTOR as BALL_MATERIAL
from hubwright.mechanics.bearing_rating import gamma
from hubwright.mechanics.roller_rating import MATERIAL_FACTOR as ROLLER_MATERIAL
from hubwright.mechanics.roller_rating import roller_rating_factor
from hubwright.quantities import Quantity
from hubwright.results import Results
from hubwright.results.bearings import missing_dimensions
from hubwright.setup.model import BallBearing, TaperedPair

_AS_PRINTED = "The standard's factors hold for newtons and millimetres."
_N, _MM = "N as printed", "mm as printed"


def dynamic_rating(results: Results) -> Working:
    """Return how the dynamic rating of both rows together follows from their geometry."""
    bearing, found = results.setup.bearing, results.bearing.dynamic_rating
    if found is None:
        raise MissingDataError(result="the dynamic rating", missing=missing_dimensions(bearing))
    rating = Symbol("C", "dynamic rating of the whole bearing, two rows", Quantity(found, "N"), _N)
    if bearing.dynamic_rating is not None:
        return _given("Dynamic rating", "C", rating)
    if isinstance(bearing, BallBearing):
        power, large = (1.4, 3.647) if bearing.ball_diameter > LARGE_BALL else (1.8, 1.0)
        factor = large * float(
            ball_rating_factor(
                gamma=_gamma(bearing),
                inner_conformity=bearing.inner_conformity,
                outer_conformity=bearing.outer_conformity,
            )
        )
        return Working(
            what="Dynamic rating",
            lines=(Line("C", f"b*f*(2*cos(a))**0.7*Z**(2/3)*D**{power}"),),
            symbols={
                "C": rating,
                "b": Symbol(r"b_\mathrm{m}", "factor of today's steel", Quantity(BALL_MATERIAL, "1")),
                "f": Symbol(
                    r"f_\mathrm{c}", "factor of the bearing's proportions",
                    Quantity(factor * 1e3**power, f"N/m^{power}"),
                ),
                **_balls(bearing),
            },
            source=f"ISO 281, two rows. {_AS_PRINTED}",
            function="ball_rating.ball_dynamic_rating",
        )  # fmt: skip
    assert bearing.roller_diameter is not None  # a rating has been computed from it
    factor = float(roller_rating_factor(gamma=_gamma(bearing))) * 1e3 ** (50 / 27)
    return Working(
        what="Dynamic rating",
        lines=(Line("C", "b*f*(2*L*cos(a))**(7/9)*Z**(3/4)*D**(29/27)"),),
        symbols={
            "C": rating,
            "b": Symbol(r"b_\mathrm{m}", "factor of today's steel", Quantity(ROLLER_MATERIAL, "1")),
            "f": Symbol(r"f_\mathrm{c}", "factor of the bearing's proportions", Quantity(factor, "N/m^(50/27)")),
            **_rollers(bearing),
        },
        source=f"ISO 281, two rows. {_AS_PRINTED}",
        function="roller_rating.roller_dynamic_rating",
    )


def static_rating(results: Results) -> Working:
    """Return how the static rating follows from the pressure at which a raceway takes a dent."""
    bearing, found = results.setup.bearing, results.bearing.static_rating
    if found is None:
        raise MissingDataError(result="the static rating", missing=missing_dimensions(bearing))
    rating = Symbol("C_0", "static rating of the whole bearing, two rows", Quantity(found, "N"), _N)
    if bearing.static_rating is not None:
        return _given("Static rating", "C_0", rating)
    if isinstance(bearing, BallBearing):
        factor = float(ball_static_factor(gamma=_gamma(bearing)))
        return Working(
            what="Static rating",
            lines=(Line("C_0", "f*2*Z*D**2*cos(a)"),),
            symbols={
                "C_0": rating,
                "f": Symbol("f_0", "factor of the bearing's proportions", Quantity(factor * 1e6, "Pa"), "MPa"),
                **_balls(bearing),
            },
            source=f"ISO 76: 4200 MPa under the most loaded ball. {_AS_PRINTED}",
            function="ball_rating.ball_static_rating",
        )
    return Working(
        what="Static rating",
        lines=(Line("g", "D*cos(a)/d"), Line("C_0", "f*(1 - g)*2*Z*L*D*cos(a)")),
        symbols={
            "C_0": rating,
            "f": Symbol("f_0", "factor of ISO 76 for rollers", Quantity(44e6, "Pa"), "MPa"),
            "g": Symbol(r"\gamma", "element over pitch diameter, along the slant", Quantity(_gamma(bearing), "1")),
            "d": Symbol(r"D_\mathrm{pw}", "pitch diameter", Quantity(bearing.pitch_diameter or 0.0, "m"), _MM),
            **_rollers(bearing),
        },
        source=f"ISO 76: 4000 MPa under the most loaded roller. {_AS_PRINTED}",
        function="roller_rating.roller_static_rating",
    )


def _given(what: str, name: str, rating: Symbol) -> Working:
    given = Symbol(rf"{name}{{}}'", "as the file gives it, from a catalogue", rating.value, _N)
    return Working(what, (Line("C", "G"),), {"C": rating, "G": given}, "A catalogue's rating wins over a computed one.")


def _balls(bearing: BallBearing) -> dict[str, Symbol]:
    return {
        "a": Symbol(r"\alpha", "contact angle", Quantity(bearing.contact_angle, "rad")),
        "Z": Symbol("Z", "balls in a row", Quantity(bearing.balls_per_row, "1")),
        "D": Symbol("D", "diameter of a ball", Quantity(bearing.ball_diameter, "m"), _MM),
    }


def _rollers(bearing: TaperedPair) -> dict[str, Symbol]:
    angle, count = bearing.contact_angle, bearing.rollers_per_row
    diameter, length = bearing.roller_diameter, bearing.roller_length
    assert angle is not None  # a rating has been computed from them
    assert count is not None
    assert diameter is not None
    assert length is not None
    return {
        "a": Symbol(r"\alpha", "contact angle", Quantity(angle, "rad")),
        "Z": Symbol("Z", "rollers in a row", Quantity(count, "1")),
        "D": Symbol("D", "diameter of a roller, mean", Quantity(diameter, "m"), _MM),
        "L": Symbol("L", "length of a roller that bears", Quantity(length, "m"), _MM),
    }


def _gamma(bearing: BallBearing | TaperedPair) -> float:
    element = bearing.ball_diameter if isinstance(bearing, BallBearing) else bearing.roller_diameter
    pitch, angle = bearing.pitch_diameter, bearing.contact_angle
    assert element is not None  # a rating has been computed from them
    assert pitch is not None
    assert angle is not None
    return float(gamma(element_diameter=element, pitch_diameter=pitch, contact_angle=angle))


SETUP_WORKINGS: Mapping[str, Callable[[Results], Working]] = {
    "bearing.dynamic_rating": dynamic_rating,
    "bearing.static_rating": static_rating,
}
