"""On which machines and ways a step is done, held against going through a job once on each of them."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Mapping, Sequence

from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec import Struct

from authoring.model.build import build_library
from authoring.model.course import Act, acts
from authoring.model.fitments import may_hold, together
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Section, Step
from authoring.model.space import Space
from authoring.model.ways import Ways, ways_of
from authoring.source.reader import read_document
from tests.rules.overlay import base_files, overlay

FEATURES = {"brake": ("drum", "disc"), "axle": ("narrow", "wide")}
EQUIPMENT = """
features:
  brake: {name: parking brake, tell: Look behind it., values: {drum: drum brake, disc: disc brake}}
  axle: {name: axle, tell: Read the plate., values: {narrow: narrow axle, wide: wide axle}}
items:
  drop-box: {name: drop box}
"""
OTHER = """procedure: {number}
title: Clean the drop box
equipment: hob
job: Dirt hides a leak.
audience: Apprentice in the second year, under a technician.
persons: 1
time: 10 min
conditions: none
hazards: none
sections:
{sections}trial: none
revisions:
  - {{revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}}
"""


class Drawn(Struct, frozen=True):
    """A step as it is drawn: its condition, whether it may be skipped, what it asks for, its methods' conditions."""

    when: str
    optional: bool
    asks: tuple[tuple[str, int], ...]
    methods: tuple[str, ...]
    carries_out: bool


WHENS = st.sampled_from(["", "", "{brake: drum}", "{brake: disc}", "{axle: wide}", "{axle: [narrow]}"])
STEPS = st.builds(
    Drawn,
    WHENS,
    st.booleans(),
    st.lists(st.tuples(st.sampled_from(["unless-done", "if-done"]), st.integers(0, 3)), max_size=2).map(tuple),
    st.lists(WHENS, min_size=2, max_size=3).map(tuple) | st.just(()),
    st.booleans(),
)
SECTIONS = st.lists(st.tuples(WHENS, st.booleans(), st.lists(STEPS, min_size=1, max_size=2)), min_size=1, max_size=2)


def _written(sections: Iterable[tuple[str, bool, Sequence[Drawn]]], called: str) -> str:
    """Return sections as an author writes them; the steps, or their first methods, have the ids s0, s1 and so on."""
    lines, number = [], 0
    for when, optional, steps in sections:
        lines.append(f"  - title: Part {number}")
        lines += [f"    when: {when}"] if when else []
        lines += ["    optional: Worth doing."] if optional else []
        lines.append("    steps:")
        for step in steps:
            lines.append(f"      - {_step(step, f's{number}', called)}")
            number += 1
    return "\n".join(lines) + "\n"


def _step(step: Drawn, name: str, called: str) -> str:
    action = f"{{carry-out: {called}}}" if step.carries_out and called else "{clean: drop-box}"
    keys = [f"do: [{action}]", *(["optional: Worth doing."] if step.optional else [])]
    asks: dict[str, list[str]] = {}
    for key, place in step.asks:
        asks.setdefault(key, []).append(f"s{place}")
    keys += [f"{key}: [{', '.join(dict.fromkeys(ids))}]" for key, ids in asks.items()]
    around = [f"when: {step.when}"] if step.when else []
    if not step.methods:
        return f"{{{', '.join([f'id: {name}', *around, *keys])}}}"
    methods = []
    for at, when in enumerate(step.methods):
        mine = [f"id: {name}m{at}" if at else f"id: {name}", *([f"when: {when}"] if when else []), *keys]
        methods.append(f"{{{', '.join(mine)}}}")
    either = f"either: [{', '.join(methods)}]"
    return f"{{{', '.join([*around, either])}}}"


def _library(*jobs: str) -> Library:
    """Return a library of the base's equipment with sections of FL-110, FL-120 and FL-130."""
    main, *others = jobs
    files = base_files() | overlay([("equipment", EQUIPMENT), ("procedure", f"sections:\n{main}")]).files
    for number, sections in zip(("FL-120", "FL-130"), others, strict=False):
        files[f"{number}.yaml"] = OTHER.format(number=number, sections=sections).encode()
    documents = [document for name, content in files.items() if (document := read_document(name, content)[0])]
    library, found = build_library(documents, {}, partial=False)
    assert not [one.message for one in found]
    return library


