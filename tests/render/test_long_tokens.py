"""Words stay whole on paper; only what is longer than a word may break."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from msgspec import structs

from authoring.booklet.blocks import Chapter
from authoring.booklet.step_parts import Checkpoint, Outcome, Step
from authoring.booklet.words import Named
from authoring.render.long_tokens import LONGEST_WORD, with_long_tokens_marked
from authoring.render.paged import as_paged_html
from authoring.render.press import press
from tests.outside_checkers.pdf_text import pdf_text
from tests.render.sample import sample
from tests.render.sample_parts import say

LONG = "A" * (LONGEST_WORD + 1)


@pytest.mark.parametrize(
    ("text", "marked"),
    [
        (LONG, f'<span class="long">{LONG}</span>'),
        (f"to {LONG}.", f'to <span class="long">{LONG}.</span>'),
        (LONG[1:], LONG[1:]),
        (f"{LONG[1:]}-{LONG[1:]}", f"{LONG[1:]}-{LONG[1:]}"),
        ("&amp;" * 20, "&amp;" * 20),
        (f'<a href="{LONG}">x</a>', f'<a href="{LONG}">x</a>'),
    ],
)
def test_only_a_token_longer_than_a_word_is_marked(text: str, marked: str) -> None:
    """Hyphens part a token, an escaped sign is one sign, and what stands in a tag or in the head is left alone."""
    page = "<head><title>{}</title></head><body class='{}'>{}</body>"
    assert with_long_tokens_marked(page.format(LONG, LONG, text)) == page.format(LONG, LONG, marked)


@pytest.mark.slow
def test_no_word_is_broken_where_its_line_ends(tmp_path: Path) -> None:
    """A name that begins anywhere on a line of a narrow cell stands there whole, and a long address is not cut off."""
    outcomes = tuple(
        Outcome(
            say("It is worn."),
            say("Go on."),
            good=True,
            more=say(
                f"Ask {'i' * more} for a new fork, and look at the groove of the collar. Concerns: ",
                Named("sliding collar"),
                ".",
            ),
        )
        for more in range(1, 60)
    )
    address = f"FL{'0123456789' * 12}"
    check = Checkpoint(
        "k", "Look", say("the fork"), (), (), (*outcomes, Outcome(say(address), say("Go on."), good=True))
    )
    step = Step("s", "1", "", (), say("Look at it."), (check,))
    made = structs.replace(sample(), chapters=(Chapter("c", "1", "Look", 1, (step,)),))
    content, _ = press(as_paged_html(made, frozenset({"s"})), made.assets)
    path = tmp_path / "words.pdf"
    path.write_bytes(content)
    text = "\n".join(pdf_text(path))
    assert len(re.findall(r"\bsliding\b", text)) == len(outcomes)
    assert address in re.sub(r"\s", "", text)
