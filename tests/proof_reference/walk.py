"""Every machine walks through a job on every way, one at a time, and each fault it meets is written down.

A job is walked from line to line. Where more than one thing may follow, all of them do; a machine that comes to a
line in a state in which it was there before is not walked again, so that ways that lead back come to an end.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping
from typing import NamedTuple

from tests.proof_reference.asked import Action, Settled, draining, faults
from tests.proof_reference.changes import change, contradicted, state_of
from tests.proof_reference.deciding import Deciding
from tests.proof_reference.ends import at_the_end, bypassed, follows
from tests.proof_reference.script import Line, Script
from tests.proof_reference.state import At, Fact, Machine, State, holds, things_of
from tests.proof_reference.table import BRINGING, POURING
from tests.proof_reference.told import Group

Place = tuple[tuple[str, int], ...]


class Library(NamedTuple):
    """What a walk needs of a library: its equipment, its procedures by number, and whether any has a hold point."""

    equipment: Group
    scripts: Mapping[str, Script]
    has_holds: bool


class Fault(NamedTuple):
    """A fault: the rule, where it lies, and what it is about, where that is one thing."""

    rule: str
    at: At
    thing: str = ""


class Walk:
    """All ways of one machine, with one answer to each option and one part of each choice, through one job."""

    def __init__(self, library: Library, root: Script, selection: Mapping[str, str]) -> None:
        """Set the machine at the beginning of the job of `root`."""
        self.library = library
        self.root = root
        self.selection = selection
        self.machine = Machine(library.equipment, selection)
        self.deciding = Deciding(root)
        self.stated = self._stated()
        self.tried = self._tried()
        self.found: set[Fault] = set()
        self.reached: set[int] = set()

    def _stated(self) -> Settled:
        """Return the states of each thing that the job states, or that a modification leaves it in."""
        stated: dict[str, set[str]] = {}
        _add_states(stated, self.root.told)
        for thing, word in self.root.told.get("leaves", {}).items():
            stated[thing].add(f"left {word}")
        for script in self.library.scripts.values():
            for one in script.told.get("modifications", {}).values() if self._leads_to(script.number) else ():
                if holds(one.get("when"), self.selection):
                    for thing in [*one.get("leaves-out", []), *one.get("replaces", {})]:
                        stated.setdefault(thing, set()).add("left-out")
        return stated

    def _tried(self) -> set[str]:
        """Return the parts of the stock that the first action of the job, as written, puts on."""
        first: dict[str, str] = {}
        for script in (self.root, *self.library.scripts.values()):
            for verb, value, _ in (line.about for line in script.lines if line.kind == "action"):
                for thing in things_of(value):
                    first.setdefault(thing, verb)
        return {thing for thing, verb in first.items() if verb in BRINGING and thing not in self.machine.things}

    def _leads_to(self, number: str) -> bool:
        """Tell whether this job is, or leads to, a procedure."""
        return number == self.root.number or any(number in str(line.about) for line in self.root.lines)

    def _stated_in(self, place: Place) -> Settled:
        """Return what is stated where a cover goes on: by the job, and by the procedure that is carried out there."""
        if len(place) == 1:
            return self.stated
        stated = {thing: set(words) for thing, words in self.stated.items()}
        _add_states(stated, self.library.scripts[place[-1][0]].told)
        return stated

    def go(self) -> None:
        """Walk every way."""
        state = State()
        state.sides |= state_of(self.root.told.get("needs", {}), "", At(0, self.root.number, 0))
        waiting: list[tuple[Place, State]] = [(((self.root.number, 0),), state)]
        seen: set[Hashable] = set()
        while waiting:
            place, state = waiting.pop()
            key = place, state.key()
            if key not in seen:
                seen.add(key)
                waiting += self._follow(place, state)

    def _follow(self, place: Place, state: State) -> Iterator[tuple[Place, State]]:
        """Yield where this machine may be after one line."""
        line = self._line(place)
        after = _at(place, place[-1][1] + 1)
        match line.kind:
            case "section" | "begin":
                yield from self._enter(line, place, state)
            case "step":
                yield from self._choose(line, place, state)
            case "action":
                yield from self._act(line, place, state)
            case "leaves":
                state = state.copy()
                state.sides |= state_of(line.about, "leaves", self._place(place))
                yield after, state
            case "noticed":
                if holds(line.about.get("when"), self.selection):
                    yield from self._outcome(line.about, place, state)
                yield after, state
            case "again":
                yield _at(place, line.to[0]), state
                yield after, state
            case "jump":
                yield _at(place, line.to[0]), state
            case _:
                yield from self._end(place, state)

    def _choose(self, line: Line, place: Place, state: State) -> Iterator[tuple[Place, State]]:
        """Come to a step: go past it where it is not for this machine, else take one of its methods that is."""
        methods = [one for one in line.to[1:] if holds(self._line(_at(place, one)).step.get("when"), self.selection)]
        if not self._is_for(line, place, state) or not methods:
            yield _at(place, line.to[0]), state
            return
        if len(line.to) == 2:
            yield _at(place, methods[0]), state
            return
        for method in methods:
            # It is decided once which of the methods is done.
            mark = "method", place[-1][0], str(line.step.first), str(method)
            if not any(other[:3] == mark[:3] and other != mark for other in state.marks):
                chosen = state.copy()
                chosen.marks.add(mark)
                yield _at(place, method), chosen

    def _is_for(self, line: Line, place: Place, state: State) -> bool:
        """Tell whether a section or step is for this machine; what it asks about must have been asked."""
        when = line.step.get("when")
        for name in self.deciding.unasked(when, state):
            self._tell("option-not-asked", place, line.step.first, name)
        return holds(when, self.selection)

    def _enter(self, line: Line, place: Place, state: State) -> Iterator[tuple[Place, State]]:
        """Begin a section, or a step or method that is for this machine, or skip it."""
        step = line.step
        number = place[-1][0]
        if line.kind == "begin" and len(place) == 1:
            self.reached.add(step.first)
        beyond = _at(place, line.to[0])
        if not self._is_for(line, place, state) or not follows(step, number, state):
            yield beyond, state
            return
        # It is decided once whether an optional step is done.
        skipped, taken = ("skipped", number, str(step.first)), ("taken", number, str(step.first))
        if "optional" in step and taken not in state.marks:
            past = state.copy()
            past.marks.add(skipped)
            yield beyond, past
        if skipped in state.marks:
            return
        state = state.copy()
        if "optional" in step or (line.kind == "begin" and self.library.has_holds):
            state.marks.add(taken)
        if line.kind == "begin":
            if step.get("id", "") in self.library.scripts[number].asked_for:
                state.marks.add(("done", number, step["id"]))
            self._needs(line.section, place, state, line.section.first)
            self._needs(step, place, state, step.first)
        yield _at(place, place[-1][1] + 1), state

    def _needs(self, asking: Group, place: Place, state: State, line: int) -> None:
        carried = "procedure" in asking
        for thing in contradicted(asking.get("needs", {}), state, self.machine, as_it_comes=carried):
            self._tell("need-contradicted", place, line, thing)

    def _act(self, line: Line, place: Place, state: State) -> Iterator[tuple[Place, State]]:
        """Do an action, and find one of its outcomes."""
        verb, value, turn = line.about
        number, at = place[-1]
        state = state.copy()
        for name in self.deciding.unchecked(verb, value, state):
            self._tell("wrong-part-unchecked", place, line.step.first, name)
        for thing in things_of(value):
            if thing in self.machine.missing:
                continue
            action = Action(verb, thing, value, number)
            for rule in faults(action, state, self.machine, self._stated_in(place)):
                # What a procedure undoes of its own is told in its own proof, and what others did it need not know.
                if rule != "without-effect" or len(place) == 1:
                    self._tell(rule, place, line.step.first)
            self._flush(action, state, place)
            change(action, state, self.machine, self._place(place))
        state.marks |= set(self.deciding.marks(verb, value))
        if value.get("hold") == "true":
            state.marks.add(("passed", number, str(line.step.first), str(turn)))
        after = _at(place, at + 1)
        if verb == "carry-out":
            yield from self._carry_out(value["what"], place, state)
            return
        outcomes = [one for one in value.get("outcomes", []) if holds(one.get("when"), self.selection)]
        for outcome in outcomes:
            yield from self._outcome(outcome, place, state)
        if not outcomes:
            yield after, state

    def _flush(self, action: Action, state: State, place: Place) -> None:
        """Follow a fluid that was poured in above a plug that is only started, until it is let out or tells."""
        verb, thing = action.verb, action.thing
        if verb in POURING:
            if "started" in draining(thing, state, self.machine):
                state.sides[thing, "above"] = Fact("a started plug", verb, self._place(place))
        elif verb in {"drain", "extract"}:
            state.sides.pop((thing, "above"), None)
        for fluid in self.machine.things[thing].get("drains", []) if thing in self.machine.things else ():
            if verb == "tighten" and (fluid, "above") in state.sides:
                self.found.add(Fault("filled-while-open", state.sides[fluid, "above"].at))
            if verb in {"tighten", "start"}:
                state.sides.pop((fluid, "above"), None)

    def _outcome(self, outcome: Group, place: Place, state: State) -> Iterator[tuple[Place, State]]:
        """Follow one outcome."""
        match outcome["then"]:
            case "stop":
                return
            case "go-to":
                yield _at(place, self.library.scripts[place[-1][0]].named[outcome["to"]]), state
            case "do":
                yield from self._carry_out(outcome["to"], place, state)
            case _:
                yield _at(place, place[-1][1] + 1), state

    def _carry_out(self, number: str, place: Place, state: State) -> Iterator[tuple[Place, State]]:
        """Begin another procedure, after which the line after this one follows."""
        self._needs(self.library.scripts[number].told, place, state, self._line(place).step.first)
        yield (*_at(place, place[-1][1] + 1), (number, 0)), state

    def _end(self, place: Place, state: State) -> Iterator[tuple[Place, State]]:
        """Go back to the procedure that carried this one out, or look at the machine at the end of the job."""
        if len(place) > 1:
            state = state.copy()
            left = self.library.scripts[place[-1][0]].told.get("leaves", {})
            at = At(self._top(place), place[-1][0], 0)
            changed = state_of(left, "leaves", at).items()
            state.sides |= {key: fact for key, fact in changed if state.value(*key) != fact.value}
            yield place[:-1], state
            return
        for (_, side), fact in state.sides.items():
            if side == "above":
                self.found.add(Fault("filled-while-open", fact.at))
        for rule, at, thing in at_the_end(state, self.machine, self.stated, self.tried):
            if not self._as_it_came(at, thing, state):
                self.found.add(Fault(rule, at, thing))
        for line in bypassed(self.root, self.library.scripts, state, self.selection):
            self.found.add(Fault("hold-bypassed", At(line, self.root.number, line)))

    def _as_it_came(self, at: At, thing: str, state: State) -> bool:
        """Tell whether a procedure carried out left a thing as it needed it: then the job found it so."""
        needs = {} if at.number == self.root.number else self.library.scripts[at.number].told.get("needs", {})
        return any(name == thing and fact.value == needs.get(thing) for (name, _), fact in state.sides.items())

    def _line(self, place: Place) -> Line:
        return self.library.scripts[place[-1][0]].lines[place[-1][1]]

    def _top(self, place: Place) -> int:
        """Return the line of the step at top that this place lies in; below it, the job has moved past that."""
        index = place[0][1] - (len(place) > 1)
        return self.root.lines[index].step.first

    def _tell(self, rule: str, place: Place, line: int, thing: str = "") -> None:
        top = line if len(place) == 1 else self._top(place)
        self.found.add(Fault(rule, At(top, place[-1][0], line), thing))

    def _place(self, place: Place) -> At:
        return At(self._top(place), place[-1][0], self._line(place).step.first)


def _add_states(stated: dict[str, set[str]], told: Group) -> None:
    for key in ("needs", "leaves"):
        for thing, word in told.get(key, {}).items():
            stated.setdefault(thing, set()).add(word)


def _at(place: Place, index: int) -> Place:
    return (*place[:-1], (place[-1][0], index))
