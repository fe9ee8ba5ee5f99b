"""The signal word of a safety message: derived from what its author states, never typed.

Two families of standards use the same words for different things, so the shop picks a profile.
`ansi` follows ANSI Z535.4/Z535.6 and ISO 3864-2: three words for injury by severity, and NOTICE for damage.
`military` follows MIL-STD-38784: WARNING for people whatever the severity, CAUTION for damage.
Editions and what was read of them stand beside the test's table.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from authoring.model.things import Message

SEVERITIES = ("death", "serious", "moderate", "minor")
LIKELIHOODS = ("will", "could")
LASTING = frozenset({"death", "serious"})

# The words of each profile, the most severe first, in our own words; {ansi, military} is the language's closed list.
_MEANINGS: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "ansi": {
            "DANGER": "Somebody will be killed or badly injured unless the danger is avoided.",
            "WARNING": "Somebody could be killed or badly injured.",
            "CAUTION": "Somebody could be injured, lightly or moderately.",
            "NOTICE": "Nobody is hurt; the machine or the environment could be damaged.",
        },
        "military": {
            "WARNING": "Somebody could be injured or killed.",
            "CAUTION": "Nobody is hurt; the machine or the environment could be damaged.",
        },
    }
)


def signal_word(message: Message, profile: str) -> str:
    """Return the signal word of a message in a profile, `ansi` or `military`.

    Raises KeyError for any other profile: the shop file's schema lets none through.
    """
    *for_people, for_damage = _MEANINGS[profile]
    if message.harm != "person":
        return for_damage
    if message.severity not in LASTING:
        return for_people[-1]
    # With one word for people, that one; otherwise the first says that it will happen, the second that it could.
    return for_people[0] if message.likelihood == "will" or len(for_people) == 1 else for_people[1]


def rank(message: Message, profile: str) -> int:
    """Return a number to sort messages by, the most severe first and damage last; equal words go by severity."""
    word = list(_MEANINGS[profile]).index(signal_word(message, profile))
    severity = SEVERITIES.index(message.severity)
    return (word * len(SEVERITIES) + severity) * len(LIKELIHOODS) + LIKELIHOODS.index(message.likelihood)


def meaning(word: str, profile: str) -> str:
    """Return what a signal word means, for the page that explains those a booklet uses.

    Raises KeyError for a word that the profile does not have.
    """
    return _MEANINGS[profile][word]


def words(profile: str) -> tuple[str, ...]:
    """Return the signal words of a profile, the most severe first."""
    return tuple(_MEANINGS[profile])


ALL_WORDS = frozenset(word for profile in _MEANINGS for word in _MEANINGS[profile])
