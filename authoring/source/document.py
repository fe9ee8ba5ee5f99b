"""One file as plain data, with the place of every key and value beside it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from msgspec import Struct

from authoring.source.needle import find_in_scalar

if TYPE_CHECKING:
    from authoring.diagnostics.diagnostic import Span
    from authoring.source.lines import Lines

Path = tuple[str | int, ...]
Nodes = Mapping["str | int", "Node"]

FLOW = "{"
BLOCK = "-"


# What a list item and the root have in place of a key's offsets.
NO_KEY = (-1, -1)


class Node:
    """Where one value stands: offsets of its key and of itself, and the nodes below it.

    `style` is the sign that opens the value in the source: a quote, `|`, `>`, nothing for plain text,
    FLOW for a collection in brackets and BLOCK for one by indentation.
    """

    __slots__ = ("below", "end", "key_end", "key_start", "start", "style")

    def __init__(self, key: tuple[int, int], start: int, end: int, style: str, below: Nodes) -> None:
        self.key_start, self.key_end = key
        self.start = start
        self.end = end
        self.style = style
        self.below = below

    @property
    def has_key(self) -> bool:
        """Tell whether a key leads here, which a list item and the root lack."""
        return self.key_start >= 0


class Places:
    """The position tree that runs parallel to the data of one document.

    A path that leads nowhere gives the place of its nearest existing ancestor; nothing here raises.
    """

    __slots__ = ("_lines", "_root")

    def __init__(self, root: Node, lines: Lines) -> None:
        self._root = root
        self._lines = lines

    def has(self, path: Path) -> bool:
        """Tell whether the document holds a value at `path`."""
        return self._find(path)[1]

    def value(self, path: Path) -> Span:
        """Return the value's own stretch.

        A collection by indentation is shown by its first line only, since its end runs to the next token.
        A value that is left out is shown by its key.
        """
        return self._value(self._find(path)[0])

    def key(self, path: Path) -> Span:
        """Return the stretch of the key that leads to `path`; a list item gives its value's stretch."""
        node = self._find(path)[0]
        return self._lines.span(node.key_start, node.key_end) if node.has_key else self._value(node)

    def find(self, path: Path, needle: str, nth: int) -> Span | None:
        """Return the stretch of the nth `needle` inside the scalar at `path`, or None when it is not there."""
        node, found = self._find(path)
        if not found or node.style in {FLOW, BLOCK}:
            return None
        hit = find_in_scalar(self._lines.text[node.start : node.end], node.style, needle, nth)
        return None if hit is None else self._lines.span(node.start + hit[0], node.start + hit[1])

    def lines(self, path: Path) -> tuple[int, int]:
        """Return the first and the last line of the value at `path`, its key's line included."""
        whole = self.whole(path)
        return whole.line, whole.end_line

    def whole(self, path: Path) -> Span:
        """Return the stretch from the key that leads to `path` to the end of all that stands below it."""
        node, _ = self._find(path)
        last = node
        while last.style == BLOCK and last.below:  # a block collection ends where its last value does
            *_, last = last.below.values()
        return self._lines.span(node.key_start if node.has_key else node.start, max(last.end, last.key_end))

    def behind(self, path: Path) -> str:
        """Return what stands behind a plain scalar on its last line, a comment for instance; else an empty text."""
        node, found = self._find(path)
        if not found or node.style:
            return ""
        return self._lines.text[node.end : self._lines.end_of_line(node.end)]

    def source(self, path: Path) -> str:
        """Return the source text of the scalar or bracketed collection at `path`, else an empty text."""
        node, found = self._find(path)
        return self._lines.text[node.start : node.end] if found and node.style != BLOCK else ""

    def _find(self, path: Path) -> tuple[Node, bool]:
        node = self._root
        for step in path:
            below = node.below.get(step)
            if below is None:
                return node, False
            node = below
        return node, True

    def _value(self, node: Node) -> Span:
        if node.style == BLOCK:
            return self._lines.span(node.start, self._first_line_end(node))
        if node.start == node.end and node.has_key:
            return self._lines.span(node.key_start, node.key_end)
        return self._lines.span(node.start, node.end)

    def _first_line_end(self, node: Node) -> int:
        """Return where the first line of a block collection ends, without a comment behind it."""
        limit = self._lines.end_of_line(node.start)
        while node.style == BLOCK and node.below:
            first = next(iter(node.below.values()))
            if first.start >= limit:
                return min(first.key_end, limit) if first.has_key else limit
            node = first
        return min(node.end, limit) if node.end > node.start else limit


class Document(Struct, frozen=True, eq=False):
    """One well-formed file: its path inside the library, its text, its data and where everything stands.

    `data` holds only dict, list, str, int, float, bool and None, at most 64 levels deep; every key is a str.
    """

    file: str
    text: str
    data: dict[str, Any]
    places: Places


class Where(Struct, frozen=True, eq=False):
    """The place of one object in a document."""

    document: Document
    path: Path = ()

    @property
    def span(self) -> Span:
        """The stretch of the key that leads to the object, or the object's first line."""
        return self.document.places.key(self.path)

    @property
    def data(self) -> Any:
        """The object itself, as it was written."""
        data: Any = self.document.data
        for key in self.path:
            data = data[key]
        return data

    def of(self, *keys: str | int) -> Span:
        """Return the stretch of the value at `keys` below; a missing one gives its nearest ancestor."""
        path = self.path + keys
        places = self.document.places
        while len(path) > len(self.path) and not places.has(path):
            path = path[:-1]
        return self.span if path == self.path else places.value(path)

    def key(self, *keys: str | int) -> Span:
        """Return the stretch of the key that leads to `keys` below."""
        return self.document.places.key(self.path + keys)

    def child(self, *keys: str | int) -> Where:
        """Return the place of the object at `keys` below."""
        return Where(self.document, self.path + keys)

    def find(self, needle: str, *keys: str | int, nth: int = 0) -> Span:
        """Return the stretch of the nth `needle` (from 0) inside the text at `keys`, else `of(*keys)`.

        The text may be plain, quoted, folded or literal, and the needle may run over a line break.
        """
        found = self.document.places.find(self.path + keys, needle, nth)
        return self.of(*keys) if found is None else found
