"""Reference pages of the formulas, one for each module of the mechanics, made from their docstrings."""

import ast
import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, partial
from types import ModuleType

from markupsafe import Markup, escape

import hubwright.mechanics
from hubwright.lessons.check_groups import PAGE, groups_of
from hubwright.lessons.docstrings import Docstring, Entry, read_docstring
from hubwright.lessons.formula_text import formula_html
from hubwright.lessons.generated_page import GeneratedPage, Site
from hubwright.lessons.page_state import PageState
from hubwright.lessons.reference_links import FOLDER, reference_link

INDEX = f"{FOLDER}/index.md"


@dataclass(frozen=True)
class Formula:
    """A public function, class or method of a module: its name in the module, its docstring and how it is called."""

    module: str
    name: str
    docstring: Docstring
    signature: str
    is_class: bool = False

    @property
    def function(self) -> str:
        """Return the name by which workings call it: "free_body.wheel_end"."""
        return f"{self.module}.{self.name}"


@dataclass(frozen=True)
class Constant:
    """A constant of a module: name, value as written and what stands beside it."""

    name: str
    value: str
    comment: str


@dataclass(frozen=True)
class Module:
    """A module of the mechanics."""

    name: str
    docstring: Docstring
    formulas: tuple[Formula, ...]
    constants: tuple[Constant, ...]

    @property
    def title(self) -> str:
        """Return the title of its page."""
        return self.name.replace("_", " ").capitalize()


@cache
def modules() -> Mapping[str, Module]:
    """Return every module of the mechanics that holds something public, by name."""
    found = {}
    for each in pkgutil.iter_modules(hubwright.mechanics.__path__):
        module = _module(each.name, importlib.import_module(f"hubwright.mechanics.{each.name}"))
        if module.formulas or module.constants:
            found[module.name] = module
    return found


@cache
def formulas() -> Mapping[str, Formula]:
    """Return every public formula by module and name."""
    return {formula.function: formula for module in modules().values() for formula in module.formulas}


def pages(site: Site) -> list[GeneratedPage]:
    """Return the list of formulas and a page for each module."""
    listed = GeneratedPage(
        path=INDEX,
        title="Formulas",
        kind="page",
        write=_index_body,
        mark="F",
        summary="Every formula behind the numbers, with its units, limits, an example on paper and its source.",
    )
    each = [
        GeneratedPage(
            path=f"{FOLDER}/{module.name}.md",
            title=f"Formulas: {module.title[0].lower()}{module.title[1:]}",
            kind="page",
            write=partial(module_body, module=module),
            mark="F",
            listed=False,
            summary=module.docstring.summary,
        )
        for module in modules().values()
    ]
    return [listed, *each]


def _index_body(page: PageState) -> str:
    entries = Markup("\n").join(
        Markup('<li><a href="{}.md">{}</a><span>{}</span><ul>{}</ul></li>').format(
            module.name,
            module.title,
            module.docstring.summary,
            Markup(" ").join(
                Markup("<li>{}</li>").format(reference_link(formula.function, formula.name))
                for formula in module.formulas
                if "." not in formula.name
            ),
        )
        for module in modules().values()
    )
    lead = (
        "Every number of this site comes from one of these functions of <code>hubwright.mechanics</code>. "
        "They take plain numbers in SI units, or arrays of them."
    )
    return str(page.set_aside(Markup('<p>{}</p>\n<ul class="formula-index">\n{}\n</ul>').format(Markup(lead), entries)))


