"""What search reads of a page: numbers marked by unit system, and no drawings, rings or boxes."""

from hubwright.lessons.numbers import both
from hubwright.lessons.search_text import BETWEEN, CLOSE, OPEN, search_text


def test_each_number_is_marked_in_both_systems_and_other_words_stay() -> None:
    html = f"<p>About {both('12 mm', '0.47 in')} and {both('5', '5')}.</p>"
    assert f"{OPEN}12 mm{BETWEEN}0.47 in{CLOSE}" in search_text(html)
    assert search_text("<p>No number.</p>") == "<p>No number.</p>"


def test_drawings_and_boxes_to_fill_in_are_not_searched() -> None:
    assert "5 kN" not in search_text("<p>x</p><svg><text>5 kN</text></svg><select><option>5 kN</option></select>")


def test_letters_in_rings_and_numbers_of_sections_are_not_searched() -> None:
    assert search_text('<p>x<a class="ring" href="#note-a">a</a></p><span class="mark">4.1</span>') == "<p>x </p> "
