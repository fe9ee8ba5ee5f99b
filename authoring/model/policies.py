"""The demands that count in a shop: its own, and the defaults with what the shop changes of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from types import MappingProxyType

from msgspec.structs import replace

from authoring.model.policy import Policy
from authoring.model.policy_defaults import DEFAULTS
from authoring.model.signal_word import LIKELIHOODS, SEVERITIES
from authoring.model.things import Shop
from authoring.quantities.quantity import Quantity
from authoring.workshop.burns import EIGHT_HOURS, Surface, burn_threshold
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import interval_of

_SAY_NOTHING = frozenset({"", "general"})

EVERYWHERE = frozenset({"near", "touch"})


def policies_of(shop: Shop | None) -> Mapping[str, Policy]:
    """Return every demand by its name: the shop's own first, then the defaults that it does not name."""
    stated = shop.policy if shop is not None else {}
    own = {name: _over(DEFAULTS[name], one) if name in DEFAULTS else one for name, one in stated.items()}
    return MappingProxyType(own | {name: one for name, one in DEFAULTS.items() if name not in own})


def _over(default: Policy, stated: Policy) -> Policy:
    """Return a default with what the shop states of it."""
    return replace(
        default,
        why=stated.why,
        hazard=stated.hazard,
        acts=stated.acts or default.acts,
        only_while=stated.only_while or default.only_while,
        bounds={**default.bounds, **stated.bounds},
        severity=stated.severity or default.severity,
        likelihood=stated.likelihood or default.likelihood,
        message=stated.message,
        wear=stated.wear,
        hold=stated.hold,
        persons=stated.persons or default.persons,
        loosened=stated.loosened,
        where=stated.where,
    )


def looser(stated: Policy, shop: Shop | None) -> Iterator[str]:
    """Yield each key at which a shop asks less than the default of the same name does; nothing where there is none.

    A hazard of its own asks less, unless the messages of that kind have the sign of the default, and no other.
    """
    default = DEFAULTS.get(stated.id)
    if default is None:
        return
    if stated.hazard is not None and default.sort and not _signed(stated.hazard, default.sign, shop):
        yield "hazard"
    if stated.acts is not None and not _covers(stated.acts, default.acts or EVERYWHERE):
        yield "acts"
    if stated.only_while not in {None, default.only_while}:
        yield "only-while"
    for key, bound in stated.bounds.items():
        if key not in default.bounds or top(bound) > _least(default.bounds[key]):
            yield key
    if stated.severity is not None and _below(stated.severity, default.severity, SEVERITIES):
        yield "severity"
    if stated.likelihood is not None and _below(stated.likelihood, default.likelihood, LIKELIHOODS):
        yield "likelihood"
    if stated.persons is not None and stated.persons < (default.persons or 0):
        yield "persons"


def _signed(hazard: str, sign: str, shop: Shop | None) -> bool:
    messages = shop.safety.values() if shop is not None else ()
    return {one.sign for one in messages if one.of == hazard} - _SAY_NOTHING == {sign}


def _covers(acts: frozenset[str], wanted: frozenset[str]) -> bool:
    missing = wanted - acts
    return not (missing & {"near"} if "touch" in acts else missing)


def _below(stated: str, default: str | None, order: tuple[str, ...]) -> bool:
    return default is not None and order.index(stated) > order.index(default)


def _least(bound: Quantity | None) -> Fraction:
    """Return the value that a bound of a default never lies below; where touches burn, for the longest of them."""
    if bound is not None:
        return top(bound)
    found = (burn_threshold(surface, EIGHT_HOURS) for surface in Surface)
    return min(one for one in found if not isinstance(one, Impossible))


def top(quantity: Quantity | None) -> Fraction:
    """Return the upper end of what is stated, in base units, or the lower one where it is open; 0 for nothing."""
    if quantity is None:
        return Fraction(0)
    interval = interval_of(quantity)
    found = interval.low if interval.high is None else interval.high
    return Fraction(0) if found is None else found
