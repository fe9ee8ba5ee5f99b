"""What is poured of a fluid cannot agree with what the machine holds.

A box that gets its whole amount twice froths, and pushes its oil past the seals; one that gets too little runs dry.
The fillings since the fluid was drained, with what stayed in, are held against the capacity of the dry system, and
against the total that a level is expected to take; that total against the capacity less what stayed in.
`left-in` is what stays in when the fluid is drained; an extraction takes from it, and no more than can be in.
A top-up is no second filling: it brings the level right, by as much as that takes.
Only what cannot agree whatever is poured inside the limits is told.
Where an amount is poured into what is full already, `filled-when-full` tells that, and the sum is not told as well.

Wrong:

```yaml equipment
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    capacity: {value: 1.20 ± 0.05 L, source: bench-book, at: page 12}
    disposal: used-oil tank
```

```yaml procedure
values:
  first-fill: {name: first fill, value: 0.7 L, source: bench-book, at: page 9}
  second-fill: {name: second fill, value: 0.6 L, source: bench-book, at: page 9}
sections:
  - title: Fill
    steps:
      - step: Drain the [box-oil].
        do:
          - drain: box-oil
      - step: Pour in [first-fill] of [box-oil].
        do:
          - fill: {what: box-oil, amount: first-fill}
      - step: Pour in [second-fill] of [box-oil].
        do:
          - fill: {what: box-oil, amount: second-fill}   #! fills-do-not-add-up
```

Right:

```yaml equipment
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    capacity: {value: 1.20 ± 0.05 L, source: bench-book, at: page 12}
    disposal: used-oil tank
```

```yaml procedure
values:
  first-fill: {name: first fill, value: 0.7 L, source: bench-book, at: page 9}
  second-fill: {name: second fill, value: 0.5 L, source: bench-book, at: page 9}
sections:
  - title: Fill
    steps:
      - step: Drain the [box-oil].
        do:
          - drain: box-oil
      - step: Pour in [first-fill] of [box-oil].
        do:
          - fill: {what: box-oil, amount: first-fill}
      - step: Pour in [second-fill] of [box-oil].
        do:
          - fill: {what: box-oil, amount: second-fill}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.diagnostics.words import joined
from authoring.model.contents import ANY_AMOUNT, MOVES, Contents, after, amounts, hull, in_the_unit_of, volume
from authoring.model.course import Act, acts, seen
from authoring.model.fitments import Fitment
from authoring.model.fluid import Fluid
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.runs import one_of_each, runs
from authoring.model.space import Cells
from authoring.model.things import Value
from authoring.model.ways import Ways, ways_of
from authoring.proof.full import Filling, not_full
from authoring.proof.job import Job, job_of
from authoring.quantities.quantity import Quantity
from authoring.rules.rule import Fault
from authoring.workshop.fills import add_up, rest
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Comparison, Interval, Standing, compare, exactly, total

# Too much is wrong for certain; too little may be made up for by what nobody wrote down.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N6",)
ABOUT = ("fluid-moved",)
_CURE = "Correct the amount, the capacity or what stays in; drain the fluid before it is filled anew."


class _Found(Struct, frozen=True):
    """One contradiction: the sentence, where it stands, whether it is too much, and the filling that makes it so."""

    message: str
    span: Span
    too_much: bool
    filling: Filling | None = None


class _Poured(Struct, frozen=True):
    """The amounts as they were typed: what went in, and what was drawn out again."""

    filled: tuple[Quantity, ...] = ()
    drawn: tuple[Quantity, ...] = ()

    def more(self, stated: Sequence[Quantity], *, taken: bool) -> _Poured:
        return _Poured(self.filled, (*self.drawn, *stated)) if taken else _Poured((*self.filled, *stated), self.drawn)

    @property
    def told(self) -> str:
        """All of them in words."""
        filled = joined([one.text for one in self.filled])
        return f"{filled} less {joined([one.text for one in self.drawn])}" if self.drawn else filled


class _Course(Struct, frozen=True, eq=False):
    """What a job does with one fluid: every action that moves it, and every later look that may bring the rest."""

    fluid: Fluid
    moves: tuple[Act, ...]
    looks: tuple[int, ...]
    ways: Ways
    library: Library
    job: Job | None

    def amount(self, act: Act, role: str, machine: Fitment) -> list[Quantity]:
        """Return the amounts that an action states under a role, as far as they hold for a machine."""
        scope = self.library.scope(self.ways.procedure_of(act))
        named = scope.things.get(act.action.roles.get(role, ""))
        return amounts(named.thing, machine) if named is not None and isinstance(named.thing, Value) else []


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each filling and each expected total that cannot agree with what the machine holds."""
    equipment = library.scope(procedure).equipment
    course = acts(procedure, library) if equipment is not None and equipment.fluids else ()
    moved = {name: None for act in course if act.action.kind.pours for name in act.action.what}
    ways = ways_of(procedure, library) if moved else None
    if ways is None:
        return
    for name in moved:
        fluid = ways.vehicle.fluids.get(name)
        if isinstance(fluid, Fluid):
            moves = tuple(act for act in course if act.action.kind.name in MOVES and name in act.action.what)
            looks, job = _looks(name, course, procedure), job_of(procedure, library)
            yield from _of_fluid(_Course(fluid, moves, looks, ways, library, job))


