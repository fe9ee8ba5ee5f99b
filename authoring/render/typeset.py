"""Set a booklet's blocks into the one body that both editions share."""

from __future__ import annotations

import re
from collections.abc import Callable
from collections.abc import Set as AbstractSet
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from authoring.booklet.blocks import Booklet
from authoring.booklet.step_parts import Caution, Figure, Step, TorqueCallout
from authoring.booklet.words import Amount, Blank, Text
from authoring.render import places
from authoring.render.drawings.drawn import drawn, drawn_beside, drawn_wide, drawn_width
from authoring.render.kept_templates import KeptTemplates
from authoring.render.signs import sign_address
from authoring.render.time_runs import on_the_clock

HERE = Path(__file__).parent

COLUMN = 563.0
"""Width of the line that a step is printed on, in CSS px (149 mm), to which a figure's share refers."""

TALLEST = 290.0
"""Greatest height of a picture in CSS px: 77 mm, under a third of a page, so that a step fits around it."""

BESIDE = 72.0
"""Widest picture, in percent of the line, that leaves room for its legend beside it."""

LONGEST = 5
"""Signs of a torque's number that fit a column in the largest type, as in 125.5."""


def kind(block: object) -> str:
    """Name the class of a block or of a piece of text, for the templates to choose by."""
    return type(block).__name__


def is_step(block: object) -> bool:
    """Tell whether a block is a step, for the templates to ask."""
    return isinstance(block, Step)


def plain(text: Text) -> str:
    """Return the words of a text without their setting, for names that only assistive technology reads."""
    return " ".join(
        piece.first if isinstance(piece, Amount) else piece.unit if isinstance(piece, Blank) else piece.text
        for piece in text
    ).strip()


def share(figure: Figure) -> str:
    """Return the part of the line in percent that a picture takes: never enlarged, never over the tallest."""
    return f"{_share(figure):.1f}"


def beside(figure: Figure) -> str:
    """Return where the legend begins, in percent of the line, that stands beside a narrow picture; else nothing."""
    taken = _share(figure)
    return f"{taken + 4:.1f}" if figure.callouts and figure.legend and taken <= BESIDE else ""


def _share(figure: Figure) -> float:
    widest = min(COLUMN, figure.width, TALLEST * figure.width / figure.height)
    return 100 * widest / COLUMN


def percents(widths: tuple[int, ...]) -> list[str]:
    """Turn the columns' shares into percent."""
    return [f"{100 * width / sum(widths):.1f}" for width in widths]


def word_class(word: str) -> str:
    """Turn a signal word into a class name."""
    return re.sub(r"[^a-z]+", "-", word.lower())


def crowded(callout: TorqueCallout) -> bool:
    """Tell whether a torque has a number too long for the largest type."""
    return any(len(value or "") > LONGEST for row in callout.rows for value in (row.low, row.nominal, row.high))


def may_be_opened(address: str) -> bool:
    """Tell whether a link's address only ever opens a page or a letter, never runs anything."""
    from urllib.parse import urlsplit  # noqa: PLC0415  # 2 ms for a link, which few booklets have

    try:
        return urlsplit(address).scheme in {"http", "https", "mailto"}
    except ValueError:
        return False


def css_string(text: str) -> str:
    """Quote a text for a style sheet: all but plain letters and digits as escapes, so no sign of it can act."""
    return '"' + "".join(one if one.isascii() and one.isalnum() else f"\\{ord(one):x} " for one in text) + '"'


TEMPLATES = HERE / "templates"


def compile_templates() -> None:
    """Compile every template and keep it, which set-up does once so that no start has to."""
    environment = _environment(KeptTemplates(TEMPLATES / "__pycache__", always=True))
    for path in sorted(TEMPLATES.glob("*.html")):
        environment.get_template(path.name)


@cache
def _kept_environment() -> Environment:
    return _environment(KeptTemplates(TEMPLATES / "__pycache__"))


def _environment(kept: KeptTemplates) -> Environment:
    environment = Environment(
        loader=FileSystemLoader(TEMPLATES),
        bytecode_cache=kept,
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    for one in (kind, plain, share, beside, percents, word_class, crowded, may_be_opened):
        environment.filters[one.__name__] = one
    for place in (
        places.heading_place,
        places.text_place,
        places.before_place,
        places.need_place,
        places.picture_place,
        places.caption_place,
    ):
        environment.filters[place.__name__] = place
    for drawing in (drawn, drawn_beside, drawn_wide, drawn_width):
        environment.filters[drawing.__name__] = drawing
    environment.tests["step_block"] = is_step
    environment.filters["placed_parts"] = places.placed_parts
    environment.globals["block_place"] = places.block_place
    environment.globals["contents_place"] = places.CONTENTS
    return environment


def _signs(booklet: Booklet) -> set[str]:
    blocks = [block for chapter in booklet.chapters for block in chapter.blocks]
    messages = [block for block in blocks if isinstance(block, Caution)]
    messages += [message for block in blocks if isinstance(block, Step) for message in block.cautions]
    return {message.sign for message in messages if message.sign}


def sheet(name: str, booklet: Booklet, values: dict[str, str]) -> str:
    """Return a style sheet with its `@@NAME@@` marks replaced, and a rule for each sign the booklet uses."""
    text = (HERE / "styles" / name).read_text(encoding="utf-8")
    filled = re.sub(r"@@([a-z-]+)@@", lambda mark: values[mark[1]], text)
    signs = "\n".join(
        f'.message .sign-{sign} {{ background-image: url("{sign_address(sign)}") }}' for sign in sorted(_signs(booklet))
    )
    return f"{filled}\n{signs}"


def set_page(
    template: str,
    booklet: Booklet,
    style: str,
    picture: Callable[[str], str],
    loose: AbstractSet[str] = frozenset(),
) -> str:
    """Fill a page template.

    `picture` turns the name of an asset into the address its image is loaded from.
    `loose` names the steps that may run over the page once their instruction is done.
    """
    # The style sheet is ours and every foreign word in it went through css_string: it must not be escaped again.
    page = _kept_environment().get_template(template)
    timed = on_the_clock(booklet)
    return page.render(booklet=booklet, style=Markup(style), picture=picture, loose=loose, timed=timed) + "\n"  # noqa: S704  # as said above
