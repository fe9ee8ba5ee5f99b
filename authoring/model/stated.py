"""Whether an author stated something at all: left out, refused and none are three different facts."""

from __future__ import annotations

from authoring.source.document import Where


def stated(where: Where, key: str) -> bool:
    """Tell whether the object has this key, whatever stands there."""
    return key in where.data
