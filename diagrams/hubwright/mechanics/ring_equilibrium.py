"""Where the turning rings of many bearings come to rest: a damped Newton method on a convex energy.

The ring's motion and what works along it are (5, case), as in `bearing_rows`. All cases take their steps together;
those that rest are left behind.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from hubwright.mechanics.bearing_rows import Array, Chosen, Contact, Geometry

TOLERANCE = 1e-9  # of the largest load, left over in the equilibrium of the rings
MOST_STEPS = 200
SMALLEST_LOAD = 1e-9  # N, of an element; what no load is taken for where a size is needed
SOFTENING = 1e-12  # of the stiffness of a ring full of loaded elements; keeps free directions solvable
WORTH_KEEPING = 0.7  # of the cases still moving, above which leaving the others behind costs more than it saves


@dataclass(frozen=True)
class _Task:
    """What the rings have to hold, the stiffness of a ring with all elements loaded, and the longest step."""

    geometry: Geometry
    target: Array
    reference: Array
    longest: Array

    def of(self, chosen: Chosen) -> _Task:
        return _Task(self.geometry.of(chosen), self.target[:, chosen], self.reference[chosen], self.longest[chosen])


@dataclass(frozen=True)
class _Place:
    """Where the rings are, what their elements do there, the force left over, and the potential energy."""

    motion: Array
    contact: Contact
    residual: Array
    potential: Array

    @classmethod
    def at(cls, motion: Array, task: _Task) -> _Place:
        contact = task.geometry.contact(motion)
        residual = task.geometry.forces(contact) - task.target
        return cls(motion, contact, residual, contact.energy - _along(task.target, motion))

    def of(self, chosen: Chosen) -> _Place:
        return _Place(self.motion[:, chosen], self.contact.of(chosen), self.residual[:, chosen], self.potential[chosen])

    def put(self, chosen: Chosen, other: _Place) -> None:
        self.motion[:, chosen] = other.motion
        self.contact.put(chosen, other.contact)
        self.residual[:, chosen] = other.residual
        self.potential[chosen] = other.potential


def equilibrium(geometry: Geometry, target: Array) -> tuple[Array, NDArray[np.intp]]:
    """Return how far each turning ring moves until its elements hold the load, and which cases found no rest.

    The potential energy of a bearing under its load is convex in the ring's motion; its only minimum is where the
    elements push back with the load.

        Π(d) = energy in the contacts − load·d → minimum

    Parameters
    ----------
    geometry
        Of both rows, one for each case or one for all [m].
    target
        Load, the moments over R: (5, case) [N].

    Returns
    -------
    tuple[Array, NDArray[np.intp]]
        The motions d (5, case) [m], and the numbers of the cases that are still moving [1].

    Notes
    -----
    Newton's steps with the true tangent, shortened until Π falls and its slope along the step is not left steeper
    on the far side. A step longer than twenty contact approaches and the way through the clearance is cut to that.

    Examples
    --------
    >>> from hubwright.mechanics.bearing_rows import BallRows
    >>> rows = BallRows(13, ball_diameter=0.0127, pitch_diameter=0.062, contact_angle=0.6, row_spacing=0.024)
    >>> geometry = Geometry.of_rows(rows).raveled(())
    >>> motion, restless = equilibrium(geometry, np.array([[0.0], [0.0], [5000.0], [0.0], [0.0]]))  # thrust alone
    >>> restless.size, bool(motion[2, 0] > 0), bool(np.abs(motion[[0, 1, 3, 4]]).max() < 1e-12)
    (0, True, True)

    References
    ----------
    Boyd, Vandenberghe, Convex Optimization (2004), 9.5 (recalled, document not opened).
    """
    rested = np.empty_like(target)
    task, start = _start(geometry, target)
    place = _Place.at(start, task)
    cases = np.arange(target.shape[1])
    for _ in range(MOST_STEPS):
        moving = _moves(task, place)
        left = np.count_nonzero(moving)
        if left <= WORTH_KEEPING * moving.size:
            rested[:, cases] = place.motion
            if not left:
                return rested, cases[moving]
            task, place, cases = task.of(moving), place.of(moving), cases[moving]
        place = _searched(task, place, _newton_step(task, place))
    rested[:, cases] = place.motion
    return rested, cases[_moves(task, place)]


def _start(geometry: Geometry, target: Array) -> tuple[_Task, Array]:
    """Return the task, and twice the motion that all elements together would need: about half of them lift off."""
    count, power = geometry.sines.size, geometry.power
    c, s = geometry.rest_radial / geometry.rest_length, geometry.rest_axial / geometry.rest_length
    across, tilting = count * c**2, count * (s + geometry.lever * c) ** 2
    shares = np.stack([across, across, 2 * count * s**2, tilting, tilting])  # of one element's stiffness, all alike
    doubled = 2 * target / shares
    K = geometry.stiffness
    approach = (np.maximum(np.max(np.abs(doubled), axis=0), SMALLEST_LOAD) / K) ** (1 / power)
    stiffness = power * K * approach ** (power - 1)
    # the way through the clearance, along the axis or across it
    longest = 20 * approach + 3 * np.maximum(-geometry.preload, 0.0) * (1 + s / c)
    return _Task(geometry, target, count * stiffness, longest), doubled / stiffness


def _moves(task: _Task, place: _Place) -> NDArray[np.bool_]:
    carried = task.geometry.stiffness * place.contact.parts[0].max(axis=(0, 1))
    scale = np.maximum(np.max(np.abs(task.target), axis=0), carried)
    moving: NDArray[np.bool_] = np.max(np.abs(place.residual), axis=0) > TOLERANCE * scale
    return moving


def _newton_step(task: _Task, place: _Place) -> Array:
    step = _solved(task.geometry.tangent(place.contact), -place.residual, SOFTENING * task.reference)
    length: Array = np.max(np.abs(step), axis=0)
    return step * np.minimum(1.0, task.longest / np.where(length > 0, length, 1.0))


def _solved(matrix: Array, right: Array, smallest: Array) -> Array:
    """Return the solutions x of matrix·x = right, symmetric and positive, pivots not below the smallest.

    Gauss without exchange of rows, all cases at once: LAPACK, called for one matrix of five rows after another,
    takes ten times as long. Overwrites both.
    """
    last = len(right)
    for k in range(last):
        row = matrix[k, k:]
        np.maximum(row[0], smallest, out=row[0])
        share = row[1:] / row[0]
        for i in range(k + 1, last):
            matrix[i, i:] -= share[i - k - 1] * row[i - k :]
        right[k + 1 :] -= share * right[k]
        right[k] /= row[0]
        row[1:] = share
    for k in reversed(range(last - 1)):
        right[k] -= np.sum(matrix[k, k + 1 :] * right[k + 1 :], axis=0)
    return right


def _searched(task: _Task, start: _Place, step: Array) -> _Place:
    """Return the cases moved along their step, shortened where the potential energy would not fall."""
    slope = _along(start.residual, step)  # of the potential energy along the step: negative
    share = np.ones_like(slope)
    place = _Place.at(start.motion + step, task)
    bad = np.flatnonzero(_too_far(start.potential, slope, step, place))
    while bad.size:
        share[bad] /= 2
        shorter = share[bad] * step[:, bad]
        nearer = _Place.at(start.motion[:, bad] + shorter, task.of(bad))
        place.put(bad, nearer)
        too_far = _too_far(start.potential[bad], share[bad] * slope[bad], shorter, nearer)
        bad = bad[too_far & (share[bad] > 1e-12)]
    return place


def _too_far(potential: Array, slope: Array, step: Array, place: _Place) -> NDArray[np.bool_]:
    energy = place.contact.energy
    # near the end the energy no longer tells steps apart: then the slope decides
    rounding = 1e-13 * (energy + np.abs(energy - place.potential))
    falls = place.potential <= potential + 1e-4 * slope + rounding
    return ~falls | (_along(place.residual, step) > 0.9 * np.abs(slope))


def _along(force: Array, motion: Array) -> Array:
    return np.asarray(np.einsum("ic,ic->c", force, motion), dtype=np.float64)
