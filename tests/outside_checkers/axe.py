"""axe-core: does an open page keep to WCAG 2.2 AA, as far as a machine can tell?"""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

from tests.outside_checkers.program import node_module

if TYPE_CHECKING:
    # Only the name of a type: loading Playwright would slow every test.
    from playwright.sync_api import Page

STANDARDS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def axe(page: Page) -> list[str]:
    """Return what breaks the standards on the page as it now stands, each as `rule: help (where)`.

    Only what is drawn is judged: open first whatever a reader would open.
    """
    source = node_module("axe-core/axe.min.js").read_text(encoding="utf-8")
    # Evaluated, not added as a script element, so that a page's own content policy does not keep it out.
    page.evaluate(f"(() => {{ {source} }})()")
    run_only = json.dumps({"runOnly": {"type": "tag", "values": STANDARDS}})
    result: dict[str, Any] = page.evaluate(f"axe.run(document, {run_only})")
    if not result["passes"]:
        pytest.fail("axe-core found nothing on the page to judge.")
    return [_line(violation) for violation in result["violations"]]


def _line(violation: dict[str, Any]) -> str:
    places = ", ".join(" ".join(map(str, node["target"])) for node in violation["nodes"])
    return f"{violation['id']}: {violation['help']} ({places})"
