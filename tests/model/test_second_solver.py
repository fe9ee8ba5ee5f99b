"""Choices and conditions, held against a solver of propositional logic that is not ours (`machines_as_formula`).

Ours lays out the fitments over the features that a question names; the solver is told of every feature and of whole
machines, and lays out nothing. Equipment, choices and conditions are drawn at random and read like any library.
"""

from __future__ import annotations

import itertools
import re
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from hypothesis import assume, given, settings

from authoring.model.lacking import bare, without
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.space import cells_of
from authoring.model.specification import When
from authoring.model.things import Equipment
from authoring.rules.rule import Fault
from authoring.rules.vehicles import choice_gap, choice_overlap, covers_nothing, never_applies
from tests.model.machines_as_formula import Machines
from tests.model.random_equipment import (
    NUMBER,
    PARTS,
    Job,
    crowded_jobs,
    jobs_with_a_choice,
    jobs_with_conditions,
    library_of,
    parts_of,
    questions,
)

EXAMPLES = 500
SPOILT = {"no": 150, "narrow": 100, "wide": 100, "both": 100, "wholly": 100}
"""How many choices are drawn that are spoilt in this way, so that no verdict stays rare by chance."""

MOST_CELLS = 1000
"""Questions of more fitments than these are not asked here, so that the time goes into many of them."""

LONGEST_TRIED = 3
GAP = re.compile(r'The choice "ring" has no part for (?P<whom>.+)\.')
OVERLAP = re.compile(r'The choice "ring" gives both "(?P<one>\w+)" and "(?P<other>\w+)" for (?P<whom>.+)\.')


def read_back(words: str) -> list[When]:
    """Return the conditions that words such as "f0: a or b; f2: c, or f1: a" tell of.

    No words tell of every machine.
    """
    groups = [dict(one.split(": ") for one in group.split("; ")) for group in words.split(", or ")] if words else [{}]
    return [{name: tuple(re.split(", | or ", values)) for name, values in group.items()} for group in groups]


def _fewest(whom: str) -> dict[str, str]:
    """Return the features and values that words such as "a machine with f0: a; f2: c" name; none for every machine."""
    if "a machine with " not in whom:
        assert whom in ("", "any machine covered", "every machine covered")
        return {}
    (group,) = read_back(whom.split("a machine with ")[1])
    assert all(len(values) == 1 for values in group.values())
    return {name: value for name, (value,) in group.items()}


def _hold_fewest(machines: Machines, bad: int, among: int, fewest: Mapping[str, str], features: Iterable[str]) -> None:
    """Hold that these features show bad machines, that none is idle, and up to three that no fewer would do."""
    assert machines.shows(bad, among, fewest)
    for name in fewest:
        fewer = {each: value for each, value in fewest.items() if each != name}
        assert not machines.shows(bad, among, fewer)
    if 0 < len(fewest) <= LONGEST_TRIED:
        assert machines.shown_by(bad, among, features, len(fewest) - 1) is None


def _hold_words(machines: Machines, bad: int, covered: int, words: str) -> None:
    """Hold that words tell of the bad machines and of no other that is covered; "others" stands for some that are."""
    groups, others = words.removesuffix(", or others"), words.endswith(", or others")
    told = machines.any(machines.meets(group) for group in read_back(groups))
    assert not machines.exist(covered, told, -bad)
    assert machines.exist(bad, -told) is others


def _covered(library: Library) -> tuple[Procedure, Equipment]:
    procedure = library.procedures[NUMBER]
    vehicle = library.scope(procedure).vehicle
    assert vehicle is not None
    return procedure, vehicle


def _named(*whens: When) -> list[str]:
    return sorted({name for when in whens for name in when})


def _small(vehicle: Equipment, covers: When, *whens: When) -> bool:
    return cells_of(vehicle, covers, _named(*whens)) <= MOST_CELLS


