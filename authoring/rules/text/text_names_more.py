"""A step's text names a thing that its actions do not touch.

What a step does is proved, and its tools are listed, by its actions; what only the text says is done by the reader
and known to nobody: a cover that comes off in words only never has to go back on.
Brackets in a step's text, and in the manner of its actions, are for what the step touches, needs, holds or leaves
alone, and for the tools and consumables under `with`.
Figures, steps, sections and other procedures may be named as well; a place can be said in plain words.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box] around the [level-plug] with a [rag].   #! text-names-more text-names-more
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box] around its level plug with a [rag].
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity, Span
from authoring.model.action_kind import Kind
from authoring.model.brackets import brackets
from authoring.model.library import Library, Named
from authoring.model.mentions import of_step
from authoring.model.procedure import Procedure, Step
from authoring.model.texts import Prose, prose_of_step
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A2", "A6", "N11")

_USED = frozenset({Kind.TOOL, Kind.CONSUMABLE})
_POINTED_TO = frozenset({Kind.FIGURE, Kind.SECTION, Kind.STEP, Kind.PROCEDURE})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that a step's text or manner names and the step neither touches nor uses."""
    things = library.scope(procedure).things
    for _, step in procedure.steps():
        named = [(one, prose) for prose in _instructs(step) for one in brackets(prose.text) if one.nth == 0]
        if not named or not step.actions:
            continue
        concerned = [mention for mention in of_step(step) if mention.wants == "thing" and mention.role != "state"]
        touched = {mention.name for mention in concerned if mention.role != "bears-on"}
        if not {mention.name for mention in concerned} <= things.keys():
            continue  # a mistyped name in the data is told once, where it stands
        for one, prose in named:
            thing = things.get(one.name)
            if one.name not in touched and thing and thing.kind not in _POINTED_TO:
                yield _more(thing, prose.where.find(one.typed, *prose.keys, nth=one.nth))


def _instructs(step: Step) -> Iterator[Prose]:
    return (prose for prose in prose_of_step(step) if prose.part in {"step", "manner"})


def _more(thing: Named, span: Span) -> Fault:
    if thing.kind in _USED:
        message = f'The text names "{thing.id}", but the step does not list it under "with".'
        return Fault(message, span, f'Add "{thing.id}" to "with", or say it without brackets.')
    message = f'The text names "{thing.id}", but no action of this step touches it.'
    return Fault(message, span, 'Add the action that is done to it under "do", or say it without brackets.')
