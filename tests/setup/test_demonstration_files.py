"""The demonstration vehicles, setups and beams, and the table of keys they are written by."""

from pathlib import Path

import pytest
from hypothesis import given, settings

from hubwright.setup import Beam, Setup, key_reference, load, load_text
from strategies import as_toml, built, setup_data

CONTENT = Path(__file__).parents[2] / "content"
FILES = sorted(path for folder in ("vehicles", "setups", "beams") for path in (CONTENT / folder).glob("*.toml"))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_demonstration_file_loads(path):
    assert isinstance(load(path), Beam if path.parent.name == "beams" else Setup)


def test_the_hill_wagon_gives_every_key_that_owners_can_know():
    """All but the other ways of saying the same, and ratings, which the lesson on them computes."""
    source = load(CONTENT / "vehicles" / "hill-wagon.toml").source
    other_ways = {
        "chassis.total_mass", "chassis.front_share", "chassis.static_stability_figure", "chassis.overall_height",
        "tire.free_diameter", "tire.section_width", "tire.rim_diameter", "tire.loaded_radius", "wheel.backspacing",
        "bearing.dynamic_rating", "bearing.static_rating",
    }  # fmt: skip
    keys = {
        entry.dotted
        for entry in key_reference("vehicle")
        if entry.table not in ("", "gear", "case", "duty") and "roller" not in entry.dotted
    }
    assert {key for key in keys if source.get(key) is None} == other_ways


def test_no_case_kind_is_missing_from_the_hill_wagon():
    kinds = {case.kind for case in load(CONTENT / "vehicles" / "hill-wagon.toml").cases}
    assert len(kinds) == 8


def test_spacers_and_offset_wheels_have_one_load_line():
    spacers, offset = (load(CONTENT / "setups" / f"{stem}.toml") for stem in ("winter-fit-out", "winter-offset-wheels"))
    assert spacers.wheel.spacer - spacers.wheel.offset == pytest.approx(offset.wheel.spacer - offset.wheel.offset)
    assert spacers.corner_mass_change == offset.corner_mass_change == 3
    assert spacers.gear[0].behind < 0


def test_the_vans_load_line_is_inboard_and_the_trailer_turns_its_outer_rings():
    van = load(CONTENT / "vehicles" / "supply-van.toml")
    trailer = load(CONTENT / "vehicles" / "kit-trailer.toml")
    assert van.hub.face_to_bearing_centre + van.wheel.spacer - van.wheel.offset < 0
    assert (trailer.bearing.turning_ring, trailer.bearing.kind, trailer.suspension) == ("outer", "tapered pair", None)


@pytest.mark.parametrize("kind", ["vehicle", "trailer"])
def test_every_key_has_a_meaning_and_an_example_that_can_be_read(kind):
    found = list(key_reference(kind))
    assert len({entry.dotted for entry in found} - {"case.height"}) == len(
        [entry for entry in found if entry.dotted != "case.height"]
    )
    for entry in found:
        assert entry.key.meaning
        example = entry.key.written
        given = float(example) if not example.startswith("'") else example.strip("'")
        entry.key.read(int(given) if entry.key.dimension == "count" else given)


def test_the_required_keys_are_those_of_the_format():
    required = {
        entry.dotted
        for entry in key_reference("vehicle")
        if entry.key.required and entry.table in ("", "chassis", "tire", "wheel", "hub", "bearing", "suspension")
    }
    assert required == {
        "name",
        "chassis.front_axle_mass",
        "chassis.rear_axle_mass",
        "chassis.wheelbase",
        "chassis.front_track",
        "tire.size",
        "wheel.rim_width",
        "wheel.offset",
    }


@settings(max_examples=50)
@given(setup_data())
def test_a_random_setup_reads_the_same_from_its_text(data):
    assert load_text(as_toml(data), "random.toml") == built(data)
