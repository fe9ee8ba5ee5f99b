"""A file of the library cannot be opened.

The system refuses it: it is gone, locked by another program, a folder, or not yours to read.
What stands in it is unknown, so nothing that refers to it can be checked.
No example shows it, because an example is never on a disk.

Right:

```yaml procedure
title: Check the oil level of the drop box
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ()
