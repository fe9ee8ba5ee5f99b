"""PDF/UA-1 (ISO 14289-1): can a screen reader make sense of a PDF?"""

from __future__ import annotations

from pathlib import Path

import page


def pdf_ua(path: Path) -> list[str]:
    """Return the rules of PDF/UA-1 that the file breaks, each as `rule id: message`; empty when it conforms.

    Only what a machine can decide is checked: that an alternative text is there, never that it is any good.
    """
    report = page.validate_pdf(str(path), profile="ua1")
    failures = [f"{failure.rule_id}: {failure.message}" for failure in report.failures]
    if not report.is_compliant and not failures:
        failures.append("the file does not conform, and the checker gives no reason")
    return failures
