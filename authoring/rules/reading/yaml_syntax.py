"""A file is not readable as YAML.

A bracket or quote is not closed, a colon is missing or one too many, or a line is not indented like its neighbours.
Nothing of the file can be checked until that is mended.
Text that holds a colon with a space behind it goes into quotes.

Wrong:

```yaml procedure
title: Check: the oil level   #! yaml-syntax
```

Right:

```yaml procedure
title: "Check: the oil level"
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ()
