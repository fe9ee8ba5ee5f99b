"""The way out of a reading that fails halfway; it never leaves `read_quantity`."""

from __future__ import annotations

from authoring.quantities.quantity import Refusal


class RefusedError(Exception):
    """Carries a refusal out of the reading of one text."""

    def __init__(self, reason: str, cure: str, start: int, end: int) -> None:
        super().__init__(reason)
        self.refusal = Refusal(reason, cure, start, end)
