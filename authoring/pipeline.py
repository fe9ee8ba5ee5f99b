"""The whole program on one screen: bytes in, findings and booklets out.

Nothing here touches the disk, the clock or the terminal; `cli` does.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from msgspec import Struct

from authoring.diagnostics.diagnostic import Diagnostic, Severity, in_order
from authoring.model.build import build_library
from authoring.model.concern import concern
from authoring.model.library import Library
from authoring.rules.rule import all_rules, run_rules
from authoring.rules.settle import Allowed, settle
from authoring.rules.whom import with_fitments
from authoring.source.decode import as_shown
from authoring.source.document import Document
from authoring.source.images import Image, read_image
from authoring.source.reader import read_document

if TYPE_CHECKING:
    # Composing and setting load CommonMark, templates and the page engine, for which checking need not pay.
    from authoring.booklet.blocks import Booklet
    from authoring.booklet.proof import Proof


class Checked(Struct, frozen=True):
    """A library that was read and checked: its values, what was found, what is allowed, the sources for excerpts."""

    library: Library
    findings: list[Diagnostic]
    allowed: Allowed
    sources: Mapping[str, str]


def check(files: Mapping[str, bytes], unread: list[Diagnostic]) -> Checked:
    """Read and check a library as a whole.

    `files` are the contents by path inside the library; `unread` tells of those that could not be opened.
    `checking/` comes to the same, file by file.
    """
    library, findings, sources = read(files, unread)
    findings += run_rules(library)
    findings = with_fitments(in_order(findings), library)
    standing, allowed = settle(findings, library, all_rules() if library.allowances else {})
    return Checked(library, in_order(standing), allowed, sources)


def read(
    files: Mapping[str, bytes], unread: Sequence[Diagnostic], known: Mapping[str, Document | Image | None] = {}
) -> tuple[Library, list[Diagnostic], Mapping[str, str]]:
    """Return a library, what is wrong with its files, and their texts; `known` is what was read of them before."""
    findings = list(unread)
    documents: list[Document] = []
    images: dict[str, Image | str] = {}
    sources: dict[str, str] = {}
    partial = bool(unread)
    for path, content in files.items():
        if path.lower().endswith((".yaml", ".yml")):
            before = known.get(path)
            document, wrong = (before, []) if isinstance(before, Document) else read_document(path, content)
            findings += wrong
            documents += [document] if document is not None else []
            partial |= document is None
            sources[path] = document.text if document is not None else as_shown(content)
        else:
            before = known.get(path)
            image, reason = (before, "") if isinstance(before, Image) else read_image(path, content)
            images[path] = image if image is not None else reason
    library, wrong = build_library(documents, images, partial=partial)
    return library, [*findings, *wrong], {file: text for file, text in sources.items() if text}


def compose(checked: Checked, number: str, selection: Mapping[str, str]) -> Booklet:
    """Compose the booklet of one procedure of a library without errors, for the fitments `selection` leaves."""
    from authoring.booklet import compose as booklet  # noqa: PLC0415  # CommonMark, see above

    return booklet.compose(checked.library, checked.library.procedures[number], selection, _proof(checked))


def _proof(checked: Checked) -> Proof:
    from authoring.booklet.proof import Family, Left, Proof, Ran  # noqa: PLC0415  # the booklet's blocks, see above
    from authoring.rules.proves import proved  # noqa: PLC0415  # words for a booklet, for which checking need not pay

    left = [Left(one.span.file, one.rule, one.message, by.why, one.fitments) for by, one in checked.allowed]
    left += [Left(one.span.file, one.rule, one.message, "", one.fitments) for one in checked.findings]
    rules = tuple(Ran(one.id, one.family, one.about) for one in all_rules().values())
    return Proof(tuple(Family(name, one.subject, one.holds) for name, one in proved()), rules, tuple(left))


def html(checked: Checked, number: str, selection: Mapping[str, str]) -> str:
    """Return one booklet as a single HTML file."""
    from authoring.render.html import as_html  # noqa: PLC0415  # templates, see above

    return as_html(compose(checked, number, selection))


def pdf(checked: Checked, number: str, selection: Mapping[str, str]) -> tuple[bytes, list[Diagnostic]]:
    """Return one booklet as PDF, and a finding for each page rule that its layout breaks; raises PangoMissing."""
    from authoring.render.pdf import as_pdf  # noqa: PLC0415  # the page engine, see above

    content, parted = as_pdf(compose(checked, number, selection))
    told = in_order([_parted(one.element, one.sentence, checked, number, selection) for one in parted])
    return content, with_fitments(told, checked.library)


def _parted(element: str, sentence: str, checked: Checked, number: str, selection: Mapping[str, str]) -> Diagnostic:
    from authoring.booklet.plan import Plan  # noqa: PLC0415  # the booklet's blocks, see above

    procedure = checked.library.procedures[number]
    step = Plan(checked.library, procedure, selection).step_of(element)
    span = step.where.span if step is not None else procedure.where.span
    cure = "Shorten the step, or split it." if step is not None else "Shorten what is told there."
    # The pages of a booklet for some vehicles say nothing of any other booklet.
    vehicle = checked.library.scope(procedure).vehicle
    chosen = {feature: (value,) for feature, value in selection.items()}
    fitments = concern(vehicle.features, procedure.covers, (chosen,)) if vehicle is not None else ""
    return Diagnostic("parted-pages", Severity.ERROR, sentence, span, cure, fitments=fitments)
