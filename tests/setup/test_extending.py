"""What a file that extends another takes over, replaces, adds and drops."""

import pytest
from setup_texts import LEAST

from hubwright.errors import SetupErrors
from hubwright.setup import Setup, load, load_text


@pytest.fixture
def folders(tmp_path):
    """Write files by name, "vehicles/x" or "setups/y", and load one."""

    def write(**files: str):
        for name, text in files.items():
            folder, _, stem = name.partition("__")
            (tmp_path / folder).mkdir(exist_ok=True)
            (tmp_path / folder / f"{stem.replace('_', '-')}.toml").write_text(text, encoding="utf-8")

        def read(name: str) -> Setup:
            setup = load(tmp_path / f"{name}.toml")
            assert isinstance(setup, Setup)
            return setup

        return read

    return write


BASE = (
    LEAST
    + """
mass = "9 kg"

[[gear]]
name = "Box"
mass = "20 kg"
behind_front_axle = "1 m"
above_ground = "0.8 m"

[[case]]
name = "bend"
kind = "cornering"
lateral_g = 0.2

[[duty]]
case = "standing"
share = 0.9

[[duty]]
case = "bend"
share = 0.1

[origin]
"wheel.offset" = "measured"
"wheel.rim_width" = "data sheet"
"""
)


def test_a_setup_holds_only_what_differs(folders):
    read = folders(vehicles__base=BASE, setups__wide='extends = "base"\n[wheel]\noffset = "10 mm"\n')
    base, wide = read("vehicles/base"), read("setups/wide")
    assert (base.wheel.offset, wide.wheel.offset) == (0.030, 0.010)
    assert (wide.name, wide.stem, wide.extends) == ("Least", "wide", ("base",))
    assert wide.chassis == base.chassis
    assert [file.stem for file in wide.files] == ["wide", "base"]


def test_a_file_beside_wins_over_one_among_the_vehicles(folders):
    near = BASE.replace("1000 kg", "1200 kg")
    read = folders(vehicles__base=BASE, setups__base=near, setups__one='extends = "base"\n')
    assert read("setups/one").chassis.front_axle_mass == 1200


def test_a_setup_may_bear_the_name_of_the_vehicle_it_extends(folders):
    read = folders(vehicles__base=BASE, setups__base='extends = "base"\n[wheel]\nspacer = "5 mm"\n')
    assert read("setups/base").wheel.spacer == 0.005


def test_gear_adds_and_cases_and_duty_replace(folders):
    more = """extends = "base"
[[gear]]
name = "Winch"
mass = "60 kg"
behind_front_axle = "-0.7 m"
above_ground = "0.7 m"
[[case]]
name = "stop"
kind = "braking"
braking_g = 0.3
[[duty]]
case = "stop"
share = 1
"""
    setup = folders(vehicles__base=BASE, setups__more=more)("setups/more")
    assert [item.name for item in setup.gear] == ["Box", "Winch"]
    assert [case.name for case in setup.cases] == ["standing", "stop"]
    assert [(share.case, share.share) for share in setup.duty] == [("stop", 1.0)]
    assert setup.inputs["gear.2.behind_front_axle"].value == -0.7


def test_a_new_tire_size_drops_size_diameters_and_loaded_radius_only(folders):
    base = BASE.replace(
        'size = "245/75R16"',
        'size = "245/75R16"\nloaded_radius = "360 mm"\nmass = "17 kg"\nvertical_stiffness = "260 N/mm"',
    )
    read = folders(
        vehicles__base=base,
        setups__large='extends = "base"\n[tire]\nsize = "265/75R16"\n',
        setups__tape='extends = "base"\n[tire]\nfree_diameter = "800 mm"\nsection_width = "260 mm"\n',
        vehicles__tape_base='extends = "base"\n[tire]\nfree_diameter = "800 mm"\nsection_width = "260 mm"\n',
        setups__back='extends = "tape-base"\n[tire]\nsize = "245/75R16"\n',
    )
    large = read("setups/large").tire
    assert (large.size, large.loaded_radius, large.mass, large.vertical_stiffness) == ("265/75R16", None, 17, 260e3)
    tape = read("setups/tape").tire
    assert (tape.size, tape.free_diameter, tape.loaded_radius) == (None, 0.8, None)
    assert read("setups/back").tire.free_diameter == pytest.approx(0.7739)


def test_a_new_bearing_kind_drops_the_bases_bearing_and_the_same_kind_does_not(folders):
    base = BASE + '\n[bearing]\nturning_ring = "outer"\nball_diameter = "12 mm"\npitch_diameter = "60 mm"\n'
    read = folders(
        vehicles__base=base,
        setups__taper='extends = "base"\n[bearing]\nkind = "tapered pair"\ncontact_angle = "14 deg"\n',
        setups__same='extends = "base"\n[bearing]\nkind = "two-row ball"\nballs_per_row = 11\n',
    )
    taper, same = read("setups/taper").bearing, read("setups/same").bearing
    assert (taper.kind, taper.turning_ring, taper.pitch_diameter) == ("tapered pair", "inner", None)
    assert (same.turning_ring, same.ball_diameter, same.elements_per_row) == ("outer", 0.012, 11)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ('[wheel]\nbackspacing = "4.5 in"', lambda setup: setup.wheel.offset == pytest.approx(0.1143 - 4 * 0.0254)),
        ('[chassis]\ntotal_mass = "2000 kg"', lambda setup: setup.chassis.front_axle_mass == pytest.approx(1100)),
        (
            "[chassis]\nstatic_stability_figure = 1.25",
            lambda setup: setup.chassis.centre_of_mass_height == pytest.approx(0.6),
        ),
    ],
)
def test_another_way_of_saying_it_replaces_the_bases(folders, text, expected):
    base = BASE.replace("[tire]", 'centre_of_mass_height = "0.7 m"\n\n[tire]')
    assert expected(folders(vehicles__base=base, setups__other=f'extends = "base"\n{text}\n')("setups/other"))


