"""A step asks for too much at once.

Who is interrupted after the second of four acts ticks the step, or does it all again.
A step holds one instruction, or two or three acts that belong together (DOE-STD-1029, from memory).
Worst is the one that hides behind a "then", in the text or in the manner of an action, and is no action of its step:
nothing is proved of it, and nothing counted.

Wrong:

```yaml procedure
sections:
  - title: Open
    steps:
      - step: Loosen and remove the [level-plug], discard the [plug-ring], clean the [drop-box]. #! several-instructions
        do:
          - loosen: level-plug
          - remove: level-plug
          - discard: plug-ring
          - clean: drop-box
```

A second instruction behind "then", which no action stands for.

```yaml procedure
sections:
  - title: Clean
    steps:
      - step: Clean the [drop-box], then tighten its plug. #! several-instructions
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Open
    steps:
      - step: Remove the [level-plug] and discard the [plug-ring].
        do:
          - remove: level-plug
          - discard: plug-ring
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from authoring.diagnostics.diagnostic import Severity
from authoring.model.action_kind import ActionKind
from authoring.model.action_kinds import action_kinds
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Step
from authoring.model.sentences import sentences
from authoring.model.stretch import stretch
from authoring.model.texts import Prose, prose_of_step
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L1",)

MOST = 3
_INSTRUCTS = frozenset({"step", "manner"})

# What "until then" and the like point at is a moment; after a condition, "then" only marks where the command begins.
# Kept as text and compiled at the first "then", since most libraries hold none.
_THEN = r"(?i)(?<!until )(?<!since )(?<!by )(?<!before )(?<!now and )\bthen,? (?:[a-z]+ly )?([a-z]+)"
# These words of actions are said of any handling as well: "then leave it to dry", "then move it to and fro".
_HANDLING = frozenset(
    {"block", "draw", "drive", "hang", "keep", "lay", "leave", "move", "shift", "stick", "tap", "try", "twist"}
)
_CONDITION = re.compile(r"(?:if|when|unless|where|once)\b", re.IGNORECASE)


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each step with more actions than belong together, and for each instruction it hides."""
    for _, step in procedure.steps():
        if len(step.actions) > MOST:
            yield Fault(
                f"This step holds {len(step.actions)} actions; {MOST} are the most that belong together.",
                step.where.of("step") if step.written else step.where.span,
                "Make two steps of it.",
            )
        for prose in prose_of_step(step):
            if prose.part in _INSTRUCTS and "then" in prose.text.lower():
                yield from _hidden(prose, step)


def _hidden(prose: Prose, step: Step) -> Iterator[Fault]:
    """Yield a fault for each verb of the language behind a "then" that no action of the step is told by."""
    mine = {verb for action in step.actions for verb in _verbs(action.kind)}
    for sentence in sentences(prose.text):
        if _CONDITION.match(sentence.text):
            continue
        for match in re.finditer(_THEN, sentence.text):
            verb = match[1].lower()
            if verb in _all_verbs() and verb not in mine:
                start = sentence.start + match.start()
                yield Fault(
                    f'"{verb}" begins a second instruction, and no action of this step stands for it.',
                    stretch(prose, start, sentence.start + match.end()),
                    "Make it a step of its own.",
                )


def _verbs(kind: ActionKind) -> set[str]:
    """Return the first words of an action's verbs, such as take for take off, since the rest may stand apart."""
    return {words.split()[0] for words in kind.words}


@cache
def _all_verbs() -> frozenset[str]:
    verbs = {verb for kind in action_kinds().values() for verb in _verbs(kind)}
    return frozenset(verbs - _HANDLING) | {"repeat"}
