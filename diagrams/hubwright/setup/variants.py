"""Other setups from one that is there: with keys changed as a file would, or with single values moved."""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from typing import Any

from hubwright.mechanics import wheel_geometry
from hubwright.setup.building import build_setup
from hubwright.setup.document import Document, changed_document
from hubwright.setup.estimates import height_from_stability_figure
from hubwright.setup.model import Input, Setup, VehicleChassis


def vary(setup: Setup, changes: Mapping[str, Any], *, name: str | None = None) -> Setup:
    """Return a setup with changes on top, by the rules of `extends` and checked like a file.

    Parameters
    ----------
    setup
        The setup to start from.
    changes
        Dotted keys or tables with values as a file writes them: `{"wheel.spacer": "25 mm"}`,
        `{"gear": [{"name": "Winch", "mass": "62 kg", …}]}`.
    name
        What to call the new setup; its own name where left out.

    Raises
    ------
    SetupErrors
        With every problem of the changed setup.
    """
    if not isinstance(setup.source, Document):
        raise TypeError("this setup was not read from a file or a text")
    extended = {**changes, **({"name": name} if name else {})}
    return build_setup(changed_document(setup.source, extended, name=f"{setup.stem} (changed)"))


def with_inputs(setup: Setup, values: Mapping[str, float | Input]) -> Setup:
    """Return a setup with single values moved, without checks: for spans over ranges.

    Parameters
    ----------
    setup
        The setup to start from.
    values
        By dotted key as in `Setup.inputs`: a new SI value, or a whole `Input` (of `late_estimates`).
        What follows from a moved value (`Input.derived_from`) moves along. The tire and wheel that
        were weighed move along where the setup has not changed them.

    Raises
    ------
    KeyError
        When a key is no number of this setup.
    """
    inputs = dict(setup.inputs)
    for key, value in values.items():
        if isinstance(value, Input):
            inputs[key] = value
        elif key in inputs and not isinstance(inputs[key].value, str):
            inputs[key] = dataclasses.replace(inputs[key], value=value)
        else:
            raise KeyError(key)
    moved = dataclasses.replace(setup, inputs=inputs)
    for key in values:
        moved = _moved(moved, key, inputs[key].value)
    return _derived(moved, values)


def _moved(setup: Setup, key: str, value: Any) -> Setup:
    table, *middle, name = key.split(".")
    if table == "gear":
        index = int(middle[0]) - 1
        field = "behind" if name.startswith("behind_") else name
        gear = list(setup.gear)
        gear[index] = dataclasses.replace(gear[index], **{field: value})
        return dataclasses.replace(setup, gear=tuple(gear))
    if table == "case":
        declared = ".".join(middle)
        cases = tuple(
            dataclasses.replace(case, **{name: value}) if case.declared == declared else case for case in setup.cases
        )
        return dataclasses.replace(setup, cases=cases)
    if table == "duty":
        declared = ".".join(middle)
        named = {case.name for case in setup.cases if case.declared == declared or case.name == declared}
        count = sum(share.case in named for share in setup.duty)
        duty = tuple(
            dataclasses.replace(share, share=value / count) if share.case in named else share for share in setup.duty
        )
        return dataclasses.replace(setup, duty=duty)
    owner: Any = getattr(setup, table)
    if name not in {field.name for field in dataclasses.fields(owner)}:
        return setup  # acts only through what follows from it
    changed = dataclasses.replace(setup, **{table: dataclasses.replace(owner, **{name: value})})
    if key == "tire.mass" and setup.root_tire_mass == setup.tire.mass:
        changed = dataclasses.replace(changed, root_tire_mass=value)
    if key == "wheel.mass" and setup.root_wheel_mass == setup.wheel.mass:
        changed = dataclasses.replace(changed, root_wheel_mass=value)
    return changed


def _derived(setup: Setup, values: Mapping[str, float | Input]) -> Setup:
    """Return the setup with every value recomputed that follows from a moved one."""
    inputs = dict(setup.inputs)
    follow = [
        key
        for key, entry in inputs.items()
        if key not in values and any(parent in values for parent in entry.derived_from)
    ]
    if "chassis.rear_track" in follow and "chassis.centre_of_mass_height" in inputs:
        follow.sort(key=lambda key: key == "chassis.centre_of_mass_height")  # the height follows the tracks
    for key in follow:
        value = _recomputed(setup, key, inputs)
        inputs[key] = dataclasses.replace(inputs[key], value=value)
        setup = _moved(dataclasses.replace(setup, inputs=inputs), key, value)
    return setup


def _recomputed(setup: Setup, key: str, inputs: Mapping[str, Input]) -> Any:
    def number(parent: str) -> Any:
        return inputs[parent].value

    if key == "chassis.front_axle_mass":
        return number("chassis.total_mass") * number("chassis.front_share")
    if key == "chassis.rear_axle_mass":
        return number("chassis.total_mass") * (1 - number("chassis.front_share"))
    if key == "chassis.rear_track":
        return number("chassis.front_track")
    if key == "chassis.centre_of_mass_height":
        chassis = setup.chassis
        track = (chassis.front_track + chassis.rear_track) / 2 if isinstance(chassis, VehicleChassis) else chassis.track
        figure = number("chassis.static_stability_figure")
        return height_from_stability_figure(track=track, static_stability_figure=figure)
    if key == "wheel.offset":
        return wheel_geometry.offset_from_backspacing(
            rim_width=number("wheel.rim_width"), backspacing=number("wheel.backspacing")
        )
    raise KeyError(key)
