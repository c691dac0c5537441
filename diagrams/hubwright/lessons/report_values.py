"""Weights, wheel geometry and standing row loads of a setup, as tables of a report."""

from collections.abc import Iterable

from markupsafe import Markup

from hubwright.lessons.closure import left_over
from hubwright.lessons.numbers import show
from hubwright.lessons.words import wheel_words
from hubwright.quantities import Quantity, adding_up
from hubwright.results import Results
from hubwright.results.model import WheelGeometry

ON_ROWS = "What the turning parts put on each row; it holds them with the same force the other way."


def _pairs(caption: str, pairs: Iterable[tuple[str, Markup]]) -> Markup:
    lines = Markup("").join(
        Markup('<tr><th scope="row">{}</th><td class="n">{}</td></tr>').format(words, value) for words, value in pairs
    )
    return Markup('<table><caption class="vh">{}</caption><tbody>{}</tbody></table>').format(caption, lines)


def weights(results: Results) -> Markup:
    """Return what stands on axles and wheels."""
    weight = results.weight
    pairs = [
        (
            f"{axle.capitalize()} axle" if axle not in ("axle", "coupling") else axle.capitalize(),
            show(Quantity(load, "N")),
        )
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
                (f"{wheel_words(wheel).capitalize()} wheel", show(load))
                for wheel, load in zip(of_axle, told, strict=False)
            ]
    pairs += [
        ("Equal share, the rule of thumb", show(Quantity(weight.equal_share, "N"))),
        ("Whole mass", show(Quantity(weight.total_mass, "kg"))),
        (
            "Centre of mass, behind the front axle"
            if results.setup.kind == "vehicle"
            else "Centre of mass, behind the axle",
            show(Quantity(weight.centre_of_mass_behind, "m", kind="vehicle length")),
        ),
        ("Centre of mass, height", show(Quantity(weight.centre_of_mass_height, "m", kind="vehicle length"))),
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


def geometry(results: Results) -> Markup:
    """Return the sizes of wheel and tire, and of the bearing what its loads and lives rest on."""
    sizes: WheelGeometry = results.wheel_geometry
    pairs = [(words, show(Quantity(getattr(sizes, name), "m"))) for name, words in _GEOMETRY]
    bearing = results.bearing
    for words, value, unit in (
        ("Effective spread of the rows", bearing.effective_spread, "m"),
        ("Dynamic rating", bearing.dynamic_rating, "N"),
        ("Static rating", bearing.static_rating, "N"),
    ):
        pairs.append((words, show(Quantity(value, unit)) if value is not None else Markup("not given")))
    return _pairs("Wheel and bearing", pairs)


def rows(results: Results) -> Markup:
    """Return what each row carries while the vehicle stands, and what the free body leaves over."""
    case = results.cases["standing"]
    if case.row_load is None:
        return Markup("<p>{}</p>").format("The file does not say enough of the bearing to tell its rows apart.")
    loads = adding_up(*(Quantity(row.z, "N") for row in (case.row_load.outboard, case.row_load.inboard)))
    pairs = [
        (f"{row} row", Markup("{} {}").format(show(abs(load)), "up" if load >= 0 else "down"))
        for row, load in zip(("Outboard", "Inboard"), loads, strict=False)
    ]
    pairs.append(("Left over, force", left_over(case.closure.force, "N")))
    pairs.append(("Left over, moment", left_over(case.closure.moment, "N*m")))
    return _pairs("Row loads, standing", pairs) + Markup("<p>{}</p>").format(ON_ROWS)
