"""The cases of a setup in a report: loads on the hub, what they do in the bearing, and what ledges and drops add."""

from markupsafe import Markup, escape

from hubwright.lessons.numbers import both, number, show, show_range, unit
from hubwright.lessons.stacked_table import Column, Row, stacked_table
from hubwright.lessons.worked_results import Ways
from hubwright.quantities import FOOT, POUND_FORCE, Kind, Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.life import CaseLife
from hubwright.setup.model import Drop

SEVERE = "severe: outside the range of the life formula"
NO_LIFE = "The file does not say enough of the bearing for what happens inside it."
_Scales = tuple[tuple[float, int, str], tuple[float, int, str]]  # size in SI units, decimals, unit: SI and US
_FORCE: _Scales = ((1e3, 2, "kN"), (POUND_FORCE, 0, "lbf"))
_MOMENT: _Scales = ((1.0, 1, "N·m"), (POUND_FORCE * FOOT, 1, "lbf·ft"))
_LOADS: tuple[tuple[str, _Scales, str], ...] = (
    ("Road, up", _FORCE, "contact_force.z"),
    ("On the hub, up", _FORCE, "bearing_force.z"),
    ("Forward", _FORCE, "bearing_force.x"),
    ("Toward the vehicle", _FORCE, "bearing_force.y"),
    ("Tipping", _MOMENT, "bearing_moment.x"),
    ("Steering", _MOMENT, "bearing_moment.z"),
    ("Outboard row", _FORCE, "row_radial_load.outboard"),
    ("Inboard row", _FORCE, "row_radial_load.inboard"),
)
_NOTHING = Markup('<span aria-hidden="true">·</span><span class="vh">none</span>')


def cases_table(results: Results, ways: Ways) -> Markup:
    """Return the loads on the hub in every case, and why a case of the file is not among them."""
    columns = [Column(words, both(scale[0][2], scale[1][2])) for words, scale, _ in _LOADS]
    rows = [Row(escape(case.name.capitalize()), _loads(results, case, ways)) for case in results.cases.values()]
    caption = (
        "On the hub at the middle of the bearing. Tipping is positive when the top goes toward the vehicle, steering "
        "when the wheel is turned to the left; row loads are their lengths."
    )
    return stacked_table(caption, "Case", columns, rows, kind="cases") + left_out(results)


def left_out(results: Results) -> Markup:
    """Return the cases of the file that are not solved, each with the reason."""
    return Markup("").join(
        Markup("<p>Not here: <i>{}</i>, {}.</p>").format(name, reason) for name, reason in results.left_out.items()
    )


def _loads(results: Results, case: CaseResult, ways: Ways) -> list[Markup]:
    side, radial = results.side, case.row_radial_load
    values: list[float | None] = [
        case.contact_force.z,
        case.bearing_force.z,
        case.bearing_force.x,
        -side * case.bearing_force.y,
        side * case.bearing_moment.x,
        case.bearing_moment.z,
        radial.outboard if radial else None,
        radial.inboard if radial else None,
    ]
    return [
        ways.link(_fixed(value, scale), path, case.name) for value, (_, scale, path) in zip(values, _LOADS, strict=True)
    ]


def _fixed(value: float | None, scales: _Scales) -> Markup:
    """Return a value to fixed decimals, so that the numbers of a column stand under one another."""
    if value is None:
        return Markup("–")
    texts = []
    for size, decimals, _ in scales:
        rounded = round(value / size, decimals) + 0.0
        texts.append(f"{rounded:,.{decimals}f}".replace("-", "\u2212"))
    if all(text.strip("0.,") == "" for text in texts):
        return _NOTHING
    return both(*texts)


def bearing_table(results: Results, ways: Ways) -> Markup:
    """Return what every case does in the bearing: worst row with its span, hardest element, pressure, dent margin."""
    life = results.life
    if life is None:
        return Markup("<p>{}</p>").format(NO_LIFE)
    columns = [
        Column("Worst row", number=False),
        Column("Its load", unit(Quantity(1e4, "N"))),
        Column("Span"),
        Column("Hardest element"),
        Column("Pressure", unit(Quantity(1e9, "Pa"))),
        Column("Dent margin"),
        Column("Remark", number=False),
    ]
    rows = [
        Row(escape(name.capitalize()), _in_bearing(results, results.cases[name], one, ways))
        for name, one in life.cases.items()
    ]
    caption = (
        "The harder loaded row and, of both rows, the rolling element that carries most. Pressure is that between it "
        "and its raceway; the dent margin is 1 where the standards put the first lasting dent."
    )
    return stacked_table(caption, "Case", columns, rows, kind="cases")


def _in_bearing(results: Results, case: CaseResult, life: CaseLife, ways: Ways) -> list[Markup]:
    radial = case.row_radial_load
    row = "–" if radial is None else "outboard" if radial.outboard >= radial.inboard else "inboard"
    load = None if radial is None else max(radial.outboard, radial.inboard)
    found = results.spans.get(f"cases.{case.name}.row_radial_load.{row}")
    span = Markup("")
    if found is not None and load is not None:
        span = show_range(Quantity(load, "N", low=found.low, high=found.high))
    element = max(life.largest_element_load.outboard, life.largest_element_load.inboard)
    pressure = max(life.peak_contact_pressure.outboard, life.peak_contact_pressure.inboard)
    return [
        escape(row),
        Markup("–") if load is None else ways.link(_fixed(load, _FORCE), f"row_radial_load.{row}", case.name),
        span,
        show(Quantity(element, "N")),
        ways.link(number(Quantity(pressure, "Pa")), "life.pressure", case.name),
        ways.link(
            show(Quantity(min(life.static_safety.outboard, life.static_safety.inboard), "1")),
            "life.dent_margin",
            case.name,
        ),
        Markup("") if life.valid or isinstance(results.setup.case(case.name), Drop) else escape(SEVERE),
    ]


_ADDED: tuple[tuple[str, str, Kind, str], ...] = (
    ("contact_normal", "Push of the edge on the tire", "force", "ledge.normal"),
    ("push", "Push needed to climb it", "force", "ledge.push"),
    ("peak_tire_force", "Largest tire force", "force", ""),
    ("peak_bearing_force", "Largest force on the bearing", "force", ""),
    ("impact_factor", "Largest tire force over the standing one", "ratio", "drop.impact_factor"),
)


def rough_table(results: Results, ways: Ways) -> Markup:
    """Return what ledges and drops add, or why there is none."""
    rows = []
    for case in results.cases.values():
        for name, words, kind, path in _ADDED:
            if name in case.extras:
                value = float(case.extras[name])
                told = ways.link(show(Quantity(value, "1" if kind == "ratio" else "N")), path, case.name)
                rows.append((case.name.capitalize(), words, told))
        if case.extras.get("tire_on_rim"):
            rows.append((case.name.capitalize(), "Tire on the rim", Markup("real force higher")))
    columns = (Column("What", number=False), Column("Value"))
    table = stacked_table(
        "Quasi-static at a ledge, over time in a drop; nothing here is a limit.",
        "Case",
        columns,
        [Row(escape(name), (escape(words), value)) for name, words, value in rows],
        kind="pairs",
    )
    return (table if rows else Markup("")) + _no_drop(results)


def _no_drop(results: Results) -> Markup:
    if any(isinstance(case, Drop) for case in results.setup.cases):
        return Markup("")  # it is solved, or stands among the cases left out
    why = (
        "the file asks for none, and gives no springs to compute one with"
        if results.setup.suspension is None
        else "the file asks for none"
    )
    return Markup("<p>No drop: {}.</p>").format(why)
