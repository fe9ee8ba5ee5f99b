"""The parts of a job, counted from the steps that fit them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.booklet.blocks import Table
from authoring.booklet.either import decided_by_either
from authoring.booklet.fasteners import new_fasteners
from authoring.booklet.plan import Placed, Plan, Volume
from authoring.booklet.ready import ready
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.diagnostics.words import joined
from authoring.model.lacking import laid_out
from authoring.model.procedure import Choice
from authoring.model.runs import runs
from authoring.model.specification import When
from authoring.model.things import FastenerGroup, Item, Part


class _Fitting(Struct, frozen=True):
    """How many of a part one step fits, for which vehicles; methods of one step share its number."""

    shared: str
    number: str
    count: int
    when: When


class _Needed(Struct):
    """A part and those that do as well, where it is fitted, and the conditions under which it is the right one."""

    equal: tuple[Part, ...]
    wording: Wording
    volume: Volume
    whens: list[When] = []
    fittings: list[_Fitting] = []


def parts(plan: Plan, wordings: Mapping[str, Wording]) -> Table:
    """Return the list of parts with what marks them: critical, new each time, one of several that do.

    Fasteners that the job throws away and puts on again follow, with their size for a number.
    """
    rows = (*_rows(plan, wordings), *new_fasteners(plan, wordings))
    return ready("parts", "Parts", ("Part", "Number", "Quantity"), (44, 31, 15), rows, "No part.")


def _rows(plan: Plan, wordings: Mapping[str, Wording]) -> Iterator[tuple[Text, ...]]:
    needed: dict[str, _Needed] = {}
    for volume in plan.volumes:
        for placed, action in volume.actions():
            for name in action.what if action.kind.counted else ():
                for equal, when in _candidates(name, volume, placed):
                    known = needed.setdefault(equal[0].id, _Needed(equal, wordings[volume.procedure.number], volume))
                    known.whens.append(when)
                    known.fittings.append(_Fitting(placed.shared, placed.number, action.count, placed.when))
    for one in needed.values():
        numbers = " or ".join(part.number for part in one.equal)
        yield _name(one), (Words(numbers),), (Words(str(_most(one.fittings, one.volume))),)


def _candidates(name: str, volume: Volume, placed: Placed) -> Iterator[tuple[tuple[Part, ...], When]]:
    things = volume.scope.things
    thing = things[name].thing
    if isinstance(thing, Part):
        yield (thing,), placed.when
    elif isinstance(thing, Choice):
        for one in thing.parts:
            equal = tuple(part for other in (one.part, *one.equal) if isinstance(part := things[other].thing, Part))
            if equal and volume.holds(one.when):
                yield equal, one.when


def _name(one: _Needed) -> Text:
    marks = [_marks(part, one.volume) for part in one.equal]
    names = [part.name for part in one.equal]
    if len(names) == 1 or len(set(marks)) == 1:
        either = ", either will do" if len(names) > 1 else ""
        told = f"{' or '.join(names)}{either}{marks[0]}"
    else:
        told = " or ".join(f"{name}{mark}" for name, mark in zip(names, marks, strict=True)) + "; either will do"
    only, _ = decided_by_either(one.whens, one.volume, one.wording)
    known = Words(f"{told}{only}")
    critical = next((part.critical for part in one.equal if part.critical), None)
    return (Words("CRITICAL ", "strong"), known, Words(f". {critical}")) if critical else (known,)


def _marks(part: Part, volume: Volume) -> str:
    once = "new each time" if part.one_time else None
    marks = filter(None, (part.material, once, _seals(part, volume), part.place))
    return "".join(f", {mark}" for mark in marks)


def _seals(part: Part, volume: Volume) -> str | None:
    """Return what a part seals of all that the job touches; None where that is nothing."""
    touched = {name for _, action in volume.actions() for name in action.what}
    things = [volume.scope.things[name].thing for name in sorted(touched)]
    sealed = [one.name for one in things if isinstance(one, Item | FastenerGroup) and part.id in one.seals_with]
    return f"for the {joined(sealed)}" if sealed else None


def _most(fittings: list[_Fitting], volume: Volume) -> int:
    """Return the most that one vehicle takes: methods are not added up, and neither are steps for other vehicles."""
    vehicle = volume.scope.vehicle
    covers = {**volume.procedure.covers, **{feature: (value,) for feature, value in volume.selection.items()}}
    space = laid_out(vehicle, covers, [one.when for one in fittings]) if vehicle is not None else None
    if space is None:
        return _counted(fittings)
    if not space.every:
        return 0
    together = runs(((one, space.where(one.when)) for one in fittings), space.every)
    return max((_counted(list(mine)) for mine, _ in together), default=_counted(fittings))


def _counted(fittings: list[_Fitting]) -> int:
    methods: dict[str, dict[str, int]] = {}
    for one in fittings:
        counts = methods.setdefault(one.shared, {})
        counts[one.number] = counts.get(one.number, 0) + one.count
    return sum(max(counts.values()) for counts in methods.values())
