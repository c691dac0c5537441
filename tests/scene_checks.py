"""What every figure must hold, read from its drawing and its written file."""

import math
import os
import xml.etree.ElementTree as ET

import pytest
from hypothesis import HealthCheck, settings

from drawing.written_checks import wrong_with
from hubwright.drawing import draw, svg_file
from hubwright.drawing.marks import Drawing
from hubwright.scenes.vocabulary import Force, Scene

# for tests that draw a figure of random setups; what CI draws is the same each time, so fewer find as much there
SLOW = settings(max_examples=8 if os.environ.get("CI") else 30, deadline=None, suppress_health_check=list(HealthCheck))

_LAST: list[tuple[Scene, Drawing]] = []


def drawn(scene: Scene) -> Drawing:
    """A scene's drawing, laid out once for all checks of it."""
    if not _LAST or _LAST[0][0] is not scene:
        _LAST[:] = [(scene, draw(scene))]
    return _LAST[0][1]


def check_scene(scene: Scene) -> None:
    """Words stand clear of one another and of arrows; arrows are on the sheet; the steps are those of the items."""
    assert wrong_with(drawn(scene)) == []
    assert draw(scene, form="narrow")
    for text in (scene.title, scene.caption, scene.description, *(step.sentence for step in scene.steps)):
        assert text
        assert not any(word in text for word in ("nan", "inf ", "None", "safe", "\u2212"))
    steps = {item.step for item in scene.items}
    assert steps <= set(range(1, len(scene.steps) + 1))
    for item in scene.items:
        if isinstance(item, Force):
            view = scene.view(item.view)
            assert view.newtons_per_mm is not None
            x, y = view.on_sheet(item.at)
            way = -1.0 if item.tip_at_point else 1.0
            across = -way if view.mirrored else way
            far = x + across * item.vector[0] / view.newtons_per_mm, y + way * item.vector[1] / view.newtons_per_mm
            assert 0 < far[0] < scene.size[0], item.name
            assert 20 < far[1] < scene.size[1], item.name


def check_written_scales(scene: Scene) -> int:
    """Every arrow, dimension and bar in the written file is as long as its number says; return how many there are."""
    root = ET.fromstring(svg_file(drawn(scene)))
    per_unit = float(root.attrib["data-mm-per-unit"])
    checked = 0
    for group in root.iter():
        scales = {key: float(value) for key, value in group.attrib.items() if key.endswith("-per-mm")}
        if not scales:
            continue
        for mark in group.iter():
            if "data-x1" not in mark.attrib:
                continue
            x1, y1, x2, y2 = (float(mark.attrib[f"data-{end}"]) for end in ("x1", "y1", "x2", "y2"))
            long = math.hypot(x2 - x1, y2 - y1) * per_unit
            for what, scale in (("newtons", "newtons"), ("mm", "mm"), ("value", "mm")):
                if f"data-{what}" in mark.attrib:
                    said = abs(float(mark.attrib[f"data-{what}"]))
                    assert long * scales[f"data-{scale}-per-mm"] == pytest.approx(
                        said, rel=0.005, abs=0.01 * scales[f"data-{scale}-per-mm"]
                    )
                    checked += 1
    return checked


def is_round(value: float) -> bool:
    """Whether a scale is of the series 1, 2, 5, 10 ..."""
    mantissa = value / 10.0 ** math.floor(math.log10(value) + 1e-9)
    return any(abs(mantissa - step) < 1e-6 for step in (1.0, 2.0, 5.0, 10.0))
