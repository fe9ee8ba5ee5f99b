"""A file has no content.

It may have been saved before it was written, or all of it is a comment.
Whatever it was to hold is missing.

Wrong:

```yaml other
# The procedure is written next week.   #! empty-file
```

Right:

```yaml procedure
# A comment beside content is welcome.
title: Check the oil level
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("A6",)
