"""The shipped faces have what figures print, and text is as wide as the files say."""

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st

from hubwright.drawing.faces import Face, advance, block, covers, font_file, line, plain, web_font_file, wrapped

PRINTED = "abcxyzABCXYZ0123456789 .,:;!?'()[]/+−×·÷±°µ→←↑↓⊙⊗½¼¾⅛⅜⅝⅞′″–—“”’…≤≥≈≠√%&=<>"
SYMBOLS = "FMBWRCDxyzeℓαβγδεθλμνπρστφψωΔΣΩΦ"
FALLBACK: tuple[Face, ...] = ("lettering", "serif", "mathematics")


def test_words_are_covered_by_the_faces_that_a_page_lists() -> None:
    missing = [c for c in PRINTED if not any(covers(face, c) for face in FALLBACK)]
    assert missing == []


def test_symbols_are_serif_italic_greek_included() -> None:
    for letter in SYMBOLS:
        (run,) = line(f"{{{letter}}}", 2.5).runs
        assert run.face == "symbol", letter


def test_a_subscript_is_lower_and_smaller() -> None:
    symbol, subscript = line("{F|z}", 2.5).runs
    assert subscript.em < symbol.em
    assert subscript.rise < 0 == symbol.rise
    assert line("{R|out}", 2.5).runs[1].face == "lettering"


def test_a_strong_line_is_larger_and_loses_its_mark() -> None:
    strong, usual = block(("*Detail", "Detail"), 2.5).lines
    assert strong.runs[0].text == usual.runs[0].text == "Detail"
    assert strong.width > usual.width


@pytest.mark.parametrize("face", ["lettering", "serif", "symbol"])
def test_widths_are_the_advances_in_the_file(face: Face) -> None:
    font = TTFont(font_file(face))
    names, widths, em = font.getBestCmap(), font["hmtx"], font["head"].unitsPerEm
    for letter in "HnM8 =":  # single characters, so that kerning plays no part
        assert advance(letter, face) == pytest.approx(widths[names[ord(letter)]][0] / em, abs=1e-3)


def test_digits_of_the_lettering_are_equally_wide() -> None:
    assert len({advance(digit, "lettering") for digit in "0123456789"}) == 1


@pytest.mark.parametrize("face", ["lettering", "narrow", "serif", "bold", "symbol", "mathematics"])
def test_page_and_layout_have_the_same_glyphs_and_keep_their_licence(face: Face) -> None:
    layout, web = TTFont(font_file(face)), TTFont(web_font_file(face))
    assert layout.getGlyphOrder() == web.getGlyphOrder()
    assert layout["hmtx"].metrics == web["hmtx"].metrics
    family = str(layout["name"].getDebugName(1))
    assert family.startswith("Hub "), "a changed face does not keep the name of the original"
    assert layout["name"].getDebugName(0), "its copyright notice stays"


def test_wrapping_keeps_words_and_width() -> None:
    text = "The road pushes up with 5.49 kN, 12 mm outboard of the bearing centre {C}."
    rows = wrapped(text, 2.5, 60.0, "serif")
    assert " ".join(rows) == text
    assert len(rows) > 1
    assert all(line(row, 2.5, "serif").width <= 60.0 for row in rows)


@given(
    words=st.lists(
        st.one_of(
            st.text("aefijlnTVWy.,0", min_size=1, max_size=9), st.sampled_from(("{F|z}", "{R|out},", "12\u00a0mm"))
        ),
        min_size=1,
        max_size=25,
    ),
    width=st.floats(8.0, 90.0),
    strong=st.booleans(),
)
def test_lines_are_as_full_as_if_each_had_been_measured(words: list[str], width: float, strong: bool) -> None:
    text = "*" * strong + " ".join(words)
    rows: list[str] = []
    for word in text.split(" "):
        if rows and line(f"{rows[-1]} {word}", 2.5, "serif").width <= width:
            rows[-1] += f" {word}"
        else:
            rows.append(word)
    assert wrapped(text, 2.5, width, "serif") == tuple(rows)


def test_plain_words_carry_no_marks() -> None:
    assert plain("*{F|z} = 5.49 kN") == "F_z = 5.49 kN"
