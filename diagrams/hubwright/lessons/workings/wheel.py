"""Workings of wheel geometry: load line, backspacing, tire."""

from collections.abc import Callable, Mapping

from hubwright.lessons.workings.model import Line, Symbol, Working
from hubwright.mechanics.tire_geometry import ROLLING_CIRCUMFERENCE_OVER_DIAMETER
from hubwright.quantities import INCH, Quantity
from hubwright.results import Results


def load_line_offset(results: Results) -> Working:
    """Return how the load line's place comes about."""
    setup = results.setup
    return Working(
        what="Load line offset",
        lines=(Line("y_L", "y_f + t - e"),),
        symbols={
            "y_L": Symbol(
                "y_L",
                "load line outboard of the bearing centre",
                _length(results.wheel_geometry.load_line_offset),
                "mm",
            ),
            "y_f": Symbol(
                r"y_\mathrm{f}",
                "mounting face outboard of the bearing centre",
                _length(setup.hub.face_to_bearing_centre),
                "mm",
            ),
            "t": Symbol("t", "thickness of the spacer", _length(setup.wheel.spacer), "mm"),
            "e": Symbol("e", "offset of the wheel", _length(setup.wheel.offset), "mm"),
        },
        source="Geometry of hub and wheel; outboard is positive.",
        function="wheel_geometry.load_line_offset",
    )


def backspacing(results: Results) -> Working:
    """Return how the backspacing comes about."""
    setup = results.setup
    return Working(
        what="Backspacing",
        lines=(Line("s", "(b + f)/2 + e"),),
        symbols={
            "s": Symbol(
                r"s_\mathrm{b}",
                "inner edge of the rim to the mounting face",
                _length(results.wheel_geometry.backspacing),
                "mm",
            ),
            "b": Symbol("b", "rim width between the bead seats", _length(setup.wheel.rim_width), "mm"),
            "f": Symbol(r"b_\mathrm{f}", "two rim flanges together", _length(INCH), "mm"),
            "e": Symbol("e", "offset of the wheel", _length(setup.wheel.offset), "mm"),
        },
        source="Geometry; two rim flanges of about half an inch are common practice.",
        function="wheel_geometry.backspacing",
    )


def free_diameter(results: Results) -> Working:
    """Return how the diameter of the tire comes about."""
    geometry = results.wheel_geometry
    size = results.setup.tire.size
    return Working(
        what="Free diameter of the tire",
        lines=(Line("D", "d + 2*h"),),
        symbols={
            "D": Symbol("D", "free diameter", _length(geometry.free_diameter), "mm"),
            "d": Symbol("d", "rim diameter", _length(geometry.rim_diameter), "mm"),
            "h": Symbol("h", "section height", _length(geometry.section_height), "mm"),
        },
        source=f"The tire's size code {size}: section height is the aspect ratio times the section width."
        if size
        else "The tire's dimensions as the file gives them.",
        function="tire_geometry.free_diameter",
    )


def loaded_radius(results: Results) -> Working:
    """Return how the height of the wheel centre comes about."""
    tire, geometry = results.setup.tire, results.wheel_geometry
    radius = Symbol("R_l", "wheel centre above the road", _length(geometry.loaded_radius), "mm")
    diameter = Symbol("D", "free diameter", _length(geometry.free_diameter), "mm", "free_diameter")
    if tire.loaded_radius is not None:
        return Working(
            what="Loaded radius",
            lines=(Line("R_l", "D/2 - c"),),
            symbols={
                "R_l": radius,
                "D": diameter,
                "c": Symbol("c", "how far the tire gives", _length(geometry.tire_deflection), "mm"),
            },
            source="Measured from the road to the wheel centre; the file gives it.",
        )
    if tire.vertical_stiffness is not None:
        load = results.weight.wheel_loads[results.wheel]
        return Working(
            what="Loaded radius",
            lines=(Line("R_l", "D/2 - F_0/k"),),
            symbols={
                "R_l": radius,
                "D": diameter,
                "F_0": Symbol("F_0", "standing load of the wheel", Quantity(load, "N"), path="weight.this_wheel"),
                "k": Symbol("k", "vertical stiffness of the tire", Quantity(tire.vertical_stiffness, "N/m"), "N/mm"),
            },
            source="The tire gives like a spring.",
            function="tire_geometry.loaded_radius",
        )
    return Working(
        what="Loaded radius",
        lines=(Line("R_l", "q*D/2"),),
        symbols={"R_l": radius, "D": diameter, "q": Symbol("q", "share of the free radius", Quantity(0.93, "1"))},
        source="Radial tires: common practice, where no stiffness is given.",
        function="tire_geometry.usual_loaded_radius",
    )


def rolling_circumference(results: Results) -> Working:
    """Return how far the wheel rolls in one turn."""
    geometry = results.wheel_geometry
    return Working(
        what="Distance that the wheel rolls in one turn",
        lines=(Line("U", "q*D"),),
        symbols={
            "U": Symbol("U", "distance per turn", _length(geometry.rolling_circumference), "m"),
            "q": Symbol("q", "turn over diameter, rolling", Quantity(ROLLING_CIRCUMFERENCE_OVER_DIAMETER, "1")),
            "D": Symbol("D", "free diameter", _length(geometry.free_diameter), "m", "free_diameter"),
        },
        source="Radial tires: common practice. The tread is shortened on its way through the contact patch.",
        function="tire_geometry.rolling_circumference",
    )


def _length(value: float) -> Quantity:
    return Quantity(value, "m")


WORKINGS: Mapping[str, Callable[[Results], Working]] = {
    "load_line_offset": load_line_offset,
    "backspacing": backspacing,
    "free_diameter": free_diameter,
    "loaded_radius": loaded_radius,
    "rolling_circumference": rolling_circumference,
}
