"""Life over the own life against load line offset, wheel load and lateral acceleration, with the span over all ranges.

The view's ordinate is the logarithm to base ten of the ratio; its abscissa metres, newtons or times g.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise

import numpy as np

from hubwright.quantities import Kind, format_number, format_quantity
from hubwright.quantities.formatting import KINDS, MINUS
from hubwright.results.life_curves import (
    DUTY,
    LifeCurve,
    LifeCurves,
    against_lateral_g,
    against_load_line,
    against_wheel_load,
)
from hubwright.results.model import Results
from hubwright.results.span_tables import sampling_words
from hubwright.results.wear import Array
from hubwright.scenes.plot_frame import Area, LineEnd, Plot, Traced, decade_marks, end_labels, even_marks, plot
from hubwright.scenes.scales import round_down, round_up
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import (
    Column,
    Curve,
    Dot,
    Item,
    Label,
    Line,
    Note,
    Part,
    Point,
    Scene,
    Step,
    Tone,
    Units,
)
from hubwright.setup.model import Cornering

_WIDTH, _HEIGHT = 310.0, 166.0
_AREA = Area(28.0, 18.0, 222.0, 152.0)
_LEAST, _MOST = 1e-6, 1e4  # ratios beyond are not drawn
_FRACTION = 0.01  # with a ratio below this on the sheet, all below 1 are told as fractions
_BENT = 3.0  # degrees on the sheet between pieces of a line: bends this sharp both ways are no peak
_STYLES: tuple[tuple[Tone, float], ...] = (("ink", 1.0), ("ink", 0.45), ("soft", 0.7), ("soft", 0.35))
_POWER = {"two-row ball": ("one over load cubed", 3.0), "tapered pair": ("one over load to the power 10/3", 10 / 3)}


@dataclass(frozen=True)
class _Wording:
    """What one of the three figures says."""

    name: str
    kind: Kind
    axis: str
    changed: Callable[[Units], str]  # completes "…, {curve} is x of what it is"
    of: str  # what a ratio of 1 is
    names: Callable[[str], str]
    left_out: str


def life_against_load_line(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of life against the load line offset; the case does not act on it."""
    curves = against_load_line(results)
    move = curves.x[curves.looked_at] - curves.own

    wording = _Wording(
        name="life-load-line",
        kind="small length",
        axis="load line, outboard of the bearing centre",
        changed=lambda units: f"With the load line {format_quantity(move, 'small length', units)} farther outboard",
        of="1: as this setup is",
        names=lambda name: _life(results, name),
        left_out="Moved by spacer or by wheel, which load the bearing alike.",
    )
    return _scene(results, curves, wording, units)


