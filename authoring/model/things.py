"""The things a library knows: the shop, its stock, and the equipment it works on.

Every value is frozen, and compared by identity: two things of the same words in two places are two things.
`where` says where it was written.
A quantity is None where its text was refused; the refusal has been told already.
"""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from authoring.model.fastening import Positions, Tapped
from authoring.model.figure import Figure
from authoring.model.fluid import Fluid
from authoring.model.heat import Cooled, Hot
from authoring.model.policy import Policy
from authoring.model.specification import Specification, When
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension, Unit
from authoring.source.document import Where


class Source(Struct, frozen=True, eq=False):
    """A document that values come from; `kind` is maker, standard, shop or common-practice."""

    id: str
    title: str
    edition: str | None
    kind: str
    where: Where


class Message(Struct, frozen=True, eq=False):
    """A safety message; the signal word is derived from harm, severity and likelihood."""

    id: str
    harm: str
    severity: str
    likelihood: str
    hazard: str | None
    consequence: str | None
    avoidance: str | None
    sign: str
    when: When
    where: Where
    of: str | None = None


class Person(Struct, frozen=True, eq=False):
    """Somebody who writes or approves procedures; `may` holds write, approve or both."""

    id: str
    name: str
    role: str
    may: frozenset[str]
    where: Where


class Hazard(Struct, frozen=True, eq=False):
    """A kind of hazard that the shop knows, and what to do first when it has happened.

    `only_while` is "running" for one that is there only while something runs.
    """

    id: str
    name: str
    emergency: tuple[str, ...]
    where: Where
    only_while: str | None = None


class Shop(Struct, frozen=True, eq=False):
    """The shop: its name, its units for each dimension, its people, sources, hazards and shared safety messages.

    `air` is the temperature in the workshop; `decision_rule` how a gauge's blur counts: simple, guarded, or unstated.
    `emergency` is what to do first whatever has happened; `retention` how long filled-in booklets are kept.
    `policy` is what the shop demands in which situation.
    """

    name: str
    profile: str
    units: Mapping[Dimension, tuple[Unit, ...]]
    people: Mapping[str, Person]
    sources: Mapping[str, Source]
    safety: Mapping[str, Message]
    where: Where
    hazards: Mapping[str, Hazard] = {}
    emergency: tuple[str, ...] = ()
    retention: str | None = None
    air: Specification | None = None
    decision_rule: str | None = None
    policy: Mapping[str, Policy] = {}


class Part(Struct, frozen=True, eq=False):
    """What is fitted and stays on the machine."""

    id: str
    name: str
    number: str
    one_time: bool
    place: str | None
    where: Where
    critical: str | None = None
    material: str | None = None


class Adapter(Struct, frozen=True, eq=False):
    """How far an adapter moves the bolt from the square of the wrench, and at which angle it sits."""

    length: Quantity | None
    angle: Quantity | None
    where: Where


class Tool(Struct, frozen=True, eq=False):
    """What is used and put back; `range` is what it can measure or tighten, `resolution` its smallest step.

    `accuracy` is how far it may be off, a ratio or an amount; `by_eye` says that both ends are read by eye.
    `length` is a torque wrench's, from its square to the middle of its grip.
    """

    id: str
    name: str
    place: str | None
    where: Where
    range: Specification | None = None
    resolution: Quantity | None = None
    adapter: Adapter | None = None
    made: str | None = None
    drawing: Figure | None = None
    without: str | None = None
    accuracy: Specification | None = None
    by_eye: bool = False
    length: Quantity | None = None


class Consumable(Struct, frozen=True, eq=False):
    """What is used up."""

    id: str
    name: str
    limits: str | None
    disposal: str | None
    where: Where
    take: str | None = None


class Stock(Struct, frozen=True, eq=False):
    """The parts, tools and consumables of the shop."""

    name: str
    parts: Mapping[str, Part]
    tools: Mapping[str, Tool]
    consumables: Mapping[str, Consumable]
    where: Where


class Feature(Struct, frozen=True, eq=False):
    """In what vehicles differ: a name, how to tell, and the words for each value."""

    id: str
    name: str
    tell: str
    values: Mapping[str, str]
    where: Where


