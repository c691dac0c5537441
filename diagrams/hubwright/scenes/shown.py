"""Forces and lengths as a figure prints them: what the sentences of figures have in common."""

from hubwright.quantities import format_quantity
from hubwright.scenes.vocabulary import Units


class Shown:
    """Whatever has the unit system of a figure."""

    units: Units

    def force(self, newtons: float) -> str:
        """Return a force as shown."""
        return format_quantity(newtons, "force", self.units)

    def length(self, millimetres: float) -> str:
        """Return a length on a wheel as shown."""
        return format_quantity(millimetres / 1e3, "small length", self.units)