def life_against_wheel_load(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of life against the wheel's standing load; the case does not act on it."""
    curves = against_wheel_load(results)
    more = curves.x[curves.looked_at] / curves.own - 1
    wording = _Wording(
        name="life-wheel-load",
        kind="force",
        axis="standing load of the wheel",
        changed=lambda units: f"With {format_quantity(more, 'percent', units)} more load on the wheel",
        of="1: as this setup is",
        names=lambda name: _life(results, name),
        left_out="The vehicle's own mass grows, its gear and the height of its centre of mass stay.",
    )
    return _scene(results, curves, wording, units, rule=True)


def life_against_lateral_g(results: Results, *, case: str = "standing", units: Units = "si") -> Scene:
    """Return the scene of life in a bend against its lateral acceleration; the case does not act on it."""
    curves = against_lateral_g(results)
    wording = _Wording(
        name="life-lateral-g",
        kind="acceleration",
        axis="lateral acceleration",
        changed=lambda units: f"In a bend of {format_quantity(curves.x[curves.looked_at], 'acceleration', units)}",
        of="1: life standing",
        names=lambda name: f"life as {name} wheel",
        left_out="Level road, steady bend; not a driving limit.",
    )
    return _scene(results, curves, wording, units)


def _scene(results: Results, curves: LifeCurves, wording: _Wording, units: Units, *, rule: bool = False) -> Scene:
    frame = _frame(curves)
    unit = KINDS[wording.kind][0 if units == "si" else 1][-1]
    x_marks = even_marks(*frame.x, unit=unit.size)
    axis = wording.axis
    if frame.x[0] < 0:  # each side of zero has its word instead of a sign
        x_marks = tuple((at, text.removeprefix(MINUS)) for at, text in x_marks)
        axis = axis.replace("outboard", "inboard (left) or outboard")
    tall = frame.y[1] - frame.y[0]
    words = (1.0, 2.0, 5.0) if tall < 2.6 else (1.0,)
    items: list[Item] = [
        frame.axis("axis-x", "foot", x_marks, f"{axis}, {unit.unit}", grid=True),
        frame.axis("axis-ratio", "left", decade_marks(*frame.y, words=words), f"life, times; {wording.of}", grid=True),
        Line("level-one", "plot", 2, points=((frame.x[0], 0.0), (frame.x[1], 0.0)), tone="ink", width=0.35, level=0.2),
    ]
    if wording.kind == "small length" and frame.x[0] < 0 < frame.x[1]:
        centre = ((0.0, frame.y[0]), (0.0, frame.y[1]))
        items.append(Line("bearing-centre", "plot", 1, points=centre, style="centre", tone="soft", level=0.2))
    if rule:
        points = _rule(results, curves, frame)
        items.append(Curve("curve-rule", "plot", 4, points=points, tone="soft", filled=False, width=0.3, level=1))
    items += _band(curves, frame)
    ends = _rule_end(results, curves, frame) if rule else []
    least = _least(curves)
    for number, curve in enumerate(curves.curves):
        drawn, end = _curve(curves, curve, number, frame, wording, least)
        items += drawn
        ends += [end] if end is not None else []
    items += end_labels(frame.view, ends)
    items += _own(curves, frame)
    return Scene(
        name=wording.name,
        title=_title(curves, wording, units),
        caption=_caption(results, curves, wording, is_seen=_is_seen(curves, frame), is_bent=_is_bent(items, frame)),
        description=_description(results, curves, wording, units),
        units=units,
        size=(_WIDTH, _HEIGHT),
        views=(frame.view,),
        items=tuple(items),
        steps=(
            Step("Mark what is", "Lives are compared with this setup's own: a ratio, never a promise."),
            Step(
                "Allow for what is not known",
                "The grey band: how far the ratio may lie off by the ranges of all inputs."
                if _is_seen(curves, frame)
                else "The ranges of all inputs move the ratio less than the line is thick."
                if curves.band is not None
                else "Here nothing is said of ranges: the line has no band.",
            ),
            Step("Change one thing", "All else stays; every point is solved anew."),
            Step("Compare", "What holds in one case need not hold in another."),
        ),
        columns=(Column("right", _AREA.right + 9.0, _AREA.low, _AREA.high),),
    )


def _frame(curves: LifeCurves) -> Plot:
    """Return the plot, its ratios from one round number to another."""
    band = () if curves.band is None else (curves.band.low, curves.band.high)
    values = np.concatenate([*(curve.ratio for curve in curves.curves), *band])
    values = values[np.isfinite(values)]
    low = max(min(float(values.min(initial=1.0)), 0.5), _LEAST)
    high = min(max(float(values.max(initial=1.0)), 2.0), _MOST)
    x = curves.x[np.isfinite(curves.x)]
    low, high = math.log10(round_down(low)), math.log10(round_up(high))
    return plot("plot", _AREA, (float(x.min()), float(x.max())), (low, high))


def _curve(
    curves: LifeCurves, curve: LifeCurve, number: int, frame: Plot, wording: _Wording, least: float
) -> tuple[list[Item], LineEnd | None]:
    """Return a curve, dashed where the life formula does not hold, and its name at its end."""
    tone, width = _STYLES[number]
    step = 3 if number == 0 else 4
    key = curve.name.replace(" ", "-")
    points = [
        (float(x), math.log10(ratio), bool(valid))
        for x, ratio, valid in zip(curves.x, curve.ratio, curve.valid, strict=True)
        if np.isfinite(ratio)
    ]
    runs = frame.runs(points)
    pieces = [piece for run in runs for piece in _pieces(run)]
    items: list[Item] = [
        Curve(
            f"curve-{key}-{place}",
            "plot",
            step,
            points=piece,
            tone=tone,
            filled=False,
            width=width,
            dashed=not valid,
            level=2,
        )
        for place, (piece, valid) in enumerate(pieces, start=1)
    ]
    if not runs:
        return items, None
    x, y, valid = runs[-1][-1]
    text = f"× {_ratio(10**y, least=least)} at the end" if valid else "severe at the end"
    if not frame.holds(points[-1]):
        text = f"{'below' if points[-1][1] < y else 'above'} the scale from there on"
    lines = (f"{'*' if number == 0 else ''}{wording.names(curve.name)}", text)
    return items, LineEnd(key, (x, y), lines, step, tone, _before_end([point[:2] for point in runs[-1]]))


def _before_end(points: Sequence[Point]) -> tuple[Point, ...]:
    """Return points a little before the end of a line."""
    return tuple(points[round(share * (len(points) - 1))] for share in (0.93, 0.86))


def _pieces(run: Sequence[Traced]) -> list[tuple[tuple[Point, ...], bool]]:
    """Return the pieces of a run in which the life formula holds or does not, each from where the one before ended."""
    pieces: list[tuple[tuple[Point, ...], bool]] = []
    last: tuple[Point, ...] = ()
    for valid, group in groupby(run, key=lambda place: place[2]):
        piece = (*last, *((x, y) for x, y, _ in group))
        last = piece[-1:]
        if len(piece) > 1:
            pieces.append((piece, valid))
    return pieces


def _rule(results: Results, curves: LifeCurves, frame: Plot) -> tuple[tuple[float, float], ...]:
    """Return what the rule of the rating says, as if the bearing's load grew with the wheel's."""
    power = _POWER[results.setup.bearing.kind][1]
    points = [(float(x), -power * math.log10(x / curves.own)) for x in curves.x if np.isfinite(x)]
    return tuple(point for point in points if frame.y[0] <= point[1] <= frame.y[1])


def _rule_end(results: Results, curves: LifeCurves, frame: Plot) -> list[LineEnd]:
    lines = ("rule of the rating:", _POWER[results.setup.bearing.kind][0])
    rule = _rule(results, curves, frame)
    return [LineEnd("rule", rule[-1], lines, 4, "soft", _before_end(rule))]


def _band(curves: LifeCurves, frame: Plot) -> list[Item]:
    band = curves.band
    if band is None:
        return []

    def edge(ratios: Array) -> list[Point]:
        places = [(float(x), math.log10(ratio), True) for x, ratio in zip(band.x, ratios, strict=True)]
        return [(x, min(max(y, frame.y[0]), frame.y[1])) for x, y, _ in frame.with_edges(places)]

    ring = (*edge(band.high), *edge(band.low)[::-1])
    return [Part("part-span", "plot", 2, rings=(ring,), material="fixed", outline=0.0, level=-0.5)]


def _is_seen(curves: LifeCurves, frame: Plot) -> bool:
    """Return whether the band is anywhere wider than the line that lies over it."""
    band = curves.band
    if band is None:
        return False
    wide = np.log10(np.maximum(band.high, _LEAST) / np.maximum(band.low, _LEAST)) * (
        1.0 / (frame.view.vertical_per_mm or 1.0)
    )
    return bool(wide.max(initial=0.0) > _STYLES[0][1])


def _is_bent(items: Sequence[Item], frame: Plot) -> bool:
    """Return whether a line bends sharply both ways, as where one element after the other is left without load."""
    for curve in (item for item in items if isinstance(item, Curve)):
        points = [frame.view.on_sheet(point) for point in curve.points]
        ways = [math.degrees(math.atan2(y1 - y0, x1 - x0)) for (x0, y0), (x1, y1) in pairwise(points)]
        turns = [after - before for before, after in pairwise(ways)]
        if turns and min(turns) < -_BENT and max(turns) > _BENT:
            return True
    return False


def _own(curves: LifeCurves, frame: Plot) -> list[Item]:
    at = (curves.own, 0.0)
    standing = curves.own <= frame.x[0]
    label = Label(
        ("standing" if standing else "as it is",),
        "right" if standing else "above",
        anchor=at,
        size=2.3,
        nudge=(6.0, -2.6) if standing else (0.0, 0.5),  # under the level of 1, between the lines that part there
    )
    return [
        Dot("own", "plot", 1, at=at, kind="ring", radius=1.1, level=4),
        # on a phone the axis says what 1 is: where all lines meet there is no room for a ring
        Note("label-own", "plot", 1, label=label, wide_only=True),
    ]


def _place(x: float, wording: _Wording, units: Units) -> str:
    """Return a place on the abscissa, a load line with its side instead of a sign."""
    at = format_quantity(abs(x), wording.kind, units)
    return at if wording.kind != "small length" else f"{at} {'outboard' if x >= 0 else 'inboard'}"


def _life(results: Results, name: str) -> str:
    return "life over the duty" if name == DUTY else f"life, {plain(_as_in_file(results, name))}"


def _as_in_file(results: Results, name: str) -> str:
    """Return the first name of a bend: a duty by name brings bends of its own, also such as the file has already."""
    bends = [case for case in results.setup.cases if isinstance(case, Cornering)]
    own = next((case for case in bends if case.name == name), None)
    if own is None:
        return name
    return next(case.name for case in bends if (case.toward, case.lateral_g) == (own.toward, own.lateral_g))


def _least(curves: LifeCurves) -> float:
    """Return the smallest ratio that is told: at an end of a line, or with its span at the point looked at."""
    told = [ratio for curve in curves.curves for ratio in (*_ends(curve.ratio), float(curve.ratio[curves.looked_at]))]
    span = curves.band.at(float(curves.x[curves.looked_at])) if curves.band is not None else None
    return min((ratio for ratio in (*told, *(span or ())) if math.isfinite(ratio)), default=1.0)


def _ends(ratios: Array) -> tuple[float, ...]:
    known = ratios[np.isfinite(ratios)]
    return (float(known[0]), float(known[-1])) if known.size else ()


def _ratio(value: float, *, least: float) -> str:
    """Return a ratio, in one form with all others on the sheet."""
    if least >= _FRACTION or value >= 1:
        return format_quantity(value, "ratio", "si")
    return f"1/{format_number(1 / value, significant=2, decimals=1)}"


def _title(curves: LifeCurves, wording: _Wording, units: Units) -> str:
    curve = curves.curves[0]
    place = curves.looked_at
    what = f"{wording.changed(units)}, "
    if not math.isfinite(curve.ratio[place]):
        return f"{what}a wheel lifts"
    if not curve.valid[place]:
        return f"{what}the load on the bearing is severe"
    span = curves.band.at(float(curves.x[place])) if curves.band else None
    compared = "that standing" if wording.kind == "acceleration" else "what it is now"
    if span is not None and span[0] < 1 < span[1]:
        return f"{what}these data do not settle whether life grows or shrinks"
    least = _least(curves)
    told = f"{what}{wording.names(curve.name)} is {_ratio(float(curve.ratio[place]), least=least)} of {compared}"
    ends = () if span is None else tuple(_ratio(end, least=least) for end in span)
    return told if len(set(ends)) < 2 else f"{told} ({' to '.join(ends)})"


def _caption(results: Results, curves: LifeCurves, wording: _Wording, *, is_seen: bool, is_bent: bool) -> str:
    words = [f"{plain(results.setup.name)}: {results.wheel.replace('_', ' ')} wheel. {wording.left_out}"]
    if curves.band is not None:
        begin = "Grey: span of the thick line" if is_seen else "Narrower than the thick line: its span"
        words.append(
            f"{begin} over the ranges of all inputs, 5th to 95th percentile of {curves.band.draws} draws, "
            f"{sampling_words(curves.band.draws)}."
        )
    if not all(curve.valid[np.isfinite(curve.ratio)].all() for curve in curves.curves):
        words.append("Dashed: outside the range of the life formula, severe.")
    if is_bent:
        elements = "rollers" if results.setup.bearing.kind == "tapered pair" else "balls"
        words.append(f"Where a line bends and bends back, {elements} of a row come free of load or take some again.")
    if any(not np.isfinite(curve.ratio).all() for curve in curves.curves):
        words.append("Where a line ends early, a wheel lifts.")
    return " ".join(words)


def _description(results: Results, curves: LifeCurves, wording: _Wording, units: Units) -> str:
    sentences = [
        f"Lines of life as a ratio on an axis of decades over {wording.axis}, for {plain(results.setup.name)}."
    ]
    for curve in curves.curves:
        known = np.flatnonzero(np.isfinite(curve.ratio))
        if not known.size:
            continue
        ends: list[str] = []
        for place in (known[0], known[-1]):
            at = _place(float(curves.x[place]), wording, units)
            said = f"× {_ratio(float(curve.ratio[place]), least=_least(curves))}" if curve.valid[place] else "severe"
            ends.append(f"{said} at {at}")
        name = wording.names(curve.name)
        sentences.append(f"{name[:1].upper()}{name[1:]}: {' and '.join(ends)}.")
    return " ".join(sentences)
