"""`bayleaf build`: check a library, then write its booklets."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

from msgspec import Struct

from authoring.cli.check import status, told
from authoring.cli.checked import check_library
from authoring.cli.colour import wants_colour
from authoring.cli.disk import read_library
from authoring.cli.lean import import_page_engine, import_templates
from authoring.cli.terminal import count, progress
from authoring.cli.write import write_whole
from authoring.cli.wrong_use import WrongUseError
from authoring.diagnostics.diagnostic import Diagnostic
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.build import shape_of
from authoring.model.fitments import covered
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.space import possible
from authoring.pipeline import Checked, html, pdf, read
from authoring.render.pango_missing import PangoMissing


class Wanted(Struct, frozen=True):
    """One booklet to write."""

    number: str
    selection: Mapping[str, str]

    @property
    def name(self) -> str:
        """The file name without its ending: the number, then the fitment."""
        return "_".join([self.number, *(f"{feature}-{value}" for feature, value in self.selection.items())])


def run(arguments: argparse.Namespace) -> int:
    """Check, compose, lay out, and write only when everything stands; return the exit status."""
    found = check_library(arguments.library)
    stopped = status(found.outcome.findings, strict=arguments.strict)
    if found.outcome.findings:
        print(told(found.outcome, arguments.library), end="")
    if stopped:
        print("No booklet was written; the ones that are there are as they were.", file=sys.stderr)
        return stopped
    library, _, sources = read(*read_library(arguments.library), {**found.documents, **found.images})
    checked = Checked(library, found.outcome.findings, found.outcome.allowed, sources)
    both = not arguments.html and not arguments.pdf
    wanted = list(_wanted(checked.library, arguments.only, arguments.fitment))
    # No file is read any more, and without the compiled schemas the pages of a PDF reach a peak of 2 MB less.
    shape_of.cache_clear()
    import_templates()
    if arguments.pdf or both:
        import_page_engine()
    files: dict[str, bytes] = {}
    broken: list[Diagnostic] = []
    for place, one in enumerate(wanted, 1):
        progress(f"{place} of {len(wanted)}: {one.name}")
        if arguments.html or both:
            files[f"{one.name}.html"] = html(checked, one.number, one.selection).encode()
        if arguments.pdf or both:
            content, parted = _pdf(checked, one)
            files[f"{one.name}.pdf"] = content
            broken += parted
    progress("")
    if broken:
        from authoring.diagnostics.text import as_text  # noqa: PLC0415  # a sound booklet has no excerpt to set

        print(as_text(broken, checked.sources, colour=wants_colour()), end="")
        print(f"{count(broken)}.\nNo booklet was written; the ones that are there are as they were.", file=sys.stderr)
        return 1
    write_whole(arguments.out, files)
    for name in files:
        print(Path(arguments.out) / name)
    return 0


def _pdf(checked: Checked, one: Wanted) -> tuple[bytes, list[Diagnostic]]:
    try:
        return pdf(checked, one.number, one.selection)
    except PangoMissing as error:
        message = f"{error} Nothing was written; with --html the HTML booklets are."
        raise WrongUseError(message) from error


def _wanted(library: Library, only: list[str], fitment: list[str]) -> Iterator[Wanted]:
    asked = _asked(fitment)
    found = False
    for procedure in _procedures(library, only):
        reason = _misfit(library, procedure, asked)
        if reason is None:
            found = True
            yield Wanted(procedure.number, asked)
        elif only or not _fits_any(library, asked):
            raise WrongUseError(reason)
        else:
            print(f"{procedure.number} is left out: {reason}.", file=sys.stderr)
    if not found:
        message = "the library has no procedure to print"
        raise WrongUseError(message)


def _asked(fitment: list[str]) -> dict[str, str]:
    asked: dict[str, str] = {}
    for text in fitment:
        feature, value = _pair(text)
        if asked.setdefault(feature, value) != value:
            message = f"no vehicle has {asked[feature]} and {value} at once as {feature}; build one after the other"
            raise WrongUseError(message)
    return asked


def _pair(text: str) -> tuple[str, str]:
    feature, equals, value = text.partition("=")
    if not (feature and equals and value):
        message = f'--for takes FEATURE=VALUE, such as brake=disc, and not "{text}"'
        raise WrongUseError(message)
    return feature, value


def _procedures(library: Library, only: list[str]) -> list[Procedure]:
    for number in only:
        if number not in library.procedures:
            near = did_you_mean(number, library.procedures) or f"It has {', '.join(library.procedures)}."
            message = f'the library has no procedure "{number}". {near}'
            raise WrongUseError(message)
    return [one for number, one in sorted(library.procedures.items()) if not only or number in only]


def _fits_any(library: Library, asked: Mapping[str, str]) -> bool:
    return any(_misfit(library, one, asked) is None for one in library.procedures.values())


def _misfit(library: Library, procedure: Procedure, asked: Mapping[str, str]) -> str | None:
    equipment = library.scope(procedure).vehicle or library.equipment[procedure.equipment]
    for feature, value in asked.items():
        known = equipment.features.get(feature)
        if known is None:
            near = did_you_mean(feature, equipment.features) or f"It has {', '.join(equipment.features) or 'none'}."
            return f'{equipment.name} has no feature "{feature}". {near}'
        if value not in known.values:
            near = did_you_mean(value, known.values) or f"There is {', '.join(known.values)}."
            return f'the {known.name} is never "{value}". {near}'
        if value not in covered(equipment, procedure.covers)[feature]:
            return f'{procedure.number} does not cover {known.name} "{value}"'
    whole = {**procedure.covers, **{feature: (value,) for feature, value in asked.items()}}
    if asked and not possible(equipment, whole):
        return f"{equipment.name} never has {' with '.join(f'{f}={v}' for f, v in asked.items())}"
    return None
