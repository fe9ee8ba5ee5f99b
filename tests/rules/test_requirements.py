from __future__ import annotations

from pathlib import Path

from authoring.rules.requirements import NONE, TABLE, cells, fresh

IDS = (Path(__file__).parent / "requirements.txt").read_text(encoding="utf-8").split()
TEXT = TABLE.read_text(encoding="utf-8")
ROWS = [cells(line) for line in TEXT.splitlines() if cells(line)]


def test_every_requirement_stands_once() -> None:
    """The table has each requirement exactly once, in order, and in words."""
    assert [row[0] for row in ROWS] == IDS
    assert all(len(row) == 4 and len(row[1]) > 10 for row in ROWS)


def test_the_rules_of_the_table_are_the_rules() -> None:
    """The column of rules says what the rules say; `python -m authoring.rules.requirements` writes it anew."""
    assert fresh(TEXT) == TEXT


def test_every_requirement_is_answered() -> None:
    """Each requirement has a rule, a part of the booklet, or a reason why not yet."""
    for requirement, _, rules, note in ROWS:
        assert rules != NONE or note.startswith(("Booklet: ", "Not yet")), requirement
        assert note == NONE or (note.startswith(("Booklet: ", "Not yet")) and note.endswith(".")), requirement
