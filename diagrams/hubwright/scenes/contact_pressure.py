"""Contact pressure of a ball or roller against its load, with what a case puts on the curve and where dents begin.

The view's abscissa is newtons, its ordinate pascals.
"""

import numpy as np

from hubwright.errors import CaseError
from hubwright.mechanics.raceway_life import DENT_PRESSURE
from hubwright.quantities import Kind, display, format_quantity
from hubwright.quantities.formatting import KINDS, Scale
from hubwright.results.life import CaseLife
from hubwright.results.model import Results
from hubwright.scenes.plot_frame import Area, Plot, even_marks, plot
from hubwright.scenes.row_elements import life_known
from hubwright.scenes.scales import round_up
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Column, Curve, Dot, Item, Label, Line, Note, Scene, Step, Units

_WIDTH, _HEIGHT = 310.0, 160.0
_AREA = Area(26.0, 18.0, 222.0, 144.0)
_POINTS = 80
_TOGETHER = 0.01  # of the load axis: rows nearer than this look like one
_SIZE, _LETTER, _BESIDE = 2.4, 1.7, 2.5  # of labels: height, width of a letter, room to either side of the words
_HALF = 4.1  # from the middle of the words of two rows to the middle of those of one
_ALIKE = 1e-3  # of the load: a case that differs by less is not drawn again


