"""A vector whose components are numbers or arrays, for forces, moments and points.

Axes of the vehicle, ISO 8855: x forward, y to the left, z up.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from hubwright.mechanics.constants import Value


@dataclass(frozen=True)
class Vector:
    """Three components in the axes of the vehicle; arrays broadcast component by component."""

    x: Value = 0.0
    y: Value = 0.0
    z: Value = 0.0

    __array_ufunc__ = None  # else array * Vector would make an array of objects

    def __add__(self, other: Vector) -> Vector:
        """Return the sum, component by component."""
        return Vector(self.x + other.x, self.y + other.y, self.z + other.z)

    def __sub__(self, other: Vector) -> Vector:
        """Return the difference, component by component."""
        return Vector(self.x - other.x, self.y - other.y, self.z - other.z)

    def __neg__(self) -> Vector:
        """Return the vector turned round."""
        return Vector(-self.x, -self.y, -self.z)

    def __mul__(self, factor: Value) -> Vector:
        """Return the vector stretched by a factor."""
        return Vector(self.x * factor, self.y * factor, self.z * factor)

    __rmul__ = __mul__

    def cross(self, other: Vector) -> Vector:
        """Return the vector product self × other: the moment of a force `other` at a point `self`."""
        return Vector(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )

    def length(self) -> Value:
        """Return the length, in the unit of the components."""
        return np.hypot(np.hypot(self.x, self.y), self.z)


def total(vectors: Iterable[Vector]) -> Vector:
    """Return the sum of vectors; nothing sums to zero."""
    result = Vector()
    for vector in vectors:
        result = result + vector
    return result
