"""Draws the parts of a figure once on a page: its twin in the other unit system differs in words, not in parts.

Compression does not find the repeats by itself, because two twins lie farther apart than it looks back. Forces,
dimensions and everything lettered stay in both twins; only parts and lines without data of their own are shared.
"""

import re
from difflib import SequenceMatcher
from itertools import count, groupby
from xml.etree import ElementTree as ET

_SVG = "http://www.w3.org/2000/svg"
_GROUP, _USE = f"{{{_SVG}}}g", f"{{{_SVG}}}use"
_WORTH = 160  # characters: less is not worth a reference
_QUIET = frozenset({"data-name", "clip-path"})  # what a group may carry and still be drawn by its twin
_LETTERED = (f"{{{_SVG}}}text", f"{{{_SVG}}}title")
_NAMED_TWICE = re.compile(r'(<g) id="[^"]*"(?= data-name=)')


def shared(si: str, us: str, *, prefix: str) -> tuple[str, str]:
    """Return two SVG twins of which the second refers to the parts of the first, by ids under a prefix.

    Examples
    --------
    >>> part = f'<g data-name="part"><path d="{"m0 0l1 1" * 30}" /></g>'
    >>> twins = [f'<svg xmlns="http://www.w3.org/2000/svg">{part}<text>{unit}</text></svg>' for unit in ("mm", "in")]
    >>> shared(*twins, prefix="fig-1")[1]
    '<svg xmlns="http://www.w3.org/2000/svg"><use href="#fig-1-1" /><text>in</text></svg>'
    """
    ET.register_namespace("", _SVG)
    first, second = (ET.fromstring(_NAMED_TWICE.sub(r"\1", svg)) for svg in (si, us))
    numbers = count(1)
    _share(first, second, prefix, numbers)
    return ET.tostring(first, encoding="unicode"), ET.tostring(second, encoding="unicode")


def _share(first: ET.Element, second: ET.Element, prefix: str, numbers: "count[int]") -> None:
    """Share what two elements have in common among their children, runs of them at a time."""
    ours, theirs = list(first), list(second)
    matcher = SequenceMatcher(None, [_key(one) for one in ours], [_key(one) for one in theirs], autojunk=False)
    for i, j, size in matcher.get_matching_blocks():
        pairs = zip(ours[i : i + size], theirs[j : j + size], strict=True)
        for (plain, clip), run in groupby(pairs, key=lambda pair: (_is_plain(pair[0]), _clip(pair[0]))):
            alike = list(run)
            if not plain:
                for one, other in alike:
                    _share(one, other, prefix, numbers)
            elif sum(len(ET.tostring(one)) for one, _ in alike) >= _WORTH:
                name = f"{prefix}-{next(numbers)}"
                _gather(first, [one for one, _ in alike], name, clip)
                _refer(second, [other for _, other in alike], name)


def _key(element: ET.Element) -> str:
    """Return what two elements must agree in to be shared, or to be searched for what can be."""
    if not _is_plain(element):
        return f"{element.tag} {element.get('data-name', '')}"
    clip, text = element.get("clip-path"), ET.tostring(element, encoding="unicode")
    return text if clip is None else text.replace(clip, _clip(element))


def _is_plain(element: ET.Element) -> bool:
    quiet = element.tag == _GROUP and _QUIET.issuperset(element.attrib)
    return quiet and not any(inner.tag in _LETTERED or "id" in inner.attrib for inner in element.iter())


def _clip(element: ET.Element) -> str:
    """Return the name of the frame that cuts an element, without the twin's own prefix."""
    return element.get("clip-path", "").rpartition("-clip-")[2]


def _gather(parent: ET.Element, run: list[ET.Element], name: str, clip: str) -> None:
    """Put a run of siblings into a group to refer to; what cuts it stays outside, for each twin has its own frame."""
    group = ET.Element(_GROUP, {"id": name})
    frame = ET.Element(_GROUP, {"clip-path": run[0].attrib["clip-path"]}) if clip else group
    if clip:
        frame.append(group)
    parent.insert(list(parent).index(run[0]), frame)
    for one in run:
        parent.remove(one)
        one.attrib.pop("clip-path", None)
        group.append(one)


def _refer(parent: ET.Element, run: list[ET.Element], name: str) -> None:
    """Put a reference in the place of a run of siblings."""
    reference = ET.Element(_USE, {"href": f"#{name}"})
    if clip := run[0].get("clip-path"):
        reference.set("clip-path", clip)
    parent.insert(list(parent).index(run[0]), reference)
    for one in run:
        parent.remove(one)
