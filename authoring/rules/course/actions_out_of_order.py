"""The actions of a step stand in another order than its text tells them.

Hands follow the text; what is proved, drawn and counted follows the actions.
Where the text says to fit the ring and then to start the plug, and the actions start the plug first, one of the two is
wrong, and with the wrong one the ring is forgotten in a place that is already shut.
Only commands count: a verb that begins a sentence, or follows a comma, "and" or "then".
What is done "before", "after", "first" or "while" something else is, stands in any order, and is not told.
It is an error where the text says "then".

Wrong:

```yaml procedure
sections:
  - title: Close
    steps:
      - step: Clean the [drop-box], and inspect it.
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: stop, say: Look for the leak.}
          - clean: drop-box   #! actions-out-of-order
```

Right:

```yaml procedure
sections:
  - title: Close
    steps:
      - step: Clean the [drop-box], and inspect it.
        do:
          - clean: drop-box
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: stop, say: Look for the leak.}
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.brackets import BRACKET
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure, Step
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L1", "N11")

_FEWEST = 2
# Time turned round, or several things at one time: the order of the words is not that of the work.
_ELSEWHEN = re.compile(
    r"\b(?:before|beforehand|after|afterwards|first|while|meanwhile|until|once|together|at the same time)\b",
    re.IGNORECASE,
)
_FORBIDS = re.compile(r"\b(?:not|never|nor)\b", re.IGNORECASE)
_SENTENCE_END = re.compile(r"[.;:!?]")
# What may stand before a command, reading backwards from it.
_OPENS = re.compile(r"(?:^|[.;:!?,]|\b(?:and|then|finally|now))\s*(?:\w+ly\s+)?\Z", re.IGNORECASE)
_THEN = re.compile(r"\bthen\s*(?:\w+ly\s+)?\Z", re.IGNORECASE)
_LOOKED_BACK = 40


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each step whose text commands one action before another that stands before it."""
    for _, step in procedure.steps():
        if step.written and len(step.actions) >= _FEWEST and _ELSEWHEN.search(step.text) is None:
            yield from _turned_round(step)


def _turned_round(step: Step) -> Iterator[Fault]:
    """Yield a fault for the first two commands of a step whose actions, all of them, stand the other way round."""
    text = _without_names(step.text)
    said = _commands(step, text)
    commands = sorted(said)
    for place, earlier in enumerate(commands):
        for later in commands[place + 1 :]:
            if min(said[earlier]) <= max(said[later]):
                continue
            late, soon = step.actions[min(said[earlier])], step.actions[max(said[later])]
            severity = Severity.ERROR if _THEN.search(text, max(0, later - _LOOKED_BACK), later) else None
            yield Fault(
                f'The text says "{late.kind.name}" above "{soon.kind.name}", but the actions stand the other way round.'
                if late.kind is not soon.kind
                else f'The two actions "{late.kind.name}" stand the other way round than the text tells them.',
                late.where.span,
                "Bring the actions into the order of the text, or say it in the order in which it is done.",
                (Related(step.where.of("step"), "the text of this step"),),
                severity=severity,
            )
            return


def _commands(step: Step, text: str) -> dict[int, list[int]]:
    """Return, for each command of a text that is surely that of an action, its place and the numbers of its actions."""
    kinds = {action.kind.name: action.kind for action in step.actions}
    found = {name: _places(text, kind.words) for name, kind in kinds.items()}
    every = sorted({place for places in found.values() for place in places})
    said: dict[int, list[int]] = {}
    for number, action in enumerate(step.actions):
        places = found[action.kind.name]
        if len(places) > 1:
            places = [one for one in places if _names(action, step.text[one : _next(every, one, len(text))])]
        if len(places) == 1:
            said.setdefault(places[0], []).append(number)
    return said


def _names(action: Action, part: str) -> bool:
    """Tell whether a part of a text names what an action is done to."""
    return any(match[1] in action.what for match in BRACKET.finditer(part))


def _next(places: Sequence[int], place: int, end: int) -> int:
    return next((one for one in places if one > place), end)


def _places(text: str, words: tuple[str, ...]) -> list[int]:
    """Return where one of these verbs is a command, in reading order."""
    return [
        match.start()
        for match in _verbs(words).finditer(text)
        if _OPENS.search(text, max(0, match.start() - _LOOKED_BACK), match.start())
        and _FORBIDS.search(_sentence(text, match.start())) is None
    ]


def _sentence(text: str, place: int) -> str:
    begin = max((match.end() for match in _SENTENCE_END.finditer(text, 0, place)), default=0)
    end = _SENTENCE_END.search(text, place)
    return text[begin : end.start() if end is not None else len(text)]


def _without_names(text: str) -> str:
    """Return a text of the same length in which a name is neither a word nor a gap."""
    bare = BRACKET.sub(lambda match: "#" * len(match[0]), text)
    return bare.replace("*", " ").replace("_", " ")


@cache
def _verbs(words: tuple[str, ...]) -> re.Pattern[str]:
    """Return what finds the first word of any of these verbs, whose parts may stand apart inside a sentence."""
    verbs = (rf"{first}\b" + (rf"(?=[^.;:]*?\b{rest}\b)" if rest else "") for first, _, rest in _parted(words))
    return re.compile(rf"\b(?:{'|'.join(verbs)})", re.IGNORECASE)


def _parted(words: tuple[str, ...]) -> Iterator[tuple[str, str, str]]:
    for word in words:
        yield word.partition(" ")