class OneByOne:
    """A job gone through once: whether a step is done on one machine, with what is decided on the way."""

    def __init__(self, library: Library) -> None:
        self._homes: dict[Step, tuple[Procedure, Section]] = {
            step: (procedure, section)
            for procedure in library.procedures.values()
            for section, step in procedure.steps()
        }

    def happens(self, act: Act, fitment: Mapping[str, str]) -> bool:
        """Tell whether an action is done."""
        return may_hold(act.when, fitment) and all(self._done(step, fitment) for step in (*act.within, act.doing))

    def _done(self, step: Step, fitment: Mapping[str, str]) -> bool:
        procedure, section = self._homes[step]
        order = [one for _, one in procedure.steps()]
        optional = [*([section.where] if section.optional else []), *([step.where] if step.optional else [])]
        skipped = any(fitment[_name(procedure, where.path)] == "skipped" for where in optional)
        if (
            skipped
            or not self._there(step, fitment)
            or (step.method is not None and self._taken(step, fitment) is not step)
        ):
            return False
        before = {one.id: one for one in order[: order.index(step)]}
        asked = not step.if_done or self._one_done(step.if_done, before, fitment)
        return asked and not self._one_done(step.unless_done, before, fitment)

    def _one_done(self, names: Iterable[str], before: Mapping[str, Step], fitment: Mapping[str, str]) -> bool:
        return any(self._done(before[name], fitment) for name in names if name in before)

    def _there(self, step: Step, fitment: Mapping[str, str]) -> bool:
        _, section = self._homes[step]
        return may_hold(together(section.when, step.when), fitment)

    def _taken(self, step: Step, fitment: Mapping[str, str]) -> Step | None:
        """Return the method that is decided for, or the first that this machine has."""
        procedure, section = self._homes[step]
        methods = [one for one in section.steps if one.where.path[:-1] == step.where.path[:-1]]
        wanted = methods[int(fitment[_name(procedure, step.where.path[:-1])])]
        return (
            wanted
            if self._there(wanted, fitment)
            else next((one for one in methods if self._there(one, fitment)), None)
        )


def _name(procedure: Procedure, path: tuple[str | int, ...]) -> str:
    return ".".join(map(str, (procedure.number, *path)))


def _hold(library: Library, act: Act, ways: Ways) -> None:
    """Hold the cells of one action against every machine and way, one by one."""
    space = ways.space([act])
    assert space is not None
    reference = OneByOne(library)
    done = ways.cells(act, space)
    for picked in itertools.product(*space.values.values()):
        fitment = dict(zip(space.values, picked, strict=True))
        cell = space.where({name: (value,) for name, value in fitment.items()})
        assert cell.bit_count() == 1
        assert bool(cell & done) is reference.happens(act, fitment)


@given(SECTIONS, SECTIONS, SECTIONS)
@settings(max_examples=100)
def test_an_action_is_done_on_the_same_machines_and_ways_as_gone_through_one_by_one(
    first: list[tuple[str, bool, list[Drawn]]],
    second: list[tuple[str, bool, list[Drawn]]],
    third: list[tuple[str, bool, list[Drawn]]],
) -> None:
    """Conditions, methods, what may be skipped and what asks for it hold at any depth of what is carried out."""
    library = _library(_written(first, "FL-120"), _written(second, "FL-130"), _written(third, ""))
    procedure = library.procedures["FL-110"]
    ways = ways_of(procedure, library)
    assert ways is not None
    small = [act for act in acts(procedure, library) if _size(ways, act) <= 3000]
    for act in sorted(small, key=_asking, reverse=True)[:4]:
        _hold(library, act, ways)


def _asking(act: Act) -> int:
    """Return how much decides about an action: the steps on its way, and what they ask for."""
    return len(act.steps) + sum(len(step.if_done) + len(step.unless_done) for step in act.steps)


def _size(ways: Ways, act: Act) -> int:
    space = ways.space([act])
    return space.every.bit_count() if isinstance(space, Space) else 0


def test_a_long_chain_of_steps_that_ask_for_one_another_is_followed_at_once() -> None:
    """Each of three hundred steps asks for the two before it; the last is done where the first was not skipped."""
    asks = [f"[s{at - 1}, s{at - 2}]" if at > 1 else "[s0]" for at in range(1, 300)]
    steps = [f"{{id: s{at}, if-done: {ask}, do: [{{clean: drop-box}}]}}" for at, ask in enumerate(asks, 1)]
    first = "{id: s0, optional: Worth doing., do: [{clean: drop-box}]}"
    lines = ["  - title: Clean", "    steps:", *(f"      - {step}" for step in (first, *steps))]
    library = _library("\n".join([*lines, ""]))
    procedure = library.procedures["FL-110"]
    ways, course = ways_of(procedure, library), acts(procedure, library)
    assert ways is not None
    space = ways.space(course[-1:])
    assert space is not None
    done = ways.cells(course[-1], space)
    assert (space.every.bit_count(), done.bit_count()) == (2, 1)
    assert ways.shown(done, space).whom == ' where "s0" is done'
    assert ways.shown(space.every & ~done, space).whom == ' where "s0" is skipped'
