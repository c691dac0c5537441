"""Everything that can be wrong in a file: each message whole, with its line."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from setup_texts import LEAST, LEAST_TRAILER, least, messages

from hubwright.errors import HubwrightError, SetupErrors, SetupFileError
from hubwright.setup import _built, load, load_text
from hubwright.setup.document import Document


def test_the_least_files_have_no_problem():
    assert messages(LEAST) == []
    assert messages(LEAST_TRAILER) == []


@pytest.mark.parametrize(
    ("more", "without", "expected"),
    [
        # wrong dimension, as in the style guide of the project
        ('offset = "30 kg"', "offset", "14: 'wheel.offset' must be a length (got '30 kg'). Write it like '30 mm'."),
        ("mass = 9", "", "15: 'wheel.mass' must be a mass with its unit (got 9). Write it like '9 kg'."),
        ('mass = "20 lbf"', "", "15: 'wheel.mass' must be a mass (got '20 lbf'). Write it like '20 lb'."),
        # unknown keys
        (
            'spacr = "5 mm"',
            "",
            "15: 'wheel.spacr' must be a key that [wheel] can hold. Perhaps you meant 'wheel.spacer'.",
        ),
        (
            'wheelbase = "5 m"',
            "",
            "15: 'wheel.wheelbase' must be a key that [wheel] can hold. Perhaps you meant 'wheelbase' of [chassis].",
        ),
        (
            "zzz = 1",
            "",
            "15: 'wheel.zzz' must be a key that [wheel] can hold. "
            "Known there: backspacing, mass, offset, rim_width, spacer.",
        ),
        ("[wheels]", "", "15: 'wheels' must be a key that this file can hold. Perhaps you meant 'wheel'."),
        # impossible values
        ('mass = "-9 kg"', "", "15: 'wheel.mass' must be a mass above zero (got '-9 kg'). Write it like '9 kg'."),
        (
            'spacer = "5 mm ± 6 mm"',
            "",
            "15: 'wheel.spacer' must be a length not below zero (got '5 mm ± 6 mm'). Write it like '25 mm'.",
        ),
        (
            "[bearing]\ninner_conformity = 0.5",
            "",
            "16: 'bearing.inner_conformity' must be a number without a unit above 0.5 and below 1 (got 0.5). "
            "A groove as tight as its ball, or tighter, cannot hold it. Write it like 0.52.",
        ),
        (
            '[bearing]\ncontact_angle = "75 deg"',
            "",
            "16: 'bearing.contact_angle' must be an angle from 20 to 45 deg (got '75 deg'). "
            "The factors of ISO 281 for two rows are tabulated between these. Write it like '35 deg'.",
        ),
        (
            '[bearing]\nballs_per_row = 16\nball_diameter = "12.7 mm"\npitch_diameter = "62 mm"',
            "",
            "16: 'bearing.balls_per_row' must be at most 15: no more balls of 12.7 mm on a pitch circle of 62 mm "
            "find room (got 16).",
        ),
        (
            '[bearing]\nkind = "tapered pair"\nrollers_per_row = 24\n'
            'roller_diameter = "8 mm"\npitch_diameter = "60 mm"',
            "",
            "17: 'bearing.rollers_per_row' must be at most 23: no more rollers of 8 mm on a pitch circle of 60 mm "
            "find room (got 24).",
        ),
        (
            '[bearing]\nball_diameter = "20 mm"\npitch_diameter = "62 mm"\nballs_per_row = 9.5',
            "",
            "18: 'bearing.balls_per_row' must be a whole number (got 9.5). Write it like 13.",
        ),
        (
            '[bearing]\nbore = "42 mm"\noutside_diameter = "40 mm"\nwidth = "40 mm"',
            "",
            "16: 'bearing.bore' must be below the outside diameter, 40 mm (got '42 mm'). Write it like '42 mm'.",
        ),
        (
            '[bearing]\nbore = "42 mm"\noutside_diameter = "82 mm"',
            "",
            "15: 'bearing.width' must be given with 'bearing.bore'. Write it like '40 mm'.",
        ),
        (
            '[tire]\nloaded_radius = "400 mm"\nsize = "245/75R16"',
            r"\[tire|size",
            "14: 'tire.loaded_radius' must be at most the free radius, 387 mm (got '400 mm'). "
            "A tire carries its load by becoming lower: measure from the ground to the hub's centre.",
        ),
        (
            '[sealing]\nwater_temperature = "-300 degC"',
            "",
            "16: 'sealing.water_temperature' must be a temperature above absolute zero (got '-300 degC'). "
            "Write it like '8 degC'.",
        ),
        # words
        (
            '[bearing]\nkind = "tapered pairs"',
            "",
            "16: 'bearing.kind' must be 'two-row ball' or 'tapered pair' (got 'tapered pairs'). "
            "Perhaps you meant 'tapered pair'.",
        ),
        (
            '[lubrication]\ncontamination = "mud"',
            "",
            "16: 'lubrication.contamination' must be 'extreme cleanliness', 'high cleanliness', 'normal cleanliness', "
            "'slight contamination', 'typical contamination', 'severe contamination' or 'very severe contamination' "
            "(got 'mud'). Write it like 'normal cleanliness'.",
        ),
        # two ways of saying one thing
        (
            'backspacing = "130 mm"',
            "",
            "15: 'wheel.backspacing' must be left out where 'wheel.offset' is given (line 14) (got '130 mm'). "
            "Both say the same: keep the one that was measured.",
        ),
        # missing
        (
            "",
            "offset",
            "12: 'wheel.offset' must be given, or 'wheel.backspacing' instead. Write it like '30 mm'. "
            "Where to find it: stamped on the wheel, often as ET30.",
        ),
        ("", "name", " 'name' must be given. Write it like 'Hill wagon'."),
        (
            '[brake]\neffective_radius = "125 mm"\ncaliper_position = "-90 deg"',
            "",
            "15: 'brake.disc_to_bearing_centre' must be given. Write it like '25 mm'. "
            "Where to find it: supplier's drawing.",
        ),
        # shapes
        ("[[wheel2]]", "", "15: 'wheel2' must be a key that this file can hold. Perhaps you meant 'wheel'."),
        (
            "[gear]\nmass = '3 kg'",
            "",
            "15: 'gear' must be a list of tables (got {'mass': '3 kg'}). Begin each entry with a line [[gear]].",
        ),
        # origin
        (
            '[origin]\n"wheel.mas" = "measured"',
            "",
            "16: 'origin.wheel.mas' must be a key of this file. Perhaps you meant 'wheel.mass'.",
        ),
        (
            '[origin]\nwheel.offset = "guessed"',
            "",
            "16: 'origin.wheel.offset' must be 'measured', 'data sheet' or 'estimated' (got 'guessed'). "
            'Write it like "wheel.offset" = "measured".',
        ),
    ],
)
def test_one_problem_gives_one_whole_message(more, without, expected):
    assert messages(least(more, without=without)) == [expected]


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        (
            'wheelbase = "0 m"',
            "6: 'chassis.wheelbase' must be a length above zero (got '0 m'). Write it like '2.78 m'.",
        ),
        (
            'wheelbase = "2,500 m"',
            "6: 'chassis.wheelbase' must be a length with one reading (got '2,500 m'). "
            "Write it like '2.500 m' or '2500 m'.",
        ),
    ],
)
def test_the_chassis_is_checked_on_its_own_lines(line, expected):
    assert messages(LEAST.replace('wheelbase = "2.5 m"', line)) == [expected]


def test_a_front_share_needs_a_total_mass():
    text = LEAST.replace('front_axle_mass = "1000 kg"\nrear_axle_mass = "800 kg"', "front_share = 0.5")
    assert messages(text) == [
        "3: 'chassis.total_mass' must be given with 'chassis.front_share'. Write it like '2130 kg'."
    ]


def test_all_problems_of_a_file_are_reported_in_the_order_of_their_lines():
    text = LEAST.replace("2.5 m", "2.5 kg").replace("7 in", "7 N").replace('size = "245/75R16"', 'sise = "245/75R16"')
    text = text.replace('name = "Least"', "name = 3")
    found = messages(text)
    assert [message.split(" must")[0] for message in found] == [
        "1: 'name'",
        "6: 'chassis.wheelbase'",
        "9: 'tire.size'",
        "10: 'tire.sise'",
        "13: 'wheel.rim_width'",
    ]


def test_a_problem_keeps_its_facts():
    with pytest.raises(SetupErrors) as caught:
        load_text(least('spacer = "25 kg"'), "least.toml")
    (problem,) = caught.value.problems
    assert (problem.file, problem.line, problem.key) == ("least.toml", 15, "wheel.spacer")
    assert (problem.needed, problem.given) == ("a length", "25 kg")
    assert problem.repair == "Write it like '25 mm'."
    assert isinstance(caught.value, ValueError)


def test_american_spellings_are_accepted():
    text = least('[hub]\nface_to_bearing_center = "40 mm"').replace(
        "[tire]", 'center_of_mass_height = "0.6 m"\n\n[tire]'
    )
    setup = load_text(text)
    assert (setup.hub.face_to_bearing_centre, setup.chassis.centre_of_mass_height) == (0.040, 0.6)
    assert setup.inputs["hub.face_to_bearing_centre"].origin == "given"


def test_a_key_in_both_spellings_is_refused():
    (message,) = messages(least('[hub]\nface_to_bearing_center = "40 mm"\nface_to_bearing_centre = "42 mm"'))
    assert message == (
        "16: 'hub.face_to_bearing_center' must be a key that [hub] can hold. "
        "Perhaps you meant 'hub.face_to_bearing_centre'."
    )


def test_text_that_is_no_toml_names_the_line_and_the_usual_cause():
    assert messages(least("spacer = 25 mm")) == [
        "15: the file must be valid TOML (got 'spacer = 25 mm'). Expected newline or end of document after a "
        'statement. Texts and values with units stand in quotes: offset = "30 mm".'
    ]


def test_a_file_that_is_not_there_is_named(tmp_path):
    with pytest.raises(SetupFileError, match=r"none\.toml: cannot be read: No such file or directory$") as caught:
        load(tmp_path / "none.toml")
    assert isinstance(caught.value, OSError)


def test_an_empty_optional_table_counts_as_left_out():
    assert load_text(least("[brake]")).brake is None


def test_a_trailer_has_its_own_keys():
    assert messages(least('wheel_end = "rear"', trailer=True).replace("kind", 'wheel_end = "rear"\nkind', 1))[0] == (
        "2: 'wheel_end' must be left out for a trailer (got 'rear'). It has one axle."
    )
    gear = '[[gear]]\nname = "Box"\nmass = "20 kg"\nbehind_front_axle = "0.2 m"\nabove_ground = "0.8 m"'
    assert messages(least(gear, trailer=True)) == [
        "16: 'gear.1.behind_axle' must be given. Write it like '-0.30 m'. Where to find it: tape along the ground.",
        "19: 'gear.1.behind_front_axle' must be a key that [[gear]] can hold. Perhaps you meant 'gear.1.behind_axle'.",
    ]


_VALUES = st.one_of(
    st.none().map(lambda _: {}),
    st.booleans(),
    st.integers(-10, 10**6),
    st.floats(allow_nan=False),
    st.text(max_size=12),
    st.sampled_from(["30 mm", "17 kg", "245/75R16", "both", "standing", "-3 m", "hill roads"]),
)
_NAMES = st.sampled_from(
    ["name", "kind", "mass", "size", "case", "share", "offset", "at", "force", "lateral_g", "wheel.mass", "x"]
)
_TABLE = st.dictionaries(_NAMES, _VALUES, max_size=4)
_TOPS = st.sampled_from(
    [
        "name",
        "kind",
        "chassis",
        "tire",
        "wheel",
        "bearing",
        "gear",
        "case",
        "duty",
        "origin",
        "load",
        "support",
        "brake",
    ]
)


@given(st.dictionaries(_TOPS, st.one_of(_VALUES, _TABLE, st.lists(st.one_of(_TABLE, _VALUES), max_size=3)), max_size=6))
def test_no_data_whatever_breaks_the_reader(data):
    try:
        _built(Document("any.toml", "any", data, {}))
    except HubwrightError as error:
        assert str(error).startswith("any.toml")  # noqa: PT017  (any other error would be ours)
