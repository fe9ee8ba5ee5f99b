"""A class of bolts looks like a property class, and there is none of that name.

Without a class that is known nobody can say what the bolt bears, so neither the clamp force nor an overload is told.
The classes of steel bolts are those of ISO 898-1; class 9.8 ends at M16.
Stainless steel (A2-70) and nuts (8, 10) have classes of their own, which are left as they are.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M12
    class: "1.9"   #! class-unknown
    on: drop-box
    torque: {value: 60 ± 5 N·m, source: plate, at: line 5}
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M12
    class: "10.9"
    on: drop-box
    torque: {value: 60 ± 5 N·m, source: plate, at: line 5}
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.nearest import one_slip
from authoring.diagnostics.words import joined, quoted
from authoring.model.library import Library
from authoring.model.things import Equipment
from authoring.rules.rule import Fault
from authoring.workshop.metric_thread import metric_thread
from authoring.workshop.proof_load import PROPERTY_CLASSES, proof_stress_mpa

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T1", "N3")
ABOUT = ("class",)

_LIKE_A_CLASS = re.compile(r"[0-9]{1,2}[.,][0-9]{1,2}")


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each metric group whose class has the form of a property class and is none at its size."""
    for group in equipment.fasteners.values():
        thread = metric_thread(group.thread)
        if thread is None or group.strength is None or not _LIKE_A_CLASS.fullmatch(group.strength):
            continue
        # Beyond the sizes of ISO 898-1 its names still hold, though no proof load does.
        known = [one for one in PROPERTY_CLASSES if proof_stress_mpa(one, thread.diameter_mm)] or PROPERTY_CLASSES
        if group.strength not in known:
            likely = joined([quoted(one) for one in _near(group.strength.replace(",", "."), known)], "or")
            read = "Read the class on the head of the bolt or in the source"
            yield Fault(
                f'{group.thread} has no property class "{group.strength}" in ISO 898-1.',
                group.where.of("class"),
                f"{read}; did you mean {likely}?"
                if likely
                else f"{read}: {joined([quoted(one) for one in known], 'or')}.",
            )


def _near(word: str, known: Sequence[str]) -> list[str]:
    """Return every class that a slip of the hand turns into the word: to guess one of two would harden the bolt."""
    return [word] if word in known else [one for one in known if one_slip(word, [one])]