def module_body(page: PageState, module: Module) -> str:
    """Return the page of a module: what it holds, its formulas in the order of the file, its constants."""
    back = Markup('<p class="back"><a href="index.md">All formulas</a></p>')
    lead = Markup("").join(
        Markup("<p>{}</p>").format(_prose(text, module.name))
        for text in (module.docstring.summary, *(line for part in module.docstring.body for line in part.lines))
        if text
    )
    parts = [page.set_aside(Markup("{}\n{}").format(back, lead))]
    parts += [_formula(page, formula) for formula in module.formulas]
    if module.constants:
        rows = Markup("\n").join(
            Markup("<div><dt><code>{}</code> = <code>{}</code></dt><dd>{}</dd></div>").format(
                one.name, one.value, one.comment
            )
            for one in module.constants
        )
        head = Markup('<h2 id="constants">Constants</h2>\n<dl class="constants">\n{}\n</dl>').format(rows)
        parts.append(page.set_aside(head))
    return "\n\n".join(str(part) for part in parts)


def _formula(page: PageState, formula: Formula) -> Markup:
    """Return one formula; the search index gets its name and sentence, not its tables."""
    doc = formula.docstring
    head = Markup('<h2 id="{0}"><code>{0}</code></h2>\n<p>{1}</p>').format(
        formula.name, _prose(doc.summary, formula.module)
    )
    body = (
        [Markup('<pre class="signature"><code>{}</code></pre>').format(formula.signature)] if formula.signature else []
    )
    for paragraph in doc.body:
        if paragraph.is_formula:
            lines = Markup("\n").join(Markup("<div>{}</div>").format(formula_html(line)) for line in paragraph.lines)
            body.append(Markup('<div class="formula">{}</div>').format(lines))
        else:
            body.append(Markup("<p>{}</p>").format(_prose(paragraph.lines[0], formula.module)))
    parts = [
        ("Parameters", _entries(doc.entries("Parameters"), formula.module)),
        ("Returns", _entries(doc.entries("Returns"), formula.module)),
        ("Raises", _entries(doc.entries("Raises"), formula.module)),
        ("Limits", _paragraphs(doc.paragraphs("Notes"), formula.module)),
        ("Example", _example(doc.sections.get("Examples", ""))),
        ("Source", _paragraphs(doc.paragraphs("References"), formula.module)),
        ("Checked", _checked(formula)),
    ]
    rows = Markup("\n").join(Markup("<div><dt>{}</dt><dd>{}</dd></div>").format(*part) for part in parts if part[1])
    if rows:
        body.append(Markup('<dl class="about-formula">\n{}\n</dl>').format(rows))
    return page.set_aside(
        Markup('<div class="formula-entry">{}{}</div>').format(head, page.set_aside(Markup("\n").join(body), late=True))
    )


def _entries(entries: tuple[Entry, ...], module: str) -> Markup:
    rows = Markup("").join(
        Markup("<div><dt><code>{}</code></dt><dd>{}</dd></div>").format(entry.name, _prose(entry.text, module))
        for entry in entries
    )
    return Markup('<dl class="entries">{}</dl>').format(rows) if rows else rows


def _paragraphs(texts: tuple[str, ...], module: str) -> Markup:
    return Markup("").join(Markup("<p>{}</p>").format(_prose(text, module)) for text in texts)


def _example(text: str) -> Markup:
    return Markup("<pre><code>{}</code></pre>").format(text) if text else Markup("")


def _checked(formula: Formula) -> Markup:
    """Return links to the published values that a formula is checked against."""
    items = Markup("").join(
        Markup('<p><a href="/{}#{}">{}</a>: {}</p>').format(
            PAGE, group.ident, group.source, "1 value" if len(group.compared) == 1 else f"{len(group.compared)} values"
        )
        for group in groups_of(formula.function)
    )
    return items


_CODE = re.compile(r"``?([^`]+)``?")
_SYMBOL = re.compile(r"\b([^\W\d_]{1,2})_(\w{1,4})\b")
_UNIT = re.compile(r"\[([^\]]+)\]")


def _prose(text: str, module: str) -> Markup:
    """Return a text of a docstring as HTML: names of formulas become links, units stand apart."""
    parts, position = Markup(""), 0
    for code in _CODE.finditer(text):
        parts += _units(text[position : code.start()]) + _named(code[1], module)
        position = code.end()
    return parts + _units(text[position:])


