"""A set of named values: what a lesson finds behind a dot, computed when asked for.

A name that a view does not have is an error with the nearest ones. Values that no file gives and nothing estimates
are None, so that a lesson can ask for them.
"""

from collections.abc import Callable, Iterator, Mapping
from typing import Union

from hubwright.quantities import Quantity

Leaf = Union[Quantity, str, int, bool, None, "View", "list[View]", Callable[[str], bool]]


class View:
    """A thing with named values, computed when asked for."""

    def __init__(self, label: str, names: Mapping[str, Callable[[], Leaf]], subject: object = None) -> None:
        """Keep how the thing is called in a message, its names and what stands behind it."""
        self._label = label
        self._names = dict(names)
        self._subject = subject

    def __getattr__(self, name: str) -> Leaf:
        """Return the value of a name."""
        if name.startswith("_") or name not in self._names:
            raise AttributeError(name)
        value = self._names[name]()
        self.__dict__[name] = value
        return value

    def __dir__(self) -> Iterator[str]:
        """Return the names there are."""
        return iter(sorted(self._names))

    def __repr__(self) -> str:
        """Return how the thing is called."""
        return self._label


def names_of(view: View) -> list[str]:
    """Return the names of a view."""
    return list(view._names)


def label_of(view: View) -> str:
    """Return how a message calls a view."""
    return view._label


def subject_of(view: View) -> object:
    """Return what stands behind a view: results, or results and one of their cases."""
    return view._subject


def value_at(view: View, path: str) -> Leaf:
    """Return the value at a dotted path of names, None where the path ends early."""
    leaf: Leaf = view
    for name in path.split("."):
        if not isinstance(leaf, View) or name not in names_of(leaf):
            return None
        leaf = getattr(leaf, name)
    return leaf


def constant(value: Leaf) -> Callable[[], Leaf]:
    """Return a name's value that is known already."""
    return lambda: value
