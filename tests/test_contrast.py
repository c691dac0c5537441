"""The measure of contrast that tests of the theme and of figures share, against what is printed of it."""

import pytest

from contrast import contrast


def test_contrast_is_that_of_the_guideline() -> None:
    # W3C, Web Content Accessibility Guidelines 2.2, definition of contrast ratio: from 1 to 21
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#fff", "#000") == pytest.approx(21.0)
    assert contrast("#ffffff", "#ffffff") == 1


def test_the_greys_beside_the_threshold_of_text_lie_on_either_side_of_it() -> None:
    # W3C, github.com/w3c/wcag, issue 200: #777777 on white is 4.48 : 1, which fails 4.5 : 1 (criterion 1.4.3)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)
    assert contrast("#767676", "#ffffff") >= 4.5
