"""How much of a fluid is in after each step that moves it, and how much more is to be expected."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from msgspec import Struct

from authoring.booklet.phrases import aside, doubt
from authoring.booklet.plan import Placed, Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Words
from authoring.model.contents import ANY_AMOUNT, MOVES, Contents, after, amounts, hull, in_the_unit_of, volume
from authoring.model.fluid import Fluid
from authoring.model.procedure import Action, Section, Step
from authoring.model.things import Value
from authoring.quantities.quantity import Quantity
from authoring.workshop.fills import rest
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, total

_NOTHING = Interval(Fraction(0), Fraction(0))


class _Move(Struct, frozen=True, eq=False):
    """An action that moves a fluid, and its place."""

    placed: Placed
    action: Action


class _Filling(Struct, frozen=True, eq=False):
    """What is in after a step: the contents, the amounts as they were typed, and whose words these are."""

    contents: Contents
    typed: tuple[Quantity, ...]
    wording: Wording


def filling(placed: Placed, around: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield, for each fluid that a step drains or pours by an amount, how much is then in and what is still to come.

    Where it depends on the vehicle, or on what was skipped or repeated before, nothing is said.
    """
    for action in placed.step.actions:
        for name in action.what if action.kind.name in MOVES else ():
            fluid = around.scope.things[name].thing
            if isinstance(fluid, Fluid):
                yield from _of_action(_Move(placed, action), fluid, around, wording)


def _of_action(move: _Move, fluid: Fluid, around: Volume, wording: Wording) -> Iterator[Aside]:
    name = move.action.kind.name
    moves = list(_moves(fluid, around))
    known = _until(move, moves, fluid, around, wording)
    if known is None:
        return
    contents = known.contents
    poured = name == "fill" and bool(_plain(known, total(contents.poured)))
    if poured and (len(contents.poured) > 1 or _stays(contents) or fluid.capacity is not None):
        to_come = tuple(_to_come(move, moves, known, fluid, around))
        rests = ("fills.sum", "fills.rest") if any(isinstance(one, Named) for one in to_come) else ("fills.sum",)
        yield aside("Filled", *_sum(known), *to_come, _on_what(*rests), close=True)
    if name == "fill-to-level" and contents.poured and not contents.levelled:
        yield from _of_the_level(move, known, around)
    left = _roughly(known, contents.inside, known.typed) if name in {"drain", "extract"} and _stays(contents) else ""
    if left:
        yield aside("Left in", f"{left} stays in{doubt('fills.rest') if name == 'extract' else ''}.", close=True)


def _of_the_level(move: _Move, known: _Filling, around: Volume) -> Iterator[Aside]:
    """Yield what was poured before a level is filled, and how much more it is expected to take."""
    expected = _amounts(move.action, "expected", around)
    poured = total(known.contents.poured)
    more = rest(hull(expected), poured) if expected else None
    before = _plain(known, poured)
    to_come = "" if more is None or isinstance(more, Impossible) else _roughly(known, more, (*expected, *known.typed))
    if before and to_come:
        yield aside(
            "Filled",
            f"{before} was poured before; {to_come} more is to be expected",
            _on_what("fills.rest"),
            close=True,
        )


def _moves(fluid: Fluid, around: Volume) -> Iterator[_Move]:
    """Yield what moves a fluid, and the procedures carried out on the way, in which it may be moved as well."""
    for placed, action in around.actions():
        if (action.kind.name in MOVES and fluid.id in action.what) or action.kind.name == "carry-out":
            yield _Move(placed, action)


def _until(last: _Move, moves: Sequence[_Move], fluid: Fluid, around: Volume, wording: Wording) -> _Filling | None:
    """Return what is in after an action, or before it where it fills to a level; None where nobody can say."""
    stays = fluid.left_in.value if fluid.left_in is not None else None
    begin = (stays,) if stays is not None else ()
    contents, typed = Contents(), begin
    rinsed: Section | None = None
    sure = True
    for move in moves:
        mine = move.action is last.action
        if mine and move.action.kind.name == "fill-to-level":
            break
        related = True if mine else _goes_with(move.placed, last.placed, around)
        if related is False:
            continue
        amount = _amounts(move.action, "amount", around)
        drains = move.action.kind.name == "drain"
        if related is None or move.action.kind.name == "carry-out" or _unsure(move.placed, last.placed):
            # A rinsing that may be skipped leaves no more than the draining before it, once it is drained itself.
            sure = drains and rinsed is move.placed.section
            empty = contents.drained and not contents.poured and not contents.levelled
            rinsed = move.placed.section if empty and move.action.kind.name == "fill" else None
        else:
            contents = after(contents, move.action, hull(amount), volume(fluid.left_in))
            typed = begin if drains else (*typed, *amount)
            sure = sure or drains
        if mine:
            break
    return _Filling(contents, typed, wording) if sure else None


