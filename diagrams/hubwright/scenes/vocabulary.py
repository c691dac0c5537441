"""What a diagram can say: parts, forces, moments, dimensions, labels, plots and steps as frozen data.

Real millimetres and newtons in views; sheet millimetres where a name says so. In a view the first coordinate runs to
the right on the sheet, unless the view is mirrored (sections seen from the rear: +y, outboard at a left wheel, runs to
the left); the second runs up. On the sheet x runs to the right and y up, from the drawing area's lower left corner.

Text is plain but for two marks: `{F|z}` is an italic symbol with a subscript, `*` makes the line that it opens strong.
"""

import re
from dataclasses import dataclass, field
from typing import Literal

MARK = re.compile(r"\{(?P<symbol>[^|{}]+)(?:\|(?P<below>[^{}]*))?\}")  # a symbol in text
Point = tuple[float, float]
Units = Literal["si", "us"]
Tone = Literal["ink", "soft", "faint", "load", "reaction", "moment", "changed", "before"]
Material = Literal[
    "turning",  # buff: what turns with the wheel
    "turning-2",  # its neighbour, hatched the other way
    "fixed",  # grey: what stands
    "fixed-2",
    "steel",  # shafts, studs, nuts, cut lengthwise and so not hatched
    "ball",
    "rubber",
    "rubber-2",
    "changed",  # what a setup adds or moves
    "cavity",  # seen beyond the cut
    "ghost",  # pale, beyond the cut
    "paper",
    "body",  # a vehicle seen from outside
    "none",
]
LineStyle = Literal["outline", "thin", "hidden", "centre", "phantom", "hair"]
Role = Literal["applied", "reaction", "resultant"]
NOT_TO_SCALE = "not to scale"
LENGTH_OFF_SCALE = 8.5  # sheet millimetres, of an arrow that is not to scale
Phase = Literal["isolate", "loads", "reactions", "dimensions", "solve"]
PHASES: tuple[Phase, ...] = ("isolate", "loads", "reactions", "dimensions", "solve")


@dataclass(frozen=True)
class View:
    """A window with its own scale: `origin` is where its (0, 0) lies on the sheet."""

    name: str
    origin: Point
    scale: float  # sheet millimetres per real millimetre; plots: per unit of the abscissa
    newtons_per_mm: float | None = None  # force scale, newtons per sheet millimetre
    mirrored: bool = False
    frame: tuple[float, float, float, float] | None = None  # x0, y0, x1, y1 on the sheet: clips parts and lines
    title: str = ""  # such as "Detail A"
    vertical_per_mm: float | None = None  # plots: ordinate per sheet millimetre; y is then not mm
    heading: str = ""  # what it is called where it is a drawing of its own (a phone): each view of several has one
    level_with: str = ""  # to which it is compared: where each is a drawing of its own, both keep scale and level

    def on_sheet(self, point: Point) -> Point:
        """Return where a point of the view lies on the sheet, in sheet millimetres."""
        sign = -1.0 if self.mirrored else 1.0
        rise = self.scale if self.vertical_per_mm is None else 1.0 / self.vertical_per_mm
        return self.origin[0] + sign * self.scale * point[0], self.origin[1] + rise * point[1]


@dataclass(frozen=True)
class Item:
    """What every item has: its name in the file, the view it lies in and the step in which it is drawn."""

    name: str
    view: str
    step: int = 1
    level: float = field(default=0.0, kw_only=True)  # within a step, higher is painted later
    wide_only: bool = field(default=False, kw_only=True)  # left out where each view is a drawing of its own (a phone)


@dataclass(frozen=True)
class Part(Item):
    """A solid, cut (hatched) or seen; rings are closed polygons, filled by the even-odd rule."""

    rings: tuple[tuple[Point, ...], ...] = ()
    material: Material = "turning"
    hatch: float | None = None  # angle in degrees
    hatch_pitch: float = 1.2  # sheet millimetres
    outline: float = 0.25  # sheet millimetres; 0 draws none
    tone: Tone = "ink"
    kept_clear: Literal["", "edge", "whole"] = ""  # what words keep off: a vehicle's outline, a whole bar; else nothing


@dataclass(frozen=True)
class Line(Item):
    """An open line of a drawing: an edge, a hidden edge, a centre line, a load line."""

    points: tuple[Point, ...] = ()
    style: LineStyle = "thin"
    tone: Tone = "ink"
    width: float | None = None  # sheet millimetres, else that of the style
    extend: float = 0.0  # sheet millimetres added at both ends
    clipped: bool = True


@dataclass(frozen=True)
class Dot(Item):
    """A marked point: a centre, a pressure centre, a centre of mass."""

    at: Point = (0.0, 0.0)
    kind: Literal["dot", "centre of mass", "ring"] = "dot"
    tone: Tone = "ink"
    radius: float = 0.7  # sheet millimetres


