"""A word leaves open how much, or how well.

What a senior technician calls sufficient, an apprentice has to guess.
Say a quantity with its source, a thing that can be seen or felt, or leave the word out.
What a checkpoint finds is described, and may be said in such words; what a step asks for may not,
and neither may its manner, until when it is repeated, or when it is worth doing.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] properly.   #! vague-word
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] until a white [rag] stays white.
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.stretch import stretch
from authoring.model.texts import prose_of
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L5",)

# Our own lists: words that say how well, how much or on what ground without a measure, each with what to say instead.
_HOW_WELL = (
    r"properly|correctly|suitabl[ey]|adequate(?:ly)?|appropriate(?:ly)?|reasonabl[ey]|carefully|thoroughly|securely|"
    r"firmly|fairly|slightly|regularly|periodically|normally|usually|about right|with care|and so on|etc"
)
_HOW_MUCH = (
    r"sufficient(?:ly)?|enough(?! to\b)|approximately|roughly|a (?:little|bit|few|lot)|plenty of|some(?! other\b)|"
    r"several|moderate(?:ly)?|excessive(?:ly)?|for a (?:while|moment|time)"
)
_ON_WHAT_GROUND = (
    r"(?:as|if|when|where) (?:necessary|required|needed|applicable|appropriate|possible)|as far as possible|if in doubt"
)
# Kept as text and compiled at the first find, since most libraries hold none.
_VAGUE = rf"(?i)\b(?:({_ON_WHAT_GROUND})|({_HOW_MUCH})|({_HOW_WELL}))\b"
# One look at small letters, without groups, costs a third of the real search.
_ANY = re.compile(rf"\b(?:{_ON_WHAT_GROUND}|{_HOW_MUCH}|{_HOW_WELL})\b")
_INSTEAD = (
    "Say what is seen, felt or measured when it has to be done, or make it an outcome of a checkpoint.",
    'State the amount under "values" with its source, or what is seen when it is reached.',
    "Say what is seen, felt or measured when it is right, or leave the word out.",
)
_ASKS = frozenset(
    {"step", "say", "else", "manner", "until", "optional", "look", "safe-to-stop", "avoidance", "condition"}
)


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each vague word in a text that asks for something."""
    for prose in prose_of(procedure):
        if prose.part in _ASKS and _ANY.search(prose.text.lower()):
            for match in re.finditer(_VAGUE, prose.text):
                yield Fault(
                    f'"{" ".join(match[0].split())}" leaves open {_open(match)}.',
                    stretch(prose, match.start(), match.end()),
                    _INSTEAD[(match.lastindex or 1) - 1],
                )


def _open(match: re.Match[str]) -> str:
    return ("who decides, and by what", "how much, or how long", "how well, or how often")[(match.lastindex or 1) - 1]
