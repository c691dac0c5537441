"""Constants that more than one formula uses, and the type of a number that goes through them."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Value: TypeAlias = float | NDArray[np.float64]  # every formula takes either, and they broadcast
Flag: TypeAlias = np.bool_ | bool | NDArray[np.bool_]

STANDARD_GRAVITY = 9.80665  # m/s², 3rd General Conference on Weights and Measures, 1901
INCH = 0.0254  # m, exact
STEEL_YOUNGS_MODULUS = 207e9  # Pa, bearing steel as in Harris, Rolling Bearing Analysis (from memory)
STEEL_POISSONS_RATIO = 0.3  # same