def test_an_origin_goes_with_the_value_it_spoke_of(folders):
    setup = folders(vehicles__base=BASE, setups__one='extends = "base"\n[wheel]\noffset = "10 mm"\n')("setups/one")
    assert setup.inputs["wheel.rim_width"].origin == "data sheet"
    assert setup.inputs["wheel.offset"].origin == "given"


def test_heavier_wheels_are_measured_against_the_root(folders):
    """20 + 9 kg now, 9 kg of wheel and the tire of the root's size when weighed."""
    read = folders(
        vehicles__base=BASE.replace('size = "245/75R16"', 'size = "245/75R16"\nmass = "17 kg"'),
        setups__first='extends = "base"\n[tire]\nmass = "20 kg"\n',
        setups__second='extends = "first"\n[wheel]\nmass = "12 kg"\n',
        setups__weighed='extends = "second"\n[chassis]\nfront_axle_mass = "1010 kg"\n',
        setups__later='extends = "weighed"\n[tire]\nmass = "25 kg"\n',
    )
    changes = {stem: read(f"setups/{stem}") for stem in ("first", "second", "weighed", "later")}
    assert {stem: setup.corner_mass_change for stem, setup in changes.items()} == {
        "first": 3,
        "second": 6,
        "weighed": 0,
        "later": 5,
    }
    assert [setup.weighed_as_it_stands for setup in changes.values()] == [False, False, True, False]
    assert read("vehicles/base").weighed_as_it_stands


def test_unsprung_mass_of_the_base_does_not_hold_the_setups_wheels(folders):
    read = folders(
        vehicles__base=BASE + '\n[suspension]\nunsprung_mass = "50 kg"\n',
        setups__tires='extends = "base"\n[tire]\nmass = "30 kg"\n',
        setups__own='extends = "base"\n[suspension]\nunsprung_mass = "61 kg"\n',
    )
    assert read("vehicles/base").suspension.unsprung_mass_as_it_stands
    assert not read("setups/tires").suspension.unsprung_mass_as_it_stands
    assert read("setups/own").suspension.unsprung_mass_as_it_stands


def test_problems_name_the_file_in_which_they_stand(folders):
    read = folders(
        vehicles__base=BASE.replace("2.5 m", "2.5 kg"),
        setups__one='extends = "base"\n[[gear]]\nname = "Winch"\nmass = "60 N"\n'
        'behind_front_axle = "1 m"\nabove_ground = "1 m"\n',
    )
    with pytest.raises(SetupErrors) as caught:
        read("setups/one")
    assert str(caught.value).splitlines() == [
        "one.toml:4: 'gear.2.mass' must be a mass (got '60 N'). Write it like '62 kg'.",
        "base.toml:6: 'chassis.wheelbase' must be a length (got '2.5 kg'). Write it like '2.78 m'.",
    ]


def test_new_cases_without_the_old_duty_say_what_to_do(folders):
    read = folders(
        vehicles__base=BASE,
        setups__one='extends = "base"\n[[case]]\nname = "stop"\nkind = "braking"\nbraking_g = 0.3\n',
    )
    with pytest.raises(SetupErrors) as caught:
        read("setups/one")
    assert str(caught.value) == (
        "base.toml:34: 'duty.2.case' must be the name of a case of this file (got 'bend'). "
        "one.toml replaces all cases: repeat this one there, or give it [[duty]] tables of its own."
    )


def test_a_base_that_is_missing_says_where_it_was_looked_for(folders):
    with pytest.raises(SetupErrors) as caught:
        folders(setups__one='name = "One"\nextends = "nothing"\n')("setups/one")
    assert str(caught.value) == (
        "one.toml:2: 'extends' must be the name of a file that exists (got 'nothing'). "
        "It was looked for beside this file as 'nothing.toml' and as '../vehicles/nothing.toml'."
    )


@pytest.mark.parametrize(
    ("files", "circle"),
    [
        ({"setups__one": 'extends = "one"'}, "one → one"),
        ({"setups__one": 'extends = "two"', "setups__two": 'extends = "one"'}, "one → two → one"),
    ],
)
def test_files_that_extend_each_other_are_refused(folders, files, circle):
    with pytest.raises(SetupErrors, match=f"must be free of circles .* The files extend each other: {circle}\\.$"):
        folders(**files)("setups/one")


def test_a_path_is_no_name():
    with pytest.raises(SetupErrors, match=r"a name without folders is needed\.$"):
        load_text('extends = "../vehicles/base"')
