"""A file is far too large to be a procedure.

A file of more than 1 MB is not read at all: it is most likely the wrong file, such as a photograph with another ending.
A long procedure has some 60 kB.
No example is long enough to show it.

Right:

```yaml procedure
title: Check the oil level of the drop box
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ()
