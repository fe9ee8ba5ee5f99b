"""The way out of a reading that fails halfway; it never leaves `read_quantity`."""

from __future__ import annotations

from typing import NoReturn

from authoring.quantities.quantity import Refusal


class RefusedError(Exception):
    """Carries a refusal out of the reading of one text."""

    def __init__(self, refusal: Refusal) -> None:
        super().__init__(refusal.reason)
        self.refusal = refusal


class UnexplainedError(Exception):
    """Ends the reading of a text whose fault has to be looked for."""


def refuse(reason: str, cure: str, place: tuple[int, int]) -> NoReturn:
    """End the reading of a text; `place` is where its fault starts and ends."""
    raise RefusedError(Refusal(reason, cure, *place))
