"""Signal words held against the definitions that standards publish; sources and statuses stand in the data file."""

from __future__ import annotations

import itertools
from typing import Any

import pytest

from authoring.model.language.safety import message as message_schema
from authoring.model.language.shop import SCHEMA as SHOP_SCHEMA
from authoring.model.signal_word import ALL_WORDS, LIKELIHOODS, SEVERITIES, meaning, rank, signal_word, words
from authoring.model.things import Message
from authoring.source.document import Document, Where
from authoring.source.reader import read_document
from tests.outside.agreement import Agreement
from tests.outside.kept import kept

WORDS = kept("signal_words.yaml")
PROFILES = ("ansi", "military")
Row = dict[str, Any]
HARMS = ("person", "equipment", "environment")


def _somewhere() -> Document:
    document, _ = read_document("shop.yaml", b"shop: x\n")
    assert document is not None
    return document


def _message(harm: str, severity: str, likelihood: str) -> Message:
    return Message("m", harm, severity, likelihood, None, None, None, "general", {}, Where(_somewhere()))


EVERY = [_message(*stated) for stated in itertools.product(HARMS, SEVERITIES, LIKELIHOODS)]


@pytest.mark.parametrize("row", [row for profile in PROFILES for row in WORDS[profile]], ids=lambda row: row["id"])
def test_word_is_the_published_one(row: Row, agree: Agreement) -> None:
    """Each stated harm, severity and likelihood gets the word that the standard's definition gives it."""
    agree(row, signal_word(_message(row["harm"], row["severity"], row["likelihood"]), row["profile"]))


@pytest.mark.parametrize("row", WORDS["order"], ids=lambda row: row["profile"])
def test_rank_follows_the_published_order_of_words(row: Row, agree: Agreement) -> None:
    """Sorted by rank, the words come in the standard's order, each in one run."""
    profile = row["profile"]
    ordered = sorted(EVERY, key=lambda one: rank(one, profile))
    runs = [word for word, _ in itertools.groupby(signal_word(one, profile) for one in ordered)]
    agree(row, runs)
    assert runs == list(words(profile))


@pytest.mark.parametrize("profile", PROFILES)
def test_more_severe_never_ranks_behind(profile: str) -> None:
    """For the same harm and likelihood, a worse injury or damage stands first."""
    for harm, likelihood in itertools.product(HARMS, LIKELIHOODS):
        ranks = [rank(_message(harm, severity, likelihood), profile) for severity in SEVERITIES]
        assert ranks == sorted(ranks)
        assert len(set(ranks)) == len(ranks)


def test_damage_alone_never_gets_an_injury_word() -> None:
    """DANGER and WARNING are not for damage (Z535, as restated), whatever severity somebody states for it."""
    for one in EVERY:
        if one.harm != "person":
            assert signal_word(one, "ansi") == "NOTICE"
            assert signal_word(one, "military") == "CAUTION"


def test_caution_means_injury_in_one_profile_and_damage_in_the_other() -> None:
    """The same word reads differently by profile, so its meaning is printed from the profile."""
    assert "injured" in meaning("CAUTION", "ansi")
    assert "damaged" in meaning("CAUTION", "military")


def test_words_and_severities_are_those_of_the_language() -> None:
    """What an author may state and what a shop may choose is exactly what is known here."""
    stated = message_schema()["properties"]
    assert stated["severity"]["enum"] == list(SEVERITIES)
    assert stated["likelihood"]["enum"] == list(LIKELIHOODS)
    assert stated["harm"]["enum"] == list(HARMS)
    assert SHOP_SCHEMA["properties"]["signal-words"]["enum"] == list(PROFILES)
    assert {word for profile in PROFILES for word in words(profile)} == ALL_WORDS
