"""Model to booklet: one procedure, for all fitments or a selection of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.back import revisions, sources, torques
from authoring.booklet.blocks import Asset, Booklet, Chapter
from authoring.booklet.closing import closing
from authoring.booklet.front import NOT_VALIDATED, cover, safety_page
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.proof import Proof, proof_chapter
from authoring.booklet.setup import conditions, setup
from authoring.booklet.step_parts import Callout, Figure
from authoring.booklet.steps import chapters
from authoring.booklet.wording import Wording
from authoring.booklet.words import Paragraph, Words
from authoring.model.fitments import said
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.source.images import Image

ALL_FITMENTS = "All fitments"
Figures = dict[str, tuple[Figure, str]]


def compose(library: Library, procedure: Procedure, selection: Mapping[str, str], proof: Proof) -> Booklet:
    """Return the booklet of a procedure of a library without errors.

    `selection` gives features their values; what is left open stays in the booklet with a line saying for which
    vehicles it is. `proof` tells what the checks had to say of the library.
    """
    plan = Plan(library, procedure, selection)
    figures, assets = _figures(plan)
    wordings = {
        volume.procedure.number: Wording(plan, volume, _figure_names(volume, figures)) for volume in plan.volumes
    }
    work = list(_work(plan, wordings, figures))
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
            setup(plan, wordings),
            *work,
            closing(plan, wordings),
            *torques(plan, wordings),
            sources(plan),
            proof_chapter(proof, plan),
            revisions(plan, wordings),
        ),
        assets=assets,
    )


def _fitment(plan: Plan) -> str:
    equipment = plan.main.scope.equipment
    when = {feature: (value,) for feature, value in plan.selection.items()}
    return f"Only {said(when, equipment)}" if when and equipment is not None else ALL_FITMENTS


def _work(plan: Plan, wordings: Mapping[str, Wording], figures: Mapping[str, Figures]) -> Iterator[Chapter]:
    for volume in plan.volumes:
        number = volume.procedure.number
        if volume.letter:
            yield _annex(volume, wordings[number])
        yield from chapters(volume, wordings[number], figures[number])


def _annex(volume: Volume, wording: Wording) -> Chapter:
    procedure = volume.procedure
    trial = "" if procedure.trial is not None else f" {NOT_VALIDATED}: no trial of it is recorded."
    text = f"Carried out on the way. Revision {procedure.revision.letter}, {procedure.revision.date}.{trial}"
    title = f"{procedure.number}, {procedure.title}"
    blocks = (Paragraph((Words(text),)), *wording.passage(procedure.job), conditions(volume, wording))
    return Chapter(volume.anchor, volume.letter, title, 1, blocks, new_page=True)


def _figures(plan: Plan) -> tuple[dict[str, Figures], dict[str, Asset]]:
    """Number the figures in the order of the steps that first show them, over the whole booklet."""
    found: dict[str, Figures] = {}
    assets: dict[str, Asset] = {}
    count = 0
    for volume in plan.volumes:
        mine = found.setdefault(volume.procedure.number, {})
        for placed in volume.steps():
            for name in placed.step.figures:
                if name not in mine:
                    count += 1
                    figure, asset = _figure(volume, name, count)
                    mine[name] = (figure, placed.anchor)
                    assets[figure.asset] = asset
    return found, assets


def _figure(volume: Volume, name: str, number: int) -> tuple[Figure, Asset]:
    written = volume.procedure.figures[name]
    image = volume.scope.library.images[written.file]
    if not isinstance(image, Image):
        raise TypeError(written.file)  # a figure without a picture is an error that stops the build before
    callouts = tuple(
        Callout(place, volume.scope.things[one.on].words, one.across, one.down)
        for place, one in enumerate(written.callouts, 1)
    )
    figure = Figure(
        id=f"figure-{number}",
        number=str(number),
        title=written.title,
        alt=written.alt or "",
        asset=f"figure-{number}",
        width=image.width,
        height=image.height,
        callouts=callouts,
    )
    return figure, Asset(image.mime, image.content)


def _figure_names(volume: Volume, figures: Mapping[str, Figures]) -> dict[str, tuple[str, str]]:
    return {name: (figure.number, figure.id) for name, (figure, _) in figures[volume.procedure.number].items()}
