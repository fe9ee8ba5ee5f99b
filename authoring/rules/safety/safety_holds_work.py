"""A safety message asks for work on the machine, or names what is worked on.

What changes the machine is a step: numbered, ticked, with its parts and torques.
Hidden in a safety message it is done by some, skipped by others, and proved by nobody.
A message may name what protects (a tool or consumable that is worn or used) and a stated value,
and its avoidance says how to behave: wear, keep clear, do not.
What to keep off, clear of or out of may be named there as well, since nobody works on it.

Wrong:

```yaml shop
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Loosen the plug slowly. Wear the [gauntlets].   #! safety-holds-work
```

Naming a part of the machine.

```yaml shop
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The pipe beside the [level-plug] is hot.   #! safety-holds-work
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets].
```

Right:

```yaml shop
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Remove your rings and wear the [gauntlets]. Do not loosen anything while it steams.
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.action_kind import Kind
from authoring.model.action_kinds import action_kinds
from authoring.model.brackets import BRACKET
from authoring.model.library import Library
from authoring.model.messages import Written, messages_of
from authoring.model.stretch import stretch
from authoring.model.texts import Prose, prose_of_message
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S4",)

_PROTECTS = frozenset({Kind.TOOL, Kind.CONSUMABLE, Kind.VALUE})
# Only actions that change the machine whatever they are said of; “raise” and “wipe” are good advice as well.
_WORK = ("remove", "loosen", "drain", "tighten", "fit", "fill", "top-up", "disconnect", "connect", "isolate")
# Words of these actions that people also use of gloves, rings and places.
_BEHAVIOUR = frozenset({"press on", "put on", "take off", "part", "join", "add"})
_SENTENCE = re.compile(r"[^.!?;]+")
_KEEPS_OFF = re.compile(
    r"[\s*_]*(((keep|stay|stand)\b.*\b(off|clear|away|out|back|from)|leave\b.*\balone)\b"
    r"|(do not|don't|never) (touch|reach|lean|step|stand|put your)\b)",
    re.IGNORECASE | re.DOTALL,
)
_ON_ONESELF = re.compile(r"\b(your|jewell?ery|watch|watches|necklaces?|scarf|clothing|tie)\b", re.IGNORECASE)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each sentence of a message that asks for work, or else names what is worked on."""
    verbs = _verbs()
    for written in messages_of(library):
        for prose in prose_of_message(written.message):
            for sentence in _SENTENCE.finditer(prose.text):
                yield from _in_sentence(sentence, prose, written, verbs)


def _verbs() -> re.Pattern[str]:
    words = {word for name in _WORK for word in action_kinds()[name].words} - _BEHAVIOUR
    return re.compile(rf"[\s*_]*({'|'.join(sorted(words, key=len, reverse=True))})\b", re.IGNORECASE)


def _in_sentence(sentence: re.Match[str], prose: Prose, written: Written, verbs: re.Pattern[str]) -> Iterator[Fault]:
    verb = verbs.match(sentence[0]) if prose.part == "avoidance" else None
    if verb is not None and not _ON_ONESELF.search(sentence[0]):
        at = sentence.start()
        yield Fault(
            f'"{verb[1]}" is work on the machine, and work is a step, not a safety message.',
            stretch(prose, at + verb.start(1), at + verb.end(1)),
            "Make it a step; let the avoidance say how to behave: wear, keep clear, do not.",
        )
        return
    if prose.part == "avoidance" and _KEEPS_OFF.match(sentence[0]):
        return
    for bracket in BRACKET.finditer(sentence[0]):
        named = written.things.get(bracket[1])
        if named is not None and named.kind not in _PROTECTS:
            yield Fault(
                f'A safety message names what protects or what to keep off, but "{named.id}" is {named.kind.value}.',
                stretch(prose, sentence.start() + bracket.start(), sentence.start() + bracket.end()),
                f"Say it in words: {named.words}." if named.kind is not Kind.STEP else "Say it in words.",
            )