class Reuse(Struct, frozen=True, eq=False):
    """Whether a thing may be used again: always, never or if; `say` tells on what it depends, or why not."""

    rule: str
    say: str | None
    where: Where


class Item(Struct, frozen=True, eq=False):
    """What can be taken off, fitted, opened, run or looked at; it may cover others, and be part of one.

    `positions` are the words for each position of a lever, switch or tap; `release` how it comes apart.
    `open_while_running` says why it is meant to be open then; `drains` and `fills` are the fluids of a plug.
    `seals_with` are the parts that are renewed whenever it has come off.
    `hot` says how hot it gets; `cooling` is its time constant against the air, `cooled` two readings instead.
    `facts` has what else is stated of it and may hurt: mass, pressure, voltage, voltage-ac, height.
    """

    id: str
    name: str
    place: str | None
    covers: tuple[str, ...]
    when: When
    where: Where
    part_of: str | None = None
    side: str | None = None
    twin: str | None = None
    positions: Mapping[str, str] = {}
    release: tuple[str, ...] = ()
    critical: str | None = None
    hazards: tuple[str, ...] = ()
    material: str | None = None
    cooling: Specification | None = None
    cooled: Cooled | None = None
    hot: Hot | None = None
    reuse: Reuse | None = None
    open_while_running: str | None = None
    drains: tuple[str, ...] = ()
    fills: tuple[str, ...] = ()
    seals_with: tuple[str, ...] = ()
    facts: Mapping[str, Specification] = {}


class FastenerGroup(Struct, frozen=True, eq=False):
    """Bolts, nuts or plugs tightened alike.

    `tightened` says how, where no torque is published; `untouched` why it is never loosened.
    `on` is the item it holds, `among` the one among whose fasteners it sits.
    `order` numbers the fasteners from 1; `joint` is A, B or C by what a failure puts at risk.
    `friction` is the coefficient of its threads, `nut_factor` K instead of it; `grip` the length that is clamped.
    `drains` and `fills` are the fluids that run out or go in where a plug is out.
    `seals_with` are the parts that are renewed whenever they have come off.
    `turned_with` are the tools of the stock of which any one turns them.
    """

    id: str
    name: str
    count: int
    thread: str
    strength: str | None
    length: Quantity | None
    on: str | None
    torque: Specification | None
    when: When
    where: Where
    stages: tuple[Quantity, ...] = ()
    order: tuple[int, ...] = ()
    tightened: str | None = None
    among: str | None = None
    untouched: str | None = None
    joint: str | None = None
    threads: str | None = None
    friction: Specification | None = None
    nut_factor: Specification | None = None
    grip: Specification | None = None
    positions: Positions | None = None
    tapped: Tapped | None = None
    side: str | None = None
    twin: str | None = None
    reuse: Reuse | None = None
    open_while_running: str | None = None
    drains: tuple[str, ...] = ()
    fills: tuple[str, ...] = ()
    seals_with: tuple[str, ...] = ()
    turned_with: tuple[str, ...] = ()


class Window(Struct, frozen=True, eq=False):
    """One of several windows of a value: for which vehicles, what speaks for it, why it is closed to the others."""

    specification: Specification
    when: When
    why: str | None
    otherwise: str | None
    where: Where


class Value(Struct, frozen=True, eq=False):
    """A quantity that steps refer to by name.

    `windows` has one entry for each window that will do, the best one first; a plain value is one window for all.
    """

    id: str
    name: str
    windows: tuple[Window, ...]
    where: Where

    @property
    def specification(self) -> Specification:
        """The first window's quantity and source."""
        return self.windows[0].specification


class Equipment(Struct, frozen=True, eq=False):
    """One kind of machine."""

    id: str
    name: str
    features: Mapping[str, Feature]
    never: tuple[When, ...]
    sources: Mapping[str, Source]
    items: Mapping[str, Item]
    fasteners: Mapping[str, FastenerGroup]
    fluids: Mapping[str, Fluid]
    values: Mapping[str, Value]
    where: Where
    viewpoint: str | None = None
