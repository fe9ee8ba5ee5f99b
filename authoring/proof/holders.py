"""Which fasteners hold an item, and which are plugs."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.model.things import Equipment, FastenerGroup


def holders(item: str, equipment: Equipment) -> Iterator[FastenerGroup]:
    """Yield the fastener groups that hold an item: those on it that may be turned, and are no plugs."""
    for group in equipment.fasteners.values():
        if group.on == item and group.untouched is None and not (group.drains or group.fills):
            yield group
