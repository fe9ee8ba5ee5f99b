"""Documents to a library: each file's kind is told by its first key, its shape is checked, its values are read."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cache
from typing import Any

from msgspec import Struct

from authoring.diagnostics.diagnostic import Diagnostic, Related, Severity, Span, has_errors
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.allowances import Allowance, allowances
from authoring.model.assemble import KINDS, schema_of
from authoring.model.library import Library
from authoring.model.printable import unprinted
from authoring.model.procedure import Procedure
from authoring.model.read_equipment import feature_order, read_equipment
from authoring.model.read_procedure import read_procedure
from authoring.model.read_things import read_shop, read_stock
from authoring.model.reader import Reader
from authoring.model.things import Equipment, Shop, Stock
from authoring.source.document import Document, Where
from authoring.source.images import Image
from authoring.source.shape import Shape


@cache
def shape_of(kind: str) -> Shape:
    """Return the compiled schema of one kind of file."""
    return Shape(schema_of(kind))


def kind_of(document: Document) -> str | None:
    """Return which kind of file a document is, or None when no key of it says so.

    A procedure names its equipment too, so that key says what a file holds only where it stands first.
    """
    first = next(iter(document.data), None)
    return next((kind for kind in KINDS if kind == first or (kind != "equipment" and kind in document.data)), None)


class _Found(Struct):
    """What has been read so far; the only value here that changes, and it does not leave this module."""

    findings: list[Diagnostic]
    shops: dict[str, Shop] = {}
    stocks: dict[str, Stock] = {}
    equipment: dict[str, Equipment] = {}
    procedures: dict[str, Procedure] = {}
    allowances: list[Allowance] = []
    order: dict[str, Mapping[str, tuple[str, ...]]] = {}
    broken: bool = False


_READERS: Mapping[str, Callable[[Reader], Any]] = {
    "shop": read_shop,
    "stock": read_stock,
    "equipment": read_equipment,
    "procedure": read_procedure,
}


def build_library(
    documents: Sequence[Document],
    images: Mapping[str, Image | str],
    *,
    partial: bool,
    beside: Sequence[Document] = (),
) -> tuple[Library, list[Diagnostic]]:
    """Return the library and what is wrong with its files.

    `partial` says that some file could not even be read; one of bad shape, or missing, makes the library partial too.
    `beside` are sound equipment files that were built before: they only tell the order of their features' values.
    """
    found = _Found([], broken=partial)
    for document in beside:
        found.order.setdefault(document.data["equipment"], feature_order(document.data))
    # A range of a feature's values can be read once the equipment that states their order is known.
    for document in sorted(documents, key=lambda one: kind_of(one) != "equipment"):
        _take(document, found)
    if not found.broken:
        missing = [kind for kind, got in (("shop", found.shops), ("stock", found.stocks)) if not got]
        found.findings.extend(_missing(kind) for kind in missing)
        found.broken = bool(missing)
    library = Library(
        next(iter(found.shops.values()), None),
        next(iter(found.stocks.values()), None),
        found.equipment,
        found.procedures,
        images,
        found.allowances,
        partial=found.broken,
    )
    return library, found.findings


def _take(document: Document, found: _Found) -> None:
    kind = kind_of(document)
    where = Where(document)
    if kind is None:
        first = next(iter(document.data), "")
        message = "This file does not begin with what it holds: shop, stock, equipment or procedure."
        cure = did_you_mean(first, KINDS) or 'Begin the file with one of these keys, such as "procedure: FL-110".'
        span = where.key(first) if first else where.span
        found.findings.append(Diagnostic("unknown-kind-of-file", Severity.ERROR, message, span, cure))
        found.broken = True
        return
    wrong = shape_of(kind).check(document)
    found.findings.extend(wrong)
    if has_errors(wrong):
        found.broken = True
        return
    found.findings.extend(unprinted(document))
    found.allowances.extend(allowances(document))
    if kind == "equipment":
        found.order.setdefault(document.data["equipment"], feature_order(document.data))
    order = found.order.get(document.data.get("equipment", ""), {})
    thing = _READERS[kind](Reader(document.data, where, found.findings, order))
    match thing:
        case Shop():
            _keep(found.shops, "a shop file", "", thing, found)
        case Stock():
            _keep(found.stocks, "a stock file", "", thing, found)
        case Equipment():
            _keep(found.equipment, f'the equipment "{thing.id}"', thing.id, thing, found)
        case Procedure():
            _keep(found.procedures, f"the procedure {thing.number}", thing.number, thing, found)


def _keep(kept: dict[str, Any], called: str, key: str, thing: Any, found: _Found) -> None:
    first = kept.setdefault(key, thing)
    if first is not thing:
        found.findings.append(
            Diagnostic(
                "duplicate-name",
                Severity.ERROR,
                f"The library has {called} twice.",
                thing.where.span,
                "Give one of them another name, or remove it." if key else "Put the two together into one file.",
                (Related(first.where.span, "the other one"),),
            )
        )


def _missing(kind: str) -> Diagnostic:
    cure = f'Add a file that begins with "{kind}:", such as {kind}.yaml.'
    return Diagnostic("missing-file", Severity.ERROR, f"The library has no {kind} file.", Span("", 1, 1, 1, 1), cure)
