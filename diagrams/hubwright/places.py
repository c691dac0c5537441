"""Where the demonstration content and the theme lie: beside the package in a checkout, inside it once installed."""

from pathlib import Path
from typing import Literal

_PACKAGE = Path(__file__).resolve().parent
_CHECKOUT = _PACKAGE.parent.parent
_MARK = {"content": "vehicles", "site_templates": "mkdocs_theme.yml"}


def data_directory(name: Literal["content", "site_templates"]) -> Path:
    """Return the directory of the demonstration course or of the theme, installed or not."""
    for base in (_PACKAGE, _CHECKOUT):
        if (base / name / _MARK[name]).exists():
            return base / name
    raise FileNotFoundError(f"hubwright's own '{name}' directory is missing from this installation; install it again")
