"""Published checks in groups that share subject and source, with what our functions give for them now."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from hubwright.published.catalogue import SUBJECTS, calculation_of, computed
from hubwright.published.check import Check, checks

PAGE = "checks.md"


@dataclass(frozen=True)
class Compared:
    """A check beside our value, in the unit of the source: of two roads the one that lies farther off."""

    check: Check
    ours: float
    difference: float  # relative to the printed value
    agrees: bool


@dataclass(frozen=True)
class Group:
    """The checks of one source within a subject."""

    ident: str
    subject: str
    source: str
    compared: tuple[Compared, ...]
    functions: tuple[str, ...]  # by module and name

    @property
    def agrees(self) -> bool:
        """Return whether every value agrees."""
        return all(each.agrees for each in self.compared)


@cache
def groups() -> tuple[Group, ...]:
    """Return every group, computed once."""
    found: dict[tuple[str, str], list[Check]] = {}
    for check in checks():
        calculation = calculation_of(check)
        subject = next(subject.words for subject in SUBJECTS if calculation in subject.calculations)
        found.setdefault((subject, check.source), []).append(check)
    order = [subject.words for subject in SUBJECTS]
    keys = sorted(found, key=lambda key: order.index(key[0]))
    return tuple(
        Group(
            ident=f"checks-{number}",
            subject=subject,
            source=source,
            compared=tuple(_compared(check) for check in found[subject, source]),
            functions=_functions(found[subject, source]),
        )
        for number, (subject, source) in enumerate(keys, 1)
    )


@cache
def groups_of(function: str) -> tuple[Group, ...]:
    """Return the groups whose values a function gives."""
    return tuple(group for group in groups() if function in group.functions)


def _compared(check: Check) -> Compared:
    values = computed(check)
    worst = max(values, key=lambda value: abs(check.difference(value)))
    return Compared(
        check, check.in_its_unit(worst), check.difference(worst), all(check.agrees(value) for value in values)
    )


def _functions(found: Iterable[Check]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for check in found for name in calculation_of(check).names))
