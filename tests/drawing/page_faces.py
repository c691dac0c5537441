"""The faces of figures as rules for a page that has no style sheet of the theme."""

from collections.abc import Callable

from hubwright.drawing.faces import Face

_FACES: tuple[tuple[str, Face, str], ...] = (
    ("Hub Lettering", "lettering", ""),
    ("Hub Lettering Narrow", "narrow", ""),
    ("Schola", "serif", ""),
    ("Schola", "bold", "font-weight:700"),
    ("Schola", "symbol", "font-style:italic"),
    ("Schola Math", "mathematics", ""),
)


def font_faces(address: Callable[[Face], str]) -> str:
    """Return a rule for each face, its file at an address."""
    return "".join(
        f"@font-face{{font-family:'{family}';src:url('{address(face)}');{more}}}" for family, face, more in _FACES
    )
