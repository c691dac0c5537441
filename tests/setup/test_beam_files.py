"""Beam files: read, and refused."""

import pytest

from hubwright.errors import SetupErrors
from hubwright.setup import Beam, load_text
from hubwright.setup.model import DistributedLoad, PointForce, PointMoment, Section, Support

BEAM = """\
name = "Shelf"
kind = "beam"
length = "2 m"

[[support]]
at = "0 m"
type = "pin"

[[support]]
at = "1.5 m"
type = "roller"

[[load]]
at = "50 cm"
force = "-1 kN"
"""


def test_a_beam_is_read_with_every_sort_of_load():
    more = (
        '[[load]]\nat = "2 m"\nmoment = "40 N*m"\n[[load]]\nfrom = "0 m"\nto = "1 m"\nintensity = "-2 kN/m"\n'
        '[section]\nyoungs_modulus = "207 GPa"\nsecond_moment = "8 cm^4"\n'
    )
    beam = load_text(BEAM + more)
    assert isinstance(beam, Beam)
    assert beam.supports == (Support(0, "pin"), Support(1.5, "roller"))
    assert beam.loads == (PointForce(0.5, -1000), PointMoment(2, 40), DistributedLoad(0, 1, -2000))
    assert beam.section == Section(207e9, pytest.approx(8e-8))
    assert beam.inputs["load.3.intensity"].unit == "N/m"


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        (
            '"50 cm"',
            '"3 m"',
            "14: 'load.1.at' must be on the beam, from 0 to 2 m (got '3 m').",
        ),
        (
            'force = "-1 kN"',
            'force = "-100 kg"',
            "15: 'load.1.force' must be a force (got '-100 kg'). Write it like '-5 kN'.",
        ),
        (
            'at = "50 cm"\n',
            "",
            "13: 'load.1' must be one load (got 'force'). "
            "Give 'at' with 'force' or with 'moment', or 'from' and 'to' with 'intensity'.",
        ),
        (
            'at = "50 cm"\nforce = "-1 kN"',
            'from = "1 m"\nto = "1 m"\nintensity = "1 kN/m"',
            "15: 'load.1.to' must be further along the beam than 'from' (got '1 m').",
        ),
        (
            '[[support]]\nat = "1.5 m"\ntype = "roller"\n',
            "",
            "5: 'support' must be one fixed support, or two supports (got 1). With fewer the beam falls or turns over.",
        ),
        (
            '"1.5 m"',
            '"0 m"',
            "10: 'support.2.at' must be at a place of its own (got '0 m').",
        ),
        (
            '"roller"',
            '"rolling"',
            "11: 'support.2.type' must be 'pin', 'roller' or 'fixed' (got 'rolling'). Perhaps you meant 'roller'.",
        ),
        (
            'length = "2 m"',
            'lenght = "2 m"',
            "beam.toml: 'length' must be given. Write it like '1.2 m'.\n"
            "beam.toml:3: 'lenght' must be a key that a beam file can hold. Perhaps you meant 'length'.",
        ),
    ],
)
def test_a_beam_that_cannot_be_is_refused(old, new, expected):
    assert old in BEAM
    with pytest.raises(SetupErrors) as caught:
        load_text(BEAM.replace(old, new), "beam.toml")
    assert str(caught.value) == (expected if expected.startswith("beam") else f"beam.toml:{expected}")


def test_one_fixed_support_holds_a_beam():
    text = BEAM.replace('"pin"', '"fixed"').replace('[[support]]\nat = "1.5 m"\ntype = "roller"\n', "")
    assert load_text(text).supports == (Support(0, "fixed"),)
