"""Each finding told with the vehicles it concerns: those that the conditions around its place leave."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Collection, Iterable, Iterator, Sequence

from msgspec import Struct
from msgspec.structs import replace

from authoring.diagnostics.diagnostic import Diagnostic, Span
from authoring.model.applicability import Applicability, of_equipment, of_procedure, of_shop
from authoring.model.concern import Features, concern
from authoring.model.library import Library
from authoring.model.specification import When
from authoring.source.document import Path

Place = tuple[int, int]


class _Limited(Struct, frozen=True, eq=False):
    """A stretch of a file that is there for some vehicles only, and the one it lies in."""

    start: Place
    end: Place
    when: When
    around: _Limited | None


class _File(Struct, frozen=True, eq=False):
    """What one file says about vehicles: the features it speaks of, what it covers, its limited stretches by start."""

    features: Features
    covers: When
    limited: Sequence[_Limited]


def with_fitments(findings: Sequence[Diagnostic], library: Library) -> list[Diagnostic]:
    """Return the findings, each with the vehicles it concerns; what a rule has stated itself stays.

    Only files with a finding are looked at, so that a sound library pays for nothing here.
    """
    files = dict(_files({one.span.file for one in findings if not one.fitments}, library))
    return [
        replace(one, fitments=_words(one.span, files[one.span.file]))
        if one.span.file in files and not one.fitments
        else one
        for one in findings
    ]


def _files(wanted: Collection[str], library: Library) -> Iterator[tuple[str, _File]]:
    for procedure in library.procedures.values():
        file = procedure.where.document.file
        if file in wanted:
            vehicle = library.scope(procedure).vehicle
            features = vehicle.features if vehicle is not None else {}
            yield file, _File(features, procedure.covers, _limited(of_procedure(procedure)))
    for equipment in library.equipment.values():
        file = equipment.where.document.file
        if file in wanted:
            yield file, _File(equipment.features, {}, _limited(of_equipment(equipment)))
    if library.shop is not None and library.shop.where.document.file in wanted:
        features = {name: one for equipment in library.equipment.values() for name, one in equipment.features.items()}
        yield library.shop.where.document.file, _File(features, {}, _limited(of_shop(library.shop)))


def _limited(stated: Iterable[Applicability]) -> list[_Limited]:
    """Return the stretches below a file's top that a condition limits; one never ends inside another."""
    places: dict[Path, tuple[Span, When]] = {}
    for one in stated:
        limited = one.limited
        if limited is not None and limited.path:
            places.setdefault(limited.path, (limited.document.places.whole(limited.path), one.when))
    found: list[_Limited] = []
    around: _Limited | None = None
    for span, when in sorted(places.values(), key=lambda one: (_start(one[0]), [-place for place in _end(one[0])])):
        while around is not None and around.end < _end(span):
            around = around.around
        around = _Limited(_start(span), _end(span), when, around)
        found.append(around)
    return found


def _words(span: Span, file: _File) -> str:
    before = bisect_right(file.limited, _start(span), key=lambda one: one.start)
    inside = file.limited[before - 1] if before else None
    whens: list[When] = []
    while inside is not None:
        if _start(span) <= inside.end:
            whens.insert(0, inside.when)
        inside = inside.around
    return concern(file.features, file.covers, whens)


def _start(span: Span) -> Place:
    return span.line, span.column


def _end(span: Span) -> Place:
    return span.end_line, span.end_column
