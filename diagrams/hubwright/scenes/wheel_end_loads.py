"""The loads of the wheel-end section: contact with the road, weights and inertia with their lens, the caliper.

Every arrow is a component of a single force of the results' free body; the small arrows of the contact pressure are
shares of one.
"""

from dataclasses import replace
from typing import Literal

from hubwright.results.model import SingleForce, Vector
from hubwright.scenes.small_forces import visible
from hubwright.scenes.vocabulary import Dot, Force, Ground, Item, Label, Line, Point, View
from hubwright.scenes.wheel_end_drawn import ABOVE_PARTS, GAP, MM, Drawn, centre_note, flat, line_of_sight
from hubwright.scenes.wheel_end_layout import LENS, LENS_WORDS, fractions, reach_of
from hubwright.scenes.wheel_end_words import longer

_AS_ONE = 3.0  # sheet millimetres: arrows nearer than that to one another
_WORDS_BELOW = 7.0  # between the road and the middle of words below it
_ARROWS = 12  # of the contact pressure; an even number leaves the middle to the resultant


def contact_items(d: Drawn, step: int) -> list[Item]:
    """Return the contact pressure, its resultant, the forces across and along the road, and the ground."""
    words = d.words
    if words.hanging:
        return []
    contact = words.state.free_body.force("contact")
    F, at = contact.force, flat(contact.point)
    half = 0.96 * d.parts.below.tread_half_width
    items = _ground(d, at[0], -d.parts.measures.loaded_radius)
    if words.state.kind == "ledge":
        line = ((at[0] - half - 25.0, at[1]), (at[0] + half + 25.0, at[1]))
        items.append(Line("ledge", "whole", step, points=line, style="phantom", level=ABOVE_PARTS))
    else:
        items += _pressure(d, step, at, half, F.z)
    crossed = not words.nothing(F.x)
    items.append(_pushed_up(d, step, at, F.z, crossed=crossed))
    if not words.nothing(F.y):
        items.append(_pushed_across(d, step, at, F, crossed=crossed))
    if crossed:
        lines = (f"*{{F|x}} = {words.force(F.x)}", f"{words.fore_and_aft(F.x)} on tire")
        label = Label(lines, d.outboard_column, tone="load", size=2.8)
        items.append(line_of_sight("F_x", "whole", step, at, F.x, "applied", label))
    return items


def _pushed_up(d: Drawn, step: int, at: Point, newtons: float, *, crossed: bool) -> Force:
    """Return the resultant of the contact pressure, or the upright force of an edge."""
    surface = "edge on tire" if d.words.state.kind == "ledge" else "road on tire"
    lines = (f"*{{F|z}} = {d.words.force(newtons)}", surface)
    # at a ledge the arrow begins within the tire, and a small one under the contact pressure: words stand below
    road = -d.parts.measures.loaded_radius
    middle = (at[1] - road) * d.layout.whole.scale - abs(newtons) / (d.layout.whole.newtons_per_mm or 1.0) / 2
    drop = max(middle + _WORDS_BELOW, 0.0)
    return Force(
        "F_z",
        "whole",
        step,
        at=at,
        vector=(0.0, newtons),
        gap=GAP if crossed else 0.35,
        level=ABOVE_PARTS + 3,
        label=Label(lines, _free_side(d), tone="load", size=3.0, nudge=(0.0, -drop)),
    )


def _pushed_across(d: Drawn, step: int, at: Point, F: Vector, *, crossed: bool) -> Force:
    """Return the side force, its words beside the shaft of F_z, outboard: the other side is that of its label."""
    words, per_mm = d.words, d.layout.whole.newtons_per_mm or 1.0
    small = max(fractions(_ARROWS)) * F.z / per_mm  # they stand below the small arrows
    along = abs(F.y) / per_mm if words.sideways(F.y) == "outboard" else 0.0
    label = Label(
        (f"*{{F|y}} = {words.force(F.y)}", f"{words.sideways(F.y)} on tire"),
        "left" if d.layout.side > 0 else "right",
        tone="load",
        size=2.8,
        nudge=(d.layout.side * (along - 1.3), -6.2 - small),
    )
    return Force(
        "F_y",
        "whole",
        step,
        at=at,
        vector=(F.y, 0.0),
        tip_at_point=False,
        gap=GAP if crossed else 0.0,
        level=ABOVE_PARTS + 4,
        label=label,
    )


