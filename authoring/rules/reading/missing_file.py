"""The library has no shop file or no stock file.

The shop file holds the shop's units, its people and the sources and safety messages that procedures share;
the stock file holds the tools, parts and consumables that steps name.
No example shows it, because each example is laid over a library that has both.

Right:

```yaml stock
stock: Stores
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("A2",)