@dataclass(frozen=True)
class Label:
    """Words that belong to an item: lines, and where they may stand."""

    lines: tuple[str, ...]
    place: Literal["left column", "right column", "above", "below", "left", "right", "tail"] = "right"
    anchor: Point | None = None  # in the view; else the item's own
    tone: Tone = "ink"
    size: float = 2.5  # cap height, sheet millimetres
    leader_dot: bool = False
    nudge: Point = (0.0, 0.0)  # sheet millimetres; in a column only how much higher than their point words wish to be
    also: tuple[Point, ...] = ()  # other points of the item, in the view, at which a leader may end if that is clearer


@dataclass(frozen=True)
class Force(Item):
    """A force to the view's force scale; `vector` in newtons in the view's axes.

    A distributed load is a row of `slender` ones that add up to a force, with a `Line` along their tails.
    """

    at: Point = (0.0, 0.0)
    vector: Point = (0.0, 0.0)
    role: Role = "applied"
    tip_at_point: bool = True  # else the tail stands on the point
    slender: bool = False  # one of many small arrows of a distributed load
    label: Label | None = None
    gap: float = 0.0  # sheet millimetres between the point and the arrow
    to_scale: bool = True  # else of a fixed length with a broken shaft: its label must say that it is not to scale

    def __post_init__(self) -> None:
        """Refuse an arrow that is silently not to scale."""
        said = any(NOT_TO_SCALE in text for text in (self.label.lines if self.label else ()))
        if not self.to_scale and not said:
            raise ValueError(f"the arrow '{self.name}' is not to scale: a line of its label says '{NOT_TO_SCALE}'")


@dataclass(frozen=True)
class Normal(Item):
    """A force along the line of sight: toward the viewer (dot in a ring) or away (cross in a ring)."""

    at: Point = (0.0, 0.0)
    newtons: float = 0.0  # toward the viewer positive
    role: Role = "applied"
    label: Label | None = None


@dataclass(frozen=True)
class Moment(Item):
    """A couple as an arc of fixed size, of a reaction a double one; counter-clockwise as seen positive."""

    at: Point = (0.0, 0.0)
    newton_metres: float = 0.0
    role: Role = "reaction"
    radius: float = 8.0  # sheet millimetres
    label: Label | None = None


@dataclass(frozen=True)
class Dimension(Item):
    """A linear dimension between two points of a view, its line at a place on the sheet."""

    start: Point = (0.0, 0.0)
    end: Point = (0.0, 0.0)
    direction: Literal["horizontal", "vertical"] = "horizontal"
    line_at: float = 0.0  # sheet coordinate of the dimension line: y if horizontal, x if vertical
    text: str = ""  # without any, another label speaks for it
    side: Literal["auto", "start", "end"] = "auto"  # where text goes that does not fit between
    extension: tuple[bool, bool] = (True, True)
    tone: Tone = "ink"


@dataclass(frozen=True)
class AngularDimension(Item):
    """An angular dimension: an arc about a vertex between two directions, each given by a point of the view on it."""

    vertex: Point = (0.0, 0.0)
    start: Point = (1.0, 0.0)
    end: Point = (0.0, 1.0)
    radius: float = 12.0  # of the arc, sheet millimetres
    extension: tuple[bool, bool] = (False, False)  # thin lines from those points on to the arc
    label: Label | None = None
    tone: Tone = "ink"


@dataclass(frozen=True)
class LeaderDimension(Item):
    """A leader dimension: a length between two points in its own direction, its text at the end of a leader.

    A radius runs from its centre and has one head, a diameter runs through the circle and has two.
    """

    start: Point = (0.0, 0.0)
    end: Point = (0.0, 0.0)
    measures: Literal["radius", "diameter"] = "diameter"
    label: Label | None = None
    tone: Tone = "ink"


@dataclass(frozen=True)
class Spring(Item):
    """The symbol of a spring between two points: a zigzag with straight ends."""

    start: Point = (0.0, 0.0)
    end: Point = (0.0, 0.0)
    width: float = 5.0  # sheet millimetres
    turns: int = 5
    tone: Tone = "ink"


@dataclass(frozen=True)
class Damper(Item):
    """The symbol of a damper between two points: a cylinder at the start, a rod with its piston from the end."""

    start: Point = (0.0, 0.0)
    end: Point = (0.0, 0.0)
    width: float = 4.0  # sheet millimetres
    tone: Tone = "ink"


@dataclass(frozen=True)
class Callout(Item):
    """What speaks of a place from beside it, with a pointer to it: a letter in a ring, or a remark in a frame."""

    at: Point = (0.0, 0.0)
    form: Literal["ring", "frame"] = "ring"
    label: Label = field(default_factory=lambda: Label(()))


@dataclass(frozen=True)
class Note(Item):
    """A labelled thing that is neither force nor dimension: a part's name with its leader."""

    label: Label = field(default_factory=lambda: Label(()))