def _amounts(action: Action, role: str, around: Volume) -> list[Quantity]:
    named = around.scope.things.get(action.roles.get(role, ""))
    return amounts(named.thing, around.selection) if named is not None and isinstance(named.thing, Value) else []


def _goes_with(earlier: Placed, later: Placed, around: Volume) -> bool | None:
    """Tell whether whoever does the later step did the earlier one; None where it depends on the vehicle."""
    if earlier.shared == later.shared and earlier.step is not later.step:
        return False  # of several methods one is done
    vehicle = around.scope.vehicle
    sure: bool | None = True
    for feature, values in earlier.when.items():
        if feature in around.selection:
            continue
        known = vehicle.features[feature].values if vehicle is not None and feature in vehicle.features else ()
        mine = set(later.when.get(feature, around.procedure.covers.get(feature, known)))
        if not mine & set(values):
            return False
        sure = sure if mine <= set(values) else None
    return sure


def _unsure(placed: Placed, last: Placed) -> bool:
    """Tell whether a step may be skipped or done again, so that nobody knows what it moved."""
    step = placed.step
    around: tuple[Step | Section, ...] = (step, placed.section)
    loose = any(one.optional is not None or one.repeat is not None for one in around)
    method = step.method is not None and placed.step is not last.step
    return loose or method or bool(step.if_done or step.unless_done)


def _stays(contents: Contents) -> bool:
    return contents.drained and contents.left not in (ANY_AMOUNT, _NOTHING)


def _sum(known: _Filling) -> Iterator[str]:
    """Yield what was poured, and what is in with what stayed in; in the shop's own unit alone, as it is a help only."""
    contents = known.contents
    yield f"after this step {_plain(known, total(contents.poured))} is poured in"
    makes = _roughly(known, contents.inside, known.typed[::-1]) if _stays(contents) else ""
    if makes:
        yield f", which makes {makes} with what stayed in"


def _plain(known: _Filling, span: Interval) -> str:
    """Return an amount in the unit of the last one typed; empty where nothing is known of it."""
    typed = known.typed[::-1]
    return known.wording.amount(in_the_unit_of(typed, span)).first if typed and _is_known(span) else ""


def _roughly(known: _Filling, span: Interval, typed: Sequence[Quantity]) -> str:
    """Return an amount that was worked out: about so much, or its one limit; empty where nothing is known of it."""
    if not typed or not _is_known(span):
        return ""
    bare = span.low in (None, 0) and span.high != 0
    shown = known.wording.amount(in_the_unit_of(typed, Interval(None, span.high) if bare else span)).first
    return shown if bare or span.high is None else f"about {shown}"


def _is_known(span: Interval) -> bool:
    return span.high is not None or span.low not in (None, 0)


def _to_come(
    move: _Move, moves: Sequence[_Move], known: _Filling, fluid: Fluid, around: Volume
) -> Iterator[Inline | str]:
    """Yield how much more a later step is expected to take, or how much the machine holds in all."""
    for later in moves[[one.action for one in moves].index(move.action) + 1 :]:
        related = _goes_with(later.placed, move.placed, around)
        if related is False:
            continue
        expected = _amounts(later.action, "expected", around)
        more = rest(hull(expected), total(known.contents.poured)) if expected else _NOTHING
        to_come = "" if isinstance(more, Impossible) else _roughly(known, more, (*expected, *known.typed))
        if related and later.action.kind.name == "fill-to-level" and to_come and expected:
            step = Named(f"step {later.placed.number}", later.placed.anchor)
            yield from (f"; {to_come} more is to be expected in ", step)
            return
        break
    held = fluid.capacity.value if fluid.capacity is not None else None
    if held is not None and known.contents.drained:
        yield f"; the dry system holds {known.wording.amount(held).first}"


def _on_what(*computations: str) -> Words:
    return Words(f". Counted at one temperature{doubt(*computations)}.")
