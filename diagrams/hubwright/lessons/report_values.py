"""Weights, wheel geometry and standing row loads of a setup, as tables of a report."""

from collections.abc import Iterable

from markupsafe import Markup

from hubwright.lessons.closure import left_over
from hubwright.lessons.numbers import show
from hubwright.lessons.words import wheel_words
from hubwright.lessons.worked_results import Ways
from hubwright.quantities import Quantity, adding_up
from hubwright.results import Results
from hubwright.results.model import WheelGeometry

ON_ROWS = "What the turning parts put on each row; it holds them with the same force the other way."


def _pairs(caption: str, pairs: Iterable[tuple[str, Markup]]) -> Markup:
    lines = Markup("").join(
        Markup('<tr><th scope="row">{}</th><td class="n">{}</td></tr>').format(words, value) for words, value in pairs
    )
    return Markup('<table><caption class="vh">{}</caption><tbody>{}</tbody></table>').format(caption, lines)


_AXLES = {
    "front": ("Front axle", "weight.front_axle_load"),
    "rear": ("Rear axle", "weight.rear_axle_load"),
    "axle": ("Axle", "weight.axle_load"),
    "coupling": ("Coupling", "weight.coupling_load"),
}


def weights(results: Results, ways: Ways) -> Markup:
    """Return what stands on axles and wheels."""
    weight = results.weight
    pairs = [
        (_AXLES[axle][0], ways.link(show(Quantity(load, "N")), _AXLES[axle][1]))
        for axle, load in weight.axle_loads.items()
    ]
    for axle in weight.axle_loads:
        # a trailer's two wheels belong to its one axle; a coupling has none
        of_axle = {
            wheel: Quantity(load, "N")
            for wheel, load in weight.wheel_loads.items()
            if axle == "axle" or wheel.startswith(axle)
        }
        if of_axle:
            told = adding_up(*of_axle.values())
            pairs += [
                (f"{wheel_words(wheel).capitalize()} wheel", ways.link(show(load), f"weight.{wheel}"))
                for wheel, load in zip(of_axle, told, strict=False)
            ]
    pairs += [
        ("Equal share, the rule of thumb", ways.link(show(Quantity(weight.equal_share, "N")), "weight.equal_share")),
        ("Whole mass", ways.link(show(Quantity(weight.total_mass, "kg")), "weight.total_mass")),
        (
            "Centre of mass, behind the front axle"
            if results.setup.kind == "vehicle"
            else "Centre of mass, behind the axle",
            ways.link(
                show(Quantity(weight.centre_of_mass_behind, "m", kind="vehicle length")), "weight.centre_of_mass_behind"
            ),
        ),
        (
            "Centre of mass, height",
            ways.link(
                show(Quantity(weight.centre_of_mass_height, "m", kind="vehicle length")), "weight.centre_of_mass_height"
            ),
        ),
    ]
    return _pairs("Standing loads", pairs)


_GEOMETRY: tuple[tuple[str, str], ...] = (
    ("load_line_offset", "Load line, outboard positive"),
    ("offset", "Offset of the wheel"),
    ("backspacing", "Backspacing"),
    ("free_diameter", "Free diameter"),
    ("loaded_radius", "Loaded radius"),
    ("rolling_circumference", "Rolled in one turn"),
    ("section_width", "Section width"),
)


def geometry(results: Results, ways: Ways) -> Markup:
    """Return the sizes of wheel and tire, and of the bearing what its loads and lives rest on."""
    sizes: WheelGeometry = results.wheel_geometry
    pairs = [(words, ways.link(show(Quantity(getattr(sizes, name), "m")), name)) for name, words in _GEOMETRY]
    bearing = results.bearing
    for words, name, unit in (
        ("Effective spread of the rows", "effective_spread", "m"),
        ("Dynamic rating", "dynamic_rating", "N"),
        ("Static rating", "static_rating", "N"),
    ):
        value = getattr(bearing, name)
        told = Markup("not given") if value is None else ways.link(show(Quantity(value, unit)), f"bearing.{name}")
        pairs.append((words, told))
    return _pairs("Wheel and bearing", pairs)


def rows(results: Results, ways: Ways) -> Markup:
    """Return what each row carries while the vehicle stands, and what the free body leaves over."""
    case = results.cases["standing"]
    if case.row_load is None:
        return Markup("<p>{}</p>").format("The file does not say enough of the bearing to tell its rows apart.")
    loads = adding_up(*(Quantity(row.z, "N") for row in (case.row_load.outboard, case.row_load.inboard)))
    pairs = [
        (
            f"{row} row",
            Markup("{} {}").format(
                ways.link(show(abs(load)), f"row_load.{row.lower()}.z", case.name), "up" if load >= 0 else "down"
            ),
        )
        for row, load in zip(("Outboard", "Inboard"), loads, strict=False)
    ]
    pairs.append(("Left over, force", left_over(case.closure.force, "N")))
    pairs.append(("Left over, moment", left_over(case.closure.moment, "N*m")))
    return _pairs("Row loads, standing", pairs) + Markup("<p>{}</p>").format(ON_ROWS)
