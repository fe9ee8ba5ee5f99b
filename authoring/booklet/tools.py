"""The tools of a job: where they are, what they can do, and the drawings of those that the shop made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Chapter, Table
from authoring.booklet.phrases import capital
from authoring.booklet.plan import Plan
from authoring.booklet.ready import ready
from authoring.booklet.step_parts import Figure
from authoring.booklet.words import Inline, Named, Text, Words
from authoring.model.things import Tool
from authoring.quantities.show import spell

Drawings = Mapping[str, Figure]
"""The figure of each tool that has a drawing, by the tool's short name."""


def tools_of(plan: Plan) -> Iterator[Tool]:
    """Yield every tool that the steps use, once."""
    for named, _ in plan.used:
        if isinstance(named.thing, Tool):
            yield named.thing


def tools(plan: Plan, drawings: Drawings) -> Table:
    """Return the list of tools; what they can do has a column where something is said of it."""
    rows = [(tool, _told(tool, drawings)) for tool in tools_of(plan)]
    if any(told for _, told in rows):
        heads, widths = ("Tool", "Where", "What to know"), (27, 23, 40)
        full = (((Words(tool.name),), (Words(tool.place or ""),), told) for tool, told in rows)
        return ready("tools", "Tools", heads, widths, full)
    plain = (((Words(tool.name),), (Words(tool.place or ""),)) for tool, _ in rows)
    return ready("tools", "Tools", ("Tool", "Where"), (62, 28), plain, "No tool is needed.")


def _told(tool: Tool, drawings: Drawings) -> Text:
    """Return the sentences about a tool: what it can do, who made it after which drawing, how to do without it."""
    told: list[Inline] = []
    for sentence in _sentences(tool):
        told.append(Words(f"{' ' if told else ''}{capital(sentence)}{_stop(sentence)}"))
    if tool.id in drawings:
        told += [Words(" See " if told else "See "), _pointer(drawings[tool.id]), Words(".")]
    if tool.without:
        told.append(Words(f"{' ' if told else ''}Without it: {tool.without}{_stop(tool.without)}"))
    return tuple(told)


def _sentences(tool: Tool) -> Iterator[str]:
    can = tool.range.value if tool.range is not None else None
    step = f"in steps of {spell(tool.resolution)}" if tool.resolution is not None else ""
    ranged = ", ".join(filter(None, (spell(can) if can is not None else "", step)))
    if ranged:
        yield ranged
    if tool.adapter is not None and tool.adapter.length is not None:
        angle = f" at {spell(tool.adapter.angle)}" if tool.adapter.angle is not None else ""
        yield f"moves the bolt {spell(tool.adapter.length)} from the square of the wrench{angle}"
    if tool.made:
        yield tool.made


def _stop(sentence: str) -> str:
    return "" if sentence.rstrip().endswith((".", "!", "?")) else "."


def _pointer(figure: Figure) -> Named:
    return Named(f"figure {figure.number}", figure.id, turn_to=True)


def drawn(drawings: Drawings) -> tuple[Chapter, ...]:
    """Return the chapter with the drawings of the tools that the shop made, if there is any."""
    return (Chapter("drawings", "", "Tools made in the shop", 1, tuple(drawings.values())),) if drawings else ()
