"""Warnings that are allowed: where an allowance reaches, and that it is never silent."""

from __future__ import annotations

from authoring.pipeline import Checked, check, compose
from tests.booklet.plain_text import plain_text
from tests.rules.overlay import base_files, overlay

VALUES = """\
values:
  one: {name: the first amount, value: 1 L, source: bench-book, at: page 7}
  two: {name: the second amount, value: 2 L, source: bench-book, at: page 8}
"""


def checked(*blocks: tuple[str, str]) -> Checked:
    """Check the base library with pieces laid over it."""
    return check(overlay(list(blocks)).files, [])


def told(library: Checked) -> list[tuple[str, int]]:
    """Return rule and line of each finding in the procedure's file."""
    return [(one.rule, one.span.line) for one in library.findings if one.span.file == "procedure.yaml"]


def test_a_file_s_allowance_reaches_the_whole_file() -> None:
    """Both unused values of the procedure are allowed, and both are kept with the reason."""
    library = checked(("procedure", f"{VALUES}allow: [{{rule: unused-thing, why: For next month.}}]\n"))
    assert told(library) == []
    assert [(by.why, one.rule) for by, one in library.allowed] == [("For next month.", "unused-thing")] * 2


def test_a_step_s_allowance_reaches_that_step_only() -> None:
    """The same warning in the next step stands."""
    text = base_files()["procedure.yaml"].decode()
    first = text.replace(
        "        safety: [hot-pipe]\n", "        safety: [hot-pipe]\n        tip: Careful! It is hot.\n", 1
    )
    both = first.replace(
        "        with: [wrench, rag]\n", "        with: [wrench, rag]\n        tip: Careful! It is hot.\n"
    )
    files = base_files()
    unallowed = check(files | {"procedure.yaml": both.encode()}, [])
    assert [rule for rule, _ in told(unallowed)] == ["caution-in-tip", "caution-in-tip"]
    one = both.replace(
        "        tip: Careful! It is hot.\n",
        "        tip: Careful! It is hot.\n        allow: [{rule: caution-in-tip, why: A message says it too.}]\n",
        1,
    )
    library = check(files | {"procedure.yaml": one.encode()}, [])
    assert [rule for rule, _ in told(library)] == ["caution-in-tip"]
    assert told(library)[0][1] > library.allowed[0][1].span.line


def test_another_file_is_not_reached() -> None:
    """An allowance in the stock file says nothing of the procedure, and is told as unused there."""
    library = checked(("procedure", VALUES), ("stock", "allow: [{rule: caution-in-tip, why: No reason.}]\n"))
    assert [rule for rule, _ in told(library)] == ["unused-thing", "unused-thing"]
    assert "unused-allowance" in {one.rule for one in library.findings}


def test_the_booklet_prints_what_is_allowed_and_why() -> None:
    """Nothing is let through in silence: rule, words and reason stand on the page of the checks."""
    library = checked(("procedure", f"{VALUES}allow: [{{rule: unused-thing, why: For next month.}}]\n"))
    text = plain_text(compose(library, "FL-110", {}))
    assert text.count("| For next month.") == 2
