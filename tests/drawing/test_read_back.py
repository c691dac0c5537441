"""What a ruler finds in the written SVG: forces and dimensions to the scale that the file states."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from drawing.example_scene import every_item
from drawing.read_back import ReadFigure, read
from hubwright.drawing import draw, svg_file, svg_for_page
from hubwright.scenes import vocabulary as v


@pytest.fixture(scope="module")
def page() -> str:
    return svg_for_page(draw(every_item()), prefix="figure-1", units_class="si")


@pytest.fixture(scope="module")
def figure(page: str) -> ReadFigure:
    return read(page)


def test_every_force_is_as_long_as_its_newtons_at_the_stated_scale(figure: ReadFigure) -> None:
    forces = [group for group in figure.of("force-", "reaction-") if "data-newtons" in group.data]
    assert len(forces) == 3 + 6 + 2
    for group in forces:
        millimetres = group.length() * figure.mm_per_unit
        stated = float(group.data["data-newtons"]) / float(group.view["data-newtons-per-mm"])
        assert millimetres == pytest.approx(stated, rel=0.005), group.name


def test_the_drawn_path_of_a_force_is_as_long_as_its_data_say(figure: ReadFigure) -> None:
    for group in figure.of("force-", "reaction-"):
        if "data-x1" in group.data:
            # two decimals of a tenth of a millimetre at either end
            assert group.extent_along() == pytest.approx(group.length(), abs=0.02), group.name


def test_every_dimension_is_as_long_as_its_millimetres_at_the_stated_scale(figure: ReadFigure) -> None:
    dimensions = [group for group in figure.of("dimension-") if "data-mm" in group.data]
    assert len(dimensions) == 4 + 3
    for group in dimensions:
        real = group.length() * figure.mm_per_unit * float(group.view["data-mm-per-mm"])
        assert real == pytest.approx(float(group.data["data-mm"]), rel=0.005), group.name


def test_newtons_and_millimetres_in_the_file_are_those_of_the_scene(figure: ReadFigure) -> None:
    for item in every_item().items:
        if isinstance(item, v.Force) and item.to_scale:
            (group,) = [
                g for g in figure.groups if g.name.endswith(item.name) and g.name.startswith(("force", "reaction"))
            ]
            assert float(group.data["data-newtons"]) == pytest.approx(
                (item.vector[0] ** 2 + item.vector[1] ** 2) ** 0.5
            )
        if isinstance(item, v.Dimension):
            (group,) = [g for g in figure.groups if g.name in (item.name, f"dimension-{item.name}")]
            i = 0 if item.direction == "horizontal" else 1
            assert float(group.data["data-mm"]) == pytest.approx(abs(item.end[i] - item.start[i]))


def test_outboard_points_left_in_a_mirrored_view(figure: ReadFigure) -> None:
    (oblique,) = [group for group in figure.groups if group.name == "reaction-oblique"]
    x1, y1, x2, y2 = (float(oblique.data[f"data-{key}"]) for key in ("x1", "y1", "x2", "y2"))
    assert x2 < x1, "its first component points outboard"
    assert y2 > y1, "it points down, and y of an SVG runs down"


def test_a_moment_carries_its_sense(figure: ReadFigure) -> None:
    moments = {group.name: float(group.data["data-newton-metres"]) for group in figure.of("moment-")}
    assert moments == {"moment-M_x": 57.0, "moment-back": -20.0}


def test_layers_stand_in_teaching_order_and_hold_what_belongs_to_them(figure: ReadFigure) -> None:
    assert figure.layers == ["step-1", "step-2", "step-3", "step-4", "step-5"]
    steps = {group.name: group.step for group in figure.groups}
    assert steps["force-F_z"] == steps["label-force-F_z"] == 2
    assert steps["reaction-B_z"] == 3
    assert steps["dimension-radius"] == 4


def test_ids_are_unique_and_carry_the_prefix(figure: ReadFigure) -> None:
    assert len(figure.ids) == len(set(figure.ids))
    assert all(name.startswith("figure-1-") for name in figure.ids)


def test_a_page_gets_no_style_attribute_and_no_colour(page: str) -> None:
    root = ElementTree.fromstring(page)
    for element in root.iter():
        assert "style" not in element.attrib
        assert not element.tag.endswith(("style", "script"))
        assert all(element.get(key) in (None, "none") for key in ("fill", "stroke"))
    assert root.get("role") == "img"
    labelled = (root.get("aria-labelledby") or "").split()
    texts = {element.get("id"): element.text for element in root.iter() if element.get("id") in labelled}
    assert [texts[name] for name in labelled] == [every_item().title, every_item().description]


def test_a_file_stands_alone() -> None:
    written = svg_file(draw(every_item()), theme="dark")
    assert not re.search(r'(?:href|src)\s*[=:]\s*["\']?(?:https?:)?//', written)
    assert set(re.findall(r"url\((#|data:|[a-z]+)", written)) == {"#", "data:"}
    assert "<text" in written
    assert "<text" not in svg_file(draw(every_item()), outlined=True)


def test_scale_bars_are_as_long_as_they_say(page: str) -> None:
    root = ElementTree.fromstring(page)
    bars = {g.get("data-name"): g for g in root.iter() if (g.get("data-name") or "").startswith("scale-")}
    per_unit = float(root.get("data-mm-per-unit") or 0)
    # real millimetres or newtons for each sheet millimetre, as the example's views have them
    for name, factor, wanted in (
        ("scale-length-whole", 5.0, {"mm": 1.0, "in": 25.4}),
        ("scale-length-detail A", 1.25, {"mm": 1.0, "in": 25.4}),
        ("scale-force-whole", 170.0, {"kN": 1000.0, "lbf": 4.448222}),
    ):
        paths = [p.get("d") or "" for p in bars[name].iter() if p.tag.endswith("path")]
        words = ["".join(t.itertext()) for t in bars[name].iter() if t.tag.endswith("text")]
        values = [word.split() for word in words if re.fullmatch(r"[\d.,]+ (mm|in|kN|lbf)", word)]
        assert len(values) == 2, words
        levels: dict[int, list[float]] = {}
        for path in paths:
            for x, y in re.findall(r"(-?[\d.]+),(-?[\d.]+)", path):
                levels.setdefault(round(float(y) / 30), []).append(float(x))
        drawn = sorted({round((max(xs) - min(xs)) * per_unit * factor, 3) for xs in levels.values()})
        stated = [float(value.replace(",", "")) * wanted[unit] for value, unit in values]
        for length in stated:
            assert any(abs(length - found) <= 0.005 * length for found in drawn), (name, stated, drawn)


def test_a_force_that_is_nothing_has_no_arrow() -> None:
    scene = every_item()
    items = tuple(
        replace(i, vector=(0.0, 0.0)) if isinstance(i, v.Force) and i.name == "force-W" else i for i in scene.items
    )
    figure = read(svg_for_page(draw(replace(scene, items=items, body=None)), prefix="f", units_class="si"))
    assert not [group for group in figure.groups if group.name == "force-W"]
    assert [group for group in figure.groups if group.name == "label-force-W"]


def test_what_stood_does_not_move_when_a_step_is_added() -> None:
    drawing = draw(every_item())
    whole = svg_for_page(drawing, prefix="f", units_class="si")
    first = svg_for_page(drawing.up_to(2), prefix="f", units_class="si")

    def of(svg: str, layer: str) -> str:
        (found,) = [g for g in ElementTree.fromstring(svg) if g.get("data-name") == layer]
        return ElementTree.tostring(found, encoding="unicode")

    assert of(first, "step-2") == of(whole, "step-2")
    assert "step-3" not in first
