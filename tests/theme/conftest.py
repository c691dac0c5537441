from pathlib import Path

import pytest

import sample_sites


@pytest.fixture(scope="session")
def plain_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return sample_sites.build("plain", tmp_path_factory.mktemp("plain") / "site")


@pytest.fixture(scope="session")
def sample_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return sample_sites.build("sample", tmp_path_factory.mktemp("sample") / "site")


@pytest.fixture(params=["plain_site", "sample_site"])
def site(request: pytest.FixtureRequest) -> Path:
    built = request.getfixturevalue(request.param)
    assert isinstance(built, Path)
    return built
