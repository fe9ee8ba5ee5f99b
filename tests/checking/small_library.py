"""A small library in which files hang together in every way there is, and single changes to it.

Two machines; procedures that carry one another out, wait for one another and share a safety message; a picture;
warnings that are allowed; a group whose bolt is judged by the wrenches of several procedures; a window that one
procedure explains by the circuit that it levels.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping

from hypothesis import strategies as st

from tests.rules.overlay import base_files

Files = dict[str, bytes]

DRAWING = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><circle cx="20" cy="15" r="9"/></svg>'

_BASE = {name: content.decode() for name, content in base_files().items()}

_LID_BOLTS = """\
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M8
    class: "8.8"
    on: drop-box
    torque: {value: 30 ± 2 N·m, source: plate, at: line 5}
    friction: {value: 0.10 to 0.16, source: plate, at: line 6}
"""
_WRENCH = "{{name: {}, range: {{value: {} N·m, source: bench-book, at: page 3}}}}"
_TIGHTEN_LID = """\
      - step: Tighten the [lid-bolts] with the [{wrench}].
        with: [{wrench}]
        do:
          - tighten: lid-bolts
"""
_CARRY_OUT = """\
      - step: Carry out [{number}].
        do:
          - carry-out: {number}
"""
_LOOK = """\
      - step: Wipe the [drop-box] dry with a [rag] if necessary.
        figures: [box-side]
        with: [rag]
        do:
          - clean: drop-box
        allow: [{rule: vague-word, why: The apprentice sees it.}]
        tip: Careful! It is hot.
"""
_FIGURES = """\
figures:
  box-side: {file: pictures/box.svg, title: Drop box, alt: The drop box with its plug below.}
"""


def _numbered(number: str, *, machine: str = "hob", more: str = "", head: str = "") -> str:
    text = _BASE["procedure.yaml"].replace("FL-110", number).replace("equipment: hob", f"equipment: {machine}")
    text = text.replace("Check the oil level of the drop box", f"Check the oil level for {number}")
    return text.replace("trial: none", f"{more}trial: none").replace("sections:\n", f"{head}sections:\n")


def library() -> Files:
    """Return the library, file by file in the order in which a folder is read."""
    machine = _BASE["equipment.yaml"].replace("fluids:", f"{_LID_BOLTS}fluids:")
    stock = _BASE["stock.yaml"].replace("{name: torque wrench}", _WRENCH.format("torque wrench", "20 to 100"))
    long = _WRENCH.format("long torque wrench", "10 to 60")
    texts = {
        "FL-110.yaml": _numbered("FL-110"),
        "FL-120.yaml": _numbered(
            "FL-120", more=_TIGHTEN_LID.format(wrench="wrench") + _CARRY_OUT.format(number="FL-110")
        ),
        "FL-130.yaml": _numbered(
            "FL-130", more=_TIGHTEN_LID.format(wrench="long-wrench") + _CARRY_OUT.format(number="FL-120")
        ),
        "FL-140.yaml": _numbered("FL-140", machine="teal", more=_LOOK, head=_FIGURES),
        "hob.yaml": machine,
        "shop.yaml": _BASE["shop.yaml"],
        "stock.yaml": stock.replace("  gauntlets:", f"  long-wrench: {long}\n  gauntlets:"),
        "teal.yaml": machine.replace("equipment: hob", "equipment: teal").replace("Hob site", "Teal site"),
    }
    return {**{name: text.encode() for name, text in texts.items()}, "pictures/box.svg": DRAWING}


def ordered(files: Mapping[str, bytes]) -> Files:
    """Return files in the order in which a folder is read: its own before those of the folders in it."""
    return {path: files[path] for path in sorted(files, key=lambda one: (one.count("/"), one))}


_WORDS = (
    ("level-plug", "levle-plug"),
    ("level-plug", "lid-bolts"),
    ("carry-out: FL-110", "carry-out: FL-130"),
    ("carry-out: FL-120", "carry-out: FL-999"),
    ("FL-110", "FL-120"),
    ("FL-140", "FL-150"),
    ("equipment: hob", "equipment: teal"),
    ("equipment: teal", "equipment: haul"),
    ("42 ± 4 N·m", "42 ± 4 Nm"),
    ("30 ± 2 N·m", "22 ± 2 N·m"),
    ("hot-pipe", "hot-box"),
    ("severity: serious", "severity: minor"),
    ("[gauntlets]", "[gauntlet]"),
    ("wrench]", "spanner]"),
    ("long-wrench", "wrench"),
    ("take: one", "place: shelf"),
    ("disposal: oily-waste bin, ", ""),
    ("bench-book", "bench-books"),
    ("values: {drum: drum brake, disc: disc brake}", "values: {drum: drum brake}"),
    ("trial: none", ""),
    ("vague-word", "vague-words"),
    (" if necessary", ""),
    ("box.svg", "boxes.svg"),
    ("job: The", "job: If possible the"),
    ("emergency:", "emergencies:"),
    ("discard: plug-ring", "inspect: drop-box"),
    ("person", "equipment"),
)

_PLACES = st.integers(0, 200)


def _line_away(path: str, place: int) -> Callable[[Files], Files]:
    def change(files: Files) -> Files:
        lines = files[path].split(b"\n")
        return {**files, path: b"\n".join(lines[: place % len(lines)] + lines[place % len(lines) + 1 :])}

    return change


def _words(path: str, words: tuple[str, str], *, back: bool) -> Callable[[Files], Files]:
    old, new = (word.encode() for word in (reversed(words) if back else words))
    return lambda files: {**files, path: files[path].replace(old, new) if old else files[path]}


def _away(path: str) -> Callable[[Files], Files]:
    return lambda files: {name: content for name, content in files.items() if name != path}


def _renamed(path: str, name: str) -> Callable[[Files], Files]:
    return lambda files: {name if one == path else one: content for one, content in files.items()}


def _added(path: str, number: int) -> Callable[[Files], Files]:
    def change(files: Files) -> Files:
        text = re.sub(rb"(?m)^procedure: .*", f"procedure: FL-{number}".encode(), files[path])
        return {**files, f"FL-{number}-more.yaml": text}

    return change


def _picture(content: bytes) -> Callable[[Files], Files]:
    return lambda files: {**files, "pictures/box.svg": content}


def changes(files: Files) -> st.SearchStrategy[Callable[[Files], Files]]:
    """Return what can be done to a library: edits, removals, additions, files renamed and files broken."""
    paths = st.sampled_from(sorted(path for path in files if path.endswith(".yaml")))
    return st.one_of(
        st.builds(_words, paths, st.sampled_from(_WORDS), back=st.booleans()),
        st.builds(_line_away, paths, _PLACES),
        st.builds(_away, st.sampled_from(sorted(files))),
        st.builds(_renamed, paths, st.sampled_from(["a.yaml", "more/z.yaml", "zz.yaml"])),
        st.builds(_added, paths, st.integers(100, 999)),
        st.builds(_picture, st.sampled_from([b"no picture", DRAWING.replace(b"20", b"21")])),
        st.builds(lambda path: lambda now: {**now, path: now[path] + b"\n\t- {"}, paths),
    )
