"""The wheel joint of a setup in a report: clamp, threads and slip, or what the file does not say of it."""

from collections.abc import Iterable

from markupsafe import Markup, escape

from hubwright.lessons.numbers import show, show_range
from hubwright.lessons.stacked_table import Column, Row, stacked_table
from hubwright.lessons.words import listed
from hubwright.lessons.worked_results import Ways
from hubwright.quantities import Quantity
from hubwright.results import Results
from hubwright.results.joint import JointResult, Scattered, joint_result


def joint_table(results: Results, ways: Ways) -> Markup:
    """Return what the wheel's fasteners pass and must pass; a margin compares a model with a model."""
    joint = joint_result(results)
    rows = [*_fasteners(joint, ways), *_hardest(joint, ways)]
    table = stacked_table(
        "By the numbers of the file; a margin compares two models and judges no joint.",
        "What",
        (Column("Value"), Column("By the scatter of the torque")),
        [Row(escape(words), cells) for words, cells in rows],
        kind="pairs",
    )
    missing = Markup("<p>Not told here, since the file lacks {}.</p>").format(listed(joint.missing))
    return (table if rows else Markup("")) + (missing if joint.missing else Markup("")) + _in_a_row(joint)


def _in_a_row(joint: JointResult) -> Markup:
    if joint.joints < 2:
        return Markup("")
    return Markup(
        "<p>A spacer makes {} joints in a row, each taken with the fasteners of the file: "
        "those of the spacer itself are another part to check.</p>"
    ).format("two" if joint.joints == 2 else joint.joints)


def _fasteners(joint: JointResult, ways: Ways) -> Iterable[tuple[str, tuple[Markup, Markup]]]:
    if joint.clamp is not None:
        yield "Clamp force of one stud", _scattered(joint.clamp, "N", ways, "fastening.clamp")
    if joint.clamp_over_proof is not None:
        yield (
            "Clamp force over the stud’s proof load",
            _scattered(joint.clamp_over_proof, "1", ways, "fastening.clamp_over_proof"),
        )
    for words, value, unit in (
        ("Proof load of one stud", joint.proof_load, "N"),
        ("Engaged turns of thread", joint.engaged_turns, "1"),
        ("Engagement over the stud’s diameter", joint.engaged_diameters, "1"),
        ("Pull that strips the threads over the one that breaks the stud", joint.stripping_over_breaking, "1"),
    ):
        if value is not None:
            yield words, (show(Quantity(value, unit)), Markup(""))
    if joint.capacity is not None:
        yield "Torque that friction passes before slip", _scattered(joint.capacity, "N*m", ways, "fastening.capacity")


def _hardest(joint: JointResult, ways: Ways) -> Iterable[tuple[str, tuple[Markup, Markup]]]:
    if not joint.cases:
        return
    name, hardest = max(joint.cases.items(), key=lambda entry: entry[1].demand)
    yield (
        f"Torque to pass, most in: {name}",
        (
            ways.link(show(Quantity(hardest.demand, "N*m")), "fastening.demand", name),
            Markup(""),
        ),
    )
    if hardest.margin is not None:
        yield "Capacity over demand there", _scattered(hardest.margin, "1", ways, "fastening.margin", name)
    name, bent = max(joint.cases.items(), key=lambda entry: abs(entry[1].bending))
    yield f"Bending at the wheel’s face, most in: {name}", (show(Quantity(abs(bent.bending), "N*m")), Markup(""))
    if joint.test_moment is not None:
        yield (
            "Moment of a rotating-bending test at the wheel’s rating",
            (
                show(Quantity(joint.test_moment, "N*m")),
                Markup(""),
            ),
        )


def _scattered(value: Scattered, unit: str, ways: Ways, path: str, case: str = "") -> tuple[Markup, Markup]:
    spread = (
        Markup("")
        if value.low == value.high
        else show_range(Quantity(value.value, unit, low=value.low, high=value.high))
    )
    return ways.link(show(Quantity(value.value, unit)), path, case), spread
