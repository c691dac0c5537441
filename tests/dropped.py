"""Setups with a drop: the demonstration vehicles', and random ones."""

from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from hubwright.results import Results, solve
from hubwright.setup import load
from strategies import built, setup_data

CONTENT = Path(__file__).parents[1] / "content"
DROPPED = ("vehicles/hill-wagon.toml", "setups/winter-fit-out.toml", "setups/summer-fit-out.toml")


def demonstration(file: str) -> Results:
    """The results of a file of the course."""
    return solve(load(CONTENT / file))


@st.composite
def drops(draw: st.DrawFn) -> Results:
    """Random vehicles that drop from up to 1 m."""
    data: dict[str, Any] = draw(setup_data(kinds=("vehicle",), rows_known=False))
    data.setdefault("suspension", {})
    case = {"name": "fall", "kind": "drop", "height": f"{draw(st.floats(1.0, 1000.0)):.1f} mm"}
    data["case"] = [case]
    data.pop("duty", None)
    return solve(built(data))
