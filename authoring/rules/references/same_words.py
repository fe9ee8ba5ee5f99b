"""Two things are called the same on the page.

Short names differ, but the reader never sees them: who reads "the drain plug" must not have to choose between two.
Things that no vehicle has together may share their words, because a booklet for one vehicle shows only one of them;
sections and figures are compared among themselves only.

Wrong:

```yaml equipment
fluids:
  box-oil: {name: Drop box, kind: gear oil of our grade 2}   #! same-words
```

Right:

```yaml equipment
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.action_kind import Kind
from authoring.model.clashes import clashes
from authoring.model.library import Library, Named
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A6", "P3")

_TOLD_APART = frozenset({Kind.STEP, Kind.PROCEDURE})
_TITLED = frozenset({Kind.SECTION, Kind.FIGURE})


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each thing whose words, small letters and blanks aside, another thing of its scope has."""
    for thing, other in clashes(library, _words, _meet):
        yield Fault(
            f'"{thing.id}" and "{other.id}" are both called "{thing.words}".',
            _place(thing),
            "Call one of them by words of its own, such as where it is or what it is for.",
            (Related(_place(other), "the same words"),),
        )


def _words(named: Named) -> str | None:
    """Return what must differ; a step is told by its number, and a title is no name of a thing."""
    if named.kind in _TOLD_APART:
        return None
    group = named.kind.name if named.kind in _TITLED else ""
    return f"{group} {' '.join(named.words.casefold().split())}"


def _meet(one: Named, other: Named) -> bool:
    """Tell whether a vehicle can have both: no feature asks for a value of one that the other excludes."""
    mine: Mapping[str, tuple[str, ...]] = getattr(one.thing, "when", {})
    theirs: Mapping[str, tuple[str, ...]] = getattr(other.thing, "when", {})
    return all(set(values) & set(theirs[feature]) for feature, values in mine.items() if feature in theirs)


def _place(named: Named) -> Span:
    return named.where.of("title" if named.kind in _TITLED else "name")
