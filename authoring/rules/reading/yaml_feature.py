"""A file uses a feature of YAML that a reader can trip over.

Anchors, aliases, merge keys, tags, directives and second documents make a file mean something that does not stand
where it is read.
A torque behind an alias changes when a line far away does.
Write each value out; what is needed in several places has a name and is stated once.

Wrong:

```yaml procedure
title: &job Check the oil level   #! yaml-feature
job: *job   #! yaml-feature
```

Right:

```yaml procedure
title: Check the oil level
job: The level is read before each season.
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("I2",)
