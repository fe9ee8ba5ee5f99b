"""Which engines and mechanisms run while a job goes on, by its steps in the order written."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from msgspec import Struct

from authoring.model.demands import Need
from authoring.model.procedure import Action, Section, Step

_STANDS = frozenset({"stopped", "isolated"})


class Going(Struct, frozen=True, eq=False):
    """One action of a step, and what runs then: an action set it going, or the text says that it runs.

    `unknown` says that nothing before it, and not the step itself, told whether anything runs.
    """

    step: Step
    action: Action
    running: frozenset[str]
    unknown: bool

    @property
    def may_run(self) -> bool:
        """Whether anything runs, or may run since nobody said that it stands."""
        return bool(self.running) or self.unknown


def going(steps: Iterable[tuple[Section, Step]], needs: Iterable[Need] = ()) -> Iterator[Going]:
    """Yield each action of the steps in order with what runs then; `needs` is what holds before the first step."""
    running: set[str] = set()
    unknown = True
    before = tuple(needs)
    for section, step in steps:
        for need in (*before, *section.needs, *step.needs):
            if need.state == "running":
                running.add(need.thing)
            elif need.state in _STANDS:
                running.discard(need.thing)
            unknown = unknown and need.state not in {*_STANDS, "running"}
        before = ()
        for action in step.actions:
            if action.kind.runs:
                running.update(action.what)
            elif action.kind.stops:
                running.difference_update(action.what)
            unknown = unknown and not (action.kind.runs or action.kind.stops)
            yield Going(step, action, frozenset(running), unknown)
