"""The words of the wheel end as a beam: what its load is, and what shear, moment and deflection come to."""

import math

from hubwright.quantities import format_quantity
from hubwright.quantities.formatting import NO_BREAK
from hubwright.results.beams import WheelEndBeam
from hubwright.results.model import Results
from hubwright.scenes.diagrams import PrintedForce, shear_text
from hubwright.scenes.three_views_words import listed
from hubwright.scenes.vehicle_loads import plain
from hubwright.scenes.vocabulary import Units
from hubwright.scenes.wheel_end_words import row_sizes

_NOTHING = 1e-6  # of the largest force: rounding


def beam_title(results: Results, beam: WheelEndBeam, units: Units) -> str:
    """Return where the bar bends most."""
    bar = bar_of(results)
    bending = format_quantity(abs(beam.maximum_moment.value), "moment", units)
    if abs(beam.maximum_moment.value) < 1e-9 * max(1.0, abs(beam.load)):
        return f"The load stands on one row: the {bar} does not bend"
    if math.isinf(beam.load_place):
        return f"A couple without force bends the {bar} most {_where(beam)}: {bending}"
    if beam.overhung:
        overhang = abs(beam.load_place) - beam.spread / 2
        length = format_quantity(overhang, "small length", units)
        return f"Overhung by {length}, the {bar} bends most {_where(beam)}: {bending}"
    return f"The load stands between the rows, so the {bar} bends most at the load: {bending}"


def beam_caption(results: Results, beam: WheelEndBeam, units: Units) -> str:
    """Return what is drawn, and by which signs it is read."""
    wall = format_quantity(beam.cantilever_moment, "moment", units)
    far = "inboard" if beam.load_place >= 0 else "outboard"
    words = [
        f"{plain(results.setup.name)}, {plain(beam.case)}: {results.wheel.replace('_', ' ')} wheel, seen from the rear"
        + ("." if results.side > 0 else ", mirrored, so that outboard is to the left."),
        f"Each pressure centre is a support that lets the bar tilt; only vertical forces. {{B|z}} is "
        f"{_load_in_words(results, beam)} on the bearing, opposite to its push on the hub.",
        f"Clamped at the {far} one, a cantilever, it would bend with {wall}.",
        # where there is no room for words beside the plots, the signs are read by these
        "{V} sums the upward forces outboard of the cut; {M} is positive where the bar sags.",
    ]
    if beam.couple is not None:
        words.insert(
            1, f"The load stands so far out that it is drawn as force and couple at the {beam.near} pressure centre."
        )
    if beam.diameter is not None:
        diameter = format_quantity(beam.diameter, "small length", units)
        steel = f"{{E}} = {format_quantity(207e9, 'modulus', units)}".replace(" ", NO_BREAK)
        words.append(f"Deflection of a steel bar of {diameter}, {steel}, on a scale of its own.")
    else:
        words.append("Without a diameter the bend has a shape and no size.")
    return " ".join(words)


def beam_description(results: Results, beam: WheelEndBeam, units: Units) -> str:
    """Return the text alternative."""
    where = format_quantity(abs(beam.load_place), "small length", units)
    side = "outboard" if beam.load_place >= 0 else "inboard"
    stands = "as a couple alone" if math.isinf(beam.load_place) else f"{where} {side} of the bearing centre"
    sentences = [
        f"The {bar_of(results)} of {plain(results.setup.name)} as a beam on two supports "
        f"{format_quantity(beam.spread, 'small length', units)} apart, {plain(beam.case)}.",
        f"A load of {format_quantity(abs(beam.load), 'force', units)}, {_load_in_words(results, beam)}, pushes "
        f"{'up' if beam.load >= 0 else 'down'} {stands}.",
    ]
    forces = (beam.reaction_outboard, beam.reaction_inboard)
    for name, force, size in zip(("outboard", "inboard"), forces, row_sizes(forces, units), strict=True):
        way = "up" if force > 0 else "down"
        sentences.append(f"The {name} row pushes {way} with {size}.")
    sentences.append(
        f"The shear is at most {_shear(beam, units)}, the bending moment "
        f"{format_quantity(abs(beam.maximum_moment.value), 'moment', units)} {_where(beam)}."
    )
    if beam.maximum_deflection is not None:
        bend = format_quantity(abs(beam.maximum_deflection.value), "deflection", units)
        sentences.append(f"The bar bends by at most {bend}.")
    return " ".join(sentences)


def source_of_load(results: Results, beam: WheelEndBeam) -> str:
    """Return what passes the load to the bearing, in a few words beside its arrow."""
    return "weight of wheel and hub" if _makers(results, beam) == ["weight"] else "from wheel and hub"


def bar_of(results: Results) -> str:
    """Return what the bar is: the spindle that turns in the rows or, round a stub axle, the hub."""
    return "hub" if results.setup.bearing.turning_ring == "outer" else "spindle"


def printed_forces(beam: WheelEndBeam, units: Units) -> tuple[PrintedForce, ...]:
    """Return the forces with their sizes as the free body prints them."""
    half = beam.spread / 2
    forces = (beam.reaction_outboard, beam.reaction_inboard)
    load = -beam.load_place if beam.couple is None else math.copysign(half, -beam.load_place)
    return (
        PrintedForce(load, beam.load, format_quantity(abs(beam.load), "force", units)),
        *(
            PrintedForce(at, force, size)
            for at, force, size in zip((-half, half), forces, row_sizes(forces, units), strict=True)
        ),
    )


def _load_in_words(results: Results, beam: WheelEndBeam) -> str:
    makers = _makers(results, beam)
    return "the weight of wheel and hub" if makers == ["weight"] else f"the net of {listed(makers)}"


def _makers(results: Results, beam: WheelEndBeam) -> list[str]:
    """Return what makes the load that wheel and hub pass to the bearing."""
    state = results.cases[beam.case]
    upright = {
        words: sum(force.force.z for force in state.free_body.forces if force.name.startswith(start))
        for words, start in (
            ("edge" if state.kind == "ledge" else "road", "contact"),
            ("caliper", "caliper"),
            ("inertia", "inertia"),
            ("weight", "weight"),
        )
    }
    least = _NOTHING * max(abs(newtons) for newtons in upright.values())
    return [words for words, newtons in upright.items() if abs(newtons) > least]


def _where(beam: WheelEndBeam) -> str:
    if not beam.overhung:
        return "at the load"
    return f"at the {beam.near} pressure centre"


def _shear(beam: WheelEndBeam, units: Units) -> str:
    most = beam.maximum_shear
    return shear_text(abs(most.value), most.at, printed_forces(beam, units), units)
