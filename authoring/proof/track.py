"""The track of a job: every action and statement in the order written, and the jumps that outcomes and repeats make.

A procedure that is carried out stands in the place of the action that does so, and one that an outcome leads to in the
place of that outcome, each as often as it is led to.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache

from msgspec import Struct

from authoring.model.course import DEEPEST, MOST_ACTS, called_by
from authoring.model.demands import Need
from authoring.model.fitments import together
from authoring.model.library import Library
from authoring.model.on_and_off import meant
from authoring.model.procedure import Action, Outcome, Procedure, Section, Step
from authoring.model.specification import When

ONWARD = frozenset({"go-on", "put-right", "next-time", "ask-customer", "do-after", "do"})
"""The outcomes after which the next action follows, at once or after another procedure."""


class Point(Struct, frozen=True, eq=False):
    """One point of the track: an action, what must be so before (`needs`), or what is stated to be so after (`leaves`).

    `number` counts the points from 0; `procedure`, `section` and `step` hold it, as far as there is one.
    `within` are the steps on the way that lead to its procedure, outermost first, and `chain` the procedures.
    `top` is the job's own step in which all this happens.
    It is done for the machines of `when`, where all of `within` are done, and one of `among` where that has any.
    """

    number: int
    procedure: Procedure
    section: Section | None
    step: Step | None
    top: Step | None
    within: tuple[Step, ...]
    chain: tuple[Procedure, ...]
    when: When
    among: tuple[Step, ...]
    action: Action | None = None
    needs: tuple[Need, ...] = ()
    leaves: tuple[Need, ...] = ()

    @property
    def does(self) -> str:
        """The name of its action, empty where it has none."""
        return self.action.kind.name if self.action is not None else ""

    @property
    def own(self) -> bool:
        """Whether it stands in the job itself."""
        return not self.within

    @property
    def steps(self) -> tuple[Step, ...]:
        """All steps that bear on whether it is done."""
        return (*self.within, *self.among)


class Jump(Struct, frozen=True, eq=False):
    """After one point the job may go on at another instead of the next one: for the machines of `when`, after `steps`.

    `outcome` is what leads there, None where a section repeats or what an outcome would have led to is passed over.
    `target` is one beyond the last point where the job ends.
    """

    source: int
    target: int
    when: When
    steps: tuple[Step, ...]
    outcome: Outcome | None


class Fork(Struct, frozen=True, eq=False):
    """After one point only some machines go on at the next one: of those that find an outcome, those of `onward`.

    `whoever` says that it is so whether the point was done or not.
    """

    source: int
    found: tuple[When, ...]
    onward: tuple[When, ...]
    whoever: bool = False


class Track(Struct, frozen=True, eq=False):
    """The points of a job in order, its jumps, and the forks at which the job may not go on as written.

    `naming` has for each name the points whose action or statement names it, `begins` the point at which each step
    begins, by the steps that lead to it and itself.
    """

    procedure: Procedure
    points: tuple[Point, ...]
    jumps: tuple[Jump, ...]
    forks: tuple[Fork, ...]
    naming: Mapping[str, tuple[Point, ...]]
    begins: Mapping[tuple[Step, ...], Point]

    def passed_over(self, number: int) -> bool:
        """Tell whether some jump leads on past a point."""
        return any(jump.source < number < jump.target for jump in self.jumps)


@lru_cache(maxsize=64)
def track_of(procedure: Procedure, library: Library) -> Track | None:
    """Return the track of a job; None where it is too long to follow, which a rule tells."""
    laying = _Laying(library)
    laying.lay(procedure, None)
    if laying.too_long:
        return None
    begins: dict[tuple[Step, ...], Point] = {}
    for point in laying.points:
        if point.step is not None:
            begins.setdefault(point.steps, point)
    points = tuple(laying.points)
    return Track(procedure, points, tuple(laying.jumps), tuple(laying.forks), _naming(points, library), begins)


class _Place(Struct, frozen=True, eq=False):
    """Where a point is laid: the procedures and steps that lead to it, and for which machines."""

    chain: tuple[Procedure, ...]
    within: tuple[Step, ...]
    top: Step | None
    when: When
    section: Section | None = None
    step: Step | None = None


class _Lead(Struct, frozen=True, eq=False):
    """A jump whose target is known by its id only."""

    source: int
    to: str
    when: When
    steps: tuple[Step, ...]
    outcome: Outcome


class _Laying:
    """The points and jumps so far."""

    def __init__(self, library: Library) -> None:
        self.library = library
        self.points: list[Point] = []
        self.jumps: list[Jump] = []
        self.forks: list[Fork] = []
        self.too_long = False

    def lay(self, procedure: Procedure, at: _Place | None) -> None:
        """Lay the points of a procedure, led to from a place, or of the job itself."""
        if at is None:
            here = _Place((procedure,), (), None, procedure.covers)
        elif procedure in at.chain:
            return
        else:
            within = at.within if at.step is None else (*at.within, at.step)
            here = _Place((*at.chain, procedure), within, at.top, at.when)
            self._add(here, needs=procedure.needs)
        self.too_long |= len(self.points) > MOST_ACTS or len(here.chain) > DEEPEST
        if self.too_long:
            return
        leads: list[_Lead] = []
        starts: dict[str, int] = {}
        for section in procedure.sections:
            self._section(section, here, starts, leads)
        if at is not None:
            self._add(here, leaves=procedure.leaves)
        self.jumps += [
            Jump(one.source, starts[one.to], one.when, one.steps, one.outcome) for one in leads if one.to in starts
        ]

    def _section(self, section: Section, around: _Place, starts: dict[str, int], leads: list[_Lead]) -> None:
        begin = len(self.points)
        starts.setdefault(section.id, begin)
        when = together(around.when, section.when)
        for step in section.steps:
            starts.setdefault(step.id, len(self.points))
            top = around.top if around.top is not None else step
            at = _Place(around.chain, around.within, top, together(when, step.when), section, step)
            self._step(at, step, leads)
            self._outcomes(section.noticed, at, leads, perhaps=True)
        if section.repeat is not None and len(self.points) > begin:
            self.jumps.append(Jump(len(self.points) - 1, begin, when, around.within, None))

    def _step(self, at: _Place, step: Step, leads: list[_Lead]) -> None:
        needs = at.section.needs if at.section is not None else ()
        self._add(at, needs=(*needs, *step.needs), always=True)
        for action in step.actions:
            self._add(at, action=action)
            for called in called_by(action, at.chain[-1], self.library):
                self.lay(called, at)
            self._outcomes(action.outcomes, at, leads, perhaps=False)
        self._add(at, leaves=step.leaves)
        self._outcomes(step.noticed, at, leads, perhaps=True)

    def _outcomes(self, outcomes: Sequence[Outcome], at: _Place, leads: list[_Lead], *, perhaps: bool) -> None:
        source = len(self.points) - 1
        steps = (*at.within, *((at.step,) if at.step is not None else ()))
        onward = tuple(one.when for one in outcomes if one.then in ONWARD)
        if outcomes and not perhaps and all(onward):
            self.forks.append(Fork(source, tuple(one.when for one in outcomes), onward))
        leads += [
            _Lead(source, one.to, together(at.when, one.when), steps, one)
            for one in outcomes
            if one.then == "go-to" and one.to is not None
        ]
        past = ({},) if perhaps else tuple(one.when for one in outcomes if one.then in ONWARD - {"do"})
        self._led_to(source, [one for one in outcomes if one.then == "do"], at, past)

    def _led_to(self, source: int, outcomes: Sequence[Outcome], at: _Place, past: Sequence[When]) -> None:
        """Lay each procedure that is done where an outcome is found, with the jumps into it, and past all of them."""
        steps = (*at.within, *((at.step,) if at.step is not None else ()))
        ends: list[int] = []
        for one in outcomes:
            called = self.library.procedures.get(one.to or "")
            if called is None or called.equipment != at.chain[-1].equipment or called in at.chain:
                continue
            when = together(at.when, one.when)
            begin = len(self.points)
            self.lay(called, _Place(at.chain, at.within, at.top, when, at.section, at.step))
            if ends and len(self.points) > begin:
                self.jumps.append(Jump(source, begin, when, steps, one))
            if len(self.points) > begin:
                ends.append(len(self.points) - 1)
        after = len(self.points)
        if ends:
            self.jumps += [Jump(source, after, when, (), None) for when in past]
        for end in ends[:-1]:
            self.forks.append(Fork(end, ({},), (), whoever=True))
            self.jumps.append(Jump(end, after, {}, (), None))

    def _add(
        self,
        at: _Place,
        *,
        among: Iterable[Step] = (),
        action: Action | None = None,
        needs: tuple[Need, ...] = (),
        leaves: tuple[Need, ...] = (),
        always: bool = False,
    ) -> None:
        """Add a point; one that says nothing is left out, but for the one at which each step begins."""
        if action is None and not needs and not leaves and not always:
            return
        steps = (at.step,) if at.step is not None else tuple(among)
        point = Point(
            len(self.points),
            at.chain[-1],
            at.section,
            at.step,
            at.top,
            at.within,
            at.chain,
            at.when,
            steps,
            action,
            needs,
            leaves,
        )
        self.points.append(point)


def _naming(points: Sequence[Point], library: Library) -> Mapping[str, tuple[Point, ...]]:
    """Return the points that name each thing; what a choice may stand for is named with it."""
    found: dict[str, dict[Point, None]] = {}
    for point in points:
        things = library.scope(point.procedure).things
        names = [name for _, name in point.action.names()] if point.action is not None else []
        names = [one for name in names for one, _ in meant(name, things.get(name))]
        for name in (*names, *(need.thing for need in (*point.needs, *point.leaves))):
            found.setdefault(name, {})[point] = None
    return {name: tuple(those) for name, those in found.items()}
