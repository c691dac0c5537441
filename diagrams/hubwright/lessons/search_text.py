"""What the search index reads of a page: numbers in both unit systems, marked so that only the reader's is shown.

The marks are characters of private use around and between the twins; `assets/search.js` knows them.
"""

import re

OPEN, BETWEEN, CLOSE = "\ue002", "\ue003", "\ue004"
_TWINS = re.compile(r'<span class="si">((?:(?!<span).)*?)</span><span class="us">((?:(?!<span).)*?)</span>', re.S)
_UNSAID = re.compile(
    r'<svg\b.*?</svg>|<select\b.*?</select>|<output\b.*?</output>|<(a|span) class="(?:ring|mark)"[^>]*>[^<]*</\1>', re.S
)


def search_text(html: str) -> str:
    """Return the HTML of a page as the search index should read it.

    Examples
    --------
    >>> text = search_text('<p><span class="q"><span class="si">12 mm</span><span class="us">0.47 in</span></span></p>')
    >>> text.replace(OPEN, "<").replace(BETWEEN, "|").replace(CLOSE, ">")
    '<p><span class="q"><12 mm|0.47 in></span></p>'
    """
    return _TWINS.sub(rf"{OPEN}\1{BETWEEN}\2{CLOSE}", _UNSAID.sub(" ", html))
