"""Beams with any supports and loads: sympy's beams as second road, equilibrium, limits, refusals."""

from fractions import Fraction

import numpy as np
import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st
from mechanics_strategies import between
from scipy.integrate import quad
from sympy.physics.continuum_mechanics.beam import Beam

from hubwright.errors import ImpossibleError
from hubwright.mechanics.beam import DistributedLoad, PointForce, PointMoment, Support, solve_beam

RIGIDITY = 250.0

SUPPORTS = [
    [(0, "pin"), (6, "roller")],
    [(1, "roller"), (5, "pin")],
    [(0, "fixed")],
    [(6, "fixed")],
    [(0, "fixed"), (4, "roller")],
    [(0, "pin"), (3, "roller"), (6, "roller")],
    [(0, "fixed"), (6, "fixed")],
    [(0, "fixed"), (2, "roller"), (6, "fixed")],
]


def random_loads(seed: int):
    rng = np.random.default_rng(seed)
    loads = [PointForce(float(rng.integers(0, 25)) / 4, float(rng.integers(-9, 10))) for _ in range(2)]
    loads += [PointMoment(float(rng.integers(0, 25)) / 4, float(rng.integers(-9, 10)))]
    start, end = sorted(rng.choice(np.arange(0, 25), 2, replace=False) / 4)
    loads += [DistributedLoad(float(start), float(end), float(rng.integers(-5, 6)))]
    return loads


def sympy_beam(supports, loads):
    """Return the same beam solved by sympy in exact fractions."""
    beam = Beam(6, sympy.Rational(RIGIDITY), 1)
    symbols = []
    for at, kind in supports:
        found = beam.apply_support(sympy.Rational(at), kind)
        symbols += found if isinstance(found, tuple) else [found]
    for load in loads:
        match load:
            case PointForce(at, force):
                beam.apply_load(sympy.Rational(force), sympy.Rational(at), -1)
            case PointMoment(at, moment):
                # sympy counts couples clockwise
                beam.apply_load(-sympy.Rational(moment), sympy.Rational(at), -2)
            case DistributedLoad(start, end, intensity):
                beam.apply_load(sympy.Rational(intensity), sympy.Rational(start), 0, end=sympy.Rational(end))
    beam.solve_for_reaction_loads(*symbols)
    return beam


@pytest.mark.parametrize("seed", range(16))
def test_random_beams_are_those_of_sympy(seed):
    supports, loads = SUPPORTS[seed % len(SUPPORTS)], random_loads(seed)
    ours = solve_beam(
        length=6.0, supports=[Support(float(a), k) for a, k in supports], loads=loads, flexural_rigidity=RIGIDITY
    )
    theirs = sympy_beam(supports, loads)
    x = sympy.Symbol("x")
    reactions = {str(symbol): float(value) for symbol, value in theirs.reaction_loads.items()}
    for reaction in ours.reactions:
        at = int(reaction.at)
        assert reaction.force == pytest.approx(reactions[f"R_{at}"], abs=1e-9)
        assert reaction.moment == pytest.approx(-reactions.get(f"M_{at}", 0.0), abs=1e-9)
    # away from the quarters, where steps are; sympy's V and M have the opposite sign
    for place in (Fraction(1, 9), Fraction(13, 9), Fraction(28, 9), Fraction(43, 9), Fraction(53, 9)):
        at = sympy.Rational(place.numerator, place.denominator)
        assert ours.shear(float(place)) == pytest.approx(-float(theirs.shear_force().subs(x, at)), abs=1e-9)
        assert ours.moment(float(place)) == pytest.approx(-float(theirs.bending_moment().subs(x, at)), abs=1e-9)
        assert ours.slope(float(place)) == pytest.approx(float(theirs.slope().subs(x, at)), abs=1e-9)
        assert ours.deflection(float(place)) == pytest.approx(float(theirs.deflection().subs(x, at)), abs=1e-9)


loads_strategy = st.lists(
    st.one_of(
        st.builds(PointForce, at=between(0, 6), force=between(-9, 9)),
        st.builds(PointMoment, at=between(0, 6), moment=between(-9, 9)),
        st.builds(
            DistributedLoad,
            start=between(0, 3),
            end=between(3.1, 6),
            intensity=between(-5, 5),
            end_intensity=between(-5, 5),
        ),
    ),
    min_size=1,
    max_size=4,
)
supports_strategy = st.sampled_from([[Support(float(a), k) for a, k in supports] for supports in SUPPORTS])


def beam_of(supports, loads):
    return solve_beam(length=6.0, supports=supports, loads=loads, flexural_rigidity=RIGIDITY)


@given(supports_strategy, loads_strategy)
def test_reactions_balance_all_loads(supports, loads):
    force = moment = 0.0  # moment about the left end, counter-clockwise
    for load in loads:
        match load:
            case PointForce(at, value):
                force, moment = force + value, moment + value * at
            case PointMoment(_, value):
                moment += value
            case DistributedLoad(start, end, first, last):
                force += quad(lambda x: np.interp(x, [start, end], [first, last]), start, end)[0]
                moment += quad(lambda x: x * np.interp(x, [start, end], [first, last]), start, end)[0]
    for reaction in beam_of(supports, loads).reactions:
        force, moment = force + reaction.force, moment + reaction.force * reaction.at + reaction.moment
    assert force == pytest.approx(0, abs=1e-8)
    assert moment == pytest.approx(0, abs=1e-8)


@given(supports_strategy, loads_strategy)
def test_supports_hold_height_and_fixed_ones_the_slope(supports, loads):
    beam = beam_of(supports, loads)
    for support in supports:
        assert beam.deflection(support.at) == pytest.approx(0, abs=1e-9)
        if support.type == "fixed":
            assert beam.slope(support.at) == pytest.approx(0, abs=1e-9)


