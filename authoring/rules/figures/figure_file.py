"""The picture of a figure, or of a tool, is not there or cannot be shown.

The step says "as in figure 2" and the page has a hole.
PNG, JPEG and SVG files inside the library can be shown; an SVG may not reach outside itself.

Wrong:

```yaml procedure
figures:
  box: {file: drop-bix.svg, title: The drop box, alt: The level plug is low on the left face.}   #! figure-file
  plate: {file: broken.png, title: The data plate, alt: The plate is riveted above the axle.}   #! figure-file
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        figures: [box, plate]
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

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.library import Library
from authoring.model.pictures import pictures
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("F1",)
ABOUT = ("picture",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each figure, and each drawing of a tool, whose file is missing or no picture."""
    for figure in (picture.figure for picture in pictures(library)):
        image = library.images.get(figure.file)
        if image is None and library.partial:
            continue  # it may be the file that could not be read
        if image is None:
            message = f'The library has no picture "{figure.file}".'
            cure = did_you_mean(figure.file, library.images) or "Put the file into the library, under this path."
            yield Fault(message, figure.where.of("file"), cure)
        elif isinstance(image, str):
            message = f'The picture "{figure.file}" cannot be shown. {image}'
            yield Fault(message, figure.where.of("file"), "Save it again as PNG, JPEG or SVG.")
