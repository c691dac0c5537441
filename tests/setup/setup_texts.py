"""Small files for the tests of reading, and how to see all messages of one."""

import re

from hubwright.errors import SetupErrors
from hubwright.setup import Setup, load_text

LEAST = """\
name = "Least"

[chassis]
front_axle_mass = "1000 kg"
rear_axle_mass = "800 kg"
wheelbase = "2.5 m"
front_track = "1.5 m"

[tire]
size = "245/75R16"

[wheel]
rim_width = "7 in"
offset = "30 mm"
"""

LEAST_TRAILER = """\
name = "Least trailer"
kind = "trailer"

[chassis]
axle_mass = "600 kg"
coupling_mass = "60 kg"
coupling_ahead_of_axle = "3 m"
track = "1.6 m"

[tire]
size = "185/75R14"

[wheel]
rim_width = "5.5 in"
offset = "20 mm"
"""


def least(*more: str, without: str = "", trailer: bool = False) -> str:
    """The least file, some of its lines left out, with more text at its end."""
    lines = (LEAST_TRAILER if trailer else LEAST).splitlines()
    kept = [line for line in lines if not (without and re.match(without, line))]
    return "\n".join([*kept, *more]) + "\n"


def setup_of(text: str) -> Setup:
    """The setup of a text that has no problem."""
    setup = load_text(text, "least.toml")
    assert isinstance(setup, Setup)
    return setup


def messages(text: str) -> list[str]:
    """All messages about a text, without the file's name; empty when it has no problem."""
    try:
        load_text(text, "least.toml")
    except SetupErrors as errors:
        return [str(problem).removeprefix("least.toml:") for problem in errors.problems]
    return []
