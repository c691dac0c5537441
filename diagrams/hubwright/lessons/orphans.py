"""Finds orphan numbers: numbers with a unit, or numbers in words that state a result, typed into lesson prose.

It reads the Markdown as written, before Jinja: what a function computes or `given` marks is no orphan, and
lines are those of the file. What is not prose (code, tags, link targets, list numbers, the quiet part of
the front matter) is blanked in place first, so that positions stay true.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

PROSE_KEYS = ("title", "summary", "question", "description")
EXEMPT_CALLS = frozenset(
    {
        "given",
        "claim",
        "vary",
        "figure",
        "working",
        "show",
        "number",
        "unit",
        "cautions",
        "has",
        "between",
        "practice_problems",
    }
)


@dataclass(frozen=True, slots=True)
class Orphan:
    """A number in prose that is neither computed nor given."""

    line: int
    text: str


def orphans(source: str) -> list[Orphan]:
    """Return the orphan numbers of a Markdown page, front matter included, in the order of their lines.

    Examples
    --------
    >>> orphans("The push is 5.1 kN.\\nTwo rows carry it; one carries twice the other.")
    [Orphan(line=1, text='5.1 kN'), Orphan(line=2, text='twice')]
    >>> orphans('{{ given("25 mm") }} and {{ load | show }}, as in lesson 7.')
    []
    """
    prose = prose_of(source)
    taken: list[tuple[int, int]] = []
    for pattern in _PATTERNS:
        for match in pattern.finditer(prose):
            if not any(start < match.end() and match.start() < end for start, end in taken):
                taken.append(match.span())
    return [
        Orphan(line=prose.count("\n", 0, start) + 1, text=" ".join(prose[start:end].split()))
        for start, end in sorted(taken)
    ]


@lru_cache(maxsize=64)
def prose_of(source: str) -> str:
    """Return the text with everything that is not prose blanked; its length and its lines stay as they were."""
    text = list(source)
    body = _blank_front_matter(source, text)
    _blank_jinja(source, text)
    for pattern, group in _NOT_PROSE:
        for match in pattern.finditer("".join(text), body):
            _blank(text, *match.span(group))
    for match in _SPACES.finditer("".join(text)):
        _blank(text, *match.span(), " ")
    return "".join(text)


_BREAK = "\x00"  # stands for a blanked character: neither a space nor part of a word


def _blank(text: list[str], start: int, end: int, filler: str = _BREAK) -> None:
    for i in range(start, end):
        if text[i] != "\n":
            text[i] = filler


_NOT_PROSE = (
    (re.compile(r"^(?P<fence>```+|~~~+).*?(?:^(?P=fence)|\Z)", re.M | re.S), 0),
    (re.compile(r"<!--.*?-->", re.S), 0),
    (re.compile(r"`[^`\n]+`"), 0),
    (re.compile(r"\]\([^)\n]*\)"), 0),
    (re.compile(r"^\s*\[[^\]\n]+\]:.*$", re.M), 0),
    (re.compile(r"\b(?:https?|mailto):\S+"), 0),
    (re.compile(r"^[ \t]*(\d+[.)])(?=\s)", re.M), 1),
    (re.compile(r"^#+[ \t]*(\d+(?:\.\d+)*\.?)(?=\s)", re.M), 1),
)
# tags, entities and marks of emphasis may stand between a number and its unit: they count as spaces
_SPACES = re.compile(r"<[/a-zA-Z][^<>]*>|&(?:nbsp|thinsp|#160);|[*_\u00a0\u202f\u2009]")
_FRONT_MATTER = re.compile(r"\A---[ \t]*\n(?P<keys>.*?)^---[ \t]*$\n?", re.M | re.S)
_KEY = re.compile(r"^(?P<key>[A-Za-z_]\w*)[ \t]*:", re.M)


def _blank_front_matter(source: str, text: list[str]) -> int:
    """Blank the keys that are not prose and return where the body begins."""
    match = _FRONT_MATTER.match(source)
    if match is None:
        return 0
    keys = list(_KEY.finditer(source, match.start("keys"), match.end("keys")))
    for key, after in zip(keys, [*keys[1:], None][: len(keys)], strict=True):
        end = after.start() if after else match.end("keys")
        _blank(text, key.start(), key.end() if key["key"] in PROSE_KEYS else end)
    return match.end()


_OPENING = re.compile(r"\{\{|\{%|\{#")
_TOKEN = re.compile(
    r"(?P<string>\"(?:\\.|[^\"\\])*\"|'(?:\\.|[^'\\])*')|(?P<name>[A-Za-z_]\w*)|(?P<end>-?[%}]\})|(?P<other>.)", re.S
)


def _blank_jinja(source: str, text: list[str]) -> None:
    """Blank every Jinja tag but the strings in it that become prose."""
    position = 0
    while opening := _OPENING.search(source, position):
        start = opening.start()
        if opening.group() == "{#":
            found = source.find("#}", start)
            position = len(source) if found < 0 else found + 2
            _blank(text, start, position)
            continue
        kept = []
        position = opening.end()
        for kind, span in _strings(source, position):
            if kind == "string":
                kept.append(span)
            else:
                position = span[1]
        _blank(text, start, position)
        for first, last in kept:
            text[first:last] = source[first:last]


def _strings(source: str, position: int) -> Iterator[tuple[str, tuple[int, int]]]:
    """Yield the spans of the strings of a tag that may become prose, then the span of its end."""
    calls: list[str] = []  # names before the brackets that stand open
    name, depth = "", 0
    previous = ""
    for match in _TOKEN.finditer(source, position):
        if match["end"] and not depth:
            yield "end", match.span()
            return
        if match["string"]:
            following = source[match.end() : match.end() + 2].lstrip()[:1]
            is_key = following == ":" or previous == "["
            if not is_key and not EXEMPT_CALLS.intersection(calls):
                yield "string", (match.start() + 1, match.end() - 1)
        token = match.group()
        if token in "([{" and token:
            calls.append(name if token == "(" and previous == name else "")
            depth += 1
        elif token in ")]}" and calls:
            calls.pop()
            depth -= 1
        if match["name"]:
            name = token
        if not token.isspace():
            previous = token
    yield "end", (len(source), len(source))


_DIGITS = (
    r"(?<![\w.,/:§-])[−–+-]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:[.,]\d+)?(?:\s?[½¼¾⅛⅜⅝⅞]|(?:[ -]\d+)?/\d+)?"
    r"|(?<![\w.,])[½¼¾⅛⅜⅝⅞]"
)
# a numeral after one of these is a place in a text, not a size
_REFERENCE = "".join(
    rf"(?<!{word}\s)"
    for word in (
        "[Ll]esson", "[Ll]essons", "[Ff]igure", "[Tt]able", "[Ss]ection", "[Cc]hapter", "[Pp]roblem", "[Ss]tep",
        "[Pp]age", "[Pp]art", "[Ee]quation", "[Ee]dition", "[Vv]olume", "[Cc]lause", "[Ee]xample",
        "ISO", "DIN", "SAE", "EN", "TS", "ASTM",
    )
)  # fmt: skip
_UNITS = (
    r"(?:[kM]?N\s?[·*]?\s?m?m|[kM]?N\s?/\s?m?m|[kM]?N|lbf?\s?[·*-]\s?(?:ft|in)|(?:ft|in)\s?[·*-]\s?lbf?|lbf?\s?/\s?in|lbs?|lbf|"
    r"µm|um|mm²?|cm|km/h|km|m/s²?|m|in|ft|mph|kg|g|t|[kMG]?Pa|psi|bar|Hz|rpm|°\s?[CF]?|deg|rad|kJ|J|kW|W|ms|s|h|K)(?![\w′'])"
)
_UNIT_WORDS = (
    r"(?:micro|milli|centi|kilo)?met(?:re|er)s?|microns?|inch(?:es)?|f(?:oo|ee)t|yards?|miles?|(?:kilo)?grams?|kilos?|tonnes?|tons?|"
    r"pounds?(?:[ -]force)?|ounces?|(?:kilo)?newton(?:[ -]met(?:re|er))?s?|pound[ -]feet|"
    r"(?:mega|kilo|giga)?pascals?|degrees?|"
    r"radians?|(?:kilo)?joules?|hertz|seconds|minutes?|hours?|lit(?:re|er)s?|gallons?"
)
_ONES = "one|two|three|four|five|six|seven|eight|nine"
_TEENS = "ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen"
_TENS = "twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety"
_WORD_NUMBER = (
    rf"(?:(?:(?:a|one|two|three|four|five|six|seven|eight|nine|several)\s+)?(?:hundred|thousand|million|dozen)|"
    rf"(?:{_TENS})(?:[-\s](?:{_ONES}))?|{_TEENS}|{_ONES}|half(?=\s+an?\b)|(?:a|one)\s+half)"
)
_FRACTION = (
    r"(?:half|halves|thirds?|quarters?|fifths?|sixths?|sevenths?|eighths?|ninths?|tenths?|twelfths?|twentieths?|"
    r"hundredths?)"
)
_MORE = r"(?:more|less|as|again|larger|smaller|higher|lower|greater|heavier|lighter|longer|shorter|farther|further)"
# "12 in" is a length unless a phrase goes on: "lesson 7 in the course"
_IN_PHRASE = (
    r"(?!in\s+(?:the|an?|this|that|these|those|all|each|every|our|your|its|any|which|order|turn|both|one|two|three|ten)"
    r"\b)"
)

_PATTERNS = tuple(
    re.compile(pattern, re.I if ignore_case else 0)
    for pattern, ignore_case in (
        (rf"{_REFERENCE}(?:{_DIGITS})[\s-]*(?:{_IN_PHRASE}{_UNITS}|[″”\"](?!\w)|(?i:{_UNIT_WORDS})\b)", False),
        (rf"{_REFERENCE}(?:{_DIGITS})\s*(?:%|(?i:per\s?cent)\b|(?i:times)\b|[×x](?![\w\s]*\d)|"
         r"-?(?i:fold)\b|:\s?1\b)", False),
        (rf"\b{_WORD_NUMBER}(?:\s+and\s+a\s+{_FRACTION})?(?:\s+an?)?[\s-]+(?:{_UNIT_WORDS}|per\s?cent)\b", True),
        (rf"\b(?:a|an|{_ONES})\s+{_FRACTION}\s+(?:of\s+an?\s+)?(?:{_UNIT_WORDS})\b", True),
        (rf"\b(?:tens|dozens|hundreds|thousands)\s+of\s+(?:{_UNIT_WORDS})\b", True),
        (rf"\b(?:{_WORD_NUMBER})(?:\s+and\s+a\s+{_FRACTION})?\s+times\b", True),
        (r"\b(?:twice|thrice|doubl(?:es|ed|ing)|tripl(?:es?|ed|ing)|trebl(?:es?|ed|ing)|"
         r"quadrupl(?:es?|ed|ing)|halv(?:es?|ed|ing))\b", True),
        (r"\bdouble\b(?![\s-]+row)", True),
        (rf"\b(?:{_ONES}|{_TEENS}|hundred|thousand)fold\b", True),
        (rf"\b(?:\d+|{_ONES}|{_TEENS}|{_TENS})[\s-]+to[\s-]+one\b", True),
        (r"\bhalf\s+as\s+(?:much|many|large|big|heavy|long|far|high|hard|strong)(?:\s+again)?\b|"
         r"\bhalf\s+(?:again|more|less)\b", True),
        (rf"\b(?:a|an|{_ONES})\s+(?:full\s+|good\s+|whole\s+)?(?!half){_FRACTION}\s+"
         rf"(?:{_MORE}\b(?:\s+much|\s+many)?|of\b|the\b)", True),
        (r"\bas\s+(?:much|many|large|heavy)\s+again\b", True),
    )
)  # fmt: skip
