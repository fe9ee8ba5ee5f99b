"""What some procedures hold between them: everything that a rule could look at, each kind of thing in one list.

What was written counts, so that a thing is found as well where a name stands for nothing.
What the machine, the stock and the shop state is there whether or not a step uses it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cached_property

from authoring.model import applicability
from authoring.model.demands import Need
from authoring.model.fitments import may_hold
from authoring.model.library import Library, Thing
from authoring.model.procedure import Action, Choice, Outcome, Procedure, Section, Step
from authoring.model.specification import When
from authoring.model.things import Equipment, FastenerGroup, Item, Tool, Value


class Matter:
    """What some procedures hold for a selection of features, with their machine, the stock and the shop."""

    def __init__(self, library: Library, procedures: Sequence[Procedure], selection: Mapping[str, str]) -> None:
        self.library = library
        self.procedures = procedures
        self._selection = selection

    def _holds(self, when: When) -> bool:
        return may_hold(when, self._selection)

    @cached_property
    def sections(self) -> list[Section]:
        """The sections."""
        return [one for procedure in self.procedures for one in procedure.sections if self._holds(one.when)]

    @cached_property
    def steps(self) -> list[Step]:
        """The steps; each method is one."""
        return [step for section in self.sections for step in section.steps if self._holds(step.when)]

    @cached_property
    def stretches(self) -> list[Section | Step]:
        """The sections and the steps."""
        return [*self.sections, *self.steps]

    @cached_property
    def actions(self) -> list[Action]:
        """What the steps do."""
        return [action for step in self.steps for action in step.actions]

    @cached_property
    def outcomes(self) -> list[Outcome]:
        """What may be found by a checkpoint, or noticed unasked."""
        found = [one for action in self.actions for one in action.outcomes]
        found += [one for step in self.steps for one in step.noticed]
        found += [one for section in self.sections for one in section.noticed]
        return [one for one in found if self._holds(one.when)]

    @cached_property
    def needs(self) -> list[Need]:
        """The states that a procedure, a section or a step asks for."""
        found = [need for procedure in self.procedures for need in procedure.needs]
        found += [need for section in self.sections for need in section.needs]
        return [*found, *(need for step in self.steps for need in step.needs)]

    @cached_property
    def machines(self) -> list[Equipment]:
        """The equipment that is worked on."""
        names = dict.fromkeys(procedure.equipment for procedure in self.procedures)
        return [self.library.equipment[name] for name in names if name in self.library.equipment]

    @cached_property
    def groups(self) -> list[FastenerGroup]:
        """The fasteners of the machine."""
        return [one for machine in self.machines for one in machine.fasteners.values() if self._holds(one.when)]

    @cached_property
    def items(self) -> list[Item]:
        """The items of the machine."""
        return [one for machine in self.machines for one in machine.items.values() if self._holds(one.when)]

    @cached_property
    def things(self) -> list[Item | FastenerGroup]:
        """The items and the fasteners of the machine."""
        return [*self.items, *self.groups]

    @cached_property
    def values(self) -> list[Value]:
        """The values of the machine and of the procedures."""
        found = [value for machine in self.machines for value in machine.values.values()]
        return [*found, *(value for procedure in self.procedures for value in procedure.values.values())]

    @cached_property
    def choices(self) -> list[Choice]:
        """The part choices."""
        return [choice for procedure in self.procedures for choice in procedure.choices.values()]

    @cached_property
    def tools(self) -> list[Tool]:
        """The tools of the shop."""
        return list(self.library.stock.tools.values()) if self.library.stock is not None else []

    @cached_property
    def touched(self) -> list[Thing]:
        """What the steps act on and use."""
        return [
            things[name].thing
            for procedure in self.procedures
            for things in (self.library.scope(procedure).things,)
            for section in procedure.sections
            for step in section.steps
            if self._holds(section.when) and self._holds(step.when)
            for name in (*step.uses, *(name for action in step.actions for _, name in action.names()))
            if name in things
        ]

    @cached_property
    def conditions(self) -> list[When]:
        """Every condition on vehicles."""
        found = [one for procedure in self.procedures for one in applicability.of_procedure(procedure)]
        found += [one for machine in self.machines for one in applicability.of_equipment(machine)]
        found += applicability.of_shop(self.library.shop) if self.library.shop is not None else ()
        return [one.when for one in found]

    def does(self, *kinds: str) -> bool:
        """Tell whether a step does one of these actions."""
        return any(action.kind.name in kinds for action in self.actions)

    def takes(self, role: str) -> bool:
        """Tell whether an action has this role."""
        return any(role in action.roles for action in self.actions)
