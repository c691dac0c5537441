"""Axes of plots: marks where their values lie, words that never stand on one another, also on a narrow sheet."""

import pytest

from drawing.written_checks import wrong_with
from hubwright.drawing import draw
from hubwright.scenes.plot_frame import Area, decade_marks, even_marks, plot
from hubwright.scenes.vocabulary import Curve, Scene

AREA = Area(30.0, 30.0, 230.0, 130.0)


def sheet(marks: tuple[tuple[float, str], ...], end: float) -> Scene:
    frame = plot("plot", AREA, (0.0, end), (-1.0, 1.0))
    return Scene(
        name="plot",
        title="Plot",
        caption="",
        description="",
        units="si",
        size=(260.0, 150.0),
        views=(frame.view,),
        items=(
            frame.axis("axis-x", "foot", marks, "abscissa", grid=True),
            frame.axis("axis-y", "left", decade_marks(-1.0, 1.0), "ratio"),
            Curve("curve", "plot", points=((0.0, -1.0), (end, 1.0)), filled=False),
        ),
    )


def test_words_stand_under_the_places_that_they_name() -> None:
    drawing = draw(sheet(even_marks(0.0, 100.0), 100.0))
    assert wrong_with(drawing) == []
    for box in drawing.texts:
        if box.name.startswith("axis-axis-x") and box.words.isdecimal():
            middle = (box.box[0] + box.box[2]) / 2
            assert middle == pytest.approx(30.0 + 2.0 * float(box.words), abs=0.01)
        if box.words == "1":  # the middle of two decades
            assert (box.box[1] + box.box[3]) / 2 == pytest.approx(80.0, abs=0.5)


def test_words_that_would_crowd_are_left_out() -> None:
    crowded = draw(sheet(tuple((float(i), f"{i} thousand") for i in range(101)), 100.0))
    assert wrong_with(crowded) == []
    assert 5 < sum("thousand" in text.words for text in crowded.texts) < 20
    assert any(text.words == "100 thousand" for text in crowded.texts)  # the last one names the unit


def test_a_phone_keeps_the_axes_and_their_words() -> None:
    (narrow,) = draw(sheet(even_marks(0.0, 100.0), 100.0), form="narrow")
    assert wrong_with(narrow) == []
    words = {text.words for text in narrow.texts}
    assert {"0", "100", "abscissa", "0.1", "10", "ratio"} <= words
    for text in narrow.texts:
        x0, y0, x1, y1 = text.box
        assert x0 >= 0
        assert y0 >= 0
        assert x1 <= narrow.size[0]
        assert y1 <= narrow.size[1]
