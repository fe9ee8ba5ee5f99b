"""The policy of a shop file to values."""

from __future__ import annotations

from authoring.model.policy import FACTS, Policy
from authoring.model.reader import Reader


def read_policies(at: Reader) -> dict[str, Policy]:
    """Read a `policy` group; a bound that is refused is told and left out."""
    return {name: _policy(name, one) for name, one in at.each("policy")}


def _policy(name: str, at: Reader) -> Policy:
    bounds = {key: at.quantity(key, dimension) for key, (_, dimension) in FACTS.items() if key in at.data}
    return Policy(
        id=name,
        why=at.text("why"),
        hazard=at.maybe("hazard"),
        acts=frozenset(at.names("acts")) or None,
        only_while=at.maybe("only-while"),
        bounds={key: bound for key, bound in bounds.items() if bound is not None},
        severity=at.maybe("severity"),
        likelihood=at.maybe("likelihood"),
        message=at.maybe("message"),
        wear=at.names("wear"),
        hold=at.data.get("hold", False),
        persons=at.data.get("persons"),
        loosened=at.maybe("loosened"),
        where=at.where,
    )
