"""The pressure of a ford's depth beside the suction of a warm hub in cold water, as bars of one scale."""

from dataclasses import replace

from hubwright.errors import MissingDataError
from hubwright.quantities import format_quantity
from hubwright.results.model import Results
from hubwright.results.water import SealingResult, sealing_result
from hubwright.scenes.chart_rows import BarValue
from hubwright.scenes.comparison_bars import comparison_bars
from hubwright.scenes.vocabulary import Scene, Units


def sealing_of(results: Results, figure: str) -> tuple[SealingResult, float, float]:
    """Return the pressures across a seal, and of them depth and suction [Pa]; name what the file does not say."""
    found = sealing_result(results)
    if found.depth_pressure is None or found.suction is None:
        raise MissingDataError(result=figure, missing=found.missing)
    return found, found.depth_pressure, found.suction


def depth_against_quench(results: Results, *, case: str | None = None, units: Units = "si") -> Scene:
    """Return the scene of both pressures as bars; they do not depend on the case."""
    del case
    found, depth, suction = sealing_of(results, "the pressure of depth against that of a quench")
    sealing = results.setup.sealing
    assert sealing is not None
    assert sealing.depth is not None
    water = format_quantity(sealing.depth, "small length", units)
    values = (
        BarValue(f"Depth of {water}", depth, kind="fluid pressure"),
        BarValue("Warm hub cooled by the water", suction, kind="fluid pressure"),
    )
    scene = comparison_bars(values, quantity="Pressure across the seal", units=units)
    return replace(
        scene,
        name="depth-against-quench",
        title=told(found, units),
        caption=(
            "Pressures that push water inward past the seal, at one scale. The suction is an upper estimate: "
            "closed hub, cooled all the way; a lip that lets in air ends it."
        ),
        description=f"{told(found, units)}. {temperatures(results, units)}.",
    )


def told(found: SealingResult, units: Units) -> str:
    """Return both pressures in a sentence without its full stop."""
    assert found.depth_pressure is not None
    assert found.suction is not None
    depth = format_quantity(found.depth_pressure, "fluid pressure", units)
    if found.suction <= 0:
        return f"The depth presses with {depth}; water as warm as the hub makes no suction"
    suction = format_quantity(found.suction, "fluid pressure", units)
    if not found.suction_over_depth:
        return f"A warm hub cooled by the water draws with {suction}"
    times = f"{found.suction_over_depth:,.1f}"
    return f"A warm hub cooled by the water draws with {suction}, {times} times the {depth} of the depth"


def temperatures(results: Results, units: Units) -> str:
    """Return the temperatures from which the suction comes, without a full stop."""
    sealing = results.setup.sealing
    assert sealing is not None
    assert sealing.hub_temperature is not None
    assert sealing.water_temperature is not None
    hub, water = (
        format_quantity(kelvins, "temperature", units).replace("\u2212", "minus ")  # as it is said aloud
        for kelvins in (sealing.hub_temperature, sealing.water_temperature)
    )
    return f"The hub goes in at {hub}, the water has {water}"
