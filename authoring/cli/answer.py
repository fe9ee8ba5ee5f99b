"""What a check printed, printed again while no file of the library, nor of ours, has another signature than then.

This is all that such a check loads: neither the words of the command line, nor a library, nor a rule.
"""

from __future__ import annotations

import os
import stat
import sys
import time
from collections.abc import Mapping, Sequence

from authoring.checking.digest import digest
from authoring.cli.colour import wants_colour
from authoring.cli.keeping import code, keep, place, recall, written

KNOWN = frozenset({".yaml", ".yml", ".svg", ".png", ".jpg", ".jpeg"})
FORMS = ("text", "json", "sarif")

AT_REST = 2_000_000_000
"""A file changed less than so many ns ago may change again and be signed alike: FAT counts in steps of 2 s."""


class Listing:
    """The files of a library as the disk signs them; `recent` are those that may yet change unseen."""

    def __init__(self, root: str) -> None:
        """Look at a folder; raises OSError where something cannot be looked at, or is no plain file or folder."""
        self.root = root
        self.recent: list[str] = []
        recent = time.time_ns() - AT_REST
        rows: list[tuple[str, int, int, int, int]] = []
        waiting = [""]
        while waiting:
            below = waiting.pop()
            with os.scandir(f"{root}/{below}") as entries:
                for entry in entries:
                    name = entry.name
                    if name.startswith("."):
                        continue
                    if entry.is_dir(follow_symlinks=False):
                        waiting.append(f"{below}{name}/")
                    elif name[name.rfind(".") :].lower() in KNOWN:
                        stated = entry.stat(follow_symlinks=False)
                        if not stat.S_ISREG(stated.st_mode) or "\n" in name:
                            raise OSError(name)
                        changed, entered = stated.st_mtime_ns, stated.st_ctime_ns
                        rows.append((f"{below}{name}", stated.st_size, changed, entered, stated.st_ino))
                        if changed > recent or entered > recent:
                            self.recent.append(f"{below}{name}")
                    elif entry.is_symlink() and entry.is_dir():
                        raise OSError(name)  # a folder that is a link is a finding
        self.names = len(rows)
        self.content = written(rows)


def asked(words: Sequence[str]) -> tuple[str, str, bool] | None:
    """Return library, form and strictness of a check that is plainly asked for; None leaves all else to the parser."""
    if not words or words[0] != "check":
        return None
    library, form, strict = "", "text", False
    rest = iter(words[1:])
    for word in rest:
        if word == "--strict":
            strict = True
        elif word == "--format":
            form = next(rest, "")
        elif word.startswith("--format="):
            form = word.removeprefix("--format=")
        elif word.startswith("-") or not word or library:
            return None
        else:
            library = word
    return (library or "procedures", form, strict) if form in FORMS else None


def listing_of(library: str) -> Listing | None:
    """Return the listing of a library; None where its files are not all plain ones that can be looked at."""
    try:
        return Listing(library)
    except OSError:
        return None


def answer(words: Sequence[str]) -> int | None:
    """Print what the same check printed before and return its status; None where that does not hold any more."""
    wanted = asked(words)
    if wanted is None:
        return None
    library, form, strict = wanted
    path = place(library, _kind(form))
    kept = recall(path) if path else b""
    ours = code() if kept else b""
    listing = listing_of(library) if kept.startswith(ours) and ours else None
    if listing is None:
        return None
    head, _, rest = kept.removeprefix(ours).partition(b"\n")
    status, strict_status, files, recent = (int(number) for number in head.split())
    young, said = rest[files : files + recent], rest[files + recent :]
    if rest[:files] != listing.content or not _unchanged(library, young):
        return None
    if young and not listing.recent:
        _keep(path, listing, (status, strict_status), b"", said)
    sys.stdout.write(said.decode("utf-8", "surrogateescape"))
    return strict_status if strict else status


def keep_answer(
    listing: Listing, form: str, said: str, statuses: tuple[int, int], digests: Mapping[str, bytes]
) -> None:
    """Keep what a check printed of a library that was listed before it was read, and its statuses, plain and strict.

    `digests` are the checksums of the files as they were read; where one could not be, nothing is kept.
    """
    if listing.names != len(digests):
        return
    young = "\n".join(f"{digests[name].hex()} {name}" for name in listing.recent)
    encoded = (text.encode("utf-8", "surrogateescape") for text in (young, said))
    _keep(place(listing.root, _kind(form)), listing, statuses, *encoded)


def _keep(path: str, listing: Listing, statuses: Sequence[int], young: bytes, said: bytes) -> None:
    files = listing.content
    keep(path, code() + b"%d %d %d %d\n" % (*statuses, len(files), len(young)) + files + young + said)


def _kind(form: str) -> str:
    return f"{form}-colour" if form == "text" and wants_colour() else form


def _unchanged(library: str, young: bytes) -> bool:
    """Tell whether files that were too young to be trusted still have the content that was checked."""
    for line in young.decode("utf-8", "surrogateescape").split("\n") if young else ():
        checksum, _, name = line.partition(" ")
        try:
            with open(f"{library}/{name}", "rb") as file:
                if digest(file.read()).hex() != checksum:
                    return False
        except OSError:
            return False
    return True
