"""Shapes that both unit systems of a figure share are drawn once; what differs stays in both."""

from xml.etree import ElementTree as ET

from hubwright.lessons.shared_shapes import shared

SVG = "{http://www.w3.org/2000/svg}"
LONG = "m0 0l1 1" * 30


def svg(twin: str, *groups: str) -> str:
    layer = f'<g data-name="step-1" class="layer">{"".join(groups)}</g>'
    return f'<svg xmlns="http://www.w3.org/2000/svg" id="{twin}">{layer}</svg>'


def part(name: str, more: str = "") -> str:
    return f'<g id="x-{name}" data-name="{name}"{more}><path d="{LONG}" /></g>'


def test_parts_are_drawn_once_and_what_has_data_or_words_stays_in_both() -> None:
    force = f'<g data-name="force" data-newtons="5"><path d="{LONG}" /></g>'
    words = f'<g data-name="label"><path d="{LONG}" /><text>5 kN</text></g>'
    si, us = (
        ET.fromstring(one)
        for one in shared(
            svg("si", part("hub"), part("rim"), force, words, part("disc")),
            svg("us", part("hub"), part("rim"), force, words.replace("kN", "lbf"), part("disc")),
            prefix="f",
        )
    )
    step = us.find(f"{SVG}g")
    assert step is not None
    assert [one.get("href") or one.get("data-name") for one in step] == ["#f-1", "force", "label", "#f-2"]
    kept = {one.get("id"): [inner.get("data-name") for inner in one] for one in si.iter() if one.get("id")}
    assert kept["f-1"] == ["hub", "rim"]
    assert kept["f-2"] == ["disc"]


def test_parts_that_differ_are_not_shared() -> None:
    other = part("hub").replace(LONG, LONG[::-1])
    assert "<use" not in shared(svg("si", part("hub")), svg("us", other), prefix="f")[1]


def test_each_twin_is_cut_by_its_own_frame() -> None:
    one, other = (svg(twin, part("hub", f' clip-path="url(#{twin}-clip-detail)"')) for twin in ("si", "us"))
    si, us = shared(one, other, prefix="f")
    assert '<use href="#f-1" clip-path="url(#us-clip-detail)"' in us
    assert '<g clip-path="url(#si-clip-detail)"><g id="f-1"><g data-name="hub"><path' in si
