"""Load cases of a setup, as frozen data: one class for each kind, heights in m, angles in rad, accelerations over g."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal

Side = Literal["left", "right"]


@dataclass(frozen=True, slots=True)
class Standing:
    """Standing on level ground."""

    kind: ClassVar[Literal["standing"]] = "standing"
    name: str
    declared: str  # the name in the file: differs where "both" made two cases


@dataclass(frozen=True, slots=True)
class Braking:
    """Braking with braking_g times g."""

    kind: ClassVar[Literal["braking"]] = "braking"
    name: str
    declared: str
    braking_g: float


@dataclass(frozen=True, slots=True)
class Driving:
    """Accelerating with driving_g times g."""

    kind: ClassVar[Literal["driving"]] = "driving"
    name: str
    declared: str
    driving_g: float
    driven: Literal["front", "rear", "all"]


@dataclass(frozen=True, slots=True)
class Cornering:
    """A bend toward one side with lateral_g times g."""

    kind: ClassVar[Literal["cornering"]] = "cornering"
    name: str
    declared: str
    lateral_g: float
    toward: Side


@dataclass(frozen=True, slots=True)
class SideSlope:
    """Standing across a slope, one side uphill."""

    kind: ClassVar[Literal["side_slope"]] = "side_slope"
    name: str
    declared: str
    angle: float
    uphill: Side


@dataclass(frozen=True, slots=True)
class TwoWheel:
    """Standing on two diagonal wheels."""

    kind: ClassVar[Literal["two_wheel"]] = "two_wheel"
    name: str
    declared: str
    supported: Literal["front_left+rear_right", "front_right+rear_left"]


@dataclass(frozen=True, slots=True)
class Ledge:
    """Being pushed over a square ledge."""

    kind: ClassVar[Literal["ledge"]] = "ledge"
    name: str
    declared: str
    height: float


@dataclass(frozen=True, slots=True)
class Drop:
    """Falling from a height onto the tire."""

    kind: ClassVar[Literal["drop"]] = "drop"
    name: str
    declared: str
    height: float


Case = Standing | Braking | Driving | Cornering | SideSlope | TwoWheel | Ledge | Drop
CaseKind = Literal["standing", "braking", "driving", "cornering", "side_slope", "two_wheel", "ledge", "drop"]
