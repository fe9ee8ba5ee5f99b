"""What a rule can be about, and whether a job holds any of it: a rule without anything to look at proves nothing.

A subject is looked for in what was written, so that it is found as well where names stand for nothing.
What the machine, the stock and the shop state counts whether or not a step uses it, since their rules look at all.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.model.action_kinds import action_kinds
from authoring.model.contents import MOVES
from authoring.model.levels import READS
from authoring.model.library import Library
from authoring.model.matter import Matter
from authoring.model.procedure import Choice, Procedure
from authoring.model.things import Consumable, FastenerGroup, Item, Part, Tool
from authoring.quantities.units import Dimension


def _files(matter: Matter) -> Iterator[str]:
    library = matter.library
    for thing in (library.shop, library.stock, *matter.machines, *matter.procedures):
        if thing is not None:
            yield thing.where.document.file


def _critical(matter: Matter) -> bool:
    """Tell whether a joint of class A, or what is called critical, is touched or holds what is touched."""
    critical = {one.id for one in matter.items if one.critical is not None}
    for thing in matter.touched:
        if isinstance(thing, FastenerGroup) and (thing.joint == "A" or {thing.on, thing.among} & critical):
            return True
        if isinstance(thing, Item | Part) and thing.critical is not None:
            return True
        if isinstance(thing, Choice):
            return True  # one of its parts may be
    return False


def _allowed(matter: Matter) -> bool:
    files = frozenset(_files(matter))
    return any(one.where.document.file in files for one in matter.library.allowances)


def _led_away(matter: Matter) -> bool:
    waits = any(one.by is not None for procedure in matter.procedures for one in procedure.conditions or ())
    return waits or matter.does("carry-out") or any(one.then in {"do", "do-after"} for one in matter.outcomes)


def _common_practice(matter: Matter) -> bool:
    shop = matter.library.shop
    shared = shop.sources.values() if shop is not None else ()
    sources = [*shared, *(source for machine in matter.machines for source in machine.sources.values())]
    return any(source.kind == "common-practice" for source in sources)


class Subject(Struct, frozen=True):
    """Something a rule can be about: the sentence that says there is none, and how it is found."""

    none: str
    held: Callable[[Matter], bool]


SUBJECTS: Mapping[str, Subject] = {
    # What is done
    "measured": Subject("Nothing is measured.", lambda m: m.does("measure") or m.takes("value")),
    "distance": Subject(
        "Nothing is said to stay clear of another thing by a distance.",
        lambda m: any(one.by is not None for action in m.actions for one in action.manner.clear_of),
    ),
    "checkpoint": Subject("Nothing is checked.", lambda m: any(one.kind.checkpoint for one in m.actions)),
    "hold-point": Subject("There is no hold point.", lambda m: any(one.hold for one in m.actions)),
    "outcome": Subject("No finding is told, and what follows from it.", lambda m: bool(m.outcomes)),
    "graded": Subject(
        "Nothing is graded by the numbers of a picture.", lambda m: any(one.like is not None for one in m.outcomes)
    ),
    "way-back": Subject(
        "Nothing leads back, and nothing is repeated.",
        lambda m: any(one.then == "go-to" for one in m.outcomes) or any(one.repeat is not None for one in m.stretches),
    ),
    "carried-out": Subject("No other procedure is carried out, and none comes before.", _led_away),
    "undone": Subject(
        "Nothing is taken off, opened, loosened, cut off, held up, locked or raised.",
        lambda m: m.does(*(verb for kind in action_kinds().values() for verb in kind.undoes), "start"),
    ),
    "covered": Subject(
        "Nothing on the machine covers anything.",
        lambda m: any(item.covers for machine in m.machines for item in machine.items.values()),
    ),
    "fastened": Subject("No fasteners are stated to be on an item.", lambda m: any(one.on for one in m.groups)),
    "tightened": Subject("Nothing is tightened.", lambda m: any(one.kind.torque for one in m.actions)),
    "fluid-moved": Subject(
        "No fluid is let out or put in.",
        lambda m: m.does(*MOVES) or any(need.state == "drained" for one in m.steps for need in one.leaves),
    ),
    "set-running": Subject("Nothing is set running.", lambda m: m.does("run")),
    "laid-aside": Subject("Nothing is thrown away or laid aside.", lambda m: m.does("discard", "keep")),
    "sealed": Subject(
        "No ring or gasket is stated to seal anything.",
        lambda m: any(one.seals_with for one in m.things),
    ),
    "proved-dead": Subject("Nothing is proved dead.", lambda m: m.does("prove-dead")),
    "given-back": Subject("No source of energy is given back.", lambda m: m.does("restore")),
    "level": Subject("No level is read.", lambda m: m.does(*READS)),
    "heated": Subject("Nothing is heated.", lambda m: m.does("heat")),
    "held": Subject("Nothing is held up until something else traps it.", lambda m: m.does("hold")),
    "trial-fit": Subject("Nothing is fitted on trial.", lambda m: m.does("trial-fit")),
    "replaced": Subject("Nothing is said to take the place of an old thing.", lambda m: m.takes("replaces")),
    "used-up": Subject("Nothing is used up.", lambda m: any(isinstance(one, Consumable) for one in m.touched)),
    "one-time-part": Subject(
        "No part is used only once.",
        lambda m: any(isinstance(one, Choice) or (isinstance(one, Part) and one.one_time) for one in m.touched),
    ),
    "critical": Subject("No joint of class A, nothing critical and no chosen part is worked on.", _critical),
    "adapter": Subject(
        "No adapter is used.", lambda m: any(isinstance(one, Tool) and one.adapter is not None for one in m.touched)
    ),
    # How the work is laid out
    "bench": Subject("No work is done at the bench.", lambda m: any(one.bench for one in m.sections)),
    "free-order": Subject(
        "No section leaves the order of its steps free.", lambda m: any(one.free for one in m.sections)
    ),
    "phase": Subject("No section states its phase.", lambda m: any(one.phase is not None for one in m.sections)),
    "section-time": Subject("No section states its time.", lambda m: any(one.time is not None for one in m.sections)),
    "method": Subject("No step has several methods.", lambda m: any(one.method is not None for one in m.steps)),
    "optional": Subject("Nothing may be skipped.", lambda m: any(one.optional is not None for one in m.stretches)),
    "after-a-step": Subject(
        "No step depends on another one, and none has a deadline.",
        lambda m: any(one.if_done or one.unless_done or one.deadline is not None for one in m.steps),
    ),
    "left-alone": Subject(
        "Nothing is to be left alone.",
        lambda m: any(one.leave for one in m.steps) or any(one.untouched is not None for one in m.groups),
    ),
    "need": Subject("No state is asked for.", lambda m: bool(m.needs)),
    "left-so": Subject(
        "No state is stated in which the machine is left.", lambda m: any(one.leaves for one in m.procedures)
    ),
    "value-needed": Subject(
        "No value, such as a temperature, is asked for before a step.",
        lambda m: m.takes("window") or any(need.state in {value.id for value in m.values} for need in m.needs),
    ),
    "modification": Subject("The machine is not modified.", lambda m: any(one.modifications for one in m.procedures)),
    "figure": Subject("There is no figure.", lambda m: any(one.figures for one in m.procedures)),
    "picture": Subject(
        "There is no picture.",
        lambda m: any(one.figures for one in m.procedures) or any(one.drawing is not None for one in m.tools),
    ),
    "trial": Subject("No trial is recorded.", lambda m: any(one.trial is not None for one in m.procedures)),
    "allowance": Subject("No warning is allowed.", _allowed),
    # What differs
    "condition": Subject("Everything is for every vehicle.", lambda m: any(m.conditions)),
    "window-for-some": Subject(
        "No window is for some vehicles only.", lambda m: any(one.when for value in m.values for one in value.windows)
    ),
    "choice": Subject("No part is chosen among several.", lambda m: bool(m.choices)),
    "sized-choice": Subject(
        "No part is told by its size.",
        lambda m: (
            any(part.sizes or part.stated for choice in m.choices for part in choice.parts)
            or any(choice.dimensions for choice in m.choices)
        ),
    ),
    "look-alike": Subject(
        "No part is chosen that has a size, or that does harm where it is the wrong one.",
        lambda m: any(
            choice.if_wrong is not None or any(part.sizes or part.stated for part in choice.parts)
            for choice in m.choices
        ),
    ),
    "option": Subject("Nothing is left to be decided in the job.", lambda m: any(one.options for one in m.procedures)),
    # What is stated
    "shop-policy": Subject(
        "The shop states no safety policy of its own.",
        lambda m: m.library.shop is not None and bool(m.library.shop.policy),
    ),
    "made-tool": Subject("The shop has made no tool itself.", lambda m: any(one.made is not None for one in m.tools)),
    "common-practice": Subject("No source is common practice.", _common_practice),
    "torque": Subject("No torque is stated.", lambda m: any(one.torque is not None for one in m.groups)),
    "class": Subject("No class of bolts is stated.", lambda m: any(one.strength is not None for one in m.groups)),
    "friction": Subject(
        "No friction and no nut factor is stated.",
        lambda m: any(one.friction is not None or one.nut_factor is not None for one in m.groups),
    ),
    "turned-with": Subject("No fasteners say what turns them.", lambda m: any(one.turned_with for one in m.groups)),
    "grip": Subject("No clamped length is stated.", lambda m: any(one.grip is not None for one in m.groups)),
    "tapped": Subject(
        "No thread in a softer metal is stated.", lambda m: any(one.tapped is not None for one in m.groups)
    ),
    "stages": Subject("No stages of tightening are stated.", lambda m: any(one.stages for one in m.groups)),
    "threads": Subject("No state of threads is stated.", lambda m: any(one.threads is not None for one in m.groups)),
    "angle": Subject(
        "Nothing is tightened by an angle.",
        lambda m: any(stage.dimension is Dimension.ANGLE for one in m.groups for stage in one.stages),
    ),
    "order": Subject("No order of tightening is stated.", lambda m: any(one.order for one in m.groups)),
    "positions": Subject("No places of fasteners are stated.", lambda m: any(one.positions for one in m.groups)),
    "growth": Subject(
        "No expansion and no density of a fluid is stated.",
        lambda m: any(
            one.expansion is not None or one.density is not None
            for machine in m.machines
            for one in machine.fluids.values()
        ),
    ),
    "hot": Subject("Nothing is stated to get hot.", lambda m: any(one.hot is not None for one in m.items)),
    "danger": Subject("No item is stated to be dangerous.", lambda m: any(one.hazards for one in m.items)),
    "weighed": Subject("No mass of an item is stated.", lambda m: any("mass" in one.facts for one in m.items)),
    "reuse": Subject(
        "Nothing is said of using a thing again.", lambda m: any(one.reuse is not None for one in m.things)
    ),
    "twin": Subject("Nothing has a twin.", lambda m: any(one.twin is not None for one in m.things)),
    "side": Subject(
        "No side and no hour of the clock is given.",
        lambda m: (
            any(one.side is not None for one in m.things)
            or any(one.manner.orientation is not None for one in m.actions)
        ),
    ),
}
"""The closed list of what a rule can be about."""


def held(library: Library, procedures: Sequence[Procedure], selection: Mapping[str, str]) -> frozenset[str]:
    """Return the subjects of which these procedures hold something, for a selection of features."""
    matter = Matter(library, procedures, selection)
    return frozenset(name for name, subject in SUBJECTS.items() if subject.held(matter))
