"""Customer sheets, comparison pages, reports and the page about finding one's own numbers."""

import re
from pathlib import Path

import pytest
from lesson_sites import TRAILER, WAGON, write_docs, write_site
from markupsafe import Markup

from hubwright.lessons.branding import Branding, branding_problems
from hubwright.lessons.cautions import ALWAYS, CAUTIONS, LAST
from hubwright.lessons.change_words import changes_in_words
from hubwright.lessons.check import check_site
from hubwright.lessons.comparison_page import comparison_body
from hubwright.lessons.course import Course
from hubwright.lessons.customer_sheet import pages as sheet_pages
from hubwright.lessons.customer_sheet import sheet_body
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.find_numbers import key_table, worth_measuring
from hubwright.lessons.fingerprint import fingerprint
from hubwright.lessons.generated_page import Site
from hubwright.lessons.input_tables import estimated_in_words
from hubwright.lessons.key_words import meaning
from hubwright.lessons.numbers import plain
from hubwright.lessons.page_state import PageState
from hubwright.lessons.ratio_tables import factor, life_cells
from hubwright.lessons.reports import report_body
from hubwright.lessons.setup_family import families, root_of
from hubwright.lessons.stacked_table import Column, Row, stacked_table
from hubwright.lessons.worked_results import NOWHERE
from hubwright.results.comparison import Compared
from hubwright.results.draws import Span
from hubwright.setup import load_text
from hubwright.setup.model import Setup

SPACED = """\
extends = "wagon"
name = "Test wagon, changed"
[tire]
size = "265/75R16"
mass = "20 kg"
[wheel]
spacer = "25 mm"
[[gear]]
name = "Front winch"
mass = "62 kg"
behind_front_axle = "-0.72 m"
left_of_centre = "0 m"
above_ground = "0.75 m"
"""
LIGHTER = 'extends = "wagon"\nname = "Test wagon, other wheels"\n[wheel]\noffset = "5 mm"\nmass = "7 kg"\n'
LIMITS = '[limits]\nfront_axle_rating = "1100 kg"\n'


def course_of(directory: Path, **setups: str) -> Course:
    docs = write_docs(directory)
    (docs / "setups").mkdir()
    for stem, text in setups.items():
        (docs / "setups" / f"{stem}.toml").write_text(text, encoding="utf-8")
    course = Course.read(docs, in_view="wagon")
    assert not course.problems, course.problems
    return course


def site_of(course: Course, **branding: str) -> Site:
    return Site(course, Undrawn(), branding=Branding(**branding))


def text_of(html: str) -> str:
    return " ".join(plain(re.sub(r"</(td|th|p|li|dt|dd|h1|h2)>", " ", html)).replace("\u00a0", " ").split())


def sheet(site: Site, stem: str) -> str:
    page = PageState(file="sheets/x.md", built="25 November 2026")
    return whole(page, sheet_body(page, stem, site))


def whole(page: PageState, body: str) -> str:
    return page.put_back(page.put_back(body), late=True)


def changed(base: str, other: str) -> list[str]:
    setups: list[Setup] = []
    for name, text in (("base", base), ("other", other)):
        setup = load_text(text, f"{name}.toml")
        assert isinstance(setup, Setup)
        setups.append(setup)
    return [text_of(phrase) for phrase in changes_in_words(*setups)]


def test_a_change_is_told_in_words_from_both_files(tmp_path: Path) -> None:
    course = course_of(tmp_path, spaced=SPACED)
    phrases = [
        text_of(phrase) for phrase in changes_in_words(course.results["wagon"].setup, course.results["spaced"].setup)
    ]
    assert phrases == [
        "tires 265/75R16 in place of 245/75R16",
        "each tire 3 kg (7 lb) heavier",
        "spacers of 25 mm (0.98 in) between hub and wheel",
        "front winch, 62 kg (137 lb), 0.72 m (28.3 in) ahead of the front axle",
    ]


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [
        ('offset = "30 mm"', 'offset = "5 mm"', ["wheels of 5 mm (0.20 in) offset in place of 30 mm (1.18 in)"]),
        ('mass = "9 kg"', 'mass = "7 kg"', ["each wheel 2 kg (4 lb) lighter", "weighed on other tires or wheels"]),
        ('left_of_centre = "0.40 m"', 'left_of_centre = "-0.40 m"', [
            "box changed: 50 kg (110 lb), 0.69 m (27.4 in) ahead of the front axle, "
            "0.40 m (15.7 in) right of the middle"
        ]),
        ('contact_angle = "35 deg"', 'contact_angle = "40 deg"', ["another bearing"]),
        ('wheelbase = "2.78 m"', 'wheelbase = "2.90 m"', ["other weights or dimensions of the vehicle itself"]),
        ("lateral_g = 0.3", "lateral_g = 0.35", ["another mixture of cases to drive through"]),
        ('name = "Test wagon"', 'name = "Another name"', []),
    ],
)  # fmt: skip
def test_each_kind_of_change_has_its_words(before: str, after: str, words: list[str]) -> None:
    assert WAGON.count(before) == 1
    assert changed(WAGON, WAGON.replace(before, after)) == words


