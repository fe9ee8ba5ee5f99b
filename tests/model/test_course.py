"""What a job carries out, and what that carries out in its turn: the actions in order, and where following ends."""

from __future__ import annotations

from itertools import pairwise

from authoring.model.build import build_library
from authoring.model.course import DEEPEST, MOST_ACTS, acts, too_long
from authoring.model.library import Library
from authoring.rules.vehicles import too_many_fitments
from authoring.source.reader import read_document
from tests.rules.overlay import base_files

JOB = """procedure: {number}
title: Clean the drop box
equipment: hob
job: Dirt hides a leak.
audience: Apprentice in the second year, under a technician.
persons: 1
time: 10 min
conditions: none
hazards: none
sections:
  - title: Clean
    when: {{brake: {brakes}}}
    steps:
{steps}
trial: none
revisions:
  - {{revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}}
"""
CLEAN = "{do: [{clean: drop-box}]}"


def _library(jobs: dict[str, list[str]], brakes: str = "[drum, disc]") -> Library:
    """Return the base library with these jobs and no other, each a list of steps in a section for these brakes."""
    files = {name: content for name, content in base_files().items() if name != "procedure.yaml"}
    for number, steps in jobs.items():
        lines = "\n".join(f"      - {step}" for step in steps)
        files[f"{number}.yaml"] = JOB.format(number=number, steps=lines, brakes=brakes).encode()
    documents = [document for name, content in files.items() if (document := read_document(name, content)[0])]
    library, found = build_library(documents, {}, partial=False)
    assert not found
    return library


def _out(number: str, more: str = "") -> str:
    return f"{{do: [{{carry-out: {number}}}]{more}}}"


def _chain(length: int) -> Library:
    """Return a library of so many jobs, each of which carries out the next."""
    numbers = [f"FL-{1000 + at}" for at in range(length)]
    return _library({one: [_out(after)] for one, after in pairwise(numbers)} | {numbers[-1]: [CLEAN]})


def test_what_is_carried_out_follows_in_its_place_with_all_that_it_waits_for() -> None:
    """Two levels down, each action names the steps it is within, outermost first, and all conditions on the way."""
    library = _library(
        {
            "FL-101": [CLEAN, _out("FL-102", ", when: {brake: [drum, disc]}"), CLEAN],
            "FL-102": [_out("FL-103", ", optional: Worth doing.")],
            "FL-103": ["{do: [{clean: drop-box}], when: {brake: [disc, drum]}}"],
        },
        brakes="[drum]",
    )
    course = acts(library.procedures["FL-101"], library)
    assert [(act.place, act.action.kind.name, len(act.within)) for act in course] == [
        (0, "clean", 0),
        (1, "carry-out", 0),
        (1, "carry-out", 1),
        (1, "clean", 2),
        (2, "clean", 0),
    ]
    deepest = course[3]
    steps = [next(library.procedures[number].steps())[1] for number in ("FL-102", "FL-103")]
    assert deepest.within == (deepest.step, steps[0])
    assert deepest.steps == (deepest.step, *steps)
    assert deepest.when == {"brake": ("drum",)}
    assert [act.own for act in course] == [True, True, False, False, True]
    assert [act.optional for act in course] == [False, False, True, True, False]
    assert [len(act.sections) for act in course] == [1, 1, 2, 3, 1]


def test_no_procedure_follows_inside_itself() -> None:
    """Of a ring of three and of one that carries itself out, each follows once on each way."""
    library = _library(
        {"FL-101": [_out("FL-102")], "FL-102": [_out("FL-103")], "FL-103": [_out("FL-101"), _out("FL-103"), CLEAN]}
    )
    course = acts(library.procedures["FL-101"], library)
    assert [(act.action.kind.name, len(act.within)) for act in course] == [
        ("carry-out", 0),
        ("carry-out", 1),
        ("carry-out", 2),
        ("carry-out", 2),
        ("clean", 2),
    ]


def test_a_job_that_is_too_deep_or_too_long_is_its_own_actions_alone_and_told() -> None:
    """A hundred levels are followed and one more is not; a ring of nine jobs, each with all, would take for ever."""
    for length, beyond in ((DEEPEST + 1, False), (DEEPEST + 2, True)):
        library = _chain(length)
        first = library.procedures["FL-1000"]
        assert too_long(first, library) is beyond
        assert len(acts(first, library)) == (1 if beyond else length)
        told = [fault.message for fault in too_many_fitments.check(library, library)]
        assert [f"{MOST_ACTS} actions or {DEEPEST} levels" in message for message in told] == [True] * beyond
    numbers = [f"FL-{100 + at}" for at in range(1, 10)]
    library = _library({one: [_out(other) for other in numbers] for one in numbers})
    assert too_long(library.procedures["FL-101"], library)
    assert [act.own for act in acts(library.procedures["FL-101"], library)] == [True] * 9
