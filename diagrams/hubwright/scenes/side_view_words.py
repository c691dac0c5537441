"""What the side view says: its title, caption and text alternative, made from the numbers that it draws."""

import math

from hubwright.mechanics.constants import STANDARD_GRAVITY
from hubwright.quantities import Kind, format_quantity, format_terms
from hubwright.quantities.formatting import MINUS
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.vehicle_loads import PlaneBody, Rest, VehicleLoad, plain
from hubwright.scenes.vocabulary import Units


def title_of(results: Results, state: CaseResult, body: PlaneBody, units: Units) -> str:
    """Return the result that the figure shows, in one line."""
    first, last = body.rests
    if state.acceleration.x:
        moved = first.force[1] - results.weight.axle_loads[first.name]
        gains, loses = (first, last) if moved > 0 else (last, first)
        act = "Braking" if state.kind == "braking" else "Driving"
        return f"{act} moves {format_quantity(abs(moved), 'force', units)} from the {loses.text} to the {gains.text}"
    if state.kind == "side_slope":
        share = format_quantity(body.pressing, "percent", units)
        return f"On the slope the road is pressed with {share} of the standing loads"
    if state.kind in ("cornering", "two_wheel"):
        return "Each axle carries what it carries standing: what changes lies between left and right"
    headline = body.headline
    if headline is None:
        total = first.force[1] + last.force[1]
        on_first, on_last = format_terms([rest.force[1] / total for rest in body.rests], "percent", units)
        return f"The {first.text} carries {on_first} of the weight, the {last.text} {on_last}"
    mass = format_quantity(headline.mass, "mass", units)
    (most, gain), (least, loss) = sorted(body.shares(headline), key=lambda pair: -pair[1])
    gained, lost = format_terms([gain, loss], "mass", units)
    if loss < 0:
        way = "ahead of" if headline.x > most.x else "behind"
        return f"Hung {metres(headline.x - most.x, units)} {way} the {most.text}, {mass} adds {gained} to it"
    return f"{headline.text}: {mass} adds {gained} to the {most.text} and {lost} to the {least.text}"


def caption_of(results: Results, state: CaseResult, body: PlaneBody, units: Units, *, broken: bool) -> str:
    """Return what the figure is and what it leaves out."""
    scaled = "all arrows but the broken ones at one scale" if broken else "all forces at one scale"
    words = [
        f"{plain(results.setup.name)}, {plain(state.name)}, from its left side; {scaled}.",
        f"Moments are taken about A, {centre_of_moments(body)}.",
    ]
    if body.gear:
        words.append("Each item is drawn as the cube that its mass would fill with water.")
    if state.kind in ("cornering", "side_slope", "two_wheel"):
        words.append("Forces across the vehicle lie in the line of sight and are not drawn.")
    if body.pressing < 1.0:
        angle = format_quantity(math.acos(body.pressing), "angle", units)
        words.append(f"On the slope φ of {angle} only W cos φ of a weight W is square to the road.")
    if state.acceleration.x and results.setup.kind == "trailer":
        words.append("The coupling's pull is taken at the height of the road.")
    return " ".join(words)


def description_of(results: Results, state: CaseResult, body: PlaneBody, units: Units) -> str:
    """Return the text alternative."""
    own, first = body.own, body.rests[0]
    square = "The part of its weight without gear that is square to the road" if body.pressing < 1.0 else ""
    sentences = [
        f"{plain(results.setup.name)} from its left side, facing left, {plain(state.name)}.",
        f"{square or 'Its weight without gear'}, {format_quantity(body.weight(own), 'force', units)}, acts "
        f"{levers(body, units)[0]} behind the {first.text} and {metres(own.z, units)} above the road.",
    ]
    for load in body.added:
        parts = " and ".join(f"{share} on the {rest.text}" for rest, share in signed_shares(body, load, units))
        sentences.append(f"{load.text[0].upper()}{load.text[1:]}, {signed_mass(load.mass, units)}: {parts}.")
    if body.inertia[0]:
        force = format_quantity(abs(body.inertia[0]), "force", units)
        sentences.append(f"Inertia pulls {forward(body.inertia[0])} with {force}.")
    for rest, told, pushed in zip(body.rests, rest_forces(body, units), along_forces(body, units), strict=True):
        along, up = rest.force
        way = "up" if up >= 0 else "down"
        sentence = f"The {rest.text} is pushed {way} with {told}"
        if along:
            sentence += f" and {forward(along)} with {pushed}"
        sentences.append(sentence + ".")
    sentences.append(f"Moments are taken about A, {centre_of_moments(body)}.")
    return " ".join(sentences)


