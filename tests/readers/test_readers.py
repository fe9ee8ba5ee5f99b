"""Every element of the language has a reader: without it the findings or the booklet are others."""

from __future__ import annotations

import pytest

from tests.readers.deletions import deletions, elements
from tests.readers.judged import judged
from tests.readers.table import FILE, HEAD, rows

PARTS = 16
LIBRARY = "procedures"

SAYS_WHAT_IS_SO_ANYWAY = {
    "step.step": "the text may be the one that is made from the actions",
    "equipment.items.*.when": "the steps that touch the item may say it as well, and must then agree",
    "equipment.fasteners.*.when": "the steps that touch the group may say it as well, and must then agree",
    "safety.*.when": "the steps that call the message may be for those vehicles alone",
    "equipment.fluids.*.when": "the steps that touch the fluid may say it as well, and must then agree",
    "safety": "the shop's policy may place the same message by itself",
    "equipment.items.*.fills": "the steps that look at the fluid may say it as well, and must then agree",
    "equipment.items.*.hazards": "the messages that the hazard asks for may be called anyway",
    "action.bleed.at": "the text may name the place, and another action touch it",
    "action.drain.into": "the text may name the tool, and `with` list it",
    "action.extract.into": "the text may name the tool, and `with` list it",
    "action.fill-to-level.window": "a state that the step needs may say it as well",
    "action.heat.with": "the text may name the tool, and `with` list it",
    "action.lock.with": "the text may name the tool, and `with` list it",
    "action.seat.in": "the text may name the place, and a state that the step needs speak of it",
    "shop.signal-words": "the profile named may be the one that holds where none is named",
    "procedure.choices.*.dimensions.*.decides": "the value named may be the one that holds where none is named",
}
"""Elements that may be left out without a trace, each with the reason; another value must be missed all the same."""

NOT_IN_THE_DEMO = {
    "shop.units.speed-of-rotation": "the demo states its speeds in the one unit that its gauges show",
    "shop.units.flow": "no job of the demo measures one; read and shown like any other unit",
    "shop.units.voltage": "no job of the demo measures one; read and shown like any other unit",
    "shop.units.current": "no job of the demo measures one; read and shown like any other unit",
    "shop.units.resistance": "no job of the demo measures one; read and shown like any other unit",
    "shop.units.density": "no job of the demo measures one; read and shown like any other unit",
}
"""Elements that the demo library has no use for, each with the reason."""


@pytest.mark.slow
@pytest.mark.parametrize("part", range(PARTS))
def test_a_key_that_is_left_out_is_missed(part: int) -> None:
    """Whichever key of the demo library is taken away, somebody tells of it or the booklet changes."""
    library = judged(LIBRARY)
    mine = list(deletions(library.documents))[part::PARTS]
    assert mine
    unread = [one for one in mine if not library.is_noticed(one)]
    silent = [
        one
        for one in unread
        if one.element not in SAYS_WHAT_IS_SO_ANYWAY or next(library.effects_of_another(one), None) is None
    ]
    assert not silent, "\n".join(f"{one.file} {'.'.join(map(str, one.path))}" for one in silent)


def test_the_demo_library_uses_the_whole_language() -> None:
    """Each element of the language stands in the demo library, so that each is tried."""
    used = {one.element for one in deletions(judged(LIBRARY).documents)}
    assert elements() - used == NOT_IN_THE_DEMO.keys()


@pytest.mark.slow
@pytest.mark.parametrize("part", range(PARTS))
def test_the_table_of_readers_is_fresh(part: int) -> None:
    """The table in the docs is what the demo library shows today; `./run readers` writes it anew."""
    assert FILE.read_text(encoding="utf-8").removeprefix(HEAD).splitlines()[part::PARTS] == list(rows(part, PARTS))


def test_the_table_begins_with_its_words() -> None:
    """What stands above the rows is told as it is written with them."""
    assert FILE.read_text(encoding="utf-8").startswith(HEAD)
