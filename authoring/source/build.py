"""YAML events to plain data and the position tree beside it, in one loop without recursion."""

from __future__ import annotations

import re
from types import MappingProxyType
from typing import TYPE_CHECKING, Any, Protocol

from yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from authoring.diagnostics.diagnostic import Diagnostic, Related, Severity
from authoring.source import names
from authoring.source.decode import FORBIDDEN, character_name
from authoring.source.document import BLOCK, FLOW, NO_KEY, Node, Nodes
from authoring.source.scalars import NumberLimitError, plain_value

if TYPE_CHECKING:
    from authoring.source.lines import Lines

MAX_DEPTH = 64
NO_NODES: Nodes = MappingProxyType({})
_ODD_KEYS = frozenset({"", "<<"})
_BLOCK_TEXT = frozenset({"|", ">"})
_MOST_TOLD = 20


class EventSource(Protocol):
    """What both of the library's parsers offer."""

    def get_event(self) -> Any:
        """Return the next event of the stream, or None behind its end."""


class StopReadingError(Exception):
    """The rest of the file would only bring follow-up faults; the findings so far stand."""


class Builder:
    """Takes the events of one file; afterwards `data`, `root` and `findings` hold what was read.

    A file with any finding is not to be used: what stands at a refused place is a filler.
    """

    def __init__(self, lines: Lines) -> None:
        self.findings: list[Diagnostic] = []
        self.data: Any = None
        self.root: Node | None = None
        self._lines = lines
        # The open list or group, the nodes below it, and its own node; the ones around it wait on the stack.
        self._into: Any = None
        self._below: dict[str | int, Node] = {}
        self._node = Node(NO_KEY, 0, 0, BLOCK, self._below)
        self._stack: list[tuple[Any, dict[str | int, Node], Node]] = []
        self._key: str | None = None
        self._key_at = NO_KEY

    def run(self, source: EventSource) -> None:
        """Read the whole stream; a syntax error of the library passes through."""
        get, scalar = source.get_event, self._scalar
        try:
            while (event := get()) is not None:
                if event.__class__ is ScalarEvent:
                    scalar(event)
                else:
                    self._other(event)
        except StopReadingError:
            return

    def _other(self, event: Any) -> None:
        kind = event.__class__
        if kind is MappingStartEvent:
            self._open(event, {})
        elif kind is SequenceStartEvent:
            self._open(event, [])
        elif kind is MappingEndEvent or kind is SequenceEndEvent:
            self._close(event)
        elif kind is AliasEvent:
            self._refuse(event, "An alias (*) stands in for text written elsewhere.", "Write the value out here.")
            self._alias(event)
        elif kind is DocumentStartEvent:
            self._document(event)

    def _document(self, event: Any) -> None:
        if self.root is not None:
            self._refuse(event, "A second document starts here (---).", "Put it into a file of its own.")
            raise StopReadingError
        if event.version is not None or event.tags:
            self._refuse(event, "A YAML directive (%) stands here.", "Delete the line that starts with %.")

    def _alias(self, event: Any) -> None:
        if self._into.__class__ is dict and self._key is None:
            self._key, self._key_at = "", NO_KEY
        else:
            self._place(None, event.start_mark.index, event.end_mark.index, "", NO_NODES)

    def _scalar(self, event: Any) -> None:
        if event.anchor is not None or event.tag is not None:
            self._properties(event)
        style, value = event.style, event.value
        start, end = event.start_mark.index, event.end_mark.index
        if style == '"' and FORBIDDEN.search(value):
            self._escape(event)
        if self._key is None and self._into.__class__ is dict:
            if value in self._into or value in _ODD_KEYS:
                self._odd_key(event, value, style)
            self._key, self._key_at = value, (start, end)
            return
        if not style and event.implicit[0]:
            value = self._plain(event, value)
        elif style in _BLOCK_TEXT:
            end = start + len(self._lines.text[start:end].rstrip())
        self._place(value, start, end, style or "", NO_NODES)

    def _plain(self, event: Any, text: str) -> str | int | float | bool | None:
        try:
            return plain_value(text)
        except NumberLimitError as error:
            self._tell(names.NUMBER_LIMIT, event, f"The number here {error}.", _NUMBER_CURE)
            return None

    def _odd_key(self, event: Any, key: str, style: str | None) -> None:
        if key == "<<" and not style:
            self._refuse(event, "A merge key (<<) stands here.", "Write the keys out that it would bring in.")
        elif not key:
            self._tell(names.YAML_SYNTAX, event, "The key in front of this colon is empty.", "Write the key's name.")
        elif key in self._into:
            first = self._below[key]
            label = f'"{_short(key)}" stands here already'
            related = (Related(self._lines.span(first.key_start, first.key_end), label),)
            message = f'The key "{_short(key)}" stands twice in the same group.'
            span = self._lines.span(event.start_mark.index, event.end_mark.index)
            cure = "Keep one of the two, or rename one."
            self._add(Diagnostic(names.DUPLICATE_KEY, Severity.ERROR, message, span, cure, related))

    def _open(self, event: Any, new: dict[str, Any] | list[Any]) -> None:
        if event.anchor is not None or event.tag is not None:
            self._properties(event)
        if self._key is None and self._into.__class__ is dict:
            self._refuse(event, "A list or a group stands where a key belongs.", "Use one word as the key.")
            raise StopReadingError
        if len(self._stack) >= MAX_DEPTH:
            message = f"Lists and groups lie more than {MAX_DEPTH} deep inside one another here."
            self._tell(names.NESTING_LIMIT, event, message, "Check the indentation and the brackets.")
            raise StopReadingError
        below: dict[str | int, Node] = {}
        style = FLOW if event.flow_style else BLOCK
        node = self._place(new, event.start_mark.index, event.end_mark.index, style, below)
        self._stack.append((self._into, self._below, self._node))
        self._into, self._below, self._node = new, below, node

    def _close(self, event: Any) -> None:
        if self._node.style == FLOW:
            self._node.end = event.end_mark.index
        self._into, self._below, self._node = self._stack.pop()

    def _place(self, value: Any, start: int, end: int, style: str, below: Nodes) -> Node:
        """Put a value into the open list or group, and its node beside it."""
        into, key = self._into, self._key
        if key is not None:
            node = self._below[key] = Node(self._key_at, start, end, style, below)
            into[key] = value
            self._key = None
            return node
        node = Node(NO_KEY, start, end, style, below)
        if into is None:
            self.data, self.root = value, node
        else:
            self._below[len(into)] = node
            into.append(value)
        return node

    def _properties(self, event: Any) -> None:
        if event.anchor is not None:
            self._property(event, "&", f"An anchor (&{_short(event.anchor)}) stands here.", "Delete it.")
        if event.tag is not None:
            message = f"A tag ({_tag(event.tag)}) stands here."
            self._property(event, "!", message, "Delete it; use quotes to keep text as text.")

    def _property(self, event: Any, sign: str, message: str, cure: str) -> None:
        """Refuse what stands in front of a value, underlining it alone."""
        start = max(self._lines.text.find(sign, event.start_mark.index), event.start_mark.index)
        found = re.compile(r"[^\s,\[\]{}]+").match(self._lines.text, start)
        span = self._lines.span(start, found.end() if found else start)
        self._add(Diagnostic(names.YAML_FEATURE, Severity.ERROR, message, span, cure))

    def _escape(self, event: Any) -> None:
        found = FORBIDDEN.search(event.value)
        name = character_name(found.group()) if found else ""
        message = f"An escape in this text spells an invisible character: {name}."
        self._tell(names.FORBIDDEN_CHARACTER, event, message, "Delete the escape.")

    def _add(self, finding: Diagnostic) -> None:
        self.findings.append(finding)
        if len(self.findings) >= _MOST_TOLD:
            raise StopReadingError

    def _refuse(self, event: Any, message: str, cure: str) -> None:
        self._tell(names.YAML_FEATURE, event, message, cure)

    def _tell(self, rule: str, event: Any, message: str, cure: str) -> None:
        start = event.start_mark.index
        end = min(max(event.end_mark.index, start + 1), self._lines.end_of_line(start))
        self._add(Diagnostic(rule, Severity.ERROR, message, self._lines.span(start, end), cure))


_NUMBER_CURE = "Check the number; put it in quotes if it is meant as text."
_CORE_TAG = "tag:yaml.org,2002:"
_LONGEST = 40


def _short(word: str) -> str:
    return word if len(word) <= _LONGEST else word[: _LONGEST - 1] + "…"


def _tag(tag: str) -> str:
    return _short("!!" + tag.removeprefix(_CORE_TAG) if tag.startswith(_CORE_TAG) else tag)
