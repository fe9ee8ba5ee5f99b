"""One variant of the demo library: a single fault that somebody could have written."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import TypeAlias

from msgspec import Struct

from tests.seeded.criteria import Criterion
from tests.seeded.demo import Demo
from tests.seeded.edits import Edit, Path


class Variant(Struct, frozen=True):
    """One fault in one file.

    `path` leads to what is changed and `told` says how.
    `forms` are ways to write the fault, the likeliest first; the next one is taken where the text betrays the last.
    `plain` is the change without the fault that the last form brings with it; what it alone gives rise to is no catch.
    `text_tells` says that a disagreement of text and action is the fault itself.
    `criterion` decides whether a variant comes to the same although its booklet reads otherwise.
    """

    file: str
    path: Path
    told: str
    forms: tuple[Edit, ...]
    plain: Edit | None = None
    plain_key: str = ""
    text_tells: bool = False
    criterion: Criterion | None = None


Kind: TypeAlias = Callable[[Demo], Iterator[Variant]]
"""One kind of fault: a function whose name says what is done, and whose docstring says how it happens."""

Kinds: TypeAlias = Mapping[str, Kind]
