"""Everything wrong in a site at once, without building it: files, lessons, claims, orphan numbers, free bodies."""

import logging
from pathlib import Path

from mkdocs.config import load_config
from mkdocs.exceptions import MkDocsException
from mkdocs.structure.files import get_files, set_exclusions

from hubwright.errors import SetupFileError
from hubwright.lessons.drawings import Undrawn
from hubwright.lessons.plugin import HubwrightPlugin
from hubwright.lessons.problems import LessonProblem


def check_site(directory: Path) -> list[LessonProblem]:
    """Return everything wrong in a site, in the order of its files and lines; what only warns has `fails` False."""
    file = directory / "mkdocs.yml"
    if not file.is_file():
        raise SetupFileError(f"{directory}: there is no mkdocs.yml here. Start a site with 'hubwright new my-site'.")
    # MkDocs tells its own warnings about the configuration through logging; they come as its exception below.
    logging.getLogger("mkdocs").addHandler(logging.NullHandler())
    try:
        config = load_config(config_file=str(file))
    except MkDocsException as error:
        return [LessonProblem(file=file.name, line=None, reason=str(error))]
    plugin = config.plugins.get("hubwright")
    if not isinstance(plugin, HubwrightPlugin):
        return [LessonProblem(file=file.name, line=None, reason="the plugin 'hubwright' is missing from 'plugins'")]
    config = config.plugins.on_config(config)
    plugin.draws = lambda _: Undrawn()
    try:
        config.plugins.on_pre_build(config=config)
    finally:
        del plugin.draws  # MkDocs keeps the plugin for the next build of the same process, which does draw
    files = config.plugins.on_files(get_files(config), config=config)
    set_exclusions(files, config)
    for page in files.documentation_pages():
        plugin.rendered(page, config)
    return [*sorted(plugin.problems, key=lambda problem: (problem.file, problem.line or 0)), *_notes(plugin)]


def _notes(plugin: HubwrightPlugin) -> list[LessonProblem]:
    """Return, for each file, what is estimated and which cases are left out: no fault, but worth knowing."""
    listed = []
    for stem, results in plugin.course.results.items():
        path = plugin.course.shown_file(plugin.course.files[stem])
        keys = [key for key, entry in results.inputs.items() if entry.origin == "estimated"]
        if keys:
            listed.append(LessonProblem(file=path, line=None, reason=f"estimated: {', '.join(keys)}", fails=False))
        listed += [
            LessonProblem(file=path, line=None, reason=f"the case '{name}' is left out: {reason}", fails=False)
            for name, reason in results.left_out.items()
        ]
    return listed
