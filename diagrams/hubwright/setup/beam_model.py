"""What a beam file says, as frozen data in SI floats: m, N, N·m, N/m; forces positive upward."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import ClassVar, Literal

from hubwright.setup.input_model import Input


@dataclass(frozen=True, slots=True)
class Support:
    """A support of a beam."""

    at: float
    type: Literal["pin", "roller", "fixed"]


@dataclass(frozen=True, slots=True)
class PointForce:
    """A force on a beam, positive upward as written in the file."""

    at: float
    force: float


@dataclass(frozen=True, slots=True)
class PointMoment:
    """A couple on a beam, positive as written in the file."""

    at: float
    moment: float


@dataclass(frozen=True, slots=True)
class DistributedLoad:
    """A load spread evenly over part of a beam [N/m], sign as that of a force."""

    start: float
    end: float
    intensity: float


@dataclass(frozen=True, slots=True)
class Section:
    """Stiffness of a beam's section."""

    youngs_modulus: float
    second_moment: float


@dataclass(frozen=True, slots=True)
class Beam:
    """A beam alone, from its own file."""

    kind: ClassVar[Literal["beam"]] = "beam"
    name: str
    stem: str
    length: float
    supports: tuple[Support, ...]
    loads: tuple[PointForce | PointMoment | DistributedLoad, ...]
    section: Section | None
    inputs: Mapping[str, Input]
    files: tuple[Path, ...]
