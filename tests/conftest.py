"""What all tests share: the demonstration site, built once."""

from pathlib import Path

import pytest

import sample_sites


@pytest.fixture(scope="session")
def demonstration(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demonstration site, built once for all tests and workers."""
    return sample_sites.built("demonstration", tmp_path_factory)
