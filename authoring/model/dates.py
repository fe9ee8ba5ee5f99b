"""Dates as authors type them, year-month-day."""

from __future__ import annotations

import datetime as dt


def day(text: str) -> dt.date | None:
    """Return the day, or None where the calendar has no such day, such as 2026-02-31."""
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        return None