def _looks(name: str, course: Sequence[Act], procedure: Procedure) -> tuple[int, ...]:
    """Return the numbers of the steps at which the fluid is judged, or from which another job may follow."""
    judged = [act.place for act in course if act.action.kind.checkpoint and name in act.action.what]
    return (*judged, *(one.last for one in seen(procedure) if one.outcome.then in {"do", "do-after"}))


def _of_fluid(course: _Course) -> Iterator[Fault]:
    """Yield a fault for each contradiction, told once for all the machines and ways that have it."""
    whens = [window.when for act in course.moves for value in _values(act, course) for window in value.windows]
    space = course.ways.space(course.moves, (), [course.fluid.when, *whens])
    if space is None:
        return
    found: dict[_Found, Cells] = {}
    for done, cells in runs(course.ways.marked(course.moves, space), space.where(course.fluid.when)):
        for machine, alike in one_of_each(whens, cells, space):
            for one in _on(course, done, machine):
                found[one] = found.get(one, 0) | alike
    for one, cells in found.items():
        bad, over = not_full(course.fluid, course.job, one.filling, (cells, space))
        if bad:
            shown, stated = course.ways.shown(bad, over), course.fluid.capacity
            related = (Related(stated.where.of("value"), "the capacity"),) if stated is not None else ()
            severity = Severity.ERROR if one.too_much else None
            yield Fault(f"{one.message}{shown.whom}.", one.span, _CURE, related, shown.fitments, severity)


def _values(act: Act, course: _Course) -> Iterator[Value]:
    scope = course.library.scope(course.ways.procedure_of(act))
    for role in ("amount", "expected"):
        named = scope.things.get(act.action.roles.get(role, ""))
        if named is not None and isinstance(named.thing, Value):
            yield named.thing


def _on(course: _Course, done: Sequence[Act], machine: Fitment) -> Iterator[_Found]:
    """Yield what does not agree on one machine and way, in the order of the steps."""
    contents = Contents()
    poured = _Poured()
    last: Act | None = None
    for act in done:
        name = act.action.kind.name
        stated = course.amount(act, "amount", machine)
        yield from _expected(course, act, contents, course.amount(act, "expected", machine), poured)
        if name == "extract" and stated:
            yield from _drawn(course, act, contents, stated)
        contents = after(contents, act.action, _done(act, hull(stated)), volume(course.fluid.left_in))
        poured = poured.more(stated, taken=name == "extract") if contents.poured else _Poured()
        last = act
        if name == "fill":
            yield from _dry(course, act, contents, poured, wrong=Standing.ABOVE)
    if last is not None and last.action.kind.name == "fill":
        yield from _dry(course, last, contents, poured, wrong=Standing.BELOW)


def _done(act: Act, amount: Interval) -> Interval:
    """Return what an action may move in all: what may be skipped moves nothing, what is repeated moves more."""
    return Interval(Fraction(0) if act.optional else amount.low, None if act.repeated else amount.high)