def _ground(d: Drawn, y: float, road: float) -> list[Item]:
    """Return the road beside the tread, as far outboard as the lens leaves it room."""
    whole, half = d.layout.whole, d.parts.below.tread_half_width
    lens_edge = (d.layout.x(LENS[2] + 1.5) - whole.origin[0]) / -whole.scale * d.layout.side
    items: list[Item] = []
    for name, way in (("outboard", 1.0), ("inboard", -1.0)):
        start = d.layout.side * y + way * (half + 3.0 / whole.scale)
        end = start + way * 10.0 / whole.scale
        if way > 0:
            end = min(end, lens_edge)
        if abs(end - start) * whole.scale > 3.0 and (end - start) * way > 0:
            side = d.layout.side
            items.append(Ground(f"ground-{name}", "whole", 1, start=(side * start, road), end=(side * end, road)))
    return items


def _free_side(d: Drawn) -> Literal["left", "right"]:
    return "right" if d.layout.side > 0 else "left"


def _pressure(d: Drawn, step: int, at: Point, half: float, newtons: float) -> list[Item]:
    """Return the small arrows whose lengths add up to the contact force, and the line along their tails."""
    scale, per_mm = d.layout.whole.scale, d.layout.whole.newtons_per_mm or 1.0
    tails: list[Point] = []
    items: list[Item] = []
    for i, share in enumerate(fractions(_ARROWS)):
        y = at[0] + d.layout.side * half * ((i + 0.5) / _ARROWS * 2 - 1)
        # arrows stand clear of the tread's outline on the sheet
        tails.append((y, at[1] - (share * newtons / per_mm + 0.35) / scale))
        items.append(
            Force(
                f"pressure-{i + 1}",
                "whole",
                step,
                at=(y, at[1]),
                vector=(0.0, share * newtons),
                slender=True,
                gap=0.35,
                level=ABOVE_PARTS,
            )
        )
    items.append(
        Line("pressure-envelope", "whole", step, points=tuple(tails), style="thin", tone="load", level=ABOVE_PARTS)
    )
    return items


def small_items(d: Drawn, step: int) -> list[Item]:
    """Return weights and inertia forces: to the common scale in the whole wheel, longer in the lens."""
    words = d.words
    body = words.state.free_body
    items: list[Item] = []
    for name in ("wheel", "hub"):
        for kind in ("weight", "inertia"):
            single = body.force(f"{kind}_{name}")
            below = body.force(f"weight_{name}") if kind == "inertia" else None
            items += _small(d, single, d.layout.whole, step, label=None, below=below)
            label = _small_label(d, name) if kind == "weight" else None
            items += _small(d, single, d.layout.lens, step, label=label, below=below)
    return items + _lens(d, step) + _caliper(d, step)


def _small(
    d: Drawn, single: SingleForce, view: View, step: int, label: Label | None, below: SingleForce | None
) -> list[Item]:
    """Return a force at axle height; one that acts the same way as another begins where that one's arrow ends."""
    F, at = single.force, flat(single.point)
    if below is not None and below.force.z * F.z > 0:
        at = at[0], at[1] + below.force.z / (view.newtons_per_mm or 1.0) / view.scale
    items: list[Item] = []
    crossed = view is d.layout.lens and not d.words.nothing(d.words.state.free_body.force("inertia_hub").force.x)
    if not d.words.nothing(F.y) or not d.words.nothing(F.z):
        items.append(
            Force(
                single.name,
                view.name,
                step,
                at=at,
                vector=(F.y, F.z),
                tip_at_point=False,
                gap=GAP if crossed else 0.0,
                level=ABOVE_PARTS + 2,
                label=label,
            )
        )
    if not d.words.nothing(F.x) and view is d.layout.lens:
        items.append(line_of_sight(single.name, view.name, step, at, F.x, "applied", label))
    return items


