"""Safety messages to caution blocks: words derived, the most severe first."""

from __future__ import annotations

from collections.abc import Iterable

from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Caution
from authoring.booklet.wording import Wording
from authoring.model.signal_word import rank, signal_word
from authoring.model.specification import ALWAYS, When
from authoring.model.things import Message


def cautions(
    messages: Iterable[Message], anchor: str, volume: Volume, wording: Wording, within: When = ALWAYS
) -> tuple[Caution, ...]:
    """Return the caution blocks of the messages that hold for the selection, in the order they are read."""
    profile = profile_of(volume)
    held = [message for message in messages if volume.holds(message.when)]
    ordered = sorted(held, key=lambda message: rank(message, profile))
    return tuple(_block(message, f"{anchor}-c{n}", profile, wording, within) for n, message in enumerate(ordered, 1))


def profile_of(volume: Volume) -> str:
    """Return the shop's profile of signal words."""
    shop = volume.scope.library.shop
    return shop.profile if shop is not None else "ansi"


def _block(message: Message, anchor: str, profile: str, wording: Wording, within: When) -> Caution:
    return Caution(
        id=anchor,
        word=signal_word(message, profile),
        harm=message.harm,
        # The alert triangle speaks of injury (Z535.4), so a notice has only a drawing the author chose.
        sign=message.sign or ("general" if message.harm == "person" else ""),
        hazard=wording.line(message.hazard or ""),
        consequence=wording.line(message.consequence or ""),
        avoidance=wording.line(message.avoidance or ""),
        applies=wording.applies(message.when, within),
    )