def _drawn(course: _Course, act: Act, contents: Contents, stated: list[Quantity]) -> Iterator[_Found]:
    """Yield where more is drawn out than can be in."""
    highs = (contents.inside.high, volume(course.fluid.capacity).high)
    most = Interval(None, min((high for high in highs if high is not None), default=None))
    compared = compare(_done(act, hull(stated)), most)
    if compared.standing is Standing.ABOVE:
        told = f"{joined([one.text for one in stated], 'or')} of {_quoted(course)} are drawn out"
        told += f", but {_span(most, stated)} can be in: {_by(compared, stated)}"
        yield _Found(told, act.action.where.of("amount"), too_much=True)


def _dry(course: _Course, act: Act, contents: Contents, poured: _Poured, *, wrong: Standing) -> Iterator[_Found]:
    """Yield where the fillings come to more, or to less, than the dry system holds."""
    held, much = _capacity(course), wrong is Standing.ABOVE
    settled = contents.drained and not contents.levelled and all(place <= act.place for place in course.looks)
    if held is None or not poured.filled or not (much or settled):
        return
    compared = add_up((contents.left, *contents.poured), volume(course.fluid.capacity))
    if compared.standing is wrong:
        told = _sum(course, contents, poured, held, compared)
        yield _Found(told, act.action.where.of("amount"), much, (act.action, act.within) if much else None)


def _expected(
    course: _Course, act: Act, contents: Contents, expected: list[Quantity], poured: _Poured
) -> Iterator[_Found]:
    """Yield where the total that is expected is less than what is in it already, or no share of the capacity."""
    if not expected:
        return
    span, typed = act.action.where.of("expected"), joined([one.text for one in expected], "or")
    before = add_up(contents.poured, hull(expected))
    if before.standing is Standing.ABOVE and poured.filled:
        told = f"{poured.told} of {_quoted(course)} {_are(total(contents.poured), poured)}"
        yield _Found(f"{told}, but {typed} are expected in all: {_by(before, expected)}", span, too_much=True)
        return
    held = _capacity(course)
    free = rest(volume(course.fluid.capacity), contents.left) if held is not None else ANY_AMOUNT
    if held is None or isinstance(free, Impossible):
        return
    compared = add_up((hull(expected),), free)
    if compared.common is None:
        room = _span(free, [*expected, held])
        stays = _stays(contents, [held])
        known = f" and {stays} stayed in, which leaves room for {room}" if stays else ""
        told = f"The dry system of {_quoted(course)} holds {held.text}{known}, but {typed} are expected in all"
        yield _Found(f"{told}: {_by(compared, expected)}", span, too_much=compared.standing is Standing.ABOVE)


def _capacity(course: _Course) -> Quantity | None:
    return course.fluid.capacity.value if course.fluid.capacity is not None else None


def _sum(course: _Course, contents: Contents, poured: _Poured, held: Quantity, compared: Comparison) -> str:
    told = f"{poured.told} of {_quoted(course)} {_are(total(contents.poured), poured)}"
    stays = _stays(contents, poured.filled)
    if stays:
        told += f", which is {_span(contents.inside, poured.filled)} with what stayed in ({stays})"
    return f"{told}, but the dry system holds {held.text}: {_by(compared, poured.filled)}"


def _stays(contents: Contents, typed: Sequence[Quantity]) -> str:
    none = contents.left in (ANY_AMOUNT, exactly(Fraction(0)))
    return _span(contents.left, typed) if contents.drained and not none else ""


def _are(span: Interval, poured: _Poured) -> str:
    several = len(poured.filled) + len(poured.drawn) > 1
    return f"make {_span(span, poured.filled)}" if several else "are poured"


def _quoted(course: _Course) -> str:
    return f'"{course.fluid.id}"'


def _by(compared: Comparison, typed: Sequence[Quantity]) -> str:
    return f"{_span(exactly(compared.gap), typed)} too {'much' if compared.standing is Standing.ABOVE else 'little'}"


def _span(span: Interval, typed: Sequence[Quantity]) -> str:
    return in_the_unit_of(typed, span).text
