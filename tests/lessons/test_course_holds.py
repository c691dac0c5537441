"""The course holds for any setup: it renders without a problem, and no sentence contradicts its numbers."""

import math
import os
import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.pages import Renderer
from hubwright.lessons.views import setup_view
from hubwright.results import CaseResult, Results, solve
from hubwright.setup import vary
from hubwright.setup.model import Setup
from strategies import setups

CONTENT = Path(__file__).parents[2] / "content"
LESSONS = sorted((CONTENT / "lessons").glob("*.md"))
HOMES = (CONTENT / "index.md", CONTENT / "new_site" / "index.md")
VEHICLES = ("hill-wagon", "supply-van", "kit-trailer")
ALIKE = 0.005  # closer than this, one number is called as much as the other

_BOTH = re.compile(r'<span class="q"><span class="si">(.*?)</span><span class="us">.*?</span></span>', re.S)


def course_of(setup: Setup) -> Course:
    """A course about this setup alone."""
    course = Course.read(CONTENT, in_view=setup.stem, folders=())  # no files: only the sources and words
    course.results[setup.stem] = solve(setup)
    course.views[setup.stem] = setup_view(course.results[setup.stem], "stock")
    return course


def read(page: Path, renderer: Renderer) -> str:
    """A page as its reader sees it, in SI units; every problem is a failure."""
    state, markdown = renderer.page(page.read_text(encoding="utf-8"), page.name)
    assert [str(problem) for problem in state.problems] == []
    html = state.put_back(state.put_back(markdown), late=True)
    text = re.sub(r"<[^>]+>", " ", _BOTH.sub(r"\1", html))
    return " ".join(text.replace("\u00a0", " ").split())


def pages(setup: Setup) -> tuple[Results, dict[str, str]]:
    """Every lesson and the home page of a new site about this setup."""
    renderer = Renderer(course_of(setup), Undrawn())
    found = {page.stem[:2]: read(page, renderer) for page in (*LESSONS, HOMES[1])}
    return renderer.course.results[setup.stem], found


@pytest.mark.parametrize("stem", VEHICLES)
def test_every_page_holds_for_each_demonstration_vehicle(stem: str) -> None:
    course = Course.read(CONTENT, in_view=stem)
    assert course.problems == []
    renderer = Renderer(course, Undrawn())
    texts = {page: read(page, renderer) for page in (*LESSONS, *HOMES, CONTENT / "glossary.md")}
    directions_agree(course.results[stem], {page.stem[:2]: text for page, text in texts.items()})


