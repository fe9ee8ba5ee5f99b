"""Ours held against what is published, and how far the two were apart: measured here, told at the end of the run."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any

from tests.outside.kept import BOUND, TRAP, Row, allowance, computations_of, number, role_of

Record = dict[str, Any]
"""One row that one test held ours against: `of`, `id`, `role`, how many `values`, and the `worst` relative error."""


class Agreement:
    """What one test held against published rows; `records` are plain data, so that they pass between processes."""

    def __init__(self) -> None:
        """Begin with nothing held."""
        self.records: list[Record] = []

    def __call__(self, row: Row, ours: Any, *, of: str | None = None) -> None:
        """Assert that ours is what the row publishes, as near as it says, and keep how near that was.

        Lists and mappings are held item by item.
        `of` says which computation, where the row checks several.
        """
        assert role_of(row) not in (BOUND, TRAP), f"{row['id']} is no value to agree with"
        pairs = list(_pairs(ours, row["published"]))
        errors = [_error(one, published) for one, published in pairs]
        self._keep(row, of, len(pairs), max(errors))
        for one, published in pairs:
            assert _agrees(row, one, published), f"{row['id']}: ours is {one}, published is {published}"

    def at_most(self, row: Row, ours: Any, *, of: str | None = None) -> None:
        """Assert that ours does not exceed the published bound, item by item."""
        self._bound(row, _pairs(ours, row["published"]), of)

    def at_least(self, row: Row, ours: Any, *, of: str | None = None) -> None:
        """Assert that ours does not fall below the published bound, item by item."""
        self._bound(row, ((published, one) for one, published in _pairs(ours, row["published"])), of)

    def not_wrong(self, row: Row, ours: Any, *, of: str | None = None) -> None:
        """Assert that ours is not the known wrong value: a number by the share `by`, a text by being another."""
        assert role_of(row) == TRAP, f"{row['id']} is no trap"
        self._keep(row, of, 1, None)
        wrong = number(row["wrong"])
        if wrong is None:
            assert ours != row["wrong"], f"{row['id']}: ours is the wrong {ours}"
        else:
            assert abs(float(ours) / float(wrong) - 1) >= row["by"], f"{row['id']}: ours is {float(ours)}"

    def _bound(self, row: Row, pairs: Iterable[tuple[Any, Any]], of: str | None) -> None:
        assert role_of(row) == BOUND, f"{row['id']} is no bound"
        held = list(pairs)
        self._keep(row, of, len(held), None)
        for less, more in held:
            assert _exact(less) <= _exact(more), f"{row['id']}: {less} is above {more}"

    def _keep(self, row: Row, of: str | None, values: int, worst: float | None) -> None:
        named = computations_of(row)
        computation = named[0] if of is None and len(named) == 1 else of
        assert computation in named, f"{row['id']} checks {named}; say which"
        self.records.append(
            {"of": computation, "id": row["id"], "role": role_of(row), "values": values, "worst": worst}
        )


def _pairs(ours: Any, published: Any) -> Iterable[tuple[Any, Any]]:
    if isinstance(published, Mapping):
        assert set(ours) == set(published), f"{sorted(ours)} are not {sorted(published)}"
        for key, value in published.items():
            yield from _pairs(ours[key], value)
    elif isinstance(published, list):
        assert len(ours) == len(published), f"{len(ours)} values for {len(published)}"
        for one, value in zip(ours, published, strict=True):
            yield from _pairs(one, value)
    else:
        yield ours, published


def _agrees(row: Mapping[str, Any], ours: Any, published: Any) -> bool:
    value = number(published)
    if ours is None or value is None or isinstance(ours, bool | str):
        return bool(ours == published)
    allowed = allowance(dict(row), published)
    # Exact numbers are compared exactly; half a last digit is itself a rounded number of the machine.
    return _exact(ours) == value if allowed is None else abs(_exact(ours) - value) <= Fraction(allowed * (1 + 1e-12))


def _error(ours: Any, published: Any) -> float:
    """Return the relative error of a number, the error itself where zero is published, and 0 or 1 for a text."""
    value = number(published)
    if ours is None or value is None or isinstance(ours, bool | str):
        return 0.0 if ours == published else 1.0
    return float(abs(_exact(ours) - value) / (abs(value) or 1))


def _exact(value: Any) -> Fraction:
    return Fraction(value) if isinstance(value, int | float | Fraction | str) else Fraction(float(value))
