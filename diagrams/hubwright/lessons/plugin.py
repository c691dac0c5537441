"""The MkDocs plugin: fills lessons with computed numbers and figures, and fails a build in which anything is wrong."""

import json
import posixpath
import re
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, Literal

from markupsafe import Markup
from mkdocs.config import base
from mkdocs.config import config_options as options
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.utils import get_build_datetime, get_relative_url
from mkdocs.utils.templates import TemplateContext

from hubwright.lessons import answer_units
from hubwright.lessons.branding import Branding, branding_problems
from hubwright.lessons.closure import left_over
from hubwright.lessons.course import Course
from hubwright.lessons.drawings import Drawings
from hubwright.lessons.generated_page import GeneratedPage, Site
from hubwright.lessons.generated_pages import GeneratedPages
from hubwright.lessons.input_tables import estimated
from hubwright.lessons.limit_table import limits, limits_are_exceeded, warning_above_limits
from hubwright.lessons.numbers import plain
from hubwright.lessons.page_state import PageState
from hubwright.lessons.pages import Renderer
from hubwright.lessons.practice_files import FOLDER as PRACTICE
from hubwright.lessons.previews import preview_path, write_previews
from hubwright.lessons.problems import LessonProblem
from hubwright.lessons.search_text import search_text
from hubwright.lessons.sections import LessonExtension
from hubwright.lessons.words import wheel_words

log = get_plugin_logger("hubwright")
LAYOUT_FACES = "fonts/layout/"  # twins of the faces for laying out figures; no page asks for them
FIGURE_RULES = "assets/figures.css"
FIND_NUMBERS = "find-your-numbers.md"


class HubwrightConfig(base.Config):  # type: ignore[no-untyped-call]
    """The plugin's options in mkdocs.yml."""

    setup = options.Type(str)
    """Stem of the vehicle or setup file that the lessons are about."""
    course = options.Optional(options.Type(str))
    """Name of the course, for the bar and the title block; default: site_name."""
    vehicles = options.Type(str, default="vehicles")
    """Directory of vehicle files below docs_dir."""
    setups = options.Type(str, default="setups")
    """Directory of setup files below docs_dir."""
    beams = options.Type(str, default="beams")
    """Directory of beam files below docs_dir."""
    address = options.Optional(options.Type(str))
    """Address that the title block prints."""
    cautions = options.ListOfItems(options.Type(str), default=[])
    """Cautions of your own; they stand beside the built-in ones, which cannot be dropped."""
    teachers_key = options.Type(bool, default=True)
    """Whether the site has a page with every answer to the practice problems."""
    shop = options.Type(str, default="")
    """Name of the shop, at the head of every customer sheet."""
    contact = options.Type(str, default="")
    """A line below it: address, telephone."""
    logo = options.Type(str, default="")
    """Picture of your own below docs_dir, beside the shop's name."""
    prepared_by = options.Type(str, default="")
    """Name on the line "prepared by" of a sheet; empty: a line to write on."""
    reviewed_by = options.Type(str, default="")
    """Name on the line "reviewed by" of a sheet; empty: a line to write on."""
    cache = options.Optional(options.Type(str))
    """Directory for finished drawings; default: .hubwright/cache beside mkdocs.yml."""


