"""Lists and groups lie too deep inside one another.

No file of the language needs more than some ten levels; 64 of them are a slip of the indentation or of the brackets.

Wrong:

```yaml procedure
title: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[
  [[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]   #! nesting-limit
  ]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]
```

Right:

```yaml procedure
title: Check the oil level
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ()
