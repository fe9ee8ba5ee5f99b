"""The whole program on one screen: bytes in, findings and booklets out.

Nothing here touches the disk, the clock or the terminal; `cli` does.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from authoring.booklet.blocks import Booklet
from authoring.booklet.compose import compose
from authoring.diagnostics.diagnostic import Diagnostic, in_order
from authoring.model.build import build_library
from authoring.model.library import Library
from authoring.rules.rule import run_rules
from authoring.source.images import Image, read_image
from authoring.source.reader import read_document


@dataclass(frozen=True, slots=True)
class Checked:
    """A library that was read and checked: its values, what was found, and the sources for excerpts."""

    library: Library
    findings: list[Diagnostic]
    sources: Mapping[str, str]


def check(files: Mapping[str, bytes], unread: list[Diagnostic]) -> Checked:
    """Read and check a library.

    `files` are the contents by path inside the library; `unread` tells of those that could not be opened.
    """
    findings = list(unread)
    documents, images = [], dict[str, Image | str]()
    for path, content in files.items():
        if path.endswith((".yaml", ".yml")):
            document, wrong = read_document(path, content)
            findings += wrong
            documents += [document] if document is not None else []
        else:
            image, reason = read_image(path, content)
            images[path] = image if image is not None else reason
    texts = sum(path.endswith((".yaml", ".yml")) for path in files)
    library, wrong = build_library(documents, images, partial=bool(unread) or len(documents) < texts)
    findings += wrong
    findings += run_rules(library)
    return Checked(library, in_order(findings), {document.file: document.text for document in documents})


def booklet(checked: Checked, number: str, selection: Mapping[str, str]) -> Booklet:
    """Compose the booklet of one procedure for the fitments that `selection` leaves."""
    return compose(checked.library, checked.library.procedures[number], selection)
