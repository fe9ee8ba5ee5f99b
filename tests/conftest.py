"""What every test shares: the order of the run, the settings of property tests, one browser a worker, one table.

The table is that of what was held against the outside (`tests.outside.table`).
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

from tests.outside.kept import every_row
from tests.outside.table import Held, held_in, not_held, summary, takes_in_the_folder
from tests.outside_checkers.browser import started_browser

if TYPE_CHECKING:
    # Playwright takes a quarter of a second to load; only tests that ask for the browser pay for it.
    from playwright.sync_api import Browser

# The same examples in every run, whatever the machine's speed, and nothing kept between runs.
settings.register_profile("house", derandomize=True, deadline=None, database=None)
settings.load_profile("house")


@pytest.fixture(scope="session", autouse=True)
def nothing_kept(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Let checks keep what they came to in a folder that the run begins empty, and not in the developer's own."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


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


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Print the table when anything was held against the outside."""
    held = _held(terminalreporter)
    if held:
        terminalreporter.section("held against the outside")
        for line in summary(held, every_row()):
            terminalreporter.write_line(line)
        for row in _forgotten(config, held):
            terminalreporter.write_line(f"no test held ours against {row}", red=True)


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Fail a run of everything in which a published row was held against nothing."""
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    # A worker has no terminal; the one who started it decides.
    if reporter is not None and session.exitstatus == pytest.ExitCode.OK:
        held = _held(reporter)
        if held and _forgotten(session.config, held):
            session.exitstatus = pytest.ExitCode.TESTS_FAILED


def _held(reporter: pytest.TerminalReporter) -> list[Held]:
    return held_in(report for reports in reporter.stats.values() for report in reports)


def _forgotten(config: pytest.Config, held: list[Held]) -> list[str]:
    """Return the rows that no test touched, if this run was to touch all of them."""
    chosen = config.option.keyword or config.option.markexpr or config.option.deselect
    broken = not all(one.passed for one in held)
    whole = takes_in_the_folder(config.args, config.rootpath) and not chosen and not broken
    return not_held(held, every_row()) if whole else []
