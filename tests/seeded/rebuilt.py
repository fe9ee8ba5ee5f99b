"""The demo library with one file written otherwise; what the file does not bear on is not read again."""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Diagnostic, has_errors
from authoring.model.build import build_library, kind_of
from authoring.model.library import Library
from authoring.source.document import Document
from tests.seeded.demo import Demo


def rebuilt(demo: Demo, changed: Document) -> tuple[Library, list[Diagnostic]]:
    """Return the library, and what is wrong with the shape of the files that were read again.

    A procedure is read by the order of its machine's features, so the two are read together.
    """
    read = [_now(one, changed) for one in demo.documents if _bears_on(changed, one)]
    part, found = build_library(read, demo.images, partial=True)
    if has_errors(found):
        return part, found
    known = demo.library
    again = {one.file for one in read}
    library = Library(
        part.shop or known.shop,
        part.stock or known.stock,
        {name: part.equipment.get(name, one) for name, one in known.equipment.items()},
        {number: part.procedures.get(number, one) for number, one in known.procedures.items()},
        demo.images,
        [*part.allowances, *(one for one in known.allowances if one.where.document.file not in again)],
    )
    return library, found


def _now(document: Document, changed: Document) -> Document:
    return changed if document.file == changed.file else document


def _bears_on(changed: Document, document: Document) -> bool:
    if document.file == changed.file:
        return True
    together = {kind_of(changed), kind_of(document)} == {"procedure", "equipment"}
    return together and changed.data.get("equipment") == document.data.get("equipment")
