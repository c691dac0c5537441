"""Every published check with its calculation, by subject."""

from hubwright.published import (
    beams,
    contact,
    impact,
    joint,
    life,
    load_distribution,
    load_transfer,
    noise_and_water,
    ratings,
    tires,
)
from hubwright.published.check import Calculation, Check, Subject

SUBJECTS: tuple[Subject, ...] = (
    tires.SUBJECT,
    load_transfer.SUBJECT,
    beams.SUBJECT,
    ratings.SUBJECT,
    contact.SUBJECT,
    load_distribution.SUBJECT,
    life.SUBJECT,
    noise_and_water.SUBJECT,
    joint.SUBJECT,
    impact.SUBJECT,
)


def calculation_of(check: Check) -> Calculation:
    """Return the one calculation that gives the value of a check."""
    (found,) = (each for subject in SUBJECTS for each in subject.calculations if each.covers(check))
    return found


def computed(check: Check) -> tuple[float, ...]:
    """Return what our functions give for a check now, in SI units."""
    return calculation_of(check).values(check)
