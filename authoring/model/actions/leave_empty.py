"""Leave a place empty on purpose."""

from __future__ import annotations

from authoring.model.action_kind import ActionKind, Kind, Role

ACTION = ActionKind(
    words=("leave",),
    says="Leave {what} empty.",
    what=Role("The place that stays empty.", frozenset({Kind.ITEM, Kind.FASTENERS})),
    empties=True,
)
