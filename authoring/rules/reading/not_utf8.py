"""A file is not saved as UTF-8.

Signs such as ° and µ are then other signs to whoever reads the file next, and a wrong sign in a torque is not seen.
Every editor can save as UTF-8; most do so unless told otherwise.
No example shows it, because this page is UTF-8 itself.

Right:

```yaml procedure
title: Check the oil level – "as ever"
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ()
