"""States to words: what must be so, and what a job leaves behind."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.model.demands import Need
from authoring.model.language.states import STATES
from authoring.model.library import Scope
from authoring.model.things import Item, Value


def states(needs: Iterable[Need], scope: Scope, wording: Wording) -> Iterator[tuple[Text, Text]]:
    """Yield each thing by its name, and the words for its state."""
    for need in needs:
        yield wording.named(need.thing), state(need, scope, wording)


def state(need: Need, scope: Scope, wording: Wording) -> Text:
    """Return the words for a state alone: stopped, in neutral's own words, or the window a value gives."""
    thing = scope.things[need.thing].thing
    if isinstance(thing, Item) and need.state in thing.positions:
        return (Words(thing.positions[need.state]),)
    if need.state in STATES:
        return (Words(STATES[need.state]),)
    value = scope.things[need.state]
    return wording.amount_of(value) if isinstance(value.thing, Value) else (Words(value.words),)
