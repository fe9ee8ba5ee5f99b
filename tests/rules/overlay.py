"""Examples of rules as whole libraries: an example replaces the top-level keys it names in a small sound library.

A fence such as ```` ```yaml procedure without job time ```` leaves those top-level keys out;
```` ```yaml other ````, ```` ```yaml further ```` and ```` ```yaml other-equipment ```` are more files of their own.
"""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass
from pathlib import Path

from authoring.diagnostics.diagnostic import Diagnostic, in_order
from authoring.model.build import build_library
from authoring.rules.rule import all_rules, run_rules
from authoring.rules.settle import settle
from authoring.source.images import Image, read_image
from authoring.source.reader import read_document

BASE = Path(__file__).parent.parent / "base"
FENCE = re.compile(
    r"^```yaml ((?:shop|stock|equipment|procedure|other|further|other-equipment)(?: without [a-z -]+)?)\n(.*?)^```$",
    re.MULTILINE | re.DOTALL,
)
MARK = re.compile(r"#! ([a-z-]+(?: [a-z-]+)*)\s*$")
OF_WHOLE_JOBS = frozenset(
    {
        "unused-thing",
        "never-put-back",
        "without-effect",
        "protection-not-listed",
        "option-not-asked",
        "temperature-unmeasured",
        "drained-while-shut",
        "filled-while-shut",
        "leak-unchecked",
        "need-unsettled",
    }
)
"""The rules that an example is too short for.

Most of its library is used by nothing, what comes off stays off, what goes on has never come off, the gloves that the
job calls for are not listed, nobody asks the customer, no thermometer is at hand, plugs are passed over when a fluid is
moved, nobody looks at them at the end, and a state that is needed is nobody's to bring about.
"""
TOP_KEY = re.compile(r"^([a-z-]+):", re.MULTILINE)


@dataclass(frozen=True)
class Example:
    """A library made from the base and one example: file contents, and the (file, line, rule) it expects.

    `begins` is the line of each file at which the example's own text begins.
    """

    files: dict[str, bytes]
    expected: list[tuple[str, int, str]]
    begins: dict[str, int]


def base_files() -> dict[str, bytes]:
    """Return the base library, which has no finding."""
    return {path.name: path.read_bytes() for path in sorted(BASE.iterdir())}


def pictures() -> dict[str, Image | str]:
    """Return the pictures of every example's library: one that can be shown and one that cannot."""
    drawing = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><circle cx="20" cy="15" r="9"/></svg>'
    contents = {"drop-box.svg": drawing, "broken.png": b"no picture at all"}
    read = {file: read_image(file, content) for file, content in contents.items()}
    return {file: reason if image is None else image for file, (image, reason) in read.items()}


def chunks(text: str) -> dict[str, str]:
    """Split a file's text at its top-level keys."""
    starts = [match.start() for match in TOP_KEY.finditer(text)] + [len(text)]
    return {text[start : text.index(":", start)]: text[start:end] for start, end in itertools.pairwise(starts)}


def overlay(blocks: list[tuple[str, str]]) -> Example:
    """Lay examples, each a kind of file and its text, over the base library."""
    files = {name: content.decode() for name, content in base_files().items()}
    expected: list[tuple[str, int, str]] = []
    begins: dict[str, int] = {}
    for head, text in blocks:
        kind, _, dropped = head.partition(" without ")
        name = f"{kind}.yaml"
        mine = {*chunks(text), *dropped.split()}
        kept = "".join(chunk for key, chunk in chunks(files.get(name, "")).items() if key not in mine)
        above = kept if kept.endswith("\n") or not kept else kept + "\n"
        files[name] = above + text
        begins[name] = above.count("\n") + 1
        for place, line in enumerate(text.split("\n"), begins[name]):
            marked = MARK.search(line)
            expected += [(name, place, rule) for rule in (marked[1].split() if marked else [])]
    return Example({name: text.encode() for name, text in files.items()}, expected, begins)


def findings(files: dict[str, bytes]) -> list[Diagnostic]:
    """Return everything there is to say about a library: from reading it and from every rule."""
    documents, found = [], []
    for name, content in files.items():
        document, wrong = read_document(name, content)
        found += wrong
        documents += [document] if document is not None else []
    library, wrong = build_library(documents, pictures(), partial=len(documents) < len(files))
    standing, _ = settle(in_order([*found, *wrong, *run_rules(library)]), library, all_rules())
    return standing


def told(example: Example, subject: str) -> list[tuple[str, int, str]]:
    """Return the (file, line, rule) of the findings of an example that belongs to the page of `subject`.

    Of the rules that an example is too short for only their own pages speak; even there what the example left of the
    base does not count.
    """
    return sorted(
        (found.span.file, found.span.line, found.rule)
        for found in findings(example.files)
        if found.rule not in OF_WHOLE_JOBS or (found.rule == subject and _is_own(found, example))
    )


def _is_own(found: Diagnostic, example: Example) -> bool:
    begins = example.begins.get(found.span.file)
    return begins is not None and found.span.line >= begins


def examples(page: str, heading: str) -> list[Example]:
    """Return the examples below every heading of that name in a rule's page.

    Fenced blocks that follow one another without a line of words between them make one example.
    """
    parts = re.split(r"^(Wrong|Right):?$", page, flags=re.MULTILINE)
    bodies = [body for named, body in zip(parts[1::2], parts[2::2], strict=True) if named == heading]
    return [example for body in bodies for example in examples_in(body)]


def examples_in(body: str) -> list[Example]:
    """Return the examples of a stretch of Markdown."""
    groups: list[list[tuple[str, str]]] = []
    end = -1
    for match in FENCE.finditer(body):
        if end < 0 or body[end : match.start()].strip():
            groups.append([])
        groups[-1].append((match[1], match[2]))
        end = match.end()
    return [overlay(group) for group in groups]
