"""The colours of figures as tokens with light, dark and print twins, and the style sheet that inline figures need."""

from typing import Literal

from hubwright.scenes.vocabulary import Material, Tone

Theme = Literal["light", "dark", "print", "transparent"]

# name: (light, dark). Meaning colours are Okabe-Ito vermilion, blue, purple and orange, the last two in darker twins on
# light paper; text has darker (on dark: lighter) twins of its own.
TOKENS: dict[str, tuple[str, str]] = {
    "paper": ("#f8f9f6", "#12181d"),
    "ink": ("#1a2126", "#eceee8"),
    "soft": ("#4a545a", "#aeb7ba"),
    "faint": ("#a3abae", "#5a666f"),
    "load": ("#d55e00", "#f08a3c"),
    "load-text": ("#a84600", "#f6a363"),
    "reaction": ("#0072b2", "#5cb3ec"),
    "reaction-text": ("#00639b", "#82c5f2"),
    "moment": ("#b5568c", "#d98fb9"),
    "moment-text": ("#92426f", "#e6abcb"),
    "changed": ("#b97900", "#e9ad2b"),
    "changed-text": ("#805400", "#f0bf58"),
    "before": ("#757d83", "#8f989e"),
    "before-text": ("#5a6368", "#a5aeb2"),
    "m-turning": ("#efe3c8", "#5a5038"),
    "m-turning-2": ("#e4d3ae", "#6a5d3f"),
    "m-fixed": ("#d3d8dd", "#3b434c"),
    "m-fixed-2": ("#e3e6ea", "#2e343b"),
    "m-steel": ("#f3efe6", "#4a463c"),
    "m-ball": ("#ffffff", "#bdb8ac"),
    "m-rubber": ("#a9a49b", "#4b4a47"),
    "m-rubber-2": ("#6e6a63", "#8c8a84"),
    "m-changed": ("#fbebc8", "#4a3a17"),
    "m-cavity": ("#eae8e1", "#222930"),
    "m-ghost": ("#f1f1ec", "#192027"),
    "m-body": ("#e9ebe8", "#252d34"),
    "hatch": ("#6b6e70", "#a6a295"),
}
_PRINT = {"paper": "#ffffff", "ink": "#000000", "soft": "#333333", "m-ghost": "#f6f6f3"}

_MEANT: tuple[Tone, ...] = ("load", "reaction", "moment", "changed", "before")


def line_token(tone: Tone) -> str:
    """Return the token of lines and arrows of a tone."""
    return tone


def dimension_token(tone: Tone) -> str:
    """Return the token of the lines of a dimension: thin ones, so softer than the ink that they measure."""
    return "soft" if tone == "ink" else line_token(tone)


def text_token(tone: Tone) -> str:
    """Return the token of words of a tone: readable at 4.5:1, so faint words are soft ones."""
    return f"{tone}-text" if tone in _MEANT else "soft" if tone == "faint" else tone


def material_token(material: Material) -> str | None:
    """Return the token of a material's fill, or nothing for one that is not filled."""
    return None if material == "none" else "paper" if material == "paper" else f"m-{material}"


def colours(theme: Theme) -> dict[str, str]:
    """Return the colour of every token in a theme."""
    if theme == "dark":
        return {name: dark for name, (_, dark) in TOKENS.items()}
    light = {name: light for name, (light, _) in TOKENS.items()}
    return light if theme == "light" else light | _PRINT


def css() -> str:
    """Return the rules that inline figures need: colours that follow the sheet (light, dark, printed) and faces."""
    light, printed = colours("light"), colours("print")
    plain = ";".join(f"--hub-{name}:{colour}" for name, colour in light.items())
    both = ";".join(f"--hub-{name}:light-dark({day},{night})" for name, (day, night) in TOKENS.items())
    paper = ";".join(f"--hub-{name}:{colour}" for name, colour in printed.items())
    rules = [
        "/* Made by hubwright.drawing.palette: the colours and faces of figures. */",
        f".hub-figure{{{plain}}}",
        f"@supports (color:light-dark(white,black)){{.hub-figure{{{both}}}}}",
        f"@media print{{.hub-figure{{{paper}}}}}",
        # without the figure before them, so that they also hold where a figure refers to its twin
        *(f".f-{name}{{fill:var(--hub-{name})}}" for name in TOKENS),
        *(f".s-{name}{{stroke:var(--hub-{name})}}" for name in TOKENS),
        ".hub-figure text{white-space:pre;font-weight:400;font-style:normal;letter-spacing:0}",
        ".hub-figure .halo{paint-order:stroke}",
        *(f".hub-figure .t-{face}{{{rule}}}" for face, rule in FACE_RULES.items()),
    ]
    return "\n".join(rules) + "\n"


FACE_RULES: dict[str, str] = {
    "lettering": 'font-family:"Hub Lettering",Schola,"Schola Math",sans-serif',
    "narrow": 'font-family:"Hub Lettering Narrow",Schola,"Schola Math",sans-serif',
    "serif": 'font-family:Schola,"Schola Math",serif',
    "bold": 'font-family:Schola,"Schola Math",serif;font-weight:700',
    "symbol": 'font-family:Schola,"Schola Math",serif;font-style:italic',
}