def _small_label(d: Drawn, name: str) -> Label:
    """Return the label of a mass: its weight, and its inertia if it has any; the two stand apart."""
    words = d.words
    body = words.state.free_body
    other = "hub" if name == "wheel" else "wheel"
    own, across = body.force(f"weight_{name}").point.y, body.force(f"weight_{other}").point.y
    leftward = own > across or (own == across and name == "wheel")
    weight, inertia = words.weight(f"weight_{name}"), words.weight(f"inertia_{name}")
    what = "tire, wheel" if name == "wheel" else "hub"
    lines: tuple[str, ...] = (what, weight)
    if not words.still:
        lines = (what, f"weight {weight}", f"inertia {inertia}", words.ways(body.force(f"inertia_{name}").force))
    width = 0.74 * max(len(line) for line in lines)  # half of it, on the sheet
    apart = abs(own - across) * MM * d.layout.lens.scale / 2
    nudge = max(width + 1.6 - apart, 0.0)  # off the head of the other one
    frame, at = d.layout.lens.frame, d.layout.lens.on_sheet((own * MM, 0.0))[0]
    assert frame is not None
    inside = min(max(at + (-nudge if leftward else nudge), frame[0] + width + 1.0), frame[2] - width - 1.0)
    # below the weight and what reaches below it: the inertia, and where both masses are as one, the other's
    as_one = abs(own - across) * MM * d.layout.lens.scale < _AS_ONE
    reach = max(reach_of(body, each) for each in ((name, other) if as_one else (name,)))
    reach += body.force(f"weight_{name}").force.z
    lower = reach / (d.layout.lens.newtons_per_mm or 1.0)
    return Label(lines, "below", tone="load", size=LENS_WORDS, nudge=(inside - at, -lower))


def _lens(d: Drawn, step: int) -> list[Item]:
    """Return what the lens shows beside the forces: axis, load line, bearing centre, and its heading."""
    m, lens = d.parts.measures, d.layout.lens
    side = d.layout.side
    assert lens.frame is not None
    x0, _, x1, y1 = lens.frame
    reach = (x1 - x0) / 2 / lens.scale
    middle = -((x0 + x1) / 2 - lens.origin[0]) / lens.scale
    high, low = 4.0 / lens.scale, -1.0 / lens.scale
    line = side * m.load_line
    what = "Weights" if d.words.still else "Weights, inertia"
    heading, at = f"{what}: {longer(d.layout.lens_factor)}", (LENS[0] + 2.5, y1 - 4.4)
    return [
        Line(
            "lens-axis",
            "lens",
            step,
            points=((middle - reach, 0.0), (middle + reach, 0.0)),
            style="centre",
            tone="soft",
        ),
        Line("lens-load-line", "lens", step, points=((line, high), (line, low)), style="centre", tone="load"),
        Dot("lens-centre", "lens", step, at=(0.0, 0.0), radius=0.6, level=ABOVE_PARTS),
        centre_note("label-lens-centre", "lens", step, d, LENS_WORDS),
        d.layout.words("lens-heading", "lens", step, at, heading, LENS_WORDS),
    ]


def _caliper(d: Drawn, step: int) -> list[Item]:
    """Return the caliper's force where the cut meets the pads' path: off the axle, where the bearing pushes."""
    words = d.words
    caliper, brake = words.state.free_body.force("caliper"), words.results.setup.brake
    F = caliper.force
    if brake is None:
        return []
    # the bearing pushes from the other side of the axle, and this arrow lies outside the pads' path
    above = words.state.bearing_force.z <= 0
    at = (flat(caliper.point)[0], brake.effective_radius * MM * (1.0 if above else -1.0))
    upright = (f"{words.force(F.z)} {words.upright(F.z)}",)
    along = () if words.nothing(F.x) else (f"{words.force(F.x)} {words.fore_and_aft(F.x)}",)
    label = Label(("*Caliper on disc", *upright), d.outboard_column, tone="load", size=2.8)
    items: list[Item] = []
    if words.nothing(F.z):
        label = replace(label, lines=(label.lines[0], *along))
    else:
        arrow = Force(
            "caliper_z",
            "whole",
            step,
            at=at,
            vector=(0.0, F.z),
            tip_at_point=above == (F.z < 0),
            level=ABOVE_PARTS + 2,
            label=label,
            gap=GAP if along else 0.0,
        )
        arrow = visible(arrow, d.layout.whole)
        if arrow.label is not None:  # what the arrow says of itself stays with its own words
            arrow = replace(arrow, label=replace(arrow.label, lines=(*arrow.label.lines, *along)))
        items.append(arrow)
    if along:
        items.append(line_of_sight("caliper_x", "whole", step, at, F.x, "applied", None if items else label))
    return items
