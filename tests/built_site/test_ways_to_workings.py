"""Numbers that lead to their workings: what a report, a sheet or a comparison shows is what the working comes to."""

import re
from decimal import Decimal
from html import unescape
from pathlib import Path

import sample_sites

_WAY = re.compile(r'<a class="way" href="\.\./(workings/[^"#]+)#([^"]+)">(.*?)</a>', re.S)
_WORKED = re.compile(r'<details class="worked" id="([^"]+)"([^>]*)>')
_BOTH = re.compile(r'<span class="si">(.*?)</span><span class="us">(.*?)</span>', re.S)
_NUMBER = re.compile(r"\u2212?-?\d[\d,]*(?:\.\d+)?")
_POUND_FORCE = Decimal("4.4482216152605")  # N
_SCALES = [Decimal(10) ** power for power in (-3, -2, 0, 2, 3)]  # kN beside N, percent beside a share, mm beside m


def told(html: str) -> tuple[str, str]:
    """Return a number as it is shown in both systems."""
    match = _BOTH.search(html)
    texts = match.groups() if match else (html, html)
    numbers = [_NUMBER.search(unescape(re.sub("<[^>]*>", "", text))) for text in texts]
    assert numbers[0] is not None, html
    assert numbers[1] is not None, html
    return numbers[0].group(), numbers[1].group()


def read(text: str) -> tuple[Decimal, Decimal]:
    """Return the size of a number as printed, and half a unit of its last digit."""
    number = Decimal(text.replace(",", "").replace("\u2212", "-"))
    whole, point, decimals = text.partition(".")
    rounded = 0 if point else len(whole) - len(whole.rstrip("0"))  # zeros at the end may be rounding
    return abs(number), Decimal(1).scaleb(rounded - len(decimals)) / 2


def alike(shown: str, reached: str, system: str) -> bool:
    """Return whether two numbers could be one, each rounded, in units that differ by a power of ten."""
    number, half = read(shown)
    other, other_half = read(reached.partition(" ")[0])
    if system == "us" and reached.endswith(" N"):  # formulas of ISO 281 hold for newtons alone
        other, other_half = other / _POUND_FORCE, other_half / _POUND_FORCE
    return any(abs(number - other * scale) <= half + other_half * scale for scale in _SCALES)


def results_of(page: Path) -> dict[str, tuple[str, str]]:
    """Return what every working of a page comes to in both systems, by its anchor."""
    text = page.read_text("utf-8")
    return {ident: (last_of("si", told), last_of("us", told)) for ident, told in _WORKED.findall(text)}


def last_of(system: str, attributes: str) -> str:
    """Return what stands behind the last sign of equality in a working's plain text."""
    match = re.search(rf'data-plain-{system}="([^"]*)"', attributes)
    assert match is not None, attributes
    return unescape(match[1]).rpartition("=")[2].strip()


def test_a_number_is_what_its_working_comes_to(demonstration: Path) -> None:
    workings: dict[str, dict[str, tuple[str, str]]] = {}
    counted = dict.fromkeys(("reports", "sheets", "compare"), 0)
    for path in sample_sites.pages_of(demonstration):
        for file, ident, html in _WAY.findall((demonstration / path).read_text("utf-8")):
            if file not in workings:
                workings[file] = results_of(demonstration / file)
            for system, shown, reached in zip(("si", "us"), told(html), workings[file][ident], strict=True):
                assert alike(shown, reached, system), f"{path}: {shown} leads to {ident}, which comes to {reached}"
            counted[path.partition("/")[0]] += 1
    assert counted["reports"] > 500
    assert counted["compare"] > 50
    assert counted["sheets"] > 20
