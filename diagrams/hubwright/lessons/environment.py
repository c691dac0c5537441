"""The Jinja environment of a lesson: sandboxed, strict about names, and careful about what it prints."""

import re
from collections.abc import Mapping
from difflib import get_close_matches
from functools import lru_cache
from types import CodeType
from typing import Any

from jinja2 import StrictUndefined, Template, TemplateSyntaxError
from jinja2.exceptions import SecurityError, UndefinedError
from jinja2.sandbox import SandboxedEnvironment

from hubwright.errors import DimensionError, HubwrightError
from hubwright.lessons import drop_spans, ledge_views, numbers, rough_views, words
from hubwright.lessons.named_values import View, label_of, names_of
from hubwright.lessons.page_state import TEMPLATE, PageState
from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import Quantity, adding_up


class PrintError(HubwrightError, TypeError):
    """An expression whose value no page can print."""


class Missing(StrictUndefined):
    """A name that does not exist; its message offers the nearest ones."""

    @property
    def _undefined_message(self) -> str:
        name, thing = self._undefined_name, self._undefined_obj
        if isinstance(thing, View):
            return f"{label_of(thing)} has no '{name}'.{nearest(str(name), names_of(thing))}"
        if thing is None:
            return f"there is no value before '.{name}': this setup's file does not give it. Ask has(\"…\") first."
        if isinstance(thing, Quantity):
            return f"{thing!s} is a number and has no '{name}'."
        if self._undefined_hint:
            return str(self._undefined_hint)
        return f"'{name}' is not defined." if not isinstance(name, int) else f"there is no element {name}."


def nearest(name: str, names: list[str]) -> str:
    """Return the sentence that offers the names nearest to a misspelt one."""
    close = get_close_matches(name, names, n=3, cutoff=0.6)
    if close:
        return f" Perhaps you meant {' or '.join(repr(candidate) for candidate in close)}."
    return f" It has: {', '.join(sorted(names))}." if len(names) <= 24 else ""


def _printed(value: Any) -> Any:
    """Return what a page prints for an expression's value."""
    if isinstance(value, numbers.Given):
        return value.markup
    if isinstance(value, Quantity):
        raise PrintError(f"{value!s} is a quantity; write it with '| show', so that both unit systems get it")
    if isinstance(value, float):
        raise PrintError(f"{value!r} is a bare number; write it with '| number' or '| show'")
    if value is None:
        raise PrintError('there is nothing to print: this setup\'s file does not give the value. Ask has("…") first')
    if isinstance(value, View):
        raise PrintError(f"{label_of(value)} is not a number; it has: {', '.join(sorted(names_of(value)))}")
    return value


@lru_cache(maxsize=1)
def environment() -> SandboxedEnvironment:
    """Return the environment in which lessons are rendered; it holds nothing of a site."""
    jinja = SandboxedEnvironment(
        undefined=Missing, finalize=_printed, keep_trailing_newline=True, extensions=["jinja2.ext.do"]
    )
    for unwanted in ("lipsum", "cycler", "joiner"):
        del jinja.globals[unwanted]
    jinja.filters["show"] = jinja.globals["show"] = numbers.show
    jinja.filters["number"] = jinja.globals["number"] = numbers.number
    jinja.filters["unit"] = jinja.globals["unit"] = numbers.unit
    jinja.filters["show_range"] = jinja.globals["show_range"] = numbers.show_range
    jinja.globals["given"] = numbers.given
    jinja.globals["adding_up"] = adding_up
    for function in (
        words.side, words.times, words.as_much, words.verdict, words.up_or_down, words.more_or_less, words.larger,
        words.comparable, words.counted, words.listed, words.everyday,
    ):  # fmt: skip
        jinja.globals[function.__name__] = jinja.filters[function.__name__] = function
    jinja.globals.update(rough_views.FUNCTIONS)
    jinja.globals.update(ledge_views.FUNCTIONS)
    jinja.globals.update(drop_spans.FUNCTIONS)
    jinja.globals["g"] = Quantity(STANDARD_GRAVITY, "N/kg")
    return jinja


def render(source: str, page: PageState, names: Mapping[str, Any]) -> str | None:
    """Return the text with its expressions filled in; None, and a problem on the page, where one of them fails."""
    jinja = environment()
    try:
        page.template = Template.from_code(jinja, _compiled(source), jinja.make_globals(dict(names)))
        return unmarked(str(page.template.render()))
    except TemplateSyntaxError as error:
        page.problem(f"{error.message}", line=error.lineno + page.lines_before)
    except UndefinedError as error:
        page.problem(_undefined(str(error.message), names), line=_line(error, page))
    except SecurityError as error:
        page.problem(f"not allowed in a lesson: {error}", line=_line(error, page))
    except (HubwrightError, TypeError, ValueError, LookupError, ZeroDivisionError, ArithmeticError) as error:
        page.problem(_reason(error), line=_line(error, page))
    return None


@lru_cache(maxsize=256)
def _compiled(source: str) -> CodeType:
    """Return the code of a page: the same lesson is rendered for many setups, and again at each save."""
    return environment().compile(marked(source), filename=TEMPLATE)


def _undefined(message: str, names: Mapping[str, Any]) -> str:
    quoted = message.split("'")
    if message.endswith("is not defined.") and len(quoted) == 3:
        return f"{message}{nearest(quoted[1], [*names, *environment().globals])}".replace(" It has:", " There are:")
    return message


def _reason(error: Exception) -> str:
    if isinstance(error, DimensionError):
        return str(error)
    if isinstance(error, ZeroDivisionError):
        return "a division by zero: this setup has nothing there"
    if isinstance(error, TypeError) and "NoneType" in str(error):
        return f'a value is missing: this setup\'s file does not give it. Ask has("…") first ({error})'
    return str(error)


def _line(error: BaseException, page: PageState) -> int | None:
    """Return the line of the file at which an error rose: Jinja puts the page's own lines into the trace."""
    trace, line = error.__traceback__, None
    while trace is not None:
        if trace.tb_frame.f_code.co_filename == TEMPLATE:
            line = trace.tb_lineno
        trace = trace.tb_next
    return None if line is None else line + page.lines_before


_TAG = re.compile(r"\{\{.*?\}\}|\{%.*?%\}|\{#.*?#\}", re.S)
_MARK = "\ue002"  # a private-use character


def marked(source: str) -> str:
    """Return the text with a mark at the end of each line that holds a block tag.

    Such a line often comes out empty, and an empty line would split the paragraph around it.
    """
    lines = source.split("\n")
    tags = [
        (source.count("\n", 0, tag.start()), source.count("\n", 0, tag.end()), tag.group())
        for tag in _TAG.finditer(source)
    ]
    inside = {line for first, last, _ in tags for line in range(first, last)}
    wanted = {last for _, last, text in tags if not text.startswith("{{")} - inside
    return "\n".join(line + _MARK if number in wanted else line for number, line in enumerate(lines))


def unmarked(text: str) -> str:
    """Return the text without its marks, and without the lines that hold nothing else.

    Examples
    --------
    >>> unmarked("One.\\n\ue002\\nTwo.\ue002\\n")
    'One.\\nTwo.\\n'
    """
    return re.sub(rf"^[ \t]*{_MARK}+[ \t{_MARK}]*\n|{_MARK}", "", text, flags=re.M)
