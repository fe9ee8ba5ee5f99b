"""A real browser, cut off from every network, that tells what a page asked for and complained of."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from tests.outside_checkers.program import program

if TYPE_CHECKING:
    # Playwright takes a quarter of a second to load; see started_browser.
    from playwright.sync_api import Browser, ConsoleMessage, Page

# Chromium's own errands (updates, variations, sync) would be requests that no page made.
ARGUMENTS = [
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-dev-shm-usage",
    "--disable-gpu",
    "--disable-quic",
    "--disable-sync",
    "--no-first-run",
]

DESK = (1280, 900)
PHONE = (360, 740)


@dataclass(frozen=True, slots=True)
class Visit:
    """A page that is open, with the addresses it asked for and the errors it raised so far.

    A self-contained file asks for exactly one address: its own.
    """

    page: Page
    requests: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)


@contextmanager
def started_browser() -> Iterator[Browser]:
    """Start the installed Chromium without a window, and stop it afterwards."""
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - heavy: only browser tests pay for it

    executable = program("chromium", "chromium-browser", "google-chrome")
    with sync_playwright() as playwright:
        # No sandbox: Chromium refuses to start with one as root, which continuous integration is.
        browser = playwright.chromium.launch(
            executable_path=executable, headless=True, chromium_sandbox=False, args=ARGUMENTS
        )
        try:
            yield browser
        finally:
            browser.close()


@contextmanager
def visit(browser: Browser, file: Path, *, size: tuple[int, int] = DESK, javascript: bool = True) -> Iterator[Visit]:
    """Open an HTML file in a fresh, offline context; its storage starts empty and is gone afterwards.

    `size` is the window's width and height in CSS pixels.
    """
    width, height = size
    context = browser.new_context(
        offline=True,
        locale="en-GB",
        viewport={"width": width, "height": height},
        java_script_enabled=javascript,
    )
    try:
        seen = Visit(context.new_page())
        seen.page.on("request", lambda request: seen.requests.append(request.url))
        seen.page.on("pageerror", lambda error: seen.errors.append(str(error)))
        seen.page.on("console", lambda message: _note(message, seen.errors))
        seen.page.goto(file.resolve().as_uri())
        yield seen
    finally:
        context.close()


def _note(message: ConsoleMessage, errors: list[str]) -> None:
    if message.type == "error":
        errors.append(message.text)
