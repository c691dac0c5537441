"""Serves a built site on this machine, below a sub-path and under a strict content security policy."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

POLICY = "default-src 'self'; img-src 'self' data:; frame-ancestors 'none'"


@contextmanager
def serving(site: Path) -> Iterator[str]:
    """Serve a site below a sub-path under a strict content security policy."""

    class Handler(SimpleHTTPRequestHandler):
        def translate_path(self, path: str) -> str:
            return super().translate_path(path.removeprefix("/course") or "/")

        def end_headers(self) -> None:
            self.send_header("Content-Security-Policy", POLICY)
            super().end_headers()

        def log_message(self, format: str, *args: object) -> None:
            pass

    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Handler, directory=str(site)))
    thread = Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/course/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
