"""Water at a setup's seals and dirt in its grease; what the file does not say is named, not guessed. SI units."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from hubwright.mechanics.bearing_rating import Elements, one_row_static_rating
from hubwright.mechanics.contamination import contamination_factors, fatigue_load_limit, life_modification
from hubwright.mechanics.sealing import depth_pressure, equivalent_depth, quench_suction
from hubwright.results.model import Results
from hubwright.setup.model import BallBearing


@dataclass(frozen=True)
class SealingResult:
    """Pressures across the seal of a hub in a ford [Pa]; None where `missing` names what the file does not say."""

    depth_pressure: float | None
    suction: float | None
    together: float | None
    suction_as_depth: float | None  # m of water
    missing: tuple[str, ...]

    @property
    def suction_over_depth(self) -> float | None:
        """How many times the pressure of the depth the suction is; None without either, or without depth."""
        return None if not self.depth_pressure or self.suction is None else self.suction / self.depth_pressure


@dataclass(frozen=True)
class LifeFactor:
    """The factor on a row's life at the dirtier and the cleaner end of the class [1]."""

    low: float
    high: float


@dataclass(frozen=True)
class LubricationResult:
    """What dirt and film leave of the life of the worst row, by case; empty where `missing` names what is not said."""

    contamination_factor: tuple[float, float] | None
    fatigue_load_limit: float | None  # of one row [N]
    life_factor: Mapping[str, LifeFactor] = field(default_factory=dict)
    missing: tuple[str, ...] = ()


def sealing_result(results: Results) -> SealingResult:
    """Return the pressures across a hub's seals at the ford that the file describes."""
    sealing = results.setup.sealing
    names = ("hub_temperature", "water_temperature", "depth")
    if sealing is None:
        return SealingResult(None, None, None, None, tuple(f"sealing.{name}" for name in names))
    hot, cold, depth = sealing.hub_temperature, sealing.water_temperature, sealing.depth
    pressure = None if depth is None else float(depth_pressure(depth=depth))
    suction = None
    if hot is not None and cold is not None:
        suction = float(quench_suction(hub_temperature=hot, water_temperature=cold))
    return SealingResult(
        depth_pressure=pressure,
        suction=suction,
        together=None if pressure is None or suction is None else pressure + suction,
        suction_as_depth=None if suction is None else float(equivalent_depth(pressure=suction)),
        missing=tuple(f"sealing.{name}" for name in names if getattr(sealing, name) is None),
    )


def lubrication_result(results: Results) -> LubricationResult:
    """Return the factor on life of every case for the file's contamination class and viscosity ratio."""
    lubrication, bearing = results.setup.lubrication, results.setup.bearing
    ratio = None if lubrication is None else lubrication.viscosity_ratio
    contamination = None if lubrication is None else lubrication.contamination
    missing = [
        key
        for key, value in (
            ("lubrication.viscosity_ratio", ratio),
            ("lubrication.contamination", contamination),
            ("bearing.pitch_diameter", bearing.pitch_diameter),
        )
        if value is None
    ]
    band = None
    if contamination is not None and bearing.pitch_diameter is not None:
        low, high = contamination_factors(contamination=contamination, pitch_diameter=bearing.pitch_diameter)
        band = (float(low), float(high))
    elements: Elements = "balls" if isinstance(bearing, BallBearing) else "rollers"
    rating, limit = results.bearing.static_rating, None
    if rating is not None and bearing.pitch_diameter is not None:
        row_rating = one_row_static_rating(static_rating=rating)
        limit = float(
            fatigue_load_limit(static_rating=row_rating, pitch_diameter=bearing.pitch_diameter, elements=elements)
        )
    life = results.life
    if band is None or limit is None or ratio is None or life is None:
        return LubricationResult(band, limit, missing=tuple(missing))
    factors = {}
    for name, case in life.cases.items():
        if case.detailed is None:  # a drop is no fatigue cycle
            continue
        worst = max(case.equivalent_load.outboard, case.equivalent_load.inboard)
        low, high = (
            float(
                life_modification(
                    contamination_factor=factor,
                    fatigue_load_limit=limit,
                    equivalent_load=worst,
                    viscosity_ratio=ratio,
                    elements=elements,
                )
            )
            for factor in band
        )
        factors[name] = LifeFactor(low, high)
    return LubricationResult(band, limit, factors, tuple(missing))
