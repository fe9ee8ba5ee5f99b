"""What single checks came to, put together into the findings of the whole library."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.checking.known import Apart, Base, Head, Left, State
from authoring.diagnostics.diagnostic import Diagnostic, Span, in_order
from authoring.rules.rule import Rule
from authoring.rules.settle import Allowed, settle


class Outcome(Struct, frozen=True):
    """What a check came to: the findings that stand, those that are allowed, and the number of procedures."""

    findings: list[Diagnostic]
    allowed: Allowed
    procedures: int


class _Allowing(Struct, frozen=True):
    allowances: Sequence[Left]
    partial: bool


def together(
    state: State, unread: Sequence[Diagnostic], rules: Callable[[], Mapping[str, Rule]], *, partial: bool
) -> Outcome:
    """Return what a library comes to whose every file is kept in `state`; the base must be there.

    `rules` is asked where something is allowed, and for nothing else.
    """
    heads = {path: one.head for path, one in state.files.items() if one.head is not None}
    checked = {path: one.apart for path, one in state.files.items() if one.apart is not None}
    base = state.base
    if base is None:
        message = "a library is put together before its shared files were checked"
        raise ValueError(message)
    found = [*unread, *(one for head in heads.values() if not head.kind for one in head.told), *base.found]
    found += [one for apart in checked.values() for one in apart.found]
    found += _once(base, checked)
    found += _every(state.table, base, heads, checked) if not partial else ()
    found += [one for weighed in state.weighed.values() for one in weighed.found]
    left = [one for head in heads.values() for one in head.left]
    standing, allowed = settle(in_order(found), _Allowing(left, partial), rules() if left else {})
    return Outcome(in_order(standing), allowed, sum(head.kind == "procedure" for head in heads.values()))


def _once(base: Base, checked: Mapping[str, Apart]) -> Iterator[Diagnostic]:
    told: set[tuple[str, Span]] = set()
    for findings in (base.once, *(apart.once for apart in checked.values())):
        new = [one for one in findings if (one.rule, one.span) not in told]
        told |= {(one.rule, one.span) for one in new}
        yield from new


def _every(
    table: Sequence[Diagnostic], base: Base, heads: Mapping[str, Head], checked: Mapping[str, Apart]
) -> Iterator[Diagnostic]:
    """Yield what all tell who have something to say of a file: of equipment, its procedures; else all, and the base."""
    everybody = [set(base.every), *(set(apart.every) for apart in checked.values())]
    of_all = set.intersection(*everybody)
    fitments = {(one.rule, one.span, one.message): one for one in base.in_shop}
    for path, head in heads.items():
        if head.kind == "equipment":
            mine = [
                set(checked[one].every)
                for one, other in heads.items()
                if other.equipment == head.name and one in checked
            ]
            agreed = set.intersection(*mine) if mine else set(base.every)
        else:
            agreed = of_all if head.kind in {"shop", "stock"} else set()
        for place in sorted(agreed):
            one = table[place]
            if one.span.file == path:
                yield fitments.get((one.rule, one.span, one.message), one)
