"""Workers in processes of their own: forked, so that each begins with all that was read until then."""

from __future__ import annotations

import os
from collections.abc import Sequence
from contextlib import suppress

from authoring.checking.share import Share

_LENGTH = 8
"""Bytes before each message, which say how long it is."""

MOST = 8
"""More workers than that would wait for the first one, which reads the shared files and puts all together."""


def processes() -> int:
    """Return how many workers this machine has a core for."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    return min(cores, MOST)


class Forked:
    """A team whose first worker is this process; one that dies is replaced by this process."""

    def __init__(self, shares: Sequence[Share]) -> None:
        self._workers: list[_Worker] = []
        for share in shares[1:]:
            self._workers.append(_Worker(share, [pipe for one in self._workers for pipe in one.pipes]))
        self._own = shares[0]
        next(self._own)

    def step(self, messages: Sequence[bytes], /) -> list[bytes]:
        """Give each worker its message, and return what each has to say then, in their order."""
        for worker, message in zip(self._workers, messages[1:], strict=True):
            worker.give(message)
        return [self._own.send(messages[0]), *(worker.answer() for worker in self._workers)]

    def close(self) -> None:
        """Let all workers go."""
        for worker in self._workers:
            worker.close()


class _Worker:
    """One process and what it was told; where it fails, its share is done once more in this process.

    A fault of ours then shows itself here, with its place.
    """

    def __init__(self, share: Share, pipes_of_others: Sequence[int]) -> None:
        self._share = share
        self._told: list[bytes] = []
        self._here = False
        inward, self._outward = os.pipe()
        self._inward, outward = os.pipe()
        self._process = os.fork()
        if self._process == 0:
            # A pipe ends where nobody holds its other end any more.
            for pipe in (*self.pipes, *pipes_of_others):
                os.close(pipe)
            _work(share, inward, outward)
        os.close(inward)
        os.close(outward)

    @property
    def pipes(self) -> tuple[int, int]:
        """The ends of its pipes in this process."""
        return self._outward, self._inward

    def give(self, message: bytes) -> None:
        """Hand over a message."""
        self._told.append(message)
        with suppress(OSError):  # it shows when its answer is missing
            _write(self._outward, message)

    def answer(self) -> bytes:
        """Wait for what the worker has to say to the last message."""
        said = None if self._here else _read(self._inward)
        if said is not None:
            return said
        if not self._here:
            self._here = True
            next(self._share)
            for message in self._told[:-1]:
                self._share.send(message)
        return self._share.send(self._told[-1])

    def close(self) -> None:
        """Let it go: it ends when it hears no more."""
        for pipe in self.pipes:
            os.close(pipe)
        os.waitpid(self._process, 0)


def _work(share: Share, inward: int, outward: int) -> None:
    """Do a share message by message, and end this process without what the other has still to do."""
    status = 1
    try:
        next(share)
        while (message := _read(inward)) is not None:
            _write(outward, share.send(message))
        status = 0
    finally:
        os._exit(status)


def _write(pipe: int, message: bytes) -> None:
    left = memoryview(len(message).to_bytes(_LENGTH, "big") + message)
    while left:
        left = left[os.write(pipe, left) :]


def _read(pipe: int) -> bytes | None:
    """Return the next message; None where the other end is gone."""
    length = _exactly(pipe, _LENGTH)
    return _exactly(pipe, int.from_bytes(length, "big")) if length is not None else None


def _exactly(pipe: int, length: int) -> bytes | None:
    parts = []
    while length:
        part = os.read(pipe, min(length, 1 << 20))
        if not part:
            return None
        parts.append(part)
        length -= len(part)
    return b"".join(parts)