@dataclass(frozen=True)
class Words(Item):
    """Words at a fixed place on the sheet; the view may be left empty."""

    at_sheet: Point = (0.0, 0.0)  # on the baseline of the first line
    lines: tuple[str, ...] = ()
    size: float = 2.5
    tone: Tone = "ink"
    align: Literal["left", "centre", "right"] = "left"
    halo: bool = False  # with an edge of paper that keeps them clear of lines behind


@dataclass(frozen=True)
class Ground(Item):
    """Ground as a line with hatching below, between two points of a view."""

    start: Point = (0.0, 0.0)
    end: Point = (0.0, 0.0)


@dataclass(frozen=True)
class Support(Item):
    """The symbol of a beam's support."""

    at: Point = (0.0, 0.0)
    kind: Literal["pin", "roller", "fixed-left", "fixed-right", "knife edges"] = "pin"
    tone: Tone = "reaction"


@dataclass(frozen=True)
class Curve(Item):
    """A plotted quantity in the units of its view, filled to zero if asked."""

    points: tuple[Point, ...] = ()
    tone: Tone = "ink"
    filled: bool = True
    width: float = 0.5
    dashed: bool = False


@dataclass(frozen=True)
class Bar(Item):
    """A level bar of a chart between two values of its view's abscissa, with the span of its end if there is one."""

    start: float = 0.0
    end: float = 0.0
    at: float = 0.0  # height of its middle, in the view
    thick: float = 3.4  # sheet millimetres
    tone: Tone = "ink"
    is_open: bool = False  # an outline: what answers the others
    span: tuple[float, float] | None = None
    label: Label | None = None


@dataclass(frozen=True)
class Axis(Item):
    """An axis of a plot with marks and their words; on a phone it stays with its plot."""

    direction: Literal["horizontal", "vertical"] = "horizontal"
    at: float = 0.0  # where it stands along the other axis
    start: float = 0.0
    end: float = 0.0
    marks: tuple[tuple[float, str], ...] = ()  # places and words; marks without words are short
    side: Literal["low", "high"] = "low"  # words below or left of it, or above or right
    grid_to: float | None = None  # marks with words go on as faint lines to there
    title: str = ""
    lift: float = 0.0  # sheet millimetres by which the title stands farther off, above the words of another axis


@dataclass(frozen=True)
class Column:
    """A place for a column of labels: text edge at sheet x, between two sheet heights."""

    side: Literal["left", "right"]
    x: float
    low: float
    high: float


@dataclass(frozen=True)
class ScaleBar:
    """A graphic scale of lengths (mm and in) or of forces (kN and lbf) for one view, in the strip at the foot."""

    view: str
    quantity: Literal["length", "force"]
    caption: str


@dataclass(frozen=True)
class KeyEntry:
    """An entry of the key in the strip at the foot."""

    kind: Literal[
        "load",
        "reaction",
        "resultant",
        "weight",
        "moment",  # of a load
        "reaction moment",
        "load line",
        "slip plane",
        "turning",
        "fixed",
        "changed",
        "hidden",
    ]
    text: str


@dataclass(frozen=True)
class ClosedBody:
    """The free body that a scene shows: name, force and point (or couple) of everything that acts on it, in SI, 3D."""

    forces: tuple[tuple[str, tuple[float, float, float], tuple[float, float, float]], ...] = ()
    couples: tuple[tuple[str, tuple[float, float, float]], ...] = ()
    name: str = ""  # where a scene shows several


@dataclass(frozen=True)
class Step:
    """One move of building a figure up: a short imperative heading and a sentence."""

    heading: str
    sentence: str
    phase: Phase | None = None  # where it stands in the teaching order of a free body


@dataclass(frozen=True)
class Scene:
    """A whole diagram for one setup, case and unit system."""

    name: str  # "wheel-end-section"
    title: str
    caption: str
    description: str  # the text alternative
    units: Units
    size: Point  # width and height of the drawing area in sheet millimetres, title and caption not included
    views: tuple[View, ...]
    items: tuple[Item, ...]
    steps: tuple[Step, ...] = ()
    columns: tuple[Column, ...] = ()
    scale_bars: tuple[ScaleBar, ...] = ()
    key: tuple[KeyEntry, ...] = ()
    axes: Literal["rear", "side", "none"] = "none"  # the triad: y left and z up, or x and z up
    body: ClosedBody | None = None
    further_bodies: tuple[ClosedBody, ...] = ()  # each closes for itself

    @property
    def bodies(self) -> tuple[ClosedBody, ...]:
        """Return every free body that the scene shows."""
        return (() if self.body is None else (self.body,)) + self.further_bodies

    def view(self, name: str) -> View:
        """Return the view of that name."""
        return next(view for view in self.views if view.name == name)
