"""The shop's safety policy for the page of what was checked: what it asks, why, and what it loosens."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.blocks import Cell, Table
from authoring.booklet.words import Text, Words
from authoring.diagnostics.words import joined
from authoring.model.policies import EVERYWHERE, looser, policies_of
from authoring.model.policy import Policy
from authoring.model.policy_defaults import DEFAULTS
from authoring.model.things import Shop, Stock

_BOUNDS = {
    "hotter-than": "hotter than",
    "heavier-than": "heavier than",
    "above-pressure": "under more than",
    "above-voltage": "at more direct voltage than",
    "above-voltage-ac": "at more alternating voltage than",
    "higher-than": "worked on higher than",
}
_BURNS = "where a touch burns"
_WHILE = {"running": "while something runs", "raised": "while it is up and not held"}


def policy_tables(shop: Shop | None, stock: Stock | None) -> Iterator[Table]:
    """Yield the tables of what the shop asks, what it loosens and what is asked of every shop, as far as there is any.

    The defaults that the shop has not changed are told with their sources, since they are taken as given.
    """
    if shop is not None and shop.policy:
        yield from _stated_by(shop, stock)
    stated = shop.policy if shop is not None else {}
    defaults = tuple(
        (
            Cell((Words(policy.id, "strong"),)),
            Cell((Words(f"{_situation(policy, shop)}: {_asks(policy, stock)}"),)),
            Cell((Words(f"{policy.source}, {policy.status}"),)),
        )
        for policy in DEFAULTS.values()
        if policy.id not in stated
    )
    if defaults:
        heads = ("Default", "In which situation it asks what", "Where it comes from")
        yield Table("defaults", "Asked of every shop, as far as facts are stated", heads, defaults, (22, 46, 32))


def _stated_by(shop: Shop, stock: Stock | None) -> Iterator[Table]:
    known = policies_of(shop)
    rows = tuple(
        (
            Cell((Words(name, "strong"),)),
            Cell((Words(f"{_situation(known[name], shop)}: {_asks(known[name], stock)}"),)),
            Cell((Words(known[name].why),)),
        )
        for name in shop.policy
    )
    heads = ("Policy", "In which situation it asks what", "Why")
    yield Table("policy", "The shop's safety policy", heads, rows, (22, 46, 32))
    loosened = tuple(_loosened(policy, shop) for policy in shop.policy.values() if policy.loosened)
    if loosened:
        heads = ("Default", "Where it comes from", "Why the shop asks less")
        yield Table("loosened", "Asked less than by default", heads, loosened, (30, 32, 38))


def _loosened(policy: Policy, shop: Shop) -> tuple[Cell, ...]:
    default = DEFAULTS.get(policy.id)
    less = joined([_less(key, policy, default) for key in looser(policy, shop)] if default is not None else [], "and")
    source = f"{default.source}, {default.status}" if default is not None else ""
    name: Text = (Words(policy.id, "strong"), Words(f": {less}"))
    return Cell(name), Cell((Words(source),)), Cell((Words(policy.loosened or ""),))


def _less(key: str, policy: Policy, default: Policy) -> str:
    """Return one key at which a shop asks less, with what the default asks."""
    return f"{key} {_stated(key, policy)} instead of {_stated(key, default)}"


def _stated(key: str, policy: Policy) -> str:
    if key in _BOUNDS:
        bound = policy.bounds.get(key)
        return bound.text if bound is not None else _BURNS
    if key == "acts":
        return joined(sorted(policy.acts or EVERYWHERE), "and")
    stated = {
        "hazard": policy.hazard or policy.sort,
        "only-while": policy.only_while,
        "severity": policy.severity,
        "likelihood": policy.likelihood,
        "persons": policy.persons,
    }
    return str(stated[key] or "any")


def _situation(policy: Policy, shop: Shop | None) -> str:
    acts = sorted(policy.acts or EVERYWHERE)
    done = joined(["touched" if act == "touch" else act.replace("-", " ") for act in acts], "or")
    hazard = shop.hazards.get(policy.hazard or "") if shop is not None else None
    told = [hazard.name if hazard is not None else policy.sort or "anything"]
    told += [f"{_BOUNDS[key]} {bound.text if bound is not None else _BURNS}" for key, bound in policy.bounds.items()]
    told += [_WHILE[policy.only_while]] if policy.only_while is not None else []
    return f"{', '.join(told)} ({done})"


def _asks(policy: Policy, stock: Stock | None) -> str:
    told = []
    if policy.asks_message:
        told.append(f"a safety message{_least(policy)}")
    if policy.wear:
        told += [_called(name, stock) for name in policy.wear]
    if policy.hold:
        told.append("a hold point before it")
    if policy.persons is not None:
        told.append(f"{policy.persons} persons" if policy.persons > 1 else "one person")
    return "; ".join(told)


def _least(policy: Policy) -> str:
    """Return what a message states at least, as it follows "a safety message"."""
    harm = {None: "harm", "death": "death"}.get(policy.severity, f"{policy.severity} harm")
    happens = f" that {policy.likelihood} happen" if policy.likelihood is not None else ""
    return f" of {harm}{happens}, or worse" if policy.severity is not None or happens else ""


def _called(name: str, stock: Stock | None) -> str:
    thing = (stock.tools.get(name) or stock.consumables.get(name)) if stock is not None else None
    return thing.name if thing is not None else name
