"""What a reader at the bench asks is answered by the pages, and stays answered."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from ruamel.yaml import YAML

from authoring.pipeline import compose
from tests.booklet.goldens import HERE, checked
from tests.booklet.plain_text import plain_text

QUESTIONS: list[dict[str, Any]] = YAML(typ="safe").load(HERE / "bench_questions.yaml")


@cache
def text_of(number: str, vehicle: tuple[tuple[str, str], ...]) -> str:
    """Return a booklet of the demo library as plain text; composed once for all questions about it."""
    return plain_text(compose(checked("procedures"), number, dict(vehicle))).replace("\u00a0", " ")


@pytest.mark.parametrize("place", range(len(QUESTIONS)))
def test_the_answer_stands_in_the_booklet(place: int) -> None:
    """Each word that the answer takes is printed."""
    asked = QUESTIONS[place]
    text = text_of(asked["booklet"], tuple(asked["vehicle"].items()))
    assert [words for words in asked["words"] if words not in text] == []


def test_there_are_ten_questions() -> None:
    """Ten questions were asked, and each says what it took and what it led to."""
    assert len(QUESTIONS) == 10
    assert all(one["answer"] and one["pages"] and one["mended"] for one in QUESTIONS)
