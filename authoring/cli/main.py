"""The command line: words in, exit status out."""

from __future__ import annotations

import errno
import gc
import io
import os
import sys

from authoring.cli.answer import answer
from authoring.cli.wrong_use import WrongUseError

NO_ERROR, ERRORS, WRONG_USE, OUR_FAULT, INTERRUPTED = 0, 1, 2, 3, 130

_NOT_WRITTEN = frozenset(
    {errno.EPIPE, errno.ENOSPC, errno.EDQUOT, errno.EFBIG, errno.EBADF, errno.EIO, errno.ENXIO, errno.ECONNRESET}
)
"""What the system says of a stream that cannot be written: nobody reads it, or there is no room or way for it."""


def main(words: list[str] | None = None) -> int:
    """Run the command line and return its exit status."""
    # A run is short and its values form no rings, so collecting them costs a tenth of the time and frees nothing.
    # A sixth more would go into the search for rings as the process ends, when the system takes back all at once.
    collecting = gc.isenabled()
    gc.disable()
    try:
        _steady_streams()
        status = answer(sys.argv[1:] if words is None else words)
        if status is None:
            status = _run(words)
        sys.stdout.flush()
    except WrongUseError as error:
        print(f"bayleaf: {error}", file=sys.stderr)
        return WRONG_USE
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:  # noqa: BLE001  # the last door: whatever comes here is our own bug, and is said so
        return _unforeseen(error)
    finally:
        if collecting:
            gc.freeze()
            gc.unfreeze()  # all counts as old now, or the next value made would have all of it searched
            gc.enable()
    return status


def _run(words: list[str] | None) -> int:
    # None of this is loaded for an answer that was kept, which would take half as long again.
    import atexit  # noqa: PLC0415  # see above
    import importlib  # noqa: PLC0415  # see above

    from authoring.cli.lean import import_lean, import_words  # noqa: PLC0415  # see above

    atexit.register(gc.freeze)
    import_words()
    from authoring.cli.arguments import parser  # noqa: PLC0415  # only once its library is imported leanly

    arguments = parser().parse_args(words)
    import_lean()
    from authoring.cli.kept_code import kept_code  # noqa: PLC0415  # for --help it would only cost

    with kept_code():
        # Each command is imported on use, so that none pays for another.
        status: int = importlib.import_module(f"authoring.cli.{arguments.command}").run(arguments)
    return status


def _steady_streams() -> None:
    """Let no stream of the caller's stop us: one that is shut swallows, one that lacks a sign shows its code."""
    for name in ("stdout", "stderr"):
        stream = getattr(sys, name)
        if stream is None:
            swallow = open(os.devnull, "w", encoding="utf-8")  # noqa: PTH123, SIM115  # for as long as we run, lean
            setattr(sys, name, swallow)
        elif isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def _unforeseen(error: Exception) -> int:
    # A file has a name; a stream that cannot be written has none.
    if not isinstance(error, OSError) or error.filename is not None or error.errno not in _NOT_WRITTEN:
        _own_up(error)
        return OUR_FAULT
    # What is still to be written must not be tried again at exit.
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    if isinstance(error, BrokenPipeError):
        return ERRORS  # the reader of our output went away, as `head` does
    print(f"bayleaf: the output cannot be written: {error.strerror}", file=sys.stderr)
    return WRONG_USE


def _own_up(error: Exception) -> None:
    place = error.__traceback__
    while place is not None and place.tb_next is not None:
        place = place.tb_next
    where = f"{place.tb_frame.f_globals.get('__name__', '?')}, line {place.tb_lineno}" if place is not None else "?"
    print(
        f"bayleaf: this is a fault of bayleaf itself, not of your library; nothing was written.\n"
        f"Please report it with the file that brought it about: {type(error).__name__} in {where}: {error}",
        file=sys.stderr,
    )


if __name__ == "__main__":
    sys.exit(main())
