"""The narrow form: one sheet for each view, letters for labels, the same forces at a scale that it states itself."""

from math import hypot

import pytest

from drawing.example_scene import every_item
from drawing.read_back import read
from drawing.written_checks import wrong_with
from hubwright.drawing import Drawing, draw, svg_for_page
from hubwright.scenes import vocabulary as v
from hubwright.scenes.chart_rows import BarValue
from hubwright.scenes.comparison_bars import comparison_bars


@pytest.fixture(scope="module")
def narrow() -> dict[str, Drawing]:
    return {drawing.view: drawing for drawing in draw(every_item(), form="narrow")}


def test_each_view_is_a_sheet_of_one_hundred_millimetres(narrow: dict[str, Drawing]) -> None:
    assert set(narrow) == {"whole", "detail A", "plot"}
    assert {drawing.size[0] for drawing in narrow.values()} == {100.0}


def test_forces_and_dimensions_keep_to_the_scale_that_the_narrow_file_states(narrow: dict[str, Drawing]) -> None:
    for drawing in narrow.values():
        figure = read(svg_for_page(drawing, prefix="n", units_class="si"))
        for group in figure.of("force-", "reaction-"):
            if "data-newtons" in group.data:
                newtons = group.length() * figure.mm_per_unit * float(group.view["data-newtons-per-mm"])
                assert newtons == pytest.approx(float(group.data["data-newtons"]), rel=0.005)
        for group in figure.of("dimension-"):
            if "data-degrees" in group.data:
                continue
            real = group.length() * figure.mm_per_unit * float(group.view["data-mm-per-mm"])
            assert real == pytest.approx(float(group.data["data-mm"]), rel=0.005)


def test_every_load_and_reaction_with_a_label_has_a_letter_in_the_key(narrow: dict[str, Drawing]) -> None:
    labelled = [i for i in every_item().items if isinstance(i, v.Force | v.Moment | v.Normal) and i.label]
    keyed = [entry.lines for drawing in narrow.values() for entry in drawing.balloons]
    for item in labelled:
        assert item.label is not None
        assert item.label.lines in keyed


def test_letters_are_unique_and_stand_in_the_drawing(narrow: dict[str, Drawing]) -> None:
    letters = [entry.letter for drawing in narrow.values() for entry in drawing.balloons]
    assert len(letters) == len(set(letters)) > 10
    for drawing in narrow.values():
        figure = read(svg_for_page(drawing, prefix="n", units_class="si"))
        words = {word for group in figure.groups for word in group.words}
        assert {entry.letter for entry in drawing.balloons} <= words


def test_nothing_leaves_the_narrow_sheet_and_no_letter_stands_on_another(narrow: dict[str, Drawing]) -> None:
    for drawing in narrow.values():
        assert wrong_with(drawing) == []


def test_a_bar_on_the_narrow_sheet_states_the_new_ratio(narrow: dict[str, Drawing]) -> None:
    view = narrow["detail A"].scene.views[0]
    (bar,) = [bar for bar in narrow["detail A"].scene.scale_bars if bar.quantity == "length"]
    paper, real = (float(part) for part in bar.caption.removeprefix("Scale ").split(" : "))
    assert paper / real == pytest.approx(view.scale)


def test_a_shrunk_arrow_keeps_its_direction(narrow: dict[str, Drawing]) -> None:
    figure = read(svg_for_page(narrow["detail A"], prefix="n", units_class="si"))
    (oblique,) = [group for group in figure.groups if group.name == "reaction-oblique"]
    x1, y1, x2, y2 = (float(oblique.data[f"data-{key}"]) for key in ("x1", "y1", "x2", "y2"))
    length = hypot(x2 - x1, y2 - y1)
    # 1,200 N outboard (left) and 1,700 N down
    assert ((x2 - x1) / length, (y2 - y1) / length) == pytest.approx(
        (-1200 / hypot(1200, 1700), 1700 / hypot(1200, 1700))
    )


def test_arrows_shrink_with_what_they_act_on(narrow: dict[str, Drawing]) -> None:
    for name in ("whole", "detail A"):
        wide, shrunk = every_item().view(name), narrow[name].scene.views[0]
        assert wide.newtons_per_mm is not None
        assert shrunk.newtons_per_mm is not None
        assert shrunk.newtons_per_mm / wide.newtons_per_mm == pytest.approx(wide.scale / shrunk.scale)


def test_bars_are_named_above_their_rows_and_keep_room_for_it() -> None:
    values = [
        BarValue("as it is", 900.0, 800.0, 950.0),
        BarValue("a name of more letters than a phone shows" * 2, 40.0),
    ]
    (drawing,) = draw(comparison_bars(values, quantity="Row load"), form="narrow")
    words = " ".join(box.words for box in drawing.texts)
    assert drawing.balloons == ()
    for told in ("as it is", "900 N", "span 800 to 950 N", "40 N", "than a phone"):
        assert told in words.replace("\u00a0", " ")
    assert wrong_with(drawing) == []
    names = [box.box for box in drawing.texts if box.name.startswith("words-row")]
    bars = [item for item in drawing.scene.items if isinstance(item, v.Bar)]
    for bar in bars:
        middle = drawing.scene.view(bar.view).on_sheet((0.0, bar.at))[1]
        assert not any(box[1] < middle + bar.thick / 2 and box[3] > middle - bar.thick / 2 for box in names)