def test_gear_that_is_taken_off_is_named() -> None:
    without = re.sub(r"\[\[gear\]\].*?(?=\[\[case)", "", WAGON, count=1, flags=re.S)
    assert changed(WAGON, without) == ["without box"]


def test_setups_are_told_by_the_vehicle_they_change(tmp_path: Path) -> None:
    deeper = 'extends = "spaced"\nname = "Deeper"\n[wheel]\nspacer = "30 mm"\n'
    course = course_of(tmp_path, spaced=SPACED, deeper=deeper)
    assert families(course) == {"wagon": ["deeper", "spaced"], "kit-trailer": []}
    assert root_of(course, "deeper") == "wagon"
    assert root_of(course, "wagon") is None


def test_a_sheet_stands_in_its_order(tmp_path: Path) -> None:
    site = site_of(course_of(tmp_path, spaced=SPACED), shop="Yard and Gate", contact="at the yard")
    told = text_of(sheet(site, "spaced"))
    order = [
        "Yard and Gate",
        "at the yard",
        "25 November 2026",
        "Test wagon, changed",
        "spacers of 25 mm",
        "Figure 1",
        "What changes",
        "By how much",
        "What is not settled",
        "Load beside limit",
        "Have checked",
        "Watch for",
        "Estimated, not measured",
        "Before you touch a wheel",
        "Prepared by",
        "Reviewed by",
        "From the data given on 25 November 2026, not an inspection of this vehicle.",
        "fingerprint",
    ]
    places = [told.index(words) for words in order]
    assert places == sorted(places)


def test_the_sentences_say_what_moves_and_by_how_much_with_its_span(tmp_path: Path) -> None:
    told = text_of(sheet(site_of(course_of(tmp_path, spaced=SPACED)), "spaced"))
    assert "the load line moves from 12 mm (0.47 in) outboard to 37 mm (1.46 in) outboard" in told
    assert re.search(r"the load of the harder loaded row is 1\.\d\d times what it was \(1\.\d\d to 1\.\d\d\)", told)
    assert "how long this one bearing lasts" in told


def test_a_sheet_of_a_vehicle_as_it_stands_compares_nothing(tmp_path: Path) -> None:
    told = text_of(sheet(site_of(course_of(tmp_path)), "wagon"))
    assert "Nothing is changed: at the left front wheel the load line runs 12 mm" in told
    assert "times what it was" not in told
    trailer = text_of(sheet(site_of(course_of(tmp_path / "two")), "kit-trailer"))
    assert "Not compared with any limit." in trailer


def test_above_a_limit_the_warning_comes_before_any_number_of_the_bearing(tmp_path: Path) -> None:
    site = site_of(course_of(tmp_path, spaced=SPACED + LIMITS))
    told = text_of(sheet(site, "spaced"))
    warning = told.index("Above the limit given: do not drive on this setup; ask a qualified person.")
    assert warning < told.index("Figure 1")
    assert warning < told.index("What changes")
    page = PageState(file="compare/wagon.md", built="25 November 2026")
    compared = text_of(whole(page, comparison_body(page, "wagon", ["spaced"], site)))
    assert compared.index("Above the limit given") < compared.index("At a glance")
    assert "within" not in told[warning : told.index("What changes")]


def test_a_sheet_carries_the_cautions_of_what_it_shows(tmp_path: Path) -> None:
    site = site_of(course_of(tmp_path, spaced=SPACED, lighter=LIGHTER))
    spaced, bare = (text_of(sheet(site, stem)) for stem in ("spaced", "kit-trailer"))
    for text in (*ALWAYS, LAST, *CAUTIONS["bearing check"]):
        assert text.replace("'", "’") in spaced
        assert text.replace("'", "’") in bare
    for hazard in ("wheel fasteners", "tires", "gear", "slopes drops and corners", "measuring"):
        assert CAUTIONS[hazard][0].replace("'", "’") in spaced
    fasteners = CAUTIONS["wheel fasteners"][0].replace("'", "’")
    assert fasteners not in bare
    assert fasteners in text_of(sheet(site, "lighter"))


