"""A library's files as plain dictionaries and lists of text, with the lines on which each group stands.

Every scalar stays text, so that no word turns into something else on the way.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import yaml


class Group(dict[str, Any]):
    """A mapping of a file, and its first and last line, counted from 1."""

    first: int
    last: int


def read(files: Mapping[str, bytes]) -> dict[str, Group]:
    """Return the files by name."""
    return {name: _plain(yaml.compose(content.decode(), Loader=yaml.CSafeLoader)) for name, content in files.items()}


def _plain(node: Any) -> Any:
    if isinstance(node, yaml.MappingNode):
        found = Group((key.value, _plain(value)) for key, value in node.value)
        found.first = node.start_mark.line + 1
        end = node.end_mark
        # A group without brackets ends where the next one begins.
        found.last = max(found.first, end.line if end.column == 0 or not node.flow_style else end.line + 1)
        return found
    if isinstance(node, yaml.SequenceNode):
        return [_plain(one) for one in node.value]
    return node.value


def listed(value: Any) -> list[Any]:
    """Return a list as it is, and anything else as the one entry of a list."""
    return value if isinstance(value, list) else [value]
