"""What the makers of the wheel-end section's items share: sheet, parts and words, and how points and forces are seen.

Views look forward from the rear: their first axis is ISO y, their second z, real millimetres from the bearing centre; x
points away from the viewer.
"""

from dataclasses import dataclass
from typing import Literal

from hubwright.results.model import FreeBody, Vector
from hubwright.scenes.vocabulary import ClosedBody, Label, Normal, Note, Point, Role
from hubwright.scenes.wheel_end_layout import Layout
from hubwright.scenes.wheel_end_parts.assembly import Assembly
from hubwright.scenes.wheel_end_words import Wording

Place = Literal["left column", "right column"]

MM = 1e3
ABOVE_PARTS = 20.0  # level of forces
GAP = 1.9  # between a point and an arrow, where a force along the line of sight is drawn on the point


@dataclass(frozen=True)
class Drawn:
    """What the makers of items share."""

    layout: Layout
    parts: Assembly
    words: Wording

    @property
    def outboard_column(self) -> Place:
        """Return the place of labels outboard of what they name."""
        return "left column" if self.layout.side > 0 else "right column"

    @property
    def inboard_column(self) -> Place:
        """Return the place of labels inboard of what they name."""
        return "right column" if self.layout.side > 0 else "left column"


def closed_body(body: FreeBody, name: str = "") -> ClosedBody:
    """Return a free body of the results for the check that every drawing makes."""
    return ClosedBody(
        tuple((single.name, single.force.components, single.point.components) for single in body.forces),
        tuple((couple.name, couple.moment.components) for couple in body.couples),
        name,
    )


def centre_note(name: str, view: str, step: int, d: Drawn, size: float) -> Note:
    """Return the letter of the bearing centre: above the axis, on the side where the load line is not."""
    beside = 2.4 * d.layout.side * (1.0 if d.parts.measures.load_line >= 0 else -1.0)
    label = Label(("{C}",), "above", anchor=(0.0, 0.0), size=size, nudge=(beside, 0.3))
    return Note(name, view, step, label=label, level=30.0)


def line_of_sight(
    name: str, view: str, step: int, at: Point, newtons: float, role: Role, label: Label | None
) -> Normal:
    """Return a force along x as a point or a cross in a ring."""
    # x points away from a viewer behind the vehicle
    return Normal(name, view, step, at=at, newtons=-newtons, role=role, label=label, level=ABOVE_PARTS + 7)


def flat(point: Vector) -> Point:
    """Return a point of the free body in the view's axes."""
    return point.y * MM, point.z * MM
