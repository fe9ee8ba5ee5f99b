"""One worker's share of a check: it reads its files and tells their heads, then checks what it is asked to.

What goes in and out is bytes, since a worker may be a process of its own.
"""

from __future__ import annotations

from collections.abc import Generator, Mapping, Sequence

from msgspec import Struct
from msgspec.msgpack import Decoder, Encoder

from authoring.checking.apart import Around, Checker, Table, Wanted
from authoring.checking.known import Apart, Head
from authoring.checking.loader import Loader, TangledError
from authoring.checking.view import by_name
from authoring.diagnostics.diagnostic import Diagnostic
from authoring.model.library import Named, called

Share = Generator[bytes, bytes, None]


class Heads(Struct, frozen=True):
    """What a worker read: the heads by file; None where the files are too tangled to be checked apart."""

    heads: dict[str, Head] | None


class Asked(Struct, frozen=True):
    """What a worker is asked to check: number, title and file of every procedure, and the procedures that are its."""

    names: list[tuple[str, str, str]]
    around: Around
    wanted: list[Wanted]


class Done(Struct, frozen=True):
    """What a worker's procedures came to, by file, and its table of findings; None as with `Heads`."""

    apart: dict[str, Apart] | None
    table: list[Diagnostic] = []


ENCODER = Encoder()
HEADS = Decoder(Heads)
DONE = Decoder(Done)
_ASKED = Decoder(Asked)


def share(loader: Loader, paths: Sequence[str], against: Mapping[str, bytes]) -> Share:
    """Yield `Heads` of these files, take `Asked`, and yield `Done`; begun by the first message, whatever it says."""
    yield b""
    try:
        loader.load(paths)
        heads = Heads(dict(loader.heads(paths, against)))
    except TangledError:
        heads = Heads(None)
    asked = _ASKED.decode((yield ENCODER.encode(heads)))
    yield ENCODER.encode(_done(loader, asked))


def _done(loader: Loader, asked: Asked) -> Done:
    try:
        loader.load(sorted({path for one in asked.wanted for path in (one.path, *one.leads_to)}))
        checker = Checker(loader, names(loader, asked.names), asked.around, Table())
        return Done({one.path: checker.apart(one) for one in asked.wanted}, checker.table.rows)
    except TangledError:
        return Done(None)


def names(loader: Loader, known: Sequence[tuple[str, str, str]]) -> list[Named]:
    """Return every procedure as a named thing, with what it holds where it was read."""
    return [
        called(loader.procedures[path]) if path in loader.procedures else by_name(number, title, path)
        for number, title, path in known
    ]