def centre_of_moments(body: PlaneBody) -> str:
    """Return where the point A lies, about which moments are taken."""
    return f"where the {body.rests[1].text} stands on the road"


def weight_symbol(body: PlaneBody, number: int | None = None) -> str:
    """Return what stands for a weight, or for its part square to the road."""
    symbol = "{W}" if number is None else f"{{W|{number}}}"
    return symbol if body.pressing == 1.0 else f"{symbol} cos {{φ}}"


def rest_forces(body: PlaneBody, units: Units) -> tuple[str, ...]:
    """Return with how much each rest is pushed up or down; where one weight is shown, both add up to it."""
    return _shared(body, [rest.force[1] for rest in body.rests], "force", units)


def along_forces(body: PlaneBody, units: Units) -> tuple[str, ...]:
    """Return with how much each rest is pushed along the road; both add up to inertia."""
    texts = format_terms([rest.force[0] for rest in body.rests], "force", units)
    return tuple(text.removeprefix(MINUS) for text in texts)


def levers(body: PlaneBody, units: Units) -> tuple[str, ...]:
    """Return how far the vehicle's own weight lies from the first and the last rest; both add up to what is between."""
    first, last = (rest.x for rest in body.rests)
    whole, ahead = (first - last) / 1e3, (first - body.own.x) / 1e3
    # the rest of the whole, so that their sum is rounded as the whole is, half a digit included
    texts = format_terms([ahead, whole - ahead], "vehicle length", units)
    return tuple(text.removeprefix(MINUS) for text in texts)


def scale_readings(body: PlaneBody, units: Units) -> tuple[str, ...]:
    """Return what a scale under each rest shows, as a mass."""
    return _shared(body, [rest.force[1] / STANDARD_GRAVITY for rest in body.rests], "mass", units)


def _shared(body: PlaneBody, parts: list[float], kind: Kind, units: Units) -> tuple[str, ...]:
    # beside several weights nobody sees their sum, and a moved digit would only contradict other pages
    texts = [format_quantity(part, kind, units) for part in parts] if body.added else format_terms(parts, kind, units)
    return tuple(text.removeprefix(MINUS) for text in texts)


def forward(along: float) -> str:
    """Return which way a force along the vehicle points."""
    return "forward" if along > 0 else "backward"


def signed_shares(body: PlaneBody, load: VehicleLoad, units: Units) -> list[tuple[Rest, str]]:
    """Return what each rest gains or loses of a mass, with its sign; both add up to the mass as shown."""
    shares = body.shares(load)
    texts = format_terms([share for _, share in shares], "mass", units)
    return [(rest, _signed(text)) for (rest, _), text in zip(shares, texts, strict=True)]


def signed_mass(mass: float, units: Units) -> str:
    """Return a mass with its sign: what an axle gains or loses.

    >>> signed_mass(78.06, "si").replace("\\u00a0", " ")
    '+78 kg'
    """
    return _signed(format_quantity(mass, "mass", units))


def _signed(text: str) -> str:
    return text if text[0] in "\u22120" else f"+{text}"


def metres(millimetres: float, units: Units) -> str:
    """Return a distance on a vehicle as its unit system's users state it, without sign."""
    return format_quantity(abs(millimetres) / 1e3, "vehicle length", units)
