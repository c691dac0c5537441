"""Small sites and pages to render lessons in."""

from pathlib import Path
from textwrap import dedent

from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.page_state import PageState
from hubwright.lessons.pages import Renderer

WAGON = """\
name = "Test wagon"
[chassis]
front_axle_mass = "1120 kg"
rear_axle_mass = "1010 kg"
wheelbase = "2.78 m"
front_track = "1.60 m"
centre_of_mass_height = "0.69 m"
front_roll_share = 0.55
[tire]
size = "245/75R16"
mass = "17 kg"
vertical_stiffness = "260 N/mm"
[wheel]
rim_width = "7 in"
offset = "30 mm"
mass = "9 kg"
[hub]
face_to_bearing_centre = "42 mm ± 4 mm"
rotating_mass = "14 kg"
[bearing]
kind = "two-row ball"
balls_per_row = 13
ball_diameter = "12.7 mm"
pitch_diameter = "62 mm"
contact_angle = "35 deg"
row_spacing = "24 mm"
[spindle]
diameter = "32 mm"
[[gear]]
name = "Box"
mass = "50 kg"
behind_front_axle = "-0.695 m"
left_of_centre = "0.40 m"
above_ground = "0.8 m"
[[case]]
name = "brisk corner"
kind = "cornering"
lateral_g = 0.3
[[case]]
name = "firm braking"
kind = "braking"
braking_g = 0.5
[[case]]
name = "cross slope"
kind = "side_slope"
angle = "12 deg"
[[case]]
name = "stone ledge"
kind = "ledge"
height = "80 mm"
"""
TRAILER = """\
name = "Test trailer"
kind = "trailer"
[chassis]
axle_mass = "610 kg"
coupling_mass = "65 kg"
coupling_ahead_of_axle = "2.90 m"
track = "1.62 m"
centre_of_mass_height = "0.72 m"
[tire]
size = "185/75R14"
[wheel]
rim_width = "5.5 in"
offset = "20 mm"
[bearing]
kind = "tapered pair"
turning_ring = "outer"
rollers_per_row = 17
roller_diameter = "7.2 mm"
roller_length = "12.5 mm"
pitch_diameter = "44 mm"
contact_angle = "13 deg"
row_spacing = "46 mm"
[[gear]]
name = "Rope box"
mass = "85 kg"
behind_axle = "-0.40 m"
left_of_centre = "0 m"
above_ground = "0.85 m"
"""
SOURCES = '[lever]\nauthor = "Archimedes"\ntitle = "On the equilibrium of planes"\n'


def write_docs(directory: Path, **pages: str) -> Path:
    """Write a docs directory with a wagon, a trailer and pages by stem; return it."""
    docs = directory / "content"
    files = {
        "vehicles/wagon.toml": WAGON,
        "vehicles/kit-trailer.toml": TRAILER,
        "sources.toml": SOURCES,
        **{f"{stem}.md": dedent(text) for stem, text in pages.items()},
    }
    for name, text in files.items():
        path = docs / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return docs


def write_site(directory: Path, *, setup: str = "wagon", more: str = "", **pages: str) -> Path:
    """Write a whole site; return its directory."""
    write_docs(directory, **{"index": "# Home\n", **pages})
    settings = f"""\
        site_name: Test course
        docs_dir: content
        use_directory_urls: false
        theme: {{name: hubwright}}
        plugins:
          - search
          - hubwright:
              setup: {setup}
        """
    (directory / "mkdocs.yml").write_text(dedent(settings) + dedent(more), encoding="utf-8")
    return directory


def rendered(directory: Path, text: str, *, setup: str = "wagon") -> tuple[PageState, str]:
    """Return the state and the Markdown of one page of a small course."""
    course = Course.read(write_docs(directory), in_view=setup, shown="content")
    assert not course.problems
    return Renderer(course, Undrawn()).page(dedent(text), "content/page.md")


def problems(directory: Path, text: str, *, setup: str = "wagon") -> list[str]:
    """Return what is wrong with one page of a small course."""
    state, _ = rendered(directory, text, setup=setup)
    return [str(problem) for problem in state.problems]
