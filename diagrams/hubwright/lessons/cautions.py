"""The cautions that a page carries, by what it shows; a site can add its own and cannot drop one of these."""

from collections.abc import Iterable
from typing import Literal, get_args

from markupsafe import Markup

from hubwright.lessons.page_state import PageState

Hazard = Literal[
    "lifting",
    "bearing check",
    "hub nuts",
    "wheel fasteners",
    "tires",
    "slopes drops and corners",
    "gear",
    "measuring",
]

ALWAYS = (
    "These are simplified teaching models. They do not say that a change is safe or legal.",
    "The vehicle maker's limits for axle, tire and wheel and the local codes come first.",
)
LAST = "Found damage, or any doubt, goes to a qualified technician before you drive."
CAUTIONS: dict[str, tuple[str, ...]] = {
    "lifting": (
        "Lift only on firm, level ground, at the maker's lifting points, with the other wheels chocked. "
        "Put stands under it.",
        "No part of the body goes under a vehicle that a jack alone holds. "
        "Keep hands clear of pinch points.",
    ),
    "bearing check": (
        "Never run the engine to spin a raised wheel.",
        "Stop driving at once on looseness, grinding, strong heat, smell, smoke, brake pull or a warning lamp. "
        "A quiet, tight bearing is not thereby sound.",
        "Brakes and hubs burn: let them cool before you touch them.",
    ),
    "hub nuts": (
        "Hub nuts take the maker's torque and are often for single use. Do not roll the vehicle with the nut loose.",
        "Never set a bearing's preload by feel from these pages.",
    ),
    "wheel fasteners": (
        "Wheel fasteners need the right seat, enough thread engaged, clean dry faces and a wheel that sits on "
        "its pilot. "
        "Use the maker's torque and check it again after driving. Never stack spacers.",
        "Check the clearance at full lock and full bump. Rules and insurance differ from place to place.",
    ),
    "tires": (
        "Other tires need clearance, load and speed rating, and the right inflation; "
        "braking distance and speedometer change.",
    ),
    "slopes drops and corners": (
        "A vehicle tips well before its static angle. A computed angle or cornering figure is not a driving limit, "
        "and nothing here is to be tried out on a public road.",
    ),
    "gear": ("Secure what you carry, and keep to the roof load limit.",),
    "measuring": ("Never lift an axle to find a height, and never dismantle a hub for a number.",),
}  # fmt: skip
assert set(CAUTIONS) == set(get_args(Hazard))

# what a figure shows: a page that draws it has to name these hazards
SHOWN: dict[str, tuple[Hazard, ...]] = {
    "rock test": ("lifting", "bearing check"),
    "defect frequencies against speed": ("bearing check",),
    "outer wheel in a corner": ("slopes drops and corners",),
    "front view in a corner": ("slopes drops and corners",),
    "vehicle on a slope": ("slopes drops and corners",),
    "diagonal support": ("slopes drops and corners",),
    "wheel at a ledge": ("slopes drops and corners",),
    "drop history": ("slopes drops and corners",),
    "drop sequence": ("slopes drops and corners",),
    "joint section": ("wheel fasteners",),
    "two setups under one load line": ("wheel fasteners",),
    "seal section": ("bearing check",),
    **dict.fromkeys(
        (
            "measuring lengths",
            "measuring weights",
            "measuring gear",
            "measuring a tire",
            "measuring a wheel",
            "measuring a hub",
            "measuring springs",
        ),
        ("measuring",),
    ),
}


def caution_texts(hazards: Iterable[str], added: Iterable[str] = ()) -> list[str]:
    """Return the sentences for some hazards in the order of the table, with what a site adds."""
    wanted = set(hazards)
    found = [text for hazard, texts in CAUTIONS.items() if hazard in wanted for text in texts]
    return [*ALWAYS, *found, *added, LAST]


def caution_box(hazards: Iterable[str], added: Iterable[str] = ()) -> Markup:
    """Return the box of cautions of a page."""
    items = Markup("\n").join(
        Markup("<li>{}</li>").format(text.replace("'", "’")) for text in caution_texts(hazards, added)
    )
    return Markup(
        '<aside class="caution" aria-labelledby="caution-t">\n'
        '<span class="tag" id="caution-t">Before you touch a wheel</span>\n'
        "<ul>\n{}\n</ul>\n</aside>"
    ).format(items)


def check_hazards(page: PageState, hazards: object, *, line: int) -> list[str]:
    """Return the hazards that a page's front matter names; unknown ones are problems."""
    if hazards is None:
        return []
    if not isinstance(hazards, list) or not all(isinstance(hazard, str) for hazard in hazards):
        page.problem(f"'hazards' must be a list of: {', '.join(CAUTIONS)}", line=line)
        return []
    for hazard in hazards:
        if hazard not in CAUTIONS:
            page.problem(f"no caution is called '{hazard}'; there are: {', '.join(CAUTIONS)}", line=line)
    return [hazard for hazard in hazards if hazard in CAUTIONS]


def check_shown(page: PageState, *, line: int) -> None:
    """Make a problem of each figure on a page whose hazards its front matter does not name."""
    for figure, hazards in SHOWN.items():
        missing = [hazard for hazard in hazards if figure in page.drawn and hazard not in page.hazards]
        if missing:
            page.problem(f"the page draws '{figure}': add {', '.join(missing)} to its 'hazards'", line=line)
