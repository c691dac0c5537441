"""Builds a site beside the old one and swaps it in only when everything passed; serves it while it is written."""

import logging
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.commands.serve import serve as mkdocs_serve
from mkdocs.config import load_config
from mkdocs.exceptions import Abort, MkDocsException
from rich.console import Console

from hubwright.errors import HubwrightError, SetupFileError


class BuildFailedError(HubwrightError, RuntimeError):
    """A site that could not be built, with everything that was wrong."""


class _Listener(logging.Handler):
    """Shows what a build is at, and keeps what went wrong."""

    def __init__(self, console: Console) -> None:
        super().__init__(level=logging.INFO)
        self.wrong: list[str] = []
        self.status = console.status("reading vehicles and lessons")

    def emit(self, record: logging.LogRecord) -> None:
        """Take a message of MkDocs or of our plugin."""
        if record.levelno >= logging.WARNING:
            self.wrong.append(record.getMessage())
        else:
            self.status.update(record.getMessage())


@contextmanager
def _listening() -> Iterator[_Listener]:
    log = logging.getLogger("mkdocs")
    listener = _Listener(Console(stderr=True))
    before, propagate = log.level, log.propagate
    log.addHandler(listener)
    log.setLevel(logging.INFO)
    log.propagate = False
    try:
        with listener.status:
            yield listener
    finally:
        log.removeHandler(listener)
        log.setLevel(before)
        log.propagate = propagate


def configuration_file(directory: Path) -> Path:
    """Return the site's mkdocs.yml, or say how to get one."""
    file = directory / "mkdocs.yml"
    if not file.is_file():
        raise SetupFileError(f"{directory}: there is no mkdocs.yml here. Start a site with 'hubwright new my-site'.")
    return file


def build_site(directory: Path, *, out: Path | None = None) -> Path:
    """Build the site of a directory strictly and return where it lies; a failed build leaves the last one untouched."""
    file = configuration_file(directory)
    try:
        target = Path(out or load_config(config_file=str(file)).site_dir).resolve()
    except MkDocsException as error:
        raise BuildFailedError(f"{file}: {error}") from error
    target.parent.mkdir(parents=True, exist_ok=True)
    # On the same disk as the target, so that the swap is two renames.
    fresh = Path(tempfile.mkdtemp(prefix=f".{target.name}-", dir=target.parent))
    try:
        with _listening() as listener:
            try:
                config = load_config(config_file=str(file), site_dir=str(fresh / "site"), strict=True)
                config.plugins.on_startup(command="build", dirty=False)
                try:
                    mkdocs_build(config)
                finally:
                    config.plugins.on_shutdown()
            except (Abort, MkDocsException, HubwrightError) as error:
                # MkDocs logs its reasons and then aborts with a summary of them.
                reasons = listener.wrong or [str(error)]
                raise BuildFailedError("\n".join([*reasons, f"not built: {target} is as it was"])) from error
        old = fresh / "old"
        if target.exists():
            target.rename(old)
        (fresh / "site").rename(target)
    finally:
        shutil.rmtree(fresh, ignore_errors=True)
    return target


def serve_site(directory: Path, *, address: str | None = None, browser: bool = True) -> None:
    """Serve the site of a directory until interrupted, rebuilding when one of its files changes."""
    file = configuration_file(directory)
    options: dict[str, Any] = {"dev_addr": address} if address else {}
    logging.basicConfig(level=logging.INFO, format="%(message)s")
    try:
        mkdocs_serve(config_file=str(file), livereload=True, open_in_browser=browser, strict=True, **options)
    except (Abort, MkDocsException) as error:
        raise BuildFailedError(f"{file}: {error}") from error