def test_cautions_of_a_site_stand_beside_the_built_in_ones(tmp_path: Path) -> None:
    site = Site(course_of(tmp_path), Undrawn(), cautions=("Mind the dog.",))
    told = text_of(sheet(site, "wagon"))
    assert "Mind the dog." in told
    assert ALWAYS[0] in told


def test_there_is_a_sheet_for_every_vehicle_and_setup_and_it_is_not_in_the_list(tmp_path: Path) -> None:
    found = sheet_pages(site_of(course_of(tmp_path, spaced=SPACED)))
    assert [page.path for page in found] == ["sheets/kit-trailer.md", "sheets/wagon.md", "sheets/spaced.md"]
    assert not any(page.listed for page in found)


def test_signing_lines_are_empty_until_a_site_names_somebody(tmp_path: Path) -> None:
    course = course_of(tmp_path)
    assert '<span>Prepared by</span><span class="line"></span>' in sheet(site_of(course), "wagon")
    named = sheet(site_of(course, prepared_by="A. Hand", reviewed_by="B. Eye"), "wagon")
    assert '<span class="line">A. Hand</span>' in named
    assert '<span class="line">B. Eye</span>' in named


def test_the_fingerprint_is_that_of_the_whole_chain_of_files(tmp_path: Path) -> None:
    course = course_of(tmp_path, spaced=SPACED)
    before = fingerprint(course.results["spaced"].setup)
    assert re.fullmatch(r"[0-9a-f]{12}", before)
    assert fingerprint(course_of(tmp_path / "same", spaced=SPACED).results["spaced"].setup) == before
    other = course_of(tmp_path / "other", spaced=SPACED)
    wagon = other.docs / "vehicles" / "wagon.toml"
    wagon.write_text(WAGON.replace("1120 kg", "1121 kg"), encoding="utf-8")
    assert fingerprint(other.results["spaced"].setup) != before


def test_windows_line_ends_leave_the_fingerprint_alone(tmp_path: Path) -> None:
    course = course_of(tmp_path, spaced=SPACED)
    before = fingerprint(course.results["wagon"].setup)
    wagon = course.docs / "vehicles" / "wagon.toml"
    wagon.write_bytes(WAGON.replace("\n", "\r\n").encode())
    assert fingerprint(course.results["wagon"].setup) == before


@pytest.mark.parametrize("option", ["shop", "contact", "prepared_by", "reviewed_by"])
def test_branding_that_promises_is_warned_of(tmp_path: Path, option: str) -> None:
    branding = Branding(**{option: "Spacers made safe, guaranteed"})
    warned = branding_problems(branding, tmp_path, more={}, file="mkdocs.yml")
    assert [problem.fails for problem in warned] == [False, False]
    assert f"'safe' in '{option}' promises what no page can" in str(warned[0])


def test_a_denial_in_branding_is_no_promise(tmp_path: Path) -> None:
    branding = Branding(contact="We do not say that a change is legal.")
    assert branding_problems(branding, tmp_path, more={"site_name": "Legal wheels"}, file="mkdocs.yml")[0].reason.count(
        "'Legal' in 'site_name'"
    )
    assert branding_problems(branding, tmp_path, more={}, file="mkdocs.yml") == []


def test_a_logo_is_a_file_of_the_site(tmp_path: Path) -> None:
    (tmp_path / "docs").mkdir()
    (tmp_path / "outside.svg").write_text("<svg/>")
    for logo in ("missing.svg", "../outside.svg"):
        (problem,) = branding_problems(Branding(logo=logo), tmp_path / "docs", more={}, file="mkdocs.yml")
        assert problem.fails
    (tmp_path / "docs" / "mark.svg").write_text("<svg/>")
    assert branding_problems(Branding(logo="mark.svg"), tmp_path / "docs", more={}, file="mkdocs.yml") == []


def test_check_warns_of_a_shop_that_promises(tmp_path: Path) -> None:
    directory = write_site(tmp_path)
    settings = (directory / "mkdocs.yml").read_text(encoding="utf-8")
    options = re.sub(r"^( *)setup: wagon$", r"\1setup: wagon\n\1shop: Harmless spacers", settings, flags=re.M)
    (directory / "mkdocs.yml").write_text(options, encoding="utf-8")
    told = [str(problem) for problem in check_site(directory) if "shop" in str(problem)]
    assert told == [
        "mkdocs.yml: note: 'Harmless' in 'shop' promises what no page can; "
        "say what was computed and defer to the maker's limits"
    ]


