"""The mark of the files that a setup was computed from, to tell a printed sheet from one made of other numbers."""

import hashlib

from hubwright.setup.model import Setup

LENGTH = 12  # hexadecimal digits: enough to tell a shop's sheets apart


def fingerprint(setup: Setup) -> str:
    """Return the first digits of the SHA-256 of the setup's file and of all that it extends."""
    digest = hashlib.sha256()
    for path in setup.files:
        # ends of lines may differ from one computer to the next
        text = path.read_text(encoding="utf-8-sig").replace("\r\n", "\n")
        digest.update(f"{path.name}\n{len(text)}\n{text}".encode())
    return digest.hexdigest()[:LENGTH]
