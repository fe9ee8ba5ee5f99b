"""A step and what belongs to it do not stand on one page of the PDF.

Who has to turn the page between a caution and its step, or between a step and its torque, works from memory.
This is measured on the pages themselves, so it is told when a PDF is built and not when a library is checked.
A step that is longer than a page cannot be kept whole: say it in two steps.
The same goes for what fits one page together: a heading with its first step, and a step that must be done in time
with the step where its clock starts.
Contents that are longer than a page are told as well: take some sections into a procedure of their own.
No example shows it, because pages are made only when a booklet is built.

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S5", "Y1", "N10")