def _units(text: str) -> Markup:
    html = _SYMBOL.sub(r"<i>\1</i><sub>\2</sub>", str(escape(text)))
    return Markup(_UNIT.sub(r'<span class="unit-tag">[\1]</span>', html))


def _named(name: str, module: str) -> Markup:
    """Return a name in a text: a link if it is a formula of the same module or of one other."""
    known = formulas_by_name()
    bare = name.removesuffix("()")
    here = f"{module}.{bare}"
    if here in known.get(bare, ()):
        return reference_link(here, name)
    if len(known.get(bare, ())) == 1:
        return reference_link(known[bare][0], name)
    return Markup("<code>{}</code>").format(name)


@cache
def formulas_by_name() -> Mapping[str, tuple[str, ...]]:
    """Return the formulas that bear a name, by that name."""
    found: dict[str, tuple[str, ...]] = {}
    for name, module in _public_names():
        found[name] = (*found.get(name, ()), f"{module}.{name}")
    return found


def _public_names() -> Iterator[tuple[str, str]]:
    for each in pkgutil.iter_modules(hubwright.mechanics.__path__):
        module = importlib.import_module(f"hubwright.mechanics.{each.name}")
        for name, _ in _own(module):
            yield name, each.name


def _own(module: ModuleType) -> list[tuple[str, object]]:
    """Return the public functions and classes that a module defines itself, in the order of the file."""
    found = [
        (name, thing)
        for name, thing in vars(module).items()
        if not name.startswith("_")
        and (inspect.isfunction(thing) or inspect.isclass(thing))
        and thing.__module__ == module.__name__
    ]
    return sorted(found, key=lambda each: inspect.getsourcelines(each[1])[1])  # type: ignore[arg-type]


def _module(name: str, loaded: ModuleType) -> Module:
    found: list[Formula] = []
    for own, thing in _own(loaded):
        is_class = inspect.isclass(thing)
        found.append(Formula(name, own, _docstring(thing), "" if is_class else _signature(own, thing), is_class))
        if is_class:
            found += _members(name, own, thing)
    return Module(name, read_docstring(inspect.getdoc(loaded) or ""), tuple(found), tuple(_constants(loaded)))


def _members(module: str, owner: str, thing: object) -> Iterator[Formula]:
    """Return the public methods and properties of a class."""
    for name, member in vars(thing).items():
        inner = member.fget if isinstance(member, property) else getattr(member, "__func__", member)
        if name.startswith("_") or not inspect.isfunction(inner):
            continue
        signature = "" if isinstance(member, property) else _signature(name, inner)
        yield Formula(module, f"{owner}.{name}", _docstring(inner), signature)


def _docstring(thing: object) -> Docstring:
    return read_docstring(inspect.getdoc(thing) or "")


def _signature(name: str, function: object) -> str:
    """Return how a function is called: its names and defaults, without the annotations, which the text explains."""
    assert callable(function)
    parameters = inspect.signature(function).parameters.values()
    bare = [one.replace(annotation=inspect.Parameter.empty) for one in parameters if one.name not in ("self", "cls")]
    return f"{name}{inspect.Signature(bare)}"


_COMMENT = re.compile(r"#\s*(.*)$")


def _constants(module: ModuleType) -> Iterator[Constant]:
    """Return the public constants of a module with the comment on their line."""
    source = inspect.getsource(module)
    lines = source.split("\n")
    for node in ast.parse(source).body:
        if not isinstance(node, ast.Assign):
            continue
        name = ast.unparse(node.targets[0]).strip("()")
        if name.replace("_", "").replace(", ", "").isupper() and not name.startswith("_"):
            comment = _COMMENT.search(lines[node.lineno - 1])
            if comment:  # what has no source to name is plumbing
                yield Constant(name, ast.get_source_segment(source, node.value) or "", comment[1])
