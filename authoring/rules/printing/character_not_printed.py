"""A text holds a character that a booklet cannot print.

Booklets are set in the fonts that come with them, so that the same library gives the same pages on every machine.
A character these fonts lack would be an empty box on the page, and an apprentice would have to guess.
Comments are not printed and may hold any character.

Wrong:

```yaml procedure
job: The level is read before each season 😀.   #! character-not-printed
```

Right:

```yaml procedure
# A comment may laugh: 😀
job: The level is read before each season; é, ł, ß, ½ and → can be printed.
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS = ("E1", "Y4", "N15")
