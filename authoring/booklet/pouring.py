"""How much of each fluid a job pours, for the list of what must be at hand."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.booklet.plan import Placed, Plan, Volume
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.model.fluid import Fluid
from authoring.model.procedure import Action
from authoring.model.things import Value

_AS_NEEDED = "as the level needs"


class _Poured(Struct, frozen=True, eq=False):
    """One amount in words, the step that pours it, and the procedure that the step is in."""

    amount: Text
    placed: Placed
    volume: Volume


class _Pourings:
    """What is poured of one fluid, one after another, and from which of them on it was not drained again."""

    def __init__(self) -> None:
        self._poured: list[_Poured] = []
        self._drained = 0
        self._method = ("", "")

    def drain(self) -> None:
        """Count anew what a later level is expected to take."""
        self._drained = len(self._poured)

    def pour(self, action: Action, placed: Placed, volume: Volume, wording: Wording) -> None:
        """Add what a step pours; of several methods one is done, so what the first pours stands for all."""
        if self._method[0] == placed.shared and self._method[1] != placed.number:
            return
        self._method = (placed.shared, placed.number)
        expected = _amount(action, "expected", volume, wording)
        amount = _amount(action, "amount", volume, wording) or (Words(_AS_NEEDED),)
        if expected:
            amount = (*expected, *self._in_all(placed, volume))
        self._poured.append(_Poured(amount, placed, volume))

    def _in_all(self, level: Placed, volume: Volume) -> Text:
        """Return the words after the amount that is expected in all since the draining, which counts what it takes in.

        The fillings since then are part of it and go out of the list, but not those of machines or procedures that
        have no such level.
        """
        since = self._poured[self._drained :]
        if all(one.volume is volume and _has(one.placed, level) for one in since):
            del self._poured[self._drained :]
            return (Words(f", {_AS_NEEDED}"),)
        return (Words(f" in all, {_AS_NEEDED}"),)

    def text(self) -> Text:
        """Return the amounts in words."""
        words: Text = ()
        for one in self._poured:
            words = (*words, Words(", then "), *one.amount) if words else one.amount
        return words


def pourings(plan: Plan, wordings: Mapping[str, Wording]) -> Iterator[tuple[Text, ...]]:
    """Yield a row for each fluid that the steps pour: its name, its kind and how much."""
    poured: dict[str, tuple[Fluid, _Pourings]] = {}
    for volume in plan.volumes:
        wording = wordings[volume.procedure.number]
        for placed, action in volume.actions():
            for name in action.what:
                fluid = volume.scope.things[name].thing
                if isinstance(fluid, Fluid) and action.kind.pours:
                    poured.setdefault(name, (fluid, _Pourings()))[1].pour(action, placed, volume, wording)
                elif name in poured and action.kind.name in {"drain", "extract"}:
                    poured[name][1].drain()
    for fluid, amounts in poured.values():
        yield (Words(fluid.name),), (Words(fluid.kind),), amounts.text()


def _amount(action: Action, role: str, volume: Volume, wording: Wording) -> Text:
    named = volume.scope.things.get(action.roles.get(role, ""))
    return wording.amount_of(named) if named is not None and isinstance(named.thing, Value) else ()


def _has(earlier: Placed, level: Placed) -> bool:
    """Tell whether every machine for which the earlier step is done comes to the level as well."""
    return all(
        feature in earlier.when and set(earlier.when[feature]) <= set(values) for feature, values in level.when.items()
    )
