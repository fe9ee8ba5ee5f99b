"""The verdicts of the reference on a library: every fitment enumerated, every way walked."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from tests.proof_reference.script import Script
from tests.proof_reference.state import At, Selection, holds
from tests.proof_reference.told import Group, read
from tests.proof_reference.walk import Fault, Library, Walk

RULES = (
    "never-put-back",
    "drained-not-filled",
    "reached-through-cover",
    "removed-while-held",
    "covered-over",
    "tightened-unstarted",
    "filled-while-open",
    "filled-when-full",
    "run-while-open",
    "without-effect",
    "restored-while-open",
    "need-contradicted",
    "hold-bypassed",
    "never-reached",
    "wrong-part-unchecked",
    "option-not-asked",
    "wrong-side",
)

FIRST = "the first that nobody comes to"

Fitment = tuple[tuple[str, str], ...]


class Verdict(NamedTuple):
    """What the reference finds: a fault of a job, the file of the job, and the fitments that it concerns."""

    fault: Fault
    file: str
    fitments: frozenset[Fitment]


def verdicts(files: Mapping[str, bytes]) -> list[Verdict]:
    """Return what is found in every procedure of a library of one equipment."""
    told = read(files)
    equipment = next(one for one in told.values() if "equipment" in one and "procedure" not in one)
    scripts = {one["procedure"]: Script(one, file) for file, one in told.items() if "procedure" in one}
    has_holds = any(b'"hold": true' in content or b"hold: true" in content for content in files.values())
    library = Library(equipment, scripts, has_holds)
    return [one for script in scripts.values() for one in _of_procedure(library, script)]


def fitments(equipment: Group, covers: Mapping[str, list[str] | str]) -> Iterator[dict[str, str]]:
    """Yield every fitment that exists and that a procedure covers."""
    features = equipment.get("features", {})
    for values in itertools.product(*(one["values"] for one in features.values())):
        fitment = dict(zip(features, values, strict=True))
        if holds(Group(covers), fitment) and not any(holds(never, fitment) for never in equipment.get("never", [])):
            yield fitment


def _of_procedure(library: Library, script: Script) -> Iterator[Verdict]:
    found: dict[Fault, set[Fitment]] = {}
    for fitment in fitments(library.equipment, script.told.get("covers", {})):
        reached: set[int] = set()
        for answers in _answers(script, fitment):
            walk = Walk(library, script, {**fitment, **answers})
            walk.go()
            reached |= walk.reached
            for fault in walk.found:
                found.setdefault(fault, set()).add(tuple(fitment.items()))
        for fault in _unreached(script, fitment, reached):
            found.setdefault(fault, set()).add(tuple(fitment.items()))
    yield from (Verdict(fault, script.file, frozenset(concerned)) for fault, concerned in found.items())


def _answers(script: Script, fitment: Selection) -> Iterator[dict[str, str]]:
    """Yield every answer to the options of a job, with every part that its choices may come to."""
    open_to = {name: list(one["values"]) for name, one in script.told.get("options", {}).items()}
    for name, one in script.told.get("choices", {}).items():
        open_to[name] = [part["part"] for part in one["parts"] if holds(part.get("when"), fitment)] or [""]
    for values in itertools.product(*open_to.values()):
        yield dict(zip(open_to, values, strict=True))


def _unreached(script: Script, fitment: Selection, reached: set[int]) -> Iterator[Fault]:
    """Yield each step that a machine has, whatever is answered, and never comes to.

    The first of them is about `FIRST`, unless all outcomes of the last checkpoint before it stop the job.
    """
    leads = first = True
    for section in script.told["sections"]:
        for step in section["steps"]:
            methods = [one for one in step.get("either", [step]) if _is_for(fitment, section, step, one)]
            for method in methods:
                if method.first not in reached:
                    at = At(method.first, script.number, method.first)
                    yield Fault("never-reached", at, FIRST if first and leads else "")
                    first = False
            outcomes = [one for method in methods for one in _outcomes(method)]
            may = [one["then"] for one in outcomes if holds(one.get("when"), fitment)]
            leads = leads if not may else any(then != "stop" for then in may)


def _is_for(fitment: Selection, *groups: Group) -> bool:
    return all(holds(one.get("when"), fitment) for one in groups)


def _outcomes(method: Group) -> Iterator[Group]:
    for action in method["do"]:
        for value in action.values():
            if isinstance(value, Group):
                yield from value.get("outcomes", [])
