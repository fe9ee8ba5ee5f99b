"""Model to booklet: one procedure, for all fitments or a selection of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import msgspec
from msgspec.structs import replace

from authoring.booklet.back import revisions, torques
from authoring.booklet.blocks import Booklet, Chapter
from authoring.booklet.checked import checked
from authoring.booklet.closing import closing
from authoring.booklet.emergency import emergency
from authoring.booklet.figures import Figures, drawn_figures
from authoring.booklet.findings import findings
from authoring.booklet.front import NOT_VALIDATED, cover, safety_page
from authoring.booklet.modifications import modifications, slips
from authoring.booklet.open_machine import closing_begins, while_open
from authoring.booklet.phrases import UNVERIFIED
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.proof import Proof
from authoring.booklet.report import report
from authoring.booklet.setup import conditions, setup
from authoring.booklet.sources import sources
from authoring.booklet.steps import chapters
from authoring.booklet.tools import drawn
from authoring.booklet.whom import only
from authoring.booklet.wording import Wording
from authoring.booklet.words import Paragraph, Words
from authoring.model.library import Library
from authoring.model.procedure import Procedure

ALL_FITMENTS = "All fitments"


def compose(library: Library, procedure: Procedure, selection: Mapping[str, str], proof: Proof) -> Booklet:
    """Return the booklet of a procedure of a library without errors.

    `selection` gives features their values; what is left open stays in the booklet with a line saying for which
    vehicles it is. `proof` tells what the checks had to say of the library.
    """
    plan = Plan(library, procedure, selection)
    figures, drawings, assets = drawn_figures(plan)
    wordings = {
        volume.procedure.number: Wording(plan, volume, _figure_names(volume, figures)) for volume in plan.volumes
    }
    work = list(_work(plan, wordings, figures))
    # What is torn off has a leaf of its own, so the rest goes on on a fresh one.
    torn = slips(plan, wordings)
    back = (
        *torques(plan, wordings),
        *drawn(drawings),
        sources(plan, marked=f", {UNVERIFIED}".encode() in msgspec.json.encode(work)),
        checked(proof, plan, wordings, work),
        report(plan),
        revisions(plan, wordings),
    )
    shop = library.shop
    equipment = plan.main.scope.equipment
    return Booklet(
        number=procedure.number,
        title=procedure.title,
        shop=shop.name if shop is not None else "",
        equipment=equipment.name if equipment is not None else "",
        revision=procedure.revision.letter,
        date=procedure.revision.date,
        fitment=_fitment(plan),
        trial=NOT_VALIDATED if procedure.trial is None else "",
        cover=cover(plan, wordings[procedure.number]),
        chapters=(
            safety_page(plan, wordings, work),
            *emergency(plan),
            setup(plan, wordings, drawings),
            *work,
            closing(plan, wordings),
            *modifications(plan, wordings),
            *findings(plan, wordings),
            *torn,
            *(replace(chapter, new_page=True) if torn and not place else chapter for place, chapter in enumerate(back)),
        ),
        assets=assets,
    )


def _fitment(plan: Plan) -> str:
    when = {feature: (value,) for feature, value in plan.selection.items()}
    return only(when, plan.main.scope) or ALL_FITMENTS


def _work(plan: Plan, wordings: Mapping[str, Wording], figures: Mapping[str, Figures]) -> Iterator[Chapter]:
    for volume in plan.volumes:
        number = volume.procedure.number
        if volume.letter:
            yield _annex(volume, wordings[number])
        look = while_open(volume, wordings[number])
        before = closing_begins(volume) if look else ""
        yield from () if before else look
        for chapter in chapters(volume, wordings[number], figures[number]):
            if before and chapter.id == before:
                yield from look
            yield chapter


def _annex(volume: Volume, wording: Wording) -> Chapter:
    procedure = volume.procedure
    trial = "" if procedure.trial is not None else f" {NOT_VALIDATED}: no trial of it is recorded."
    text = f"Carried out on the way. Revision {procedure.revision.letter}, {procedure.revision.date}.{trial}"
    title = f"{procedure.number}, {procedure.title}"
    blocks = (Paragraph((Words(text),)), *wording.passage(procedure.job), *conditions(volume, wording))
    return Chapter(volume.anchor, volume.letter, title, 1, blocks, new_page=True)


def _figure_names(volume: Volume, figures: Mapping[str, Figures]) -> dict[str, tuple[str, str]]:
    return {name: (figure.number, figure.id) for name, (figure, _) in figures[volume.procedure.number].items()}
