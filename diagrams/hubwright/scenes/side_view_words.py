"""What the side view says: its title, caption and text alternative, made from the numbers that it draws."""

from hubwright.quantities import format_quantity
from hubwright.results.model import CaseResult, Results
from hubwright.scenes.vehicle_loads import PlaneBody, plain
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
        return (
            f"The {first.text} carries {format_quantity(first.force[1] / total, 'percent', units)} of the weight, "
            f"the {last.text} {format_quantity(last.force[1] / total, 'percent', units)}"
        )
    mass = format_quantity(headline.mass, "mass", units)
    (most, gain), (least, loss) = sorted(body.shares(headline), key=lambda pair: -pair[1])
    gained = format_quantity(gain, "mass", units)
    if loss < 0:
        way = "ahead of" if headline.x > most.x else "behind"
        return f"Hung {metres(headline.x - most.x, units)} {way} the {most.text}, {mass} adds {gained} to it"
    lost = format_quantity(loss, "mass", units)
    return f"{headline.text}: {mass} adds {gained} to the {most.text} and {lost} to the {least.text}"


def caption_of(results: Results, state: CaseResult, body: PlaneBody) -> str:
    """Return what the figure is and what it leaves out."""
    words = [f"{plain(results.setup.name)}, {plain(state.name)}, from its left side; all forces at one scale."]
    if body.gear:
        words.append("Each item is drawn as the cube that its mass would fill with water.")
    if state.kind in ("cornering", "side_slope", "two_wheel"):
        words.append("Forces across the vehicle lie in the line of sight and are not drawn.")
    if state.acceleration.x and results.setup.kind == "trailer":
        words.append("The coupling's pull is taken at the height of the road.")
    return " ".join(words)


def description_of(results: Results, state: CaseResult, body: PlaneBody, units: Units) -> str:
    """Return the text alternative."""
    own, first = body.own, body.rests[0]
    sentences = [
        f"{plain(results.setup.name)} from its left side, facing left, {plain(state.name)}.",
        f"Its weight without gear, {format_quantity(body.weight(own), 'force', units)}, acts "
        f"{metres(own.x - first.x, units)} behind the {first.text} and {metres(own.z, units)} above the road.",
    ]
    for load in body.added:
        parts = " and ".join(f"{signed_mass(share, units)} on the {rest.text}" for rest, share in body.shares(load))
        sentences.append(f"{load.text[0].upper()}{load.text[1:]}, {signed_mass(load.mass, units)}: {parts}.")
    if body.inertia[0]:
        force = format_quantity(abs(body.inertia[0]), "force", units)
        sentences.append(f"Inertia pulls {forward(body.inertia[0])} with {force}.")
    for rest in body.rests:
        along, up = rest.force
        way = "up" if up >= 0 else "down"
        sentence = f"The {rest.text} is pushed {way} with {format_quantity(abs(up), 'force', units)}"
        if along:
            sentence += f" and {forward(along)} with {format_quantity(abs(along), 'force', units)}"
        sentences.append(sentence + ".")
    return " ".join(sentences)


def forward(along: float) -> str:
    """Return which way a force along the vehicle points."""
    return "forward" if along > 0 else "backward"


def signed_mass(mass: float, units: Units) -> str:
    """Return a mass with its sign: what an axle gains or loses.

    >>> signed_mass(78.06, "si").replace("\\u00a0", " ")
    '+78 kg'
    """
    text = format_quantity(mass, "mass", units)
    return text if text[0] in "\u22120" else f"+{text}"


def metres(millimetres: float, units: Units) -> str:
    """Return a distance on a vehicle as its unit system's users state it, without sign."""
    return format_quantity(abs(millimetres) / 1e3, "vehicle length", units)