# No shrinking: a failure names its setup, and rendering a few hundred smaller ones would take minutes. What CI draws
# is the same each time.
@settings(
    max_examples=3 if os.environ.get("CI") else 6,
    deadline=None,
    phases=(Phase.explicit, Phase.reuse, Phase.generate),
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(setup=setups(rows_known=False))
def test_the_lessons_hold_for_random_setups(setup: Setup) -> None:
    results, texts = pages(setup)
    directions_agree(results, texts)


def test_no_lesson_names_the_demonstration() -> None:
    names = re.compile(r"\bhill\b|wagon|winch|rescue|supply van|kit trailer", re.I)
    for page in (*LESSONS, HOMES[1]):
        assert names.findall(page.read_text(encoding="utf-8")) == [], page.name


def directions_agree(results: Results, texts: dict[str, str]) -> None:
    """Every direction and order that the lessons state in words is that of the solved numbers."""
    for number, text in texts.items():
        assert not re.search(r"\b(None|nan|inf)\b|\{\{|\{%|−0 ", text), number
    tells(results, texts["01"])
    weighs(results, texts["03"])
    tips(results, texts["04"])
    bends(results, texts["05"])
    corners(results, texts["06"])
    wears(results, texts["07"])
    on_larger_tires(results, texts["08"])
    outer = results.setup.bearing.turning_ring == "outer"
    assert ("the outer* rings turn" in texts["02"].replace("*outer*", "outer*")) == outer
    assert ("the inner* rings turn" in texts["02"].replace("*inner*", "inner*")) != outer


def tells(results: Results, text: str) -> None:
    """Lesson 1: cautions before the first instruction, slack by its lever, strikes that add up to all elements."""
    bearing, spread = results.setup.bearing, results.bearing.effective_spread
    cautions, first = text.index("Never run the engine to spin a raised wheel"), text.index("Raise the wheel")
    assert text.index("Before you touch a wheel") < cautions < first
    assert text.index("Put stands under it") < first
    assert "A quiet, tight bearing is not thereby sound" in text
    if spread is not None and bearing.contact_angle is not None:
        lever = results.setup.tire.free_diameter * math.tan(bearing.contact_angle) / spread
        assert float(found(r"the tread moves ([\d.,]+) times as far", text)) == pytest.approx(lever, rel=0.05)
        for play, travel in re.findall(r"\| (0\.0?[125]+) mm \| [\d.,]+ [µm]+m \| ([\d.,]+) mm \|", text):
            assert float(travel) == pytest.approx(float(play) * lever, rel=0.06)
    else:
        assert "It needs `row_spacing`, `pitch_diameter` and `contact_angle`" in text
    turns = 60 / 3.6 / results.wheel_geometry.rolling_circumference
    if bearing.elements_per_row is None:
        assert float(found(r"At 60 km/h the wheel turns with ([\d.]+) Hz", text)) == pytest.approx(turns, rel=ALIKE)
        return
    struck = {
        part: float(found(rf"\| {part} \| [\d.]+ Hz \| ([\d.]+) Hz \| [\d.]+ Hz \|", text))
        for part in ("turns of the wheel", "strikes, mark in the outer ring", "strikes, mark in the inner ring")
    }
    wheel, outer, inner = struck.values()
    assert wheel == pytest.approx(turns, rel=ALIKE)
    # whichever ring turns, each element passes a mark in either ring once while the rings go round once
    assert outer + inner == pytest.approx(bearing.elements_per_row * turns, rel=2 * ALIKE)
    assert outer < inner


def weighs(results: Results, text: str) -> None:
    """Lesson 3: the wheel against its equal share, gear ahead or behind, what the far end loses."""
    wheel, share = results.weight.wheel_loads[results.wheel], results.weight.equal_share
    said = found(r", (more than|less than|as much as) its equal share", text)
    assert said == order(wheel, share)
    if results.setup.kind == "trailer":
        assert "behind the axle" in text
        assert "off the coupling" in text
    elif results.wheel.startswith("rear"):
        assert "behind the rear axle" in text
        assert "off the front axle" in text
    else:
        assert "ahead of the front axle" in text
        assert "off the rear axle" in text
    for gear in results.setup.gear:
        assert gear.name in text


def tips(results: Results, text: str) -> None:
    """Lesson 4: side of the load line, way of the tipping, way and order of the row loads, the spacer's effect."""
    y, standing = results.wheel_geometry.load_line_offset, results.cases["standing"]
    toward = results.side * standing.bearing_moment.x > 0
    it = results.setup.kind
    if "right below the middle" in text:
        assert abs(y) < 1e-4
    else:
        assert found(r"The road pushes up \S+ \S+ (outboard|inboard) of the middle", text) == (
            "outboard" if y > 0 else "inboard"
        )
    assert found(rf"tips its top (toward|away from) the {it}", text) == ("toward" if toward else "away from")
    assert found(r"the hub's top tips away from it: (against|the same way as) the standing load", text) == (
        "against" if toward else "the same way as"
    )
    rows = standing.row_load
    if rows is None:
        assert "the file gives too little about this bearing" in text
        return
    for row in ("outboard", "inboard"):
        way = found(rf"the {row} row (up|down|neither up nor down) with", text)
        assert way == direction(getattr(rows, row).z)
    assert found(r"The tipping adds [\d.,]+ k?N to the (\w+) one", text) == ("outboard" if toward else "inboard")
    assert ("its load turns round" in text) == (min(rows.outboard.z, rows.inboard.z) < 0)
    before, after, word = re.search(
        r"row carried ([\d.,]+ k?N) before and carries ([\d.,]+ k?N) after: (.+?) it did", text
    ).groups()  # type: ignore[union-attr]
    assert newtons(before) == pytest.approx(max(abs(rows.outboard.z), abs(rows.inboard.z)), rel=ALIKE)
    if abs(newtons(after) / newtons(before) - 1) > 2 * ALIKE:
        assert word == order(newtons(after), newtons(before))


def bends(results: Results, text: str) -> None:
    """Lesson 5: between or outside the supports, and on which side."""
    standing, spread = results.cases["standing"], results.bearing.effective_spread
    place = results.side * standing.bearing_moment.x / standing.bearing_force.z
    half = (0.07 if spread is None else spread) / 2  # the lesson's own example where the file says too little
    overhung = abs(place) > half
    assert ("so the spindle is overhung" in text) == overhung
    assert ("stands between the two supports, so" in text) != overhung
    near = "outboard" if place >= 0 else "inboard"
    if overhung:
        assert f"peaks at the {near} support" in text
        assert found(r"and the (\w+) one pushes in the same direction as the load", text) != near
    else:
        assert f"Here it grows from the {near} support" in text


def corners(results: Results, text: str) -> None:
    """Lesson 6: ways of tipping at both sides of a bend, load against side push, the claim, brakes and caliper."""
    setup, it, y = results.setup, results.setup.kind, results.wheel_geometry.load_line_offset
    n = float(found(r"at the outer side of a bend of ([\d.]+) g", text))
    outer, inner = bend(setup, n, results)
    for case, side, sign in ((outer, "outer wheel's hub is tipped", -1), (inner, "inner wheel's", 1)):
        assert found(rf"{side} (toward|away from) the {it} with", text) == toward(results, case)
        assert newtons(found(rf"{side} (?:toward|away from) the {it} with ([\d.,]+ k?N)·m", text)) == pytest.approx(
            abs(case.bearing_moment.x), rel=ALIKE
        )
        # the road pushes the foot of the outer tire toward the vehicle: outboard is the other way
        assert results.side * case.contact_force.y * sign > 0
    if abs(y) < 0.05e-3:  # shown as on centre
        assert "only the side push turns the hub" in text
    else:
        ways = found(r"at the outer wheel the two work (against each other|together)", text)
        assert ways == ("against each other" if y > 0 else "together")
        assert float(found(r"a bend of (−?[\d.]+) g\s*\.", text)) == pytest.approx(
            abs(y) / results.wheel_geometry.loaded_radius, abs=0.006
        )
    far = vary(setup, {"wheel.spacer": f"{setup.wheel.spacer + 0.025!r} m"})
    for case, after, row in zip((outer, inner), bend(far, n, results), ("outer", "inner"), strict=True):
        before, now = abs(case.bearing_moment.x), abs(after.bearing_moment.x)
        # more toward the vehicle with a load line farther out, whatever the sizes do
        assert results.side * (after.bearing_moment.x - case.bearing_moment.x) > 0
        said = found(rf"[Aa]t the {row} wheel (?:the hub is then tipped )?with [\d.,]+ k?N·m, ([a-z ]+?) before", text)
        assert said == order(now, before)
    if it == "trailer":
        assert "the axle loses load" in text
    else:
        gains = results.wheel.startswith("front")
        wrong = "less than" if gains else "more than"
        assert found(r"stands with [\d.,]+ k?N, ([a-z ]+?) at rest", text) != wrong
    brake = setup.brake
    assert ("Give `[brake]` its" in text) == (brake is None)
    if brake is not None and abs(math.sin(brake.caliper_position)) > 0.02:
        ahead = math.sin(brake.caliper_position) > 0  # counted from straight up toward the front
        assert found(r"Here the caliper sits (ahead of|behind) the axle", text) == ("ahead of" if ahead else "behind")
        assert found(r"the axle and pushes the disc (up|down) with", text) == ("up" if ahead else "down")


def wears(results: Results, text: str) -> None:
    """Lesson 7: no life as one number, the worst case of the duty, ratios in their spans, verdicts that fit them."""
    balls = results.setup.bearing.kind == "two-row ball"
    assert found(r"The bearing here rolls on (\w+)\.", text) == ("balls" if balls else "rollers")
    assert int(found(r"of the life is left (\d+) %", text)) == round(100 * 1.1 ** -(3 if balls else 10 / 3))
    assert not re.search(r"(?<!reach a )million (turns|revolutions)\b(?!\.)|revolutions", text)
    if results.life is None:
        assert "the file gives too little about this bearing" in text
        assert not re.search(r"the distance is \d", text)
        return
    # a distance stands in an opened working alone, with its caution, and beside the meaning of the rating
    assert len(re.findall(r"About [\d,]+ km, and no digit more", text)) <= 1
    assert text.count("One in ten of many such bearings would have flaked by then") == text.count("no digit more")
    share, wear = re.search(  # type: ignore[union-attr]
        r"The case \*.+?\* takes ([\d.]+) % of the distance and ([\d.]+) % of the wear", text
    ).groups()
    if "says how it is driven" in text:
        assert results.life.duty is not None
        worst = max(results.life.duty.parts, key=lambda part: part.damage_share)
        assert float(share) == pytest.approx(100 * worst.share, rel=0.06)
        assert float(wear) == pytest.approx(100 * worst.damage_share, rel=0.06)
    before, after = (newtons(words) for words in re.search(  # type: ignore[union-attr]
        r"The harder loaded row carries ([\d.,]+ k?N) standing before and ([\d.,]+ k?N) after", text
    ).groups())  # fmt: skip
    standing = re.search(r"\| standing \| × ([\d.,]+)", text)
    if standing:
        ratio = float(standing.group(1).replace(",", ""))
        assert after / before == pytest.approx(ratio, rel=0.02, abs=0.006)
    for value, low, high in re.findall(r"× ([\d.,]+) \( ([\d.,]+) to ([\d.,]+) \)", text):
        ends = tuple(float(number.replace(",", "")) for number in (low, high))
        assert ends[0] <= float(value.replace(",", "")) <= ends[1]
    for _, low, high, verdict in re.findall(
        r"× ([\d.,]+) \( ([\d.,]+) to ([\d.,]+) \) \| (raises|lowers|not settled) \|", text
    ):
        ends = (float(low.replace(",", "")), float(high.replace(",", "")))
        if 1.0 not in ends:  # rounded to the very edge
            assert verdict == verdict_of(*ends)
    said = re.search(r"the distance is ([\d.,]+) \( ([\d.,]+) to ([\d.,]+) \) of what it was", text)
    if said:
        value, low, high = (float(number.replace(",", "")) for number in said.groups())
        settled = re.search(r"The change (raises|lowers) the distance", text)
        if low > 1.005 or high < 0.995:
            assert settled is not None
            assert settled.group(1) == ("raises" if low > 1 else "lowers")
        elif low < 0.995 and high > 1.005:
            assert "These data do not settle which way it goes" in text


def verdict_of(low: float, high: float) -> str:
    """The words of a verdict from the ends of a span."""
    if low > 1:
        return "raises"
    return "lowers" if high < 1 else "not settled"


def on_larger_tires(results: Results, text: str) -> None:
    """Lesson 8: the bearing carries what it did, standing; the lever grows, and with it what the side push turns."""
    road, tire = re.search(
        r"The road pushes with ([\d.,]+ N) more, and the tire weighs ([\d.,]+ N) more", text
    ).groups()  # type: ignore[union-attr]
    assert newtons(road) == newtons(tire) == pytest.approx(3 * 9.80665, rel=ALIKE)
    for row in ("Push on the hub", "Tipping of the hub"):
        before, after = re.search(rf"\*\*{row}\*\* \| (.+?) \| (.+?) \|", text).groups()  # type: ignore[union-attr]
        assert before == after
    before, after = re.search(r"\| Load line \| (.+?) \| (.+?) \|", text).groups()  # type: ignore[union-attr]
    assert before == after
    after, before = re.search(
        r"side push turns this hub with ([\d.,]+ k?N)·m where it was ([\d.,]+ k?N)·m", text
    ).groups()  # type: ignore[union-attr]
    n = float(found(r"at the outer side of a bend of ([\d.]+) g", text))
    outer, _ = bend(results.setup, n, results)
    assert newtons(before) == pytest.approx(
        results.wheel_geometry.loaded_radius * abs(outer.contact_force.y), rel=ALIKE
    )
    assert 1.0 < newtons(after) / newtons(before) < 1.2
    one, other = re.search(r"the wheel turns ([\d.,]+) times and not ([\d.,]+) times", text).groups()  # type: ignore[union-attr]
    turns, fewer = (int(number.replace(",", "")) for number in (other, one))
    assert turns == pytest.approx(8000 / (3.05 * results.setup.tire.free_diameter), abs=0.6)
    assert fewer < turns


def bend(setup: Setup, lateral_g: float, results: Results) -> tuple[CaseResult, CaseResult]:
    """The wheel in view at the outer and at the inner side of a bend."""
    sides = ("right", "left") if results.side > 0 else ("left", "right")
    cases = [{"name": side, "kind": "cornering", "lateral_g": lateral_g, "toward": side} for side in sides]
    solved = solve(vary(setup, {"case": cases, "duty": [{"case": "standing", "share": 1}]}), results.wheel)
    return solved.cases[sides[0]], solved.cases[sides[1]]


def toward(results: Results, case: CaseResult) -> str:
    """The words for the way in which the hub's top is tipped."""
    return "toward" if results.side * case.bearing_moment.x > 0 else "away from"


def found(pattern: str, text: str) -> str:
    """The one word that stands there."""
    match = re.search(pattern, text)
    assert match is not None, f"no sentence like {pattern!r}"
    return match.group(1)


def order(value: float, base: float) -> str:
    """The words for the order of two numbers."""
    if abs(value - base) <= ALIKE * max(abs(value), abs(base)):
        return "as much as"
    return "more than" if value > base else "less than"


def direction(value: float) -> str:
    """The word for the way of an upright force."""
    return "up" if value > 0 else "down" if value < 0 else "neither up nor down"


def newtons(text: str) -> float:
    """A force as shown, in newtons."""
    number, unit = text.split()
    return float(number.replace(",", "")) * (1e3 if unit == "kN" else 1.0)
