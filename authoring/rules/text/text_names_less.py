"""An action touches a thing that the step's text does not name.

What is proved must be what is read: a part that comes off in the data and not in the words stays on at the bench.
Every thing an action touches stands in the text in brackets.
The window of a measurement need not, it is printed at the blank.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the drop box.
        do:
          - clean: drop-box   #! text-names-less
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
```

A step without a text gets one made from its actions, which names everything.

```yaml procedure
sections:
  - title: Work
    steps:
      - do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.brackets import brackets
from authoring.model.library import Library
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Action, Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A2", "A6", "N11")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing an action touches and the step's written text leaves out."""
    things = library.scope(procedure).things
    for _, step in procedure.steps():
        named = {one.name for one in brackets(step.text)}
        if not step.written or not named <= things.keys():
            continue  # a mistyped name in the text is told once, where it stands
        missing: dict[str, Mention] = {}
        for action in step.actions:
            for mention in _touched(action):
                if mention.name in things and mention.name not in named:
                    missing.setdefault(mention.name, mention)
        for name, mention in missing.items():
            yield Fault(
                f'The text does not name "{name}", which "{_action_of(mention)}" is about.',
                mention.span,
                f"Put [{name}] into the text where its name stands, or take the action out.",
                (Related(step.where.of("step"), "the text of this step"),),
            )


def _touched(action: Action) -> Iterator[Mention]:
    for mention in touched(action):
        role = action.kind.roles.get(mention.role)
        window = action.kind.checkpoint and mention.role == "value"
        if not window and (role is None or not role.silent):
            yield mention


def _action_of(mention: Mention) -> str:
    path = (*mention.where.path, *mention.keys)
    return str(path[path.index("do") + 2])
