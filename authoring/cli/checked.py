"""A library checked from what is kept of it, and what is kept brought up to date."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import DecodeError, Struct
from msgspec.msgpack import Decoder, Encoder

from authoring.checking.again import check_again
from authoring.checking.digest import digest
from authoring.checking.known import State
from authoring.checking.loader import TangledError
from authoring.checking.together import Outcome
from authoring.cli.disk import read_library, signed_library
from authoring.cli.keeping import code, keep, place, recall
from authoring.cli.workers import Forked, processes
from authoring.pipeline import check
from authoring.source.document import Document
from authoring.source.images import Image


class Checked(Struct, frozen=True):
    """What a check came to, the checksums of the files it was about, and what of them it has read, by file."""

    outcome: Outcome
    digests: Mapping[str, bytes]
    documents: Mapping[str, Document | None] = {}
    images: Mapping[str, Image] = {}


def check_library(folder: str) -> Checked:
    """Check a library, as far as possible from what is kept of it; raises WrongUseError where there is none."""
    disk = signed_library(folder)
    path = place(folder, "state")
    try:
        checked = check_again(disk, _recalled(path), Forked, processes())
    except TangledError:
        files, unread = read_library(folder)
        whole = check(files, unread)
        outcome = Outcome(whole.findings, whole.allowed, len(whole.library.procedures))
        return Checked(outcome, {name: digest(content) for name, content in files.items()})
    keep(path, code() + Encoder().encode(checked.state))
    digests = {name: one.digest for name, one in checked.state.files.items()}
    return Checked(checked.outcome, digests, checked.documents, checked.images)


def _recalled(path: str) -> State:
    kept, ours = recall(path) if path else b"", code()
    if not kept.startswith(ours):
        return State()
    try:
        return Decoder(State).decode(kept.removeprefix(ours))
    except DecodeError:
        return State()
