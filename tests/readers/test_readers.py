"""Every element of the language has a reader: without it the findings or the booklet are others."""

from __future__ import annotations

import pytest

from tests.readers.deletions import deletions, elements
from tests.readers.judged import judged
from tests.readers.table import FILE, LATER, table

PARTS = 16
LIBRARY = "procedures"

WITHOUT_EFFECT: dict[str, str] = {}
"""Elements that may be left out without a trace where they say what is so anyway, each with the reason."""

NOT_IN_THE_DEMO: dict[str, str] = {}
"""Elements that the demo library has no use for, each with the reason."""


@pytest.mark.slow
@pytest.mark.parametrize("part", range(PARTS))
def test_a_key_that_is_left_out_is_missed(part: int) -> None:
    """Whichever key of the demo library is taken away, somebody tells of it or the booklet changes."""
    library = judged(LIBRARY)
    mine = list(deletions(library.documents))[part::PARTS]
    assert mine
    unread = [
        f"{one.file} {'.'.join(map(str, one.path))}"
        for one in mine
        if one.element not in WITHOUT_EFFECT and next(library.effects(one), None) is None
    ]
    assert not unread, "\n".join(unread)


def test_the_demo_library_uses_the_whole_language() -> None:
    """Each element of the language stands in the demo library, so that each is tried."""
    used = {one.element for one in deletions(judged(LIBRARY).documents)}
    assert elements() - used == NOT_IN_THE_DEMO.keys()


def test_what_is_said_to_be_read_later_is_an_element() -> None:
    """The table promises readers only for elements that there are."""
    assert elements() >= LATER.keys()


@pytest.mark.slow
def test_the_table_of_readers_is_fresh() -> None:
    """The table in the docs is what the demo library shows today; `./run readers` writes it anew."""
    assert FILE.read_text(encoding="utf-8") == table()
