"""Sums on the pages of the built demonstration: read as printed, the parts add up to the total."""

import re
from collections.abc import Iterator
from decimal import Decimal
from html import unescape
from pathlib import Path

import sample_sites

_SIZES = {"N": Decimal(1), "kN": Decimal(1000), "lbf": Decimal(1), "N·m": Decimal(1), "lbf·ft": Decimal(1)}
_TERM = r"(\u2212?[\d,]+(?:\.\d+)?) (k?N|lbf)"
_WAY = r"(?: (up|down|forward|rearward))?"
_SUM = re.compile(rf"{_TERM}{_WAY} \+ {_TERM}{_WAY} = {_TERM}{_WAY}")
_BACKWARD = ("down", "rearward")


def read(number: str) -> Decimal:
    """Return a number as printed."""
    return Decimal(number.replace(",", "").replace("\u2212", "-").replace("+", ""))


def last_digit(number: str) -> Decimal:
    """Return what a unit of the last printed digit is worth."""
    return Decimal(1).scaleb(-len(number.partition(".")[2]))


def figures_text(page: str) -> str:
    """Return the words of a page's figures."""
    return unescape(re.sub(r"<[^>]*>", "", page)).replace("\xa0", " ")


def sums_in_words(text: str) -> Iterator[tuple[str, Decimal, Decimal]]:
    """Yield each sum of two forces with what is left over, and half a unit of its total's last digit."""
    for match in _SUM.finditer(text):
        a, unit_a, way_a, b, unit_b, way_b, c, unit_c, way_c = match.groups()
        total = read(c) * _SIZES[unit_c]
        parts = [
            read(number) * _SIZES[unit] * (-1 if way in _BACKWARD else 1)
            for number, unit, way in ((a, unit_a, way_a), (b, unit_b, way_b))
        ]
        # the sum's direction may be left to its label
        found = sum(parts) * (-1 if way_c in _BACKWARD else 1)
        left = abs((abs(found) if way_c is None else found) - total)
        yield match.group(), left, last_digit(c) * _SIZES[unit_c] / 2


def test_sums_in_figures_hold(demonstration: Path):
    found = 0
    for page in sample_sites.pages_of(demonstration):
        for words, left_over, half in sums_in_words(figures_text((demonstration / page).read_text("utf-8"))):
            found += 1
            assert left_over <= half, f"{page}: {words}"
    assert found > 8


def test_columns_of_closure_tables_add_up_to_their_foot(demonstration: Path):
    columns = 0
    for page in sample_sites.pages_of(demonstration):
        text = (demonstration / page).read_text("utf-8")
        for table in re.findall(r"<caption>Is anything left over.*?</table>", text, re.S):
            rows = re.findall(r'<tr><th scope="row">.*?</tr>', table, re.S)
            for system in ("si", "us"):
                for place in (0, 2):
                    cells = [_cell(row, place, system) for row in rows]
                    *parts, foot = [read(cell) for cell in cells if cell]
                    columns += 1
                    assert sum(parts) == foot, f"{page}: {cells}"
    assert columns >= 4


def _cell(row: str, place: int, system: str) -> str:
    cell = re.findall(r'<td class="n">(.*?)</td>', row, re.S)[place]
    of_system = re.search(rf'<span class="{system}">(.*?)</span>', cell)
    return of_system[1] if of_system else re.sub(r"<[^>]*>", "", cell)


def test_shares_of_a_duty_make_a_hundred_percent(demonstration: Path):
    duties = 0
    for page in sample_sites.pages_of(demonstration):
        text = figures_text((demonstration / page).read_text("utf-8"))
        for told in re.findall(r"Two bars for each case of the duty of [^:]*: (.*?damage)\.", text):
            shares = re.findall(r"(under 0.1|[\d.]+) % of the distance and (under 0.1|[\d.]+) % of the damage", told)
            duties += 1
            for column in zip(*shares, strict=True):
                assert sum(0 if share == "under 0.1" else Decimal(share) for share in column) == 100, f"{page}: {told}"
    assert duties >= 1
