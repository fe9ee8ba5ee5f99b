"""Every picture of a booklet with its number: those of the steps first, then the drawings of the tools."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec.structs import replace

from authoring.booklet.blocks import Asset
from authoring.booklet.plan import Plan, Volume, pictures
from authoring.booklet.step_parts import Callout, Figure
from authoring.booklet.tools import Drawings, tools_of
from authoring.model.brackets import BRACKET
from authoring.model.figure import Figure as Written
from authoring.model.library import Library, Named
from authoring.source.images import Image

SHOWS = {"before": "before the step", "during": "during the step", "after": "after the step"}

Figures = dict[str, tuple[Figure, str]]
"""The figures of one procedure by short name, each with the anchor of the step that first shows it."""


def drawn_figures(plan: Plan) -> tuple[dict[str, Figures], Drawings, dict[str, Asset]]:
    """Number the figures over the whole booklet, in the order in which they are first shown.

    Returns those of each procedure by its number, those of the tools, and the pictures themselves.
    """
    found: dict[str, Figures] = {}
    assets: dict[str, Asset] = {}
    for volume in plan.volumes:
        mine = found.setdefault(volume.procedure.number, {})
        for placed in volume.steps():
            for name in pictures(placed.step):
                if name not in mine:
                    written = volume.procedure.figures[name]
                    shown = _figure(written, volume.scope.things, plan.library, assets)
                    mine[name] = (shown if shown.legend else _graded(shown, name, volume), placed.anchor)
    drawings = {
        tool.id: _figure(tool.drawing, {}, plan.library, assets) for tool in tools_of(plan) if tool.drawing is not None
    }
    return found, drawings, assets


def _graded(figure: Figure, name: str, volume: Volume) -> Figure:
    """Return a picture of grades with what the checkpoints that compare with it say of each number."""
    found: dict[int, str] = {}
    for _, action in volume.actions():
        for outcome in action.outcomes if action.roles.get("against") == name else ():
            if outcome.like is not None and volume.holds(outcome.when):
                words = BRACKET.sub(lambda mark: volume.scope.things[mark[1]].words, outcome.found)
                found.setdefault(outcome.like, words)
    if not found:
        return figure
    told = tuple(replace(one, label=found.get(one.number, one.label)) for one in figure.callouts)
    return replace(figure, callouts=told, legend=True)


def _figure(written: Written, things: Mapping[str, Named], library: Library, assets: dict[str, Asset]) -> Figure:
    """Return the next figure, and put its picture among the assets."""
    image = library.images[written.file]
    if not isinstance(image, Image):
        raise TypeError(written.file)  # a figure without a picture is an error that stops the build before
    number = len(assets) + 1
    anchor = f"figure-{number}"
    assets[anchor] = Asset(image.mime, image.content)
    callouts = tuple(
        Callout(place, things[one.on].words, one.across, one.down) for place, one in enumerate(written.callouts, 1)
    )
    return Figure(
        id=anchor,
        number=str(number),
        title=written.title,
        alt=written.alt or "",
        asset=anchor,
        width=image.width,
        height=image.height,
        callouts=callouts,
        # Numbers that all point at one thing are told apart by what the step says of each.
        legend=len(callouts) == 1 or len({one.label for one in callouts}) > 1,
        shows=SHOWS[written.shows] if written.shows is not None else "",
    )
