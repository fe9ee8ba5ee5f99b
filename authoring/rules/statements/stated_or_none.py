"""Something that only the author knows was left unsaid.

An absent list and an empty one are different facts: "none" is an answer, a missing key is a forgotten question.
Each procedure states why it is done, who may do it, how many it takes, how long, what must be so before,
and which hazards hold throughout; where there is no condition or hazard, it says none.

Wrong:

```yaml procedure without audience hazards
procedure: FL-110   #! stated-or-none stated-or-none
```

Right:

```yaml procedure
audience: Apprentice in the second year, under a technician.
conditions: none
hazards: none
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.stated import stated
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A1", "A4")

_ASKED = {
    "job": ("why and when the job is done", 'Add "job:" with a sentence.'),
    "audience": ("who may do the job", 'Add "audience:" with the training it takes.'),
    "persons": ("how many people the job takes", 'Add "persons:" with a number.'),
    "time": ("how long the job takes", 'Add "time:", such as 45 min.'),
    "conditions": ("what must be so before the job starts", 'Add "conditions:" with a list, or the word none.'),
    "hazards": (
        "which hazards hold for the whole job",
        'Add "hazards:" with a list of safety messages, or the word none.',
    ),
}


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for each of these keys that the procedure leaves out."""
    for key, (what, cure) in _ASKED.items():
        if not stated(procedure.where, key):
            yield Fault(f"The procedure does not state {what}.", procedure.where.key("procedure"), cure)
