"""Small turns of phrase that several blocks share."""

from __future__ import annotations

from collections.abc import Iterable

from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Paragraph, Text, Words
from authoring.workshop.confirmed import unverified

UNVERIFIED = "unverified"
"""The word beside a value that no text of a source which was read stands behind."""

WHO = {
    "customer": "the customer",
    "lead": "the workshop lead",
    "technician": "the technician",
    "next-technician": "the next technician",
    "driver": "the driver",
}
"""Those who are told, are asked or decide, in words."""


def aside(label: str, *text: str | Inline, close: bool = False) -> Aside:
    """Return a labelled line of one paragraph; plain strings become words."""
    return Aside(label, (paragraph(*text),), close)


def paragraph(*text: str | Inline) -> Paragraph:
    """Return one paragraph; plain strings become words."""
    return Paragraph(tuple(Words(one) if isinstance(one, str) else one for one in text))


def in_turn(entries: Iterable[Text], between: str = ", ", last: str = "") -> Text:
    """Return texts one after another; `last` stands before the last of them instead of `between`."""
    told = list(entries)
    words: list[Inline] = []
    for place, entry in enumerate(told):
        if place:
            words.append(Words(last if last and place == len(told) - 1 else between))
        words += entry
    return tuple(words)


def the(name: str, wording: Wording) -> Text:
    """Return a thing with its article; what is written with a capital letter is a name and has none."""
    called = wording.named(name)
    bare = not isinstance(called[0], Named) or called[0].target or called[0].text[:1].isupper()
    return called if bare else (Words("the "), *called)


def all_the(names: Iterable[str], wording: Wording) -> Text:
    """Return several things with their articles, the last after "and"."""
    return in_turn([the(name, wording) for name in names], last=" and ")


def times(number: int) -> str:
    """Return how often, in words: "once", "4 times"."""
    return "once" if number == 1 else f"{number} times"


def capital(words: str) -> str:
    """Return words with a capital at their beginning."""
    return f"{words[:1].upper()}{words[1:]}"


def doubt(*computations: str) -> str:
    """Return ", unverified" where no source's own text stands behind one of these computations, else nothing."""
    return f", {UNVERIFIED}" if unverified(*computations) else ""


def lowered(text: str) -> str:
    """Return a sentence as it goes on after other words: its first letter small."""
    return f"{text[:1].lower()}{text[1:]}"