def compared_text(course: Course, stems: list[str]) -> str:
    page = PageState(file="compare/wagon.md", built="25 November 2026")
    return text_of(whole(page, comparison_body(page, "wagon", stems, site_of(course))))


def test_a_comparison_stands_its_setups_side_by_side(tmp_path: Path) -> None:
    told = compared_text(course_of(tmp_path, spaced=SPACED, lighter=LIGHTER), ["spaced", "lighter"])
    assert "Two setups beside Test wagon" in told
    beside = told[told.index("Load of the harder loaded row, case by case") :]
    assert beside.index("Test wagon, changed") < beside.index("Test wagon, other wheels") < beside.index("Brisk corner")
    assert "from the 5th to the 95th percentile of 400 draws" in told
    assert "the ends of a span are known to within" in told
    assert "What is not settled" in told
    assert re.search(r"Front winch.{0,40}× 1\.", told[told.index("What each change does") :])


def test_a_life_of_one_setup_alone_is_never_told(tmp_path: Path) -> None:
    course = course_of(tmp_path, spaced=SPACED)
    page = PageState(file="reports/x.md", built="25 November 2026")
    report = text_of(page.put_back(report_body(page, "spaced", site_of(course))))
    for told in (report, compared_text(course, ["spaced"]), text_of(sheet(site_of(course), "spaced"))):
        assert not re.search(r"\d\s*(million\s+)?revolutions", told)
        assert not re.search(r"life[^.]{0,40}\d\s*km", told)


def test_a_lopsided_duty_is_warned_of(tmp_path: Path) -> None:
    duty = '[[duty]]\ncase = "standing"\nshare = 0.8\n[[duty]]\ncase = "brisk corner left"\nshare = 0.2\n'
    told = compared_text(course_of(tmp_path, spaced=SPACED + duty), ["spaced"])
    assert "gives left and right different shares of 'brisk corner'" in told


def test_a_setup_that_cannot_be_compared_is_named(tmp_path: Path) -> None:
    rear = 'extends = "wagon"\nname = "Rear hub"\nwheel_end = "rear"\n'
    told = compared_text(course_of(tmp_path, rear=rear, spaced=SPACED), ["rear", "spaced"])
    assert "Not compared, since it cannot be put beside it in these cases: Rear hub." in told


def test_a_load_outside_the_formula_gives_no_ratio_of_lives() -> None:
    each = Compared(1.0, 0.5, 0.5, Span(0.4, 0.6, 0.0, 0.0, 400), valid=False)
    told, _, verdict = life_cells(each, NOWHERE, "standing")
    assert told == "–"
    assert "severe" in verdict


@pytest.mark.parametrize(
    ("low", "value", "high", "shown"),
    [
        (0.5, 0.6, 0.7, "0.60"),
        (1.0012, 1.004, 1.007, "1.004"),
        (1.0002, 1.0005, 1.0008, "1.0005"),
        (1.5, 1.61, 1.7, "1.61"),
    ],
)
def test_a_settled_ratio_has_the_digits_that_tell_its_span_from_one(
    low: float, value: float, high: float, shown: str
) -> None:
    each = Compared(1.0, value, value, Span(low, high, 0.0, 0.0, 400))
    assert factor(each, value) == shown
    assert float(factor(each, low)) != 1.0


def test_a_ratio_that_is_not_settled_has_no_more_digits_than_it_deserves() -> None:
    each = Compared(1.0, 1.0034, 1.0034, Span(0.9999, 1.0064, 0.0, 0.0, 400))
    assert factor(each, 1.0034) == "1.003"


def test_the_report_has_margins_spans_joint_and_reasons(tmp_path: Path) -> None:
    page = PageState(file="reports/x.md", built="25 November 2026")
    report = text_of(page.put_back(report_body(page, "spaced", site_of(course_of(tmp_path, spaced=SPACED)))))
    for words in (
        "Dent margin",
        "Row loads beside Test wagon",
        "Life beside Test wagon",
        "Not told here, since the file lacks joint",
        "Push needed to climb it",
        "No drop: the file asks for none.",
        "mounting face outboard of the midplane between the rows",
    ):
        assert words in report, words
    assert "<th></th>" not in page.put_back(
        report_body(page, "spaced", site_of(course_of(tmp_path / "b", spaced=SPACED)))
    )


def test_cells_of_a_stacked_table_carry_their_heads() -> None:
    row = Row(Markup("a"), (Markup("1"), Markup("")))
    html = stacked_table("Caption", "Case", [Column("Load"), Column("Words", number=False)], [row])
    assert '<span class="of" aria-hidden="true">Load</span> <span>1</span>' in html
    assert '<td class="none">' in html


