"""What a lesson may ask about a wheel that is driven at a ledge."""

from collections.abc import Callable, Mapping

import numpy as np

from hubwright.lessons.named_values import View, constant, subject_of
from hubwright.quantities import Quantity
from hubwright.results import CaseResult, Results
from hubwright.results.footing import drive_at_ledge
from hubwright.setup.model import Ledge


def driven_at_ledge(case: View, share: Quantity | float) -> View:
    """Return what is left to push when the wheel has this share of the torque with which it climbs by itself."""
    subject = subject_of(case) if isinstance(case, View) else None
    results, state = subject if isinstance(subject, tuple) and len(subject) == 2 else (None, None)
    own = results.setup.case(state.name) if isinstance(results, Results) and isinstance(state, CaseResult) else None
    if not isinstance(results, Results) or not isinstance(own, Ledge):
        raise TypeError(f"needs a case of the kind ledge, got {case!r}")
    alone = drive_at_ledge(results, height=own.height, torque=np.zeros(1)).climbs_by_itself
    found = drive_at_ledge(results, height=own.height, torque=np.array([alone * float(share)]))
    return View(
        "the driven wheel",
        {
            "torque": constant(Quantity(float(found.torque[0]), "N*m")),
            "push": constant(Quantity(float(found.push[0]), "N")),
            "needed_friction": constant(Quantity(float(found.needed_friction[0]), "1")),
        },
    )


FUNCTIONS: Mapping[str, Callable[..., object]] = {driven_at_ledge.__name__: driven_at_ledge}
