"""Settings of the random tests: no time limit on a busy machine, and the same examples in every run of CI."""

import os

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile("desk", deadline=None, suppress_health_check=[HealthCheck.too_slow])
# at a desk every run looks somewhere new; in CI a change is judged by itself and not by the draw of the day
settings.register_profile("ci", settings.get_profile("desk"), derandomize=True, max_examples=20)
settings.load_profile("ci" if os.environ.get("CI") else "desk")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the wheel's long test first, so that no worker waits for it in the end."""
    items.sort(key=lambda item: item.get_closest_marker("wheel") is None)
