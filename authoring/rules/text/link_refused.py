"""A link, picture or tag stands in a text that a booklet does not carry.

A booklet is read on paper and without a network, and nobody follows a link to a file of somebody's machine.
Texts may hold links to web and mail addresses.
Tags of a web page are printed as they were typed; a picture belongs under `figures`, where it has a title and
words for those who cannot see it.

Wrong:

```yaml procedure
job: See [the old sheet](file:///old/sheet.pdf).   #! link-refused
conditions:
  - The machine stands <b>level</b>.   #! link-refused link-refused
  - It looks like ![this](level.png).   #! link-refused
```

A name in brackets becomes a link when a parenthesis follows at once.

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box](all sides).   #! link-refused
        do:
          - clean: drop-box   #! text-names-less
```

Right:

```yaml procedure
job: See [the maker's notes](https://example.org/notes) or write to [the shop](mailto:shop@example.org).
conditions:
  - The machine stands *level*, with less than a hand's breadth < two fingers to spare.
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box] (all sides).
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.texts import Prose, prose_of, prose_of_message
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("F2", "E1")

# Kept as text and compiled at the first sign of one, since most libraries hold none.
_LINK = r"(?<!\\)(?P<sign>!?)\[(?P<words>[^\[\]]*)\]\((?P<to>(?:[^()]|\([^()]*\))*)\)?"
_TAG = r"(?i)(?<!\\)<(?:/?[a-z][a-z0-9-]*(?:\s[^<>]*)?/?|!--[^>]*--|[a-z][a-z0-9+.-]*:[^<>\s]*)>"
_WEB = ("http://", "https://", "mailto:")


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each link, picture and tag that a booklet does not carry."""
    for procedure in library.procedures.values():
        for prose in prose_of(procedure):
            yield from _refused(prose)
    for message in library.shop.safety.values() if library.shop is not None else ():
        for prose in prose_of_message(message):
            yield from _refused(prose)


def _refused(prose: Prose) -> Iterator[Fault]:
    if "](" in prose.text:
        for link in re.finditer(_LINK, prose.text):
            wrong = _link(link)
            if wrong:
                yield _at(prose, link, *wrong)
    if "<" in prose.text:
        for tag in re.finditer(_TAG, prose.text):
            cure = "Take it out; for stress write *word*, for an address [words](https://…)."
            yield _at(prose, tag, f'"{tag[0]}" would be printed as it stands.', cure)


def _link(link: re.Match[str]) -> tuple[str, str] | None:
    """Return what is wrong with a link and its cure, or None when it is lawful."""
    target = link["to"].strip().strip("<>")
    if link["sign"]:
        return "A picture stands in a text.", 'State it under "figures", and list it under "figures" of a step.'
    if not link[0].endswith(")"):
        return "The parenthesis behind the bracket is never closed.", "Close it, or put a space before it."
    if target.lower().startswith(_WEB):
        return None
    cure = "Link to an address that begins with https:// or mailto:, or put a space before the parenthesis."
    return f'The link to "{target}" leads to no web or mail address.', cure


def _at(prose: Prose, found: re.Match[str], message: str, cure: str) -> Fault:
    nth = prose.text[: found.start()].count(found[0])
    return Fault(message, prose.where.find(found[0], *prose.keys, nth=nth), cure)
