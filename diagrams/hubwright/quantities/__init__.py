"""Values with units: reading what people write, dimension-checked arithmetic, showing in SI and US units."""

from hubwright.quantities.formatting import (
    FOOT,
    INCH,
    KINDS,
    POUND,
    POUND_FORCE,
    Kind,
    Shown,
    System,
    default_kind,
    display,
    format_number,
    format_quantity,
    format_range,
)
from hubwright.quantities.quantity import Quantity
from hubwright.quantities.reading import Measured, parse
from hubwright.quantities.sums import adding_up, display_sum, display_terms, format_sums, format_terms
from hubwright.quantities.units import DIMENSIONS, Dimension, DimensionName

__all__ = [
    "DIMENSIONS",
    "FOOT",
    "INCH",
    "KINDS",
    "POUND",
    "POUND_FORCE",
    "Dimension",
    "DimensionName",
    "Kind",
    "Measured",
    "Quantity",
    "Shown",
    "System",
    "adding_up",
    "default_kind",
    "display",
    "display_sum",
    "display_terms",
    "format_number",
    "format_quantity",
    "format_range",
    "format_sums",
    "format_terms",
    "parse",
]
