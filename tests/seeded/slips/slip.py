"""Slips of the pen: what a person gets wrong in this library, written down by trade sense and without regard to rules.

A YAML file beside this one lists them for one procedure, `shared.yaml` for equipment, shop and stock.
A slip is not taken out because it is missed: the list says how much gets past, and what it would do at the bench.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Literal

import msgspec
import yaml

FOLDER = Path(__file__).parent


class Slip(msgspec.Struct, frozen=True, forbid_unknown_fields=True):
    """One slip: what it is, what it does at the bench, and whether the data of the library would be enough to notice.

    `change` holds for each file its changes, parted by an empty line: lines that stay behind "=", lines that go
    behind "-", lines that come behind "+".
    `told` is the most severe answer that the check has; `aside` says that only such rules speak as notice what is left
    over.
    A slip that nobody tells of says under `missed` what a rule would have to look at.
    """

    title: str
    bench: str
    data: str
    change: dict[str, str]
    told: Literal["error", "warning"] | None = None
    aside: bool = False
    missed: str = ""


def slips() -> dict[str, list[Slip]]:
    """Return all slips, by the name of the file that lists them."""
    files = sorted(FOLDER.glob("*.yaml"))
    return {file.stem: msgspec.convert(yaml.safe_load(file.read_text(encoding="utf-8")), list[Slip]) for file in files}


def slipped(slip: Slip, files: Mapping[str, bytes]) -> dict[str, bytes]:
    """Return the files of a library with the slip in them."""
    return {**files, **{name: changed(files[name].decode(), text).encode() for name, text in slip.change.items()}}


def changed(text: str, changes: str) -> str:
    """Return the text with all changes; raises ValueError where the place of one is not there, or is there twice."""
    places = sorted((_place(text, one.strip("\n")) for one in changes.split("\n\n")), reverse=True)
    for start, end, after in places:
        text = text[:start] + after + text[end:]
    return text


def _place(text: str, change: str) -> tuple[int, int, str]:
    lines = change.split("\n")
    if unmarked := [line for line in lines if line[:1] not in {"=", "-", "+"}]:
        message = f"a line of a change begins with none of = - +: {unmarked}"
        raise ValueError(message)
    before = "".join(f"{line[1:]}\n" for line in lines if line[0] in "=-")
    places = [one.start() for one in re.finditer(f"^(?={re.escape(before)})", text, re.MULTILINE)]
    if len(places) != 1:
        message = f"this stands {len(places)} times in the library, and must stand there once:\n{before}"
        raise ValueError(message)
    return places[0], places[0] + len(before), "".join(f"{line[1:]}\n" for line in lines if line[0] in "=+")