def _hold_shares(seen: Counter[str], *verdicts: str) -> None:
    """Hold that there were enough examples, and that each verdict came up in a quarter of them or more."""
    assert seen["examples"] >= EXAMPLES
    rare = {verdict: seen[verdict] for verdict in verdicts if 4 * seen[verdict] < seen["examples"]}
    assert not rare, f"{rare} of {seen}"


def test_gaps_and_overlaps_of_choices_are_those_the_solver_finds() -> None:
    """The same choices have a gap or an overlap, told by the same machines; each verdict is a quarter of the examples.

    Measured: 550 choices, of which 202 have a gap, 239 an overlap and 217 neither.
    """
    seen: Counter[str] = Counter()

    def held(job: Job) -> None:
        procedure, vehicle = _covered(library := library_of(job))
        assume(_small(vehicle, job.covers, *job.parts, *itertools.chain(*job.steps)))
        machines = Machines(job.features, job.never)
        covered = machines.meets(job.covers)
        assume(machines.exist(covered))
        steps = [machines.each(map(machines.meets, step)) for step in job.steps]
        asked = machines.each([covered, machines.any(steps) if steps else covered])
        gap = _hold_gap(machines, covered, asked, job, list(choice_gap.check(procedure, library)))
        overlap = _hold_overlaps(machines, covered, asked, job, list(choice_overlap.check(procedure, library)))
        seen.update({"examples": 1, "gap": gap, "overlap": overlap, "neither": not gap and not overlap})

    for spoilt, examples in SPOILT.items():
        settings(max_examples=examples)(given(jobs_with_a_choice(spoilt))(held))()
    _hold_shares(seen, "gap", "overlap", "neither")


def _hold_gap(machines: Machines, covered: int, asked: int, job: Job, faults: Sequence[Fault]) -> bool:
    bad = machines.each([asked, *(-machines.meets(part) for part in job.parts)])
    assert len(faults) == machines.exist(bad)
    for fault in faults:
        told = GAP.fullmatch(fault.message)
        assert told is not None
        _hold_fewest(machines, bad, asked, _fewest(told["whom"]), _named(*job.parts, *itertools.chain(*job.steps)))
        _hold_words(machines, bad, covered, fault.fitments)
    return bool(faults)


def _hold_overlaps(machines: Machines, covered: int, asked: int, job: Job, faults: Sequence[Fault]) -> bool:
    parts = dict(zip(PARTS, map(machines.meets, job.parts), strict=False))
    names = list(parts)
    pairs = []
    for place, other in enumerate(names):
        doubled = [one for one in names[:place] if machines.exist(asked, parts[one], parts[other])]
        pairs += [(one, other) for one in doubled[:1]]
    told = [found for fault in faults if (found := OVERLAP.fullmatch(fault.message))]
    assert [(found["one"], found["other"]) for found in told] == pairs
    assert len(told) == len(faults)
    features = _named(*job.parts, *itertools.chain(*job.steps))
    for found, fault in zip(told, faults, strict=True):
        bad = machines.each([asked, parts[found["one"]], parts[found["other"]]])
        _hold_fewest(machines, bad, asked, _fewest(found["whom"]), features)
        _hold_words(machines, bad, covered, fault.fitments)
    return bool(faults)


def _machines_of(job: Job) -> Machines:
    """Return the machines with what the job decides: the option, and the part that is fitted where a condition asks."""
    asked = any("ring" in when for step in job.steps for when in step)
    parts = {"ring": parts_of(job.gives)} if asked else {}
    machines = Machines({**job.features, **job.options, **parts}, job.never)
    for part in parts.get("ring", ()):
        given = [when for names, when in zip(job.gives, job.parts, strict=True) if part in names]
        machines.rule(-machines.has("ring", part), *map(machines.meets, given))
    return machines


