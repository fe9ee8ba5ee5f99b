"""The answer of a computation whose inputs cannot be true together."""

from __future__ import annotations

from msgspec import Struct


class Impossible(Struct, frozen=True):
    """Why there is no answer, and what to look at: two sentences for the person who stated the values."""

    reason: str
    cure: str
