"""What every test shares: the order of the run, the settings of property tests, and one browser a worker."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

from tests.outside_checkers.browser import started_browser

if TYPE_CHECKING:
    # Playwright takes a quarter of a second to load; only tests that ask for the browser pay for it.
    from playwright.sync_api import Browser

# The same examples in every run, whatever the machine's speed, and nothing kept between runs.
settings.register_profile("house", derandomize=True, deadline=None, database=None)
settings.load_profile("house")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the slow tests last, so that the fast ones tell first; whatever asks for the browser is slow."""
    for item in items:
        if "browser" in getattr(item, "fixturenames", ()):
            item.add_marker(pytest.mark.slow)
    items.sort(key=lambda item: item.get_closest_marker("slow") is not None)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Give the one Chromium of this worker; `tests.outside_checkers.browser.visit` opens a file in it."""
    with started_browser() as running:
        yield running