def contact_pressure(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of contact pressure against load, with the most loaded element of each row in one case."""
    life = life_known(results, "the contact pressure")
    chosen = life.cases[case]
    loads = _loads(chosen)
    if not loads:
        raise CaseError(case=case, reason="no rolling element carries load, so there is no contact pressure")
    elements = "rollers" if results.setup.bearing.kind == "tapered pair" else "balls"
    # Hertz: pressure grows with the cube root of the load in a point contact, with the square root in a line contact
    power = 1 / 3 if elements == "balls" else 1 / 2
    limit = DENT_PRESSURE[elements]
    load, pressure = max(loads.values())
    denting = load * (limit / pressure) ** (1 / power)
    others = [
        pair
        for name, each in life.cases.items()
        for pair in _loads(each).values()
        if name != case and all(abs(pair[0] - own[0]) > _ALIKE * load for own in loads.values())
    ]
    reach = _up_to(max(1.15 * denting, load, *(other[0] for other in others)))
    frame = plot("plot", _AREA, (0.0, reach), (0.0, _up_to(pressure * (reach / load) ** power)))
    x = np.linspace(0.0, 1.0, _POINTS) ** 3 * reach  # close where the curve is steep
    curve = tuple((float(each), float(pressure * (each / load) ** power)) for each in x)
    items: list[Item] = [
        frame.axis("axis-load", "foot", *_axis(reach, "force", f"load of one {elements[:-1]}", units), grid=True),
        frame.axis("axis-pressure", "left", *_axis(frame.y[1], "pressure", "contact pressure", units), grid=True),
        Curve("curve-pressure", "plot", 2, points=curve, filled=False, width=0.5, level=1),
        *_limit(frame, limit, denting, units),
        *(Dot(f"other-{i}", "plot", 3, at=at, tone="before", radius=0.9, level=2) for i, at in enumerate(others)),
    ]
    told: dict[str, tuple[str, ...]] = {name: (f"*{name} row", _told(at, units)) for name, at in loads.items()}
    ordered = sorted(loads, key=lambda name: loads[name])
    low, high = ordered[0], ordered[-1]
    apart = (loads[high][0] - loads[low][0]) * frame.view.scale
    # words below the dot of the less loaded row would stand on the other's line: both stand below that, the upper first
    together = low != high and apart < _LETTER * max(map(len, told[low])) + _BESIDE
    if together:
        alike = apart < _TOGETHER * reach * frame.view.scale
        dots = ("", "") if alike else (", upper dot", ", lower dot")
        told |= {name: (told[name][0] + dot, told[name][1]) for name, dot in zip((high, low), dots, strict=True)}
    nudges = dict.fromkeys(loads, (1.0, -6.0))
    if together:
        rise = (loads[high][1] - loads[low][1]) / (frame.view.vertical_per_mm or 1.0)
        nudges = {high: (1.0, -9.0 + _HALF), low: (1.0 + apart, rise - 9.0 - _HALF)}
    for name, at in loads.items():
        # where it is tight, as on a phone, a leader may end at the line that drops from the dot, not where another does
        below = tuple((at[0], share * at[1]) for share in ((0.5, 0.25) if name == low else (0.7, 0.4)))
        label = Label(told[name], "right", anchor=at, tone="load", size=_SIZE, nudge=nudges[name], also=below)
        drop = ((at[0], 0.0), at, (0.0, at[1]))
        items += [
            Line(f"drop-{name}", "plot", 4, points=drop, style="hair", tone="load", level=1),
            Dot(f"case-{name}", "plot", 4, at=at, tone="load", radius=1.2, level=3),
            Note(f"label-{name}", "plot", 4, label=label),
        ]
    return Scene(
        name="contact-pressure",
        title=_title(case, elements, pressure, limit, units),
        caption=_caption(results, elements, units),
        description=_description(results, chosen, elements, limit, denting, units),
        units=units,
        size=(_WIDTH, _HEIGHT),
        views=(frame.view,),
        items=tuple(items),
        steps=(
            Step("Mark where dents begin", "Above this pressure a still element leaves a lasting mark in the raceway."),
            Step(f"Press one {elements[:-1]}", _law(elements)),
            Step("Put the cases on it", "Small dots: the most loaded elements of all other cases of this file."),
            Step("Look at this one", "The most loaded element of each row."),
        ),
        columns=(Column("right", _AREA.right + 9.0, _AREA.low, _AREA.high),),
    )


def _loads(life: CaseLife) -> dict[str, tuple[float, float]]:
    """Return load and pressure of the most loaded element of each row that carries something."""
    rows = ("outboard", "inboard")
    pairs = {
        name: (getattr(life.largest_element_load, name), getattr(life.peak_contact_pressure, name)) for name in rows
    }
    return {name: pair for name, pair in pairs.items() if pair[0] > 1e-6}


def _told(pair: tuple[float, float], units: Units) -> str:
    return f"{format_quantity(pair[1], 'pressure', units)} under {format_quantity(pair[0], 'force', units)}"


def _limit(frame: Plot, limit: float, denting: float, units: Units) -> list[Item]:
    level = ((0.0, limit), (frame.x[1], limit))
    told = (
        "*dents begin",
        f"{format_quantity(limit, 'pressure', units)}, at",
        f"{format_quantity(denting, 'force', units)} on one",
    )
    label = Label(told, "right column", anchor=level[1], size=2.4)
    return [
        Line("limit", "plot", 1, points=level, style="hidden", width=0.5, level=1),
        Note("label-limit", "plot", 1, label=label),
    ]


def _axis(reach: float, kind: Kind, words: str, units: Units) -> tuple[tuple[tuple[float, str], ...], str]:
    unit = _unit(kind, reach, units)
    return even_marks(0.0, reach, unit=unit.size), f"{words}, {unit.unit}"


def _unit(kind: Kind, largest: float, units: Units) -> Scale:
    """Return the unit in which a value of this size is shown."""
    name = display(largest, kind, units).unit
    return next(scale for scale in KINDS[kind][0 if units == "si" else 1] if scale.unit == name)


def _up_to(value: float) -> float:
    """Return a round end of an axis that reaches a value."""
    step = round_up(value / 8)
    return float(step * np.ceil(value / step - 1e-9))


def _law(elements: str) -> str:
    if elements == "balls":
        return "Twice the pressure takes eight times the load: the patch grows in both directions."
    return "Twice the pressure takes four times the load: the patch grows in its width alone."


def _title(case: str, elements: str, pressure: float, limit: float, units: Units) -> str:
    told = format_quantity(pressure, "pressure", units)
    start = f"{plain(case)}: the most loaded {elements[:-1]} is pressed with {told}"
    start = start[:1].upper() + start[1:]
    if pressure >= limit:
        return f"{start}, above where dents begin"
    return f"{start}, {format_quantity(pressure / limit, 'percent', units)} of where dents begin"


def _caption(results: Results, elements: str, units: Units) -> str:
    limit = format_quantity(DENT_PRESSURE["balls" if elements == "balls" else "rollers"], "pressure", units)
    return (
        f"{plain(results.setup.name)}: {results.wheel.replace('_', ' ')} wheel, the harder pressed of both rings. "
        f"{_law(elements)} Dents: {limit} by ISO 76, where the mark is about a ten-thousandth of the {elements[:-1]}'s "
        "diameter. Small dots: all other cases of the file."
    )


def _description(results: Results, life: CaseLife, elements: str, limit: float, denting: float, units: Units) -> str:
    told = " and ".join(f"{_told(pair, units)} in the {name} row" for name, pair in _loads(life).items())
    return (
        f"A curve of contact pressure over the load of one {elements[:-1]} of {plain(results.setup.name)}, flatter the "
        f"larger the load. {plain(life.name).capitalize()}: {told}. Dents begin at "
        f"{format_quantity(limit, 'pressure', units)}, which takes {format_quantity(denting, 'force', units)}."
    )
