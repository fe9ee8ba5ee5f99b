from __future__ import annotations

import pytest

from authoring.model.sentences import sentences

# How words are counted: ASD-STE100, section 8, from memory.
COUNTED = {
    "Wipe the [drop-box] dry.": [4],
    "Fit the half-worn ring.": [4],
    "Look at the seam – it is wet.": [7],
    "Wipe it. Look at it: it is *dry*; go on.": [2, 3, 3, 2],
    "Fill to line 2.5 of the rod.": [7],
    "...": [],
}


@pytest.mark.parametrize("text", COUNTED)
def test_words_are_counted_in_each_sentence(text: str) -> None:
    """A name in brackets and words joined by a hyphen are one word each, and a dash by itself is none."""
    assert [sentence.words for sentence in sentences(text)] == COUNTED[text]


@pytest.mark.parametrize("text", COUNTED)
def test_a_sentence_stands_where_it_says(text: str) -> None:
    """The text of each sentence, brackets as written, stands in the whole at its start."""
    for sentence in sentences(text):
        assert text[sentence.start :].startswith(sentence.text)
        assert sentence.text.strip()
