"""The slips of a person in the demo library, each with the answer that it gets: caught, only warned of, or missed."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from authoring.cli.disk import read_library
from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.pipeline import check
from tests.seeded.demo import FOLDER
from tests.seeded.judge import ASIDE_RULES
from tests.seeded.slips.slip import Slip, changed, slipped, slips

FILES, UNREAD = read_library(str(FOLDER))
ALL = [one for listed in slips().values() for one in listed]


def _weighed(slip: Slip) -> list[Diagnostic]:
    """Return the errors and warnings of the library with the slip in it."""
    return [one for one in check(slipped(slip, FILES), UNREAD).findings if one.severity is not Severity.NOTE]


@pytest.mark.parametrize("slip", ALL, ids=[one.title for one in ALL])
def test_a_slip_gets_the_answer_that_is_written_down(slip: Slip) -> None:
    """What gets caught later is written down, and nothing that was caught gets past again."""
    found = _weighed(slip)
    severities = {one.severity.value for one in found}
    told = next((one for one in ("error", "warning") if one in severities), None)
    aside = bool(found) and {one.rule for one in found} <= ASIDE_RULES
    spoke = [f"{one.severity.value} {one.rule}: {one.message}" for one in found]
    assert (told, aside) == (slip.told, slip.aside), (
        f"Write down what becomes of it now: told {told}, aside {aside}\n{spoke}"
    )


@pytest.mark.parametrize("slip", ALL, ids=[one.title for one in ALL])
def test_a_slip_says_what_becomes_of_it_and_what_it_does(slip: Slip) -> None:
    """It is told of or missed, never both; and whoever reads the list learns what it does and what could notice it."""
    assert (slip.told is None) == bool(slip.missed), slip.title
    assert re.match(r"(Yes|No)\. [A-Z].*\.$", slip.data), slip.data
    assert all(text.endswith(".") for text in (slip.bench, slip.missed) if text), slip
    assert slipped(slip, FILES) != FILES


def test_the_list_is_long_and_goes_through_every_procedure() -> None:
    """A list from which somebody took the missed ones, or which forgets a job, says too little."""
    assert len(ALL) >= 90
    assert [title for title, count in Counter(one.title for one in ALL).items() if count > 1] == []
    touched = Counter(name for one in ALL for name in one.change)
    assert {name for name in FILES if name.endswith(".yaml")} == set(touched), touched
    assert min(touched.values()) >= 5, touched


def test_a_change_has_one_place() -> None:
    """A slip whose place is gone or is there twice is refused, and not passed over."""
    assert changed("a\nb\na\nc\n", "=a\n-c\n+d") == "a\nb\na\nd\n"
    assert changed("a\nb\na\nc\n", "-b\n+c\n\n-c\n+b") == "a\nc\na\nb\n"
    for change in ("-a\n+x", "=a\n=b\n=a\n=b", "-x\n+a", "-aa\n+x", "a\n+b"):
        with pytest.raises(ValueError, match=r"must stand there once|begins with none"):
            changed("a\nb\na\nc\n", change)
