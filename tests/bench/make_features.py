"""A library in which things differ by many features, each for itself or all together in one thing's story."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

NUMBER = "FL-900"
LETTERS = ("a", "b", "c", "d")
THINGS = 20

_SHOP = """\
shop: Fennel Lane Plant Workshop
signal-words: ansi
units: {torque: [N·m], length: [mm], temperature: [°C], volume: [L]}
retention: In the job folder of the machine, until it is sold.
emergency: [Call the first-aider.]
people:
  mara: {name: Mara Lindqvist, role: senior technician, may: [write]}
  devan: {name: Devan Marsh, role: workshop lead, may: [approve]}
"""
_STOCK = "stock: Fennel Lane stores\n"
_HEAD = f"""\
procedure: {NUMBER}
title: Take covers off
equipment: bench
job: Dust gathers under the covers.
audience: Apprentice in the second year or later.
persons: 1
time: 30 min
conditions: none
hazards: none
sections:
  - title: Covers
    safe-to-stop: The machine stands as it is.
    steps:
"""
_TAIL = """\
trial: none
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: devan, reason: First issue.}
"""


def make_apart(folder: Path, features: int) -> None:
    """Write a job that takes twenty covers off and puts them on again, by turns for the values of so many features.

    The job is as long whatever the number: with two features ten covers each differ by one of them.
    """
    names = _names(features)
    off, on = [], []
    for at in range(THINGS):
        when = f"{{{names[at % features]}: [{', '.join(LETTERS[: 1 + at % 3])}]}}"
        off.append(_step("remove", f"cover-{at}", when))
        on.append(_step("fit", f"cover-{at}", when))
    _write(folder, names, THINGS, [*off, *reversed(on)])


def make_coupled(folder: Path, features: int) -> None:
    """Write a job in which so many features of four values decide together what becomes of one cover.

    It comes off on every machine, and each of as many steps puts it on where its feature has one of three values and
    all before it have the fourth; so it stays off on one machine in `4 ** features`.
    """
    names = _names(features)
    steps = [_step("remove", "cover-0", "")]
    for at, name in enumerate(names):
        before = "".join(f"{one}: [d], " for one in names[:at])
        steps.append(_step("fit", "cover-0", f"{{{before}{name}: [a, b, c]}}"))
    _write(folder, names, 1, steps)


def _names(features: int) -> list[str]:
    return [f"part-{number}" for number in range(features)]


def _step(verb: str, thing: str, when: str) -> str:
    return f"      - do: [{{{verb}: {thing}}}]\n" + (f"        when: {when}\n" if when else "")


def _write(folder: Path, names: Sequence[str], items: int, steps: Sequence[str]) -> None:
    (folder / "shop.yaml").write_text(_SHOP, encoding="utf-8")
    (folder / "stock.yaml").write_text(_STOCK, encoding="utf-8")
    (folder / "bench.yaml").write_text("\n".join(_equipment(names, items)) + "\n", encoding="utf-8")
    (folder / f"{NUMBER}.yaml").write_text(_HEAD + "".join(steps) + _TAIL, encoding="utf-8")


def _equipment(names: Sequence[str], items: int) -> Iterator[str]:
    values = ", ".join(f"{letter}: kind {letter}" for letter in LETTERS)
    yield from ("equipment: bench", "name: bench machine", "features:")
    yield from (f"  {name}: {{name: {name}, tell: Read the plate., values: {{{values}}}}}" for name in names)
    yield "items:"
    yield from (f"  cover-{at}: {{name: cover {at}}}" for at in range(items))