@settings(max_examples=50)
@given(supports_strategy, loads_strategy)
def test_no_place_of_a_fine_grid_beats_the_maxima(supports, loads):
    beam = beam_of(supports, loads)
    # and just beside every step of the shear, which may be narrower than the grid
    places = [
        getattr(part, name) for part in (*supports, *loads) for name in ("at", "start", "end") if hasattr(part, name)
    ]
    beside = np.clip([place + by for place in places for by in (-1e-6, 1e-6)], 0.0, 6.0)
    x = np.unique([*np.linspace(0, 6, 1201), *beside])
    for curve, extreme in (
        (beam.shear, beam.maximum_shear),
        (beam.moment, beam.maximum_moment),
        (beam.deflection, beam.maximum_deflection),
    ):
        values = np.abs(curve(x))
        assert np.max(values) <= abs(extreme.value) * (1 + 1e-9) + 1e-12
        # and it is not beaten by much either: the grid comes close to a smooth peak
        assert abs(extreme.value) <= np.max(values) + np.max(np.abs(np.diff(values)), initial=1e-12)


def test_the_moment_peaks_where_the_shear_is_zero_inside_a_distributed_load():
    # by hand: R = wL/2·(1 − …); w = 2 over the left half of 6 m: R_left = 6·4.5/6 = 4.5, V = 0 at 2.25 m
    beam = beam_of([Support(0.0, "pin"), Support(6.0, "roller")], [DistributedLoad(0.0, 3.0, -2.0)])
    assert beam.maximum_moment.at == pytest.approx(2.25)
    assert beam.maximum_moment.value == pytest.approx(4.5**2 / (2 * 2))


def test_a_triangular_load_on_a_cantilever_does_what_the_tables_say():
    # w growing from 0 at the tip to w0 at the root: M = w0 L²/6, v = w0 L⁴/(30 E I)
    beam = beam_of([Support(6.0, "fixed")], [DistributedLoad(0.0, 6.0, 0.0, -3.0)])
    assert beam.maximum_moment.value == pytest.approx(-3.0 * 36 / 6)
    assert beam.maximum_deflection.value == pytest.approx(-3.0 * 6**4 / (30 * RIGIDITY))
    assert beam.maximum_deflection.at == 0.0


def test_a_beam_built_in_at_both_ends_does_what_the_tables_say():
    # w L²/12 at the ends, w L²/24 in the middle, w L⁴/(384 E I)
    beam = beam_of([Support(0.0, "fixed"), Support(6.0, "fixed")], [DistributedLoad(0.0, 6.0, -2.0)])
    assert beam.maximum_moment.value == pytest.approx(-2 * 36 / 12)
    assert beam.moment(3.0) == pytest.approx(2 * 36 / 24)
    assert beam.maximum_deflection.value == pytest.approx(-2 * 6**4 / (384 * RIGIDITY))


def test_steps_are_seen_from_both_sides():
    beam = beam_of([Support(0.0, "pin"), Support(6.0, "roller")], [PointForce(2.0, -9.0), PointMoment(4.0, 3.0)])
    assert beam.shear(2.0, left_of_steps=True) - beam.shear(2.0) == pytest.approx(9.0)
    # a counter-clockwise couple lowers the sagging moment right of it
    assert beam.moment(4.0, left_of_steps=True) - beam.moment(4.0) == pytest.approx(3.0)


def test_reactions_need_no_stiffness_but_a_deflection_does():
    beam = solve_beam(
        length=6.0, supports=[Support(0.0, "fixed"), Support(6.0, "roller")], loads=[PointForce(3.0, -16.0)]
    )
    assert beam.reactions[1].force == pytest.approx(5.0)  # 5 F/16, any table of propped cantilevers
    with pytest.raises(ImpossibleError, match="need Young's modulus"):
        beam.deflection(3.0)
    with pytest.raises(ImpossibleError, match="need Young's modulus"):
        _ = beam.maximum_deflection


def test_a_beam_in_millimetres_of_steel_is_as_exact_as_one_in_metres():
    # propped cantilever again, 3 mm long and very stiff: reactions do not know the size
    tiny = solve_beam(
        length=0.003,
        supports=[Support(0.0, "fixed"), Support(0.003, "roller")],
        loads=[PointForce(0.0015, -16.0)],
        flexural_rigidity=1e9,
    )
    assert tiny.reactions[1].force == pytest.approx(5.0, rel=1e-12)


@pytest.mark.parametrize(
    ("supports", "loads", "message"),
    [
        ([], [], "cannot hold the beam"),
        ([Support(1.0, "pin")], [], "cannot hold the beam"),
        ([Support(1.0, "pin"), Support(1.0, "roller")], [], "same place"),
        ([Support(0.0, "pin"), Support(7.0, "roller")], [], "outside the beam"),
        ([Support(0.0, "fixed")], [PointForce(6.5, 1.0)], "outside the beam"),
        ([Support(0.0, "fixed")], [DistributedLoad(3.0, 3.0, 1.0)], "right of its start"),
    ],
)
def test_what_is_no_beam_is_refused(supports, loads, message):
    with pytest.raises(ImpossibleError, match=message):
        solve_beam(length=6.0, supports=supports, loads=loads)
    with pytest.raises(ValueError, match=message):  # the built-in type catches it too
        solve_beam(length=6.0, supports=supports, loads=loads)


def test_a_place_outside_the_beam_has_no_shear():
    with pytest.raises(ImpossibleError, match="outside the beam"):
        beam_of([Support(0.0, "fixed")], [PointForce(6.0, 1.0)]).shear(6.1)