def test_conditions_never_hold_where_the_solver_finds_no_machine() -> None:
    """The same conditions of sections and steps are met by no covered machine, an option and a choice among them.

    Measured: 500 steps, of which 231 can be done and 269 cannot.
    """
    seen: Counter[str] = Counter()

    def held(job: Job) -> None:
        procedure, vehicle = _covered(library := library_of(job))
        around, when = job.steps[0]
        assume(_small(vehicle, job.covers, around, when, *job.parts))
        machines = _machines_of(job)
        assume(machines.exist())
        covered, inside = machines.meets(job.covers), machines.meets(around)
        section, (step,) = procedure.sections[0], procedure.sections[0].steps
        asked = [(part.where, part.when, covered) for part in procedure.choices["ring"].parts]
        asked.append((section.where, section.when, covered))
        asked.append((step.where, step.when, machines.each([covered, inside])))
        never = [
            where.of("when")
            for where, each, known in asked
            if machines.exist(known) and not machines.exist(known, machines.meets(each))
        ]
        assert [fault.span for fault in never_applies.check(library, library)] == never
        done = machines.exist(covered, inside, machines.meets(when))
        seen.update({"examples": 1, "done": done, "never": not done})

    for against, examples in {"nothing": 260, "section": 80, "never": 80, "choice": 80}.items():
        settings(max_examples=examples)(given(jobs_with_conditions(against))(held))()
    _hold_shares(seen, "done", "never")


def test_equipment_and_covers_leave_nothing_where_the_solver_finds_no_machine() -> None:
    """The same equipment cannot exist at all, and the same procedures cover no machine that exists.

    Measured: 550 procedures, of which 173 cover a machine, 220 none, and 157 are for equipment that cannot exist.
    """
    seen: Counter[str] = Counter()

    def held(job: Job) -> None:
        machines = Machines(job.features, job.never)
        exists, covered = machines.exist(), machines.exist(machines.meets(job.covers))
        library = library_of(job)
        files = [fault.span.file for fault in covers_nothing.check(library, library)]
        assert files == (["procedure.yaml"] if exists and not covered else [] if exists else ["equipment.yaml"])
        seen.update({"examples": 1, "barren": not exists, "nothing": exists and not covered, "covered": covered})

    for around, examples in {"all": 150, "covered": 150, "some": 250}.items():
        settings(max_examples=examples)(given(crowded_jobs(around))(held))()
    _hold_shares(seen, "barren", "nothing", "covered")


def test_what_lacks_lacks_for_the_machines_the_solver_finds() -> None:
    """What is asked for and not given is found, said and shown as the solver finds it, and never the other way.

    Measured: 500 questions, of which 200 lack for some machine and 300 for none.
    """
    seen: Counter[str] = Counter()

    def held(question: tuple[Job, list[When], list[When]]) -> None:
        job, asked, offered = question
        _, vehicle = _covered(library_of(job))
        assume(_small(vehicle, job.covers, *asked, *offered))
        machines = Machines(job.features, job.never)
        covered = machines.meets(job.covers)
        assume(machines.exist(covered))
        unserved = [-machines.meets(when) for when in offered]
        bad = machines.each([covered, machines.any(map(machines.meets, asked)), *unserved])
        lack = without(vehicle, job.covers, asked, offered)
        groups = machines.any(map(machines.meets, bare(vehicle, job.covers, asked, offered)))
        assert (lack is not None) is machines.exist(bad)
        assert not machines.exist(covered, groups, -bad)
        assert not machines.exist(bad, -groups)
        if lack is not None:
            assert _fewest(lack.whom) == lack.fewest
            _hold_fewest(machines, bad, covered, lack.fewest, _named(*asked, *offered))
            _hold_words(machines, bad, covered, lack.fitments)
        seen.update({"examples": 1, "lacking": lack is not None, "given": lack is None})

    for spoilt, examples in {"no": 150, "narrow": 200, "wholly": 150}.items():
        settings(max_examples=examples)(given(questions(spoilt))(held))()
    _hold_shares(seen, "lacking", "given")