class HubwrightPlugin(BasePlugin[HubwrightConfig]):  # type: ignore[no-untyped-call]
    """Computes once per build, renders each lesson, reports everything wrong at once."""

    draws: Callable[[Path | None], Drawings] = Drawings
    serving = False

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Remember whether the site is only shown while it is written."""
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Bring the Markdown extensions that lessons need."""
        self.extension = LessonExtension()
        kept = [one for one in config.markdown_extensions if not isinstance(one, LessonExtension)]
        needed = [one for one in ("md_in_html", "attr_list", "smarty") if one not in kept]
        config.markdown_extensions = [*kept, *needed, self.extension]  # type: ignore[list-item]
        return config

    def on_pre_build(self, config: MkDocsConfig) -> None:
        """Read and solve every vehicle, setup and beam file."""
        docs = Path(config.docs_dir)
        log.info("solving vehicles and setups")
        folders = (self.config.vehicles, self.config.setups, self.config.beams)
        self.course = Course.read(docs, in_view=self.config.setup, folders=folders, shown=docs_directory(config))
        self.problems: list[LessonProblem] = list(self.course.problems)
        self.states: dict[str, PageState] = {}
        self.drawings = self.draws(cache_directory(config, self.config.cache))
        self.renderer = Renderer(self.course, self.drawings, added_cautions=tuple(self.config.cautions))
        self.generated = GeneratedPages.of(
            Site(
                self.course,
                self.drawings,
                cautions=tuple(self.config.cautions),
                branding=self._branding(config),
                practice=self.renderer.practice,
                teachers_key=self.config.teachers_key,
                states=self.states,
            )
        )

    def _branding(self, config: MkDocsConfig) -> Branding:
        """Return the shop's texts; what is wrong with them, or with other texts of the site's owner, is kept."""
        branding = Branding(
            shop=self.config.shop,
            contact=self.config.contact,
            logo=self.config.logo,
            prepared_by=self.config.prepared_by,
            reviewed_by=self.config.reviewed_by,
        )
        more = {
            "site_name": config.site_name or "",
            "site_description": config.site_description or "",
            "course": self.config.course or "",
            "cautions": "\n".join(self.config.cautions),
        }
        file = Path(config.config_file_path).name if config.config_file_path else "mkdocs.yml"
        self.problems += branding_problems(branding, Path(config.docs_dir), more=more, file=file)
        return branding

    def on_files(self, files: Files, config: MkDocsConfig) -> Files:
        """Add the generated pages and the rules of the figures; a page that somebody wrote at the same path stays."""
        from hubwright.drawing import palette

        for file in [file for file in files if file.src_uri.startswith((LAYOUT_FACES, f"{PRACTICE}/"))]:
            files.remove(file)
        files.append(File.generated(config, FIGURE_RULES, content=palette.css()))
        files.append(File.generated(config, answer_units.PATH, content=answer_units.units_script()))
        for path, page in self.generated.by_path.items():
            if files.get_file_from_path(path) is None:
                # what search keeps quiet about is no page's neighbour either
                place = InclusionLevel.UNDEFINED if page.searched else InclusionLevel.NOT_IN_NAV
                files.append(File.generated(config, path, content=page.source, inclusion=place))
        return files

    def on_nav(self, nav: Navigation, config: MkDocsConfig, files: Files) -> Navigation:
        """Keep the files, to turn addresses of pages into links."""
        self.files = files
        return nav

    def on_page_markdown(self, markdown: str, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Fill in a page."""
        log.info(f"filling in {page.file.src_uri}")
        state, text = self.rendered(page.file, config)
        page.meta.update({key: value for key, value in state.meta.items() if key in page.meta})
        self.extension.page = state
        return text

    def rendered(self, file: File, config: MkDocsConfig) -> tuple[PageState, str]:
        """Return a page's state and Markdown; its problems join those of the site."""
        if (made := self._generated(file)) is not None:
            meta = {"summary": made.summary} if made.summary else {}
            state = PageState(file=file.src_uri, title=made.title, built=built_on(), meta=meta)
            text = made.write(state)
        else:
            state, text = self.renderer.page(file.content_string, posixpath.join(docs_directory(config), file.src_uri))
        self.problems += state.problems
        self.states[file.src_uri] = state
        return state, text

    def _generated(self, file: File) -> GeneratedPage | None:
        return self.generated.at(file.src_uri) if file.generated_by == "hubwright" else None

    def on_page_content(self, html: str, page: Page, config: MkDocsConfig, files: Files) -> str:
        """Put back what was kept from Markdown; the search index gets its own reading of the page first."""
        state = self.states[page.file.src_uri]
        self.extension.page = None
        state.content = _linked(self._beside_limits(state.put_back(html), state, page), page, files)
        return search_text(state.content)

    def _beside_limits(self, html: str, state: PageState, page: Page) -> str:
        """Set the standing loads beside the limits given, on every page that speaks of a setup."""
        speaks = state.lesson is not None or state.tied_to is not None or page.is_homepage
        results = self.course.results.get(state.tied_to or self.config.setup)
        if self._generated(page.file) is not None or not speaks or results is None:
            return html
        first = warning_above_limits() if limits_are_exceeded(results) else ""
        box = Markup(
            '\n<aside class="beside-limits" aria-label="Limits">\n<p class="tag">{} and its limits</p>\n{}</aside>\n'
        )
        return f"{first}{html}{box.format(results.setup.name, limits(results))}"

    def on_env(self, env: Any, config: MkDocsConfig, files: Files) -> Any:
        """Fail the build before anything is written, with every problem there is."""
        for problem in self.problems:
            if not problem.fails:
                log.info(str(problem))
        failures = [str(problem) for problem in self.problems if problem.fails]
        if failures:
            raise PluginError("\n".join(failures))
        return env

    @event_priority(-50)  # after MkDocs' search plugin read the page
    def on_page_context(
        self, context: TemplateContext, page: Page, config: MkDocsConfig, nav: Navigation
    ) -> TemplateContext:
        """Give the theme the page, and what it shows beside the text."""
        page.content = self.states[page.file.src_uri].content
        context["hubwright"] = self._theme_context(page, config)  # type: ignore[typeddict-unknown-key]
        return context

    def on_template_context(
        self, context: TemplateContext, template_name: str, config: MkDocsConfig
    ) -> TemplateContext:
        """Give the theme's own pages the bar and the course as well."""
        context["hubwright"] = self._theme_context(None, config)  # type: ignore[typeddict-unknown-key]
        return context

    def on_post_page(self, output: str, page: Page, config: MkDocsConfig) -> str:
        """Put drawings and formulas in their places."""
        return _linked(self.states[page.file.src_uri].put_back(output, late=True), page, self.files)

    def _is_previewed(self, state: PageState | None, config: MkDocsConfig) -> bool:
        """Return whether a page has a picture to be shared with: its address must be known, and a figure be on it."""
        return bool(config.site_url) and not self.serving and state is not None and state.hero is not None

    @event_priority(-50)  # after MkDocs' search plugin wrote its index
    def on_post_build(self, config: MkDocsConfig) -> None:
        """Write the search index as a script too, which a page opened from a folder may load; and the previews."""
        index = Path(config.site_dir) / "search" / "search_index.json"
        if index.is_file():
            data = json.loads(index.read_text(encoding="utf-8"))
            hidden = {self._url(path) for path, page in self.generated.by_path.items() if not page.searched}
            data["docs"] = [entry for entry in data["docs"] if entry["location"].partition("#")[0] not in hidden]
            text = json.dumps(data, ensure_ascii=False)
            index.write_text(text, encoding="utf-8")
            index.with_suffix(".js").write_text(f"window.searchIndex = {text};\n", encoding="utf-8")
        previewed = {uri: state for uri, state in self.states.items() if self._is_previewed(state, config)}
        write_previews(previewed, self.drawings, Path(config.site_dir), course=self.config.course or config.site_name)

    def on_serve(self, server: LiveReloadServer, config: MkDocsConfig, builder: Callable[..., Any]) -> LiveReloadServer:
        """Rebuild when a vehicle, setup or beam file changes; MkDocs watches the docs directory by itself."""
        for folder in (self.config.vehicles, self.config.setups, self.config.beams):
            path = Path(config.docs_dir) / folder
            if path.is_dir() and not path.resolve().is_relative_to(Path(config.docs_dir).resolve()):
                server.watch(str(path))
        return server

    def _theme_context(self, page: Page | None, config: MkDocsConfig) -> dict[str, Any]:
        state = self.states.get(page.file.src_uri) if page is not None else None
        made = self._generated(page.file) if page is not None else None
        about = (made.stem if made else None) or (state.tied_to if state else None)
        results = self.course.results.get(about or self.config.setup)
        lessons = self._lessons(state)
        kind = (
            made.kind
            if made
            else "lesson"
            if state and state.lesson is not None
            else "home"
            if page and page.is_homepage
            else "page"
        )
        context: dict[str, Any] = {
            "course": self.config.course or config.site_name,
            "kind": kind,
            "lesson": state.lesson if state else None,
            "lessons": lessons,
            "extras": self._extras(),
            "summary": plain(str(state.meta.get("summary", ""))) if state else "",
            "figures_css": FIGURE_RULES,
            "preview": preview_path(page.file.src_uri) if page and self._is_previewed(state, config) else "",
            "practice": answer_units.PATH if state and state.practice else "",
            "address": self.config.address,
            "built": built_on(),
            "sheet": next((f"{n} of {len(lessons)}" for n, one in enumerate(lessons, 1) if one["current"]), "")
            or (made.mark if made else ""),
        }
        if results is not None:
            force = max(case.closure.force for case in results.cases.values())
            context |= {
                "setup_name": results.setup.name,
                "setup_url": self._url(f"reports/{results.setup.stem}.md"),
                "wheel": wheel_words((state.wheel if state else "") or results.wheel),
                "estimated": estimated(results),
                "numbers_url": self._url(FIND_NUMBERS),
                "left_over": left_over(force, "N"),
            }
        return context

    def _lessons(self, state: PageState | None) -> list[dict[str, Any]]:
        """Return the lessons that the site has, its own or the course's, in the order of their numbers."""
        entries = []
        for uri, one in sorted(self.states.items(), key=lambda item: (item[1].lesson or 0, item[0])):
            if one.lesson is not None and (file := self.files.get_file_from_path(uri)) is not None:
                entries.append(
                    {
                        "number": one.lesson,
                        "question": plain(one.title),
                        "url": file.url,
                        "available": True,
                        "current": one is state,
                    }
                )
        return entries

    def _url(self, path: str) -> str:
        file = self.files.get_file_from_path(path)
        return file.url if file else ""

    def _extras(self) -> list[dict[str, Any]]:
        extras = [
            {"mark": one.mark, "title": one.title, "url": self._url(path)}
            for path, one in self.generated.by_path.items()
            if one.listed
        ]
        for path, mark, words in ((FIND_NUMBERS, "N", "Find your numbers"), ("glossary.md", "W", "Words")):
            if url := self._url(path):
                title = self.states[path].title if path in self.states else ""
                extras.append({"mark": mark, "title": plain(title) or words, "url": url})
        return extras


def docs_directory(config: MkDocsConfig) -> str:
    """Return the docs directory as a message shows it: from where mkdocs.yml lies."""
    docs = Path(config.docs_dir)
    beside = Path(config.config_file_path).resolve().parent if config.config_file_path else docs
    return docs.relative_to(beside).as_posix() if docs.is_relative_to(beside) else docs.name


def cache_directory(config: MkDocsConfig, wanted: str | None) -> Path | None:
    """Return where finished drawings are kept between builds."""
    beside = Path(config.config_file_path).parent if config.config_file_path else None
    if wanted:
        return (beside / wanted) if beside else Path(wanted)
    return beside / ".hubwright" / "cache" if beside else None


def built_on() -> str:
    """Return the date of the build, that of SOURCE_DATE_EPOCH where it is set."""
    moment: datetime = get_build_datetime()
    return f"{moment.astimezone(UTC):%-d %B %Y}" if hasattr(moment, "astimezone") else str(moment)


_LINK = re.compile(r'(<a\b[^>]*\bhref=")([^":#?]+\.md)(#[^"]*)?(")')


def _linked(html: str, page: Page, files: Files) -> str:
    """Return the page with links to Markdown files, where they stand in HTML that Markdown did not see, resolved.

    A link that begins with a slash counts from the docs directory.
    """

    def resolved(match: re.Match[str]) -> str:
        path = posixpath.normpath(posixpath.join("/", posixpath.dirname(page.file.src_uri), match[2])).lstrip("/")
        target = files.get_file_from_path(path)
        if target is None:
            return match[0]
        return f"{match[1]}{get_relative_url(target.url, page.url)}{match[3] or ''}{match[4]}"

    return _LINK.sub(resolved, html)
