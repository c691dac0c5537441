"""Vehicle, setup and beam files: what they may hold, reading them, completing them, varying them."""

from __future__ import annotations

from pathlib import Path

from hubwright.setup.beam import build_beam
from hubwright.setup.building import build_setup
from hubwright.setup.cases import named_duties
from hubwright.setup.document import Document, document_from_text, read_document
from hubwright.setup.estimates import late_estimates
from hubwright.setup.model import Beam, Input, Setup
from hubwright.setup.schema import KeyReference, key_reference
from hubwright.setup.variants import vary, with_inputs

__all__ = [
    "Beam",
    "Input",
    "KeyReference",
    "Setup",
    "key_reference",
    "late_estimates",
    "load",
    "load_text",
    "named_duties",
    "vary",
    "with_inputs",
]


def load(path: str | Path) -> Setup | Beam:
    """Return the vehicle, trailer or beam that a file describes.

    Raises
    ------
    SetupFileError
        When the file cannot be read.
    SetupErrors
        With every problem of the file and of those that it extends.
    """
    return _built(read_document(Path(path)))


def load_text(text: str, name: str = "text.toml", *, beside: Path | None = None) -> Setup | Beam:
    """Return what a text describes; files that it extends are looked for from the folder `beside`."""
    return _built(document_from_text(text, name, beside=beside))


def _built(document: Document) -> Setup | Beam:
    if str(document.data.get("kind", "")).strip().casefold() == "beam":
        return build_beam(document)
    return build_setup(document)
