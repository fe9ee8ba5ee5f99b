r"""An invisible character stands in a file.

Signs that turn the direction of writing, that have no width or that end lines only in some programs make the file
read otherwise to a person than to the compiler; so what was approved would not be what is printed.
They come along when text is copied from a web page or a word processor.

Wrong:

```yaml procedure
title: "Check the oil\u200b level"   #! forbidden-character
```

Right:

```yaml procedure
title: "Check the oil level"
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("I2",)
