"""A tool that the shop has made cannot be found, or cannot be made again.

No catalogue has it.
Whoever does not know on which board it hangs looks in vain, and when it is lost nobody knows how it was made.
A tool with `made` says under `place` where it is, and under `drawing` what it looks like.

Wrong:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench, made: by the bench}   #! made-tool-without-place
  gauntlets: {name: heat gauntlets}
```

Right:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  wrench:
    name: torque wrench
    made: by the bench
    place: board 3
    drawing: {file: drop-box.svg, title: The wrench, alt: The handle is round and as long as a forearm.}
  gauntlets: {name: heat gauntlets}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.words import joined, quoted
from authoring.model.library import Library
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("P3",)
ABOUT = ("made-tool",)

_WORDS = {"place": "where it is", "drawing": "what it looks like"}


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each tool the shop has made that lacks its place, its drawing or both."""
    for tool in library.stock.tools.values() if library.stock is not None else ():
        stated = {"place": tool.place, "drawing": tool.drawing}
        missing = [key for key, one in stated.items() if one is None] if tool.made is not None else []
        if missing:
            untold = joined([_WORDS[one] for one in missing], "or")
            yield Fault(
                f'"{tool.id}" was made by the shop, but nobody is told {untold}.',
                tool.where.span,
                f"Add {joined([quoted(key) for key in missing])}.",
            )
