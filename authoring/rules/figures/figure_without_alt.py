"""A figure cannot be read by somebody who does not see it.

The text in `alt` says what is where: it is read aloud, and it stands in for the picture on a bad print.
The title repeated says nothing new (PDF/UA asks for a text that replaces the picture).

Wrong:

```yaml procedure
figures:
  box: {file: drop-box.svg, title: The drop box}   #! figure-without-alt
  side:
    file: drop-box.svg
    title: The left face
    alt: The left face.   #! figure-without-alt
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        figures: [box, side]
        with: [rag]
        do:
          - clean: drop-box
```

Right:

```yaml procedure
figures:
  box: {file: drop-box.svg, title: The drop box, alt: The level plug is low on the left face.}
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        figures: [box]
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
from authoring.model.pictures import pictures
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("F2",)
ABOUT = ("picture",)

_CURE = 'Say in "alt" what is where, as to somebody on the telephone.'


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each figure or drawing without a text in its place, or with its title only."""
    for picture in pictures(library):
        figure = picture.figure
        if figure.alt is None:
            message = f"The {picture.called} has no text for those who cannot see it."
            yield Fault(message, figure.where.span, _CURE)
        elif _bare(figure.alt) == _bare(figure.title):
            message = f'"alt" of the {picture.called} repeats its title instead of saying what is where.'
            yield Fault(message, figure.where.of("alt"), _CURE)


def _bare(text: str) -> str:
    return " ".join(re.findall(r"\w+", text.casefold()))
