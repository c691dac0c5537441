"""A browser for the tests, visits that keep what a page says to console and network, and the sites to visit."""

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NoReturn

import pytest

import sample_sites
from browser.local_server import serving


def chromium_path() -> str | None:
    """Return the browser to use: the one named in the environment, Debian's, or the first on the path."""
    named = os.environ.get("HUBWRIGHT_CHROMIUM")
    found = (shutil.which(name) for name in ("chromium", "chromium-browser", "google-chrome"))
    return named or next((path for path in ("/usr/bin/chromium", *found) if path and Path(path).exists()), None)


def _without_browser(reason: str) -> NoReturn:
    if os.environ.get("HUBWRIGHT_REQUIRE_BROWSER") == "1":
        pytest.fail(reason)
    pytest.skip(reason)


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """A running browser; without one the test is skipped, unless HUBWRIGHT_REQUIRE_BROWSER=1."""
    path = chromium_path()
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        _without_browser("playwright is not installed: it is in the extra 'test'")
    if path is None:
        _without_browser("no Chromium here: install one or name it in HUBWRIGHT_CHROMIUM")
    with sync_playwright() as playwright:
        running = playwright.chromium.launch(
            executable_path=path, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        yield running
        running.close()


class Visit:
    """A page opened as a reader would, that keeps what the console said and what was asked of other hosts."""

    def __init__(self, context: Any, origin: str) -> None:
        self.page = context.new_page()
        self.console: list[str] = []
        self.asked: list[str] = []
        self.page.on("console", lambda message: self.console.append(message.text))
        self.page.on("pageerror", lambda error: self.console.append(str(error)))
        context.on("request", lambda request: self.asked.append(request.url))
        self.origin = origin

    def go(self, path: str) -> Any:
        """Open a page of the site and wait until it stands."""
        self.page.goto(self.origin + path, wait_until="load")
        self.page.evaluate("document.fonts.ready")
        return self.page

    def foreign(self) -> list[str]:
        """Return requests that left the site."""
        return [url for url in self.asked if not url.startswith((self.origin, "data:"))]


@pytest.fixture
def visit(browser: Any) -> Iterator[Callable[..., Visit]]:
    """Return a function that opens a site: `visit(origin, width=360, dark=True, script=False)`."""
    contexts = []

    def open_site(origin: str, *, width: int = 1280, dark: bool = False, script: bool = True) -> Visit:
        context = browser.new_context(
            viewport={"width": width, "height": 800},
            color_scheme="dark" if dark else "light",
            java_script_enabled=script,
            reduced_motion="reduce",
        )
        contexts.append(context)
        return Visit(context, origin)

    yield open_site
    for context in contexts:
        context.close()


@pytest.fixture(scope="session")
def sample_folder(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The sample site opened from a folder."""
    return sample_sites.built("sample", tmp_path_factory).as_uri() + "/"


@pytest.fixture(scope="session")
def sample_server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The sample site served below a sub-path."""
    with serving(sample_sites.built("sample", tmp_path_factory)) as origin:
        yield origin


@pytest.fixture(scope="session")
def folder(demonstration: Path) -> str:
    """The demonstration site opened from a folder."""
    return demonstration.as_uri() + "/"


@pytest.fixture(scope="session")
def server(demonstration: Path) -> Iterator[str]:
    """The demonstration site served below a sub-path."""
    with serving(demonstration) as origin:
        yield origin
