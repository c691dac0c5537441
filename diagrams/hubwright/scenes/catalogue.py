"""Every figure by the name that lessons and the terminal use, and the function that makes its scene.

A scene function takes `(results, *, case="standing", units="si")` and returns a `Scene`; a beam's takes a solved beam.
"""

from collections.abc import Callable
from importlib import import_module

from hubwright.scenes.vocabulary import Scene

# Named, not imported: a page that shows one figure does not load the modules of all others.
FIGURES: dict[str, str] = {
    "wheel-end section": "hubwright.scenes.wheel_end_section:wheel_end_section",
    "wheel end as a beam": "hubwright.scenes.spindle_beam:spindle_beam",
    "beam alone": "hubwright.scenes.beam_alone:beam_alone",
    "side view": "hubwright.scenes.side_view:side_view",
}


def scene_function(name: str) -> Callable[..., Scene]:
    """Return the scene function of a figure's name; a KeyError lists the names there are."""
    if name not in FIGURES:
        raise KeyError(f"no figure is called '{name}'; there are: {', '.join(sorted(FIGURES))}")
    module, function = FIGURES[name].split(":")
    scene: Callable[..., Scene] = getattr(import_module(module), function)
    return scene
