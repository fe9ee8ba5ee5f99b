"""The variants of the suite: few of each kind, the same in every run, and the same for as long as they can be made.

Which ones they are follows from their words alone, so that an edit elsewhere in the demo library picks no others.
The longest procedure takes as long as all the others together; it is left to the whole run where a kind has others.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable

from tests.seeded.demo import Demo
from tests.seeded.variant import Variant

OF_EACH = 2


def sample(kind: str, found: Iterable[Variant], demo: Demo) -> list[Variant]:
    """Return the variants of a kind that the suite judges."""
    costly = _costly(demo)
    return sorted(found, key=lambda one: (one.file in costly, _rank(kind, one)))[:OF_EACH]


def _costly(demo: Demo) -> set[str]:
    """Return the longest procedure, and the files of which each change bears on it."""
    longest = max(demo.of_kind("procedure"), key=lambda one: len(one.text))
    machine = {one.file for one in demo.of_kind("equipment") if one.data["equipment"] == longest.data["equipment"]}
    return {longest.file, *machine, *(one.file for kind in ("shop", "stock") for one in demo.of_kind(kind))}


def _rank(kind: str, variant: Variant) -> bytes:
    return hashlib.sha256(f"{kind} {variant.file} {variant.told}".encode()).digest()