def test_estimates_are_words_and_a_named_duty_is_one_of_them(tmp_path: Path) -> None:
    course = course_of(tmp_path)
    trailer = course.results["kit-trailer"]
    told = text_of(estimated_in_words(trailer))
    assert "no spacer" in told
    assert "mounting face outboard of the midplane between the rows 42 mm (1.65 in) (34 to 50 mm" in told
    assert "wheel.spacer" not in told


def test_the_list_of_what_to_measure_is_in_order_and_its_keys_are_the_files_own(tmp_path: Path) -> None:
    course = course_of(tmp_path, spaced=SPACED)
    page = PageState(file="find-your-numbers.md")
    html = page.put_back(worth_measuring(page, course, course.views["wagon"]))
    assert html.index("hub.face_to_bearing_centre") < html.index("bearing.dynamic_rating")
    assert "the ratio of its life to that in Test wagon, changed" in html


@pytest.mark.parametrize(("stem", "key"), [("wagon", "chassis.front_track"), ("kit-trailer", "chassis.track")])
def test_a_key_is_told_with_what_the_file_says_how_to_find_it_and_what_is_taken_without(
    tmp_path: Path, stem: str, key: str
) -> None:
    course = course_of(tmp_path)
    page = PageState(file="find-your-numbers.md")
    told = text_of(page.put_back(key_table(page, course.views[stem], key)))
    assert "Tape from the outer edge of one" in told
    assert "needed: it has no estimate" in told


def test_what_is_taken_without_a_key_is_told_in_both_systems(tmp_path: Path) -> None:
    # 42 mm / 25.4 = 1.65 in, 8 mm / 25.4 = 0.31 in; 200 kg/m3 = 200 * 0.3048^3 / 0.45359 = 12.5 lb/ft3
    page = PageState(file="find-your-numbers.md")
    keys = ("hub.face_to_bearing_centre", "tire.mass")
    html = page.put_back(str(key_table(page, course_of(tmp_path).views["wagon"], *keys))).replace("\u00a0", " ")
    assert '<span class="si">42 ± 8 mm</span><span class="us">1.65 in ± 0.31 in</span>' in html
    assert '<span class="si">200 kg/m³</span><span class="us">12.5 lb/ft³</span>' in html


def test_another_way_of_saying_a_key_is_named(tmp_path: Path) -> None:
    course = course_of(tmp_path)
    page = PageState(file="find-your-numbers.md")
    told = text_of(page.put_back(key_table(page, course.views["wagon"], "wheel.offset", "chassis.front_axle_mass")))
    assert "or give wheel.backspacing" in told
    assert "total mass × front share; or give chassis.total_mass" in told


def test_the_angle_of_a_ball_bearing_is_not_called_that_of_a_cup(tmp_path: Path) -> None:
    course = course_of(tmp_path)
    page = PageState(file="find-your-numbers.md")
    balls, rollers = (
        text_of(page.put_back(key_table(page, course.views[stem], "bearing.contact_angle")))
        for stem in ("wagon", "kit-trailer")
    )
    assert "cup" in rollers
    assert "cup" not in balls


def test_the_height_of_a_ledge_is_not_called_that_of_a_fall() -> None:
    cases = """
[[case]]
name = "stone"
kind = "ledge"
height = "80 mm"
[[case]]
name = "kerb"
kind = "drop"
height = "60 mm"
"""
    setup = load_text(WAGON + cases, "wagon.toml")
    assert isinstance(setup, Setup)
    assert meaning(setup, "case.stone.height") == "stone: height of the ledge"
    assert meaning(setup, "case.kerb.height") == "kerb: height of the fall"


def test_a_vehicle_without_setups_has_no_comparison(tmp_path: Path) -> None:
    from hubwright.lessons.comparison_page import pages

    assert pages(site_of(course_of(tmp_path))) == []
    (page,) = pages(site_of(course_of(tmp_path / "two", spaced=SPACED)))
    assert page.path == "compare/wagon.md"


def test_trailers_compare_as_well(tmp_path: Path) -> None:
    changed_trailer = 'extends = "kit-trailer"\nname = "Test trailer, spaced"\n[wheel]\nspacer = "10 mm"\n'
    assert "turning_ring" in TRAILER
    course = course_of(tmp_path, spaced_trailer=changed_trailer)
    page = PageState(file="compare/kit-trailer.md", built="25 November 2026")
    told = text_of(page.put_back(comparison_body(page, "kit-trailer", ["spaced_trailer"], site_of(course))))
    assert "spacers of 10 mm" in told
