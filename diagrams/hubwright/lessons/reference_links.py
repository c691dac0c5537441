"""Links to the reference page of a formula of the mechanics, by its module and name."""

from markupsafe import Markup

FOLDER = "reference"


def reference_link(function: str, words: str = "") -> Markup:
    """Return the link to a formula such as "free_body.wheel_end" or "vector.Vector.cross"; the plugin resolves it."""
    module, _, name = function.partition(".")
    return Markup('<a class="formula-link" href="/{}/{}.md#{}">{}</a>').format(
        FOLDER, module, name, words or f"hubwright.mechanics.{function}"
    )
