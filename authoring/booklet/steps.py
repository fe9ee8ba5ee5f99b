"""Sections and steps to chapters."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec.structs import replace

from authoring.booklet.acts import acts
from authoring.booklet.blocks import Block, Chapter, Methods, Rest
from authoring.booklet.cautions import cautions
from authoring.booklet.checkpoints import checkpoint, noticed
from authoring.booklet.choices import choice_again, choice_block
from authoring.booklet.demands import after_step, before_section, before_step
from authoring.booklet.drawings.bolt_patterns import bolt_patterns
from authoring.booklet.drawings.dials import dials
from authoring.booklet.drawings.look_alikes import look_alikes
from authoring.booklet.facts import facts
from authoring.booklet.filling import filling
from authoring.booklet.fluids import fluids
from authoring.booklet.gauging import passing, telling
from authoring.booklet.heat import grows
from authoring.booklet.levels import level_notes
from authoring.booklet.manner import manners
from authoring.booklet.phrases import aside, in_turn, lowered
from authoring.booklet.plan import Placed, Volume, pictures
from authoring.booklet.step_parts import Aside, Caution, Figure, Step, StepPart
from authoring.booklet.torques import callouts
from authoring.booklet.touched import critical, handled, where
from authoring.booklet.windows import windows
from authoring.booklet.wording import Wording
from authoring.booklet.words import Named
from authoring.model import procedure as written
from authoring.model.library import Scope
from authoring.model.specification import ALWAYS, When
from authoring.model.things import Consumable, Part


def chapters(volume: Volume, wording: Wording, figures: Mapping[str, tuple[Figure, str]]) -> Iterator[Chapter]:
    """Yield a chapter for each section that has steps; `figures` gives each figure and the step that shows it."""
    shown: set[str] = set()
    for section, anchor, steps in volume.sections:
        blocks: list[Block] = list(before_section(section, volume, wording))
        blocks += cautions(volume.called(section.safety), anchor, volume, wording)
        blocks += wording.passage(section.intro)
        for place, placed in enumerate(steps):
            if placed.step.method is not None:
                blocks += _methods(steps, place, wording)
            blocks.append(_step(placed, volume, wording, figures, shown))
        if section.noticed:
            blocks += noticed(section.noticed, anchor, wording, section.when)
        if section.safe_to_stop is not None:
            blocks.append(Rest(wording.line(section.safe_to_stop)))
        applies = wording.applies(section.when)
        level = 2 if volume.letter else 1
        time = (wording.amount(section.time),) if section.time is not None else ()
        yield Chapter(anchor, "", section.title, level, tuple(blocks), applies, phase=section.phase or "", time=time)


def _methods(steps: tuple[Placed, ...], place: int, wording: Wording) -> Iterator[Methods]:
    """Yield the line above the first of several methods; where the selection leaves one, there is nothing to pick."""
    shared = steps[place].shared
    together = [one for one in steps if one.step.method is not None and one.shared == shared]
    method = steps[place].step.method
    if together[0] is steps[place] and len(together) > 1 and method is not None:
        yield Methods(tuple(one.number for one in together), wording.passage(method.why))


def _step(
    placed: Placed, volume: Volume, wording: Wording, figures: Mapping[str, tuple[Figure, str]], shown: set[str]
) -> Step:
    step = placed.step
    return Step(
        id=placed.anchor,
        number=placed.number,
        applies=wording.applies(step.when),
        cautions=_cautions(placed, volume, wording),
        text=wording.line(step.text),
        parts=(
            *manners(step, volume, wording),
            *dials(step, volume, wording),
            *acts(step, volume, wording),
            *handled(step, volume, wording, shown),
            *after_step(placed, volume, wording),
            *_asides_before(placed, volume, wording, shown),
            *_figures(placed, figures, shown),
            *_of_actions(placed, volume, wording, shown),
            *(noticed(step.noticed, placed.anchor, wording, _around(placed)) if step.noticed else ()),
            *_asides_after(step, wording),
        ),
        before=(*before_step(step, volume, wording), *facts(step, volume, wording), *critical(step, volume)),
        clock=_clock(placed, volume),
    )


def _clock(placed: Placed, volume: Volume) -> str:
    """Return the anchor of the step of the same section from which the time of this one runs; empty where none does."""
    start = placed.step.deadline.start if placed.step.deadline is not None else None
    return next((one.anchor for one in volume.steps() if one.step.id == start and one.section is placed.section), "")


def _cautions(placed: Placed, volume: Volume, wording: Wording) -> tuple[Caution, ...]:
    return cautions(volume.said_at(placed.step), placed.anchor, volume, wording, _around(placed))


def _around(placed: Placed) -> When:
    return {**placed.section.when, **placed.step.when}


def _of_actions(placed: Placed, volume: Volume, wording: Wording, shown: set[str]) -> Iterator[StepPart]:
    checks = 0
    apart: set[str] = set()
    for action in placed.step.actions:
        for name in action.what:
            thing = volume.scope.things[name].thing
            if not isinstance(thing, written.Choice) or name in apart:
                continue
            # The table that tells look-alikes apart stands where they are first met.
            # Where one goes on later, a line says which and leads back to it.
            if name not in shown:
                yield choice_block(thing, placed.anchor, volume, wording)
                yield from look_alikes(thing, volume, wording)
            elif action.kind.counted:
                yield choice_again(thing, volume, wording)
            else:
                continue
            apart.add(name)
            shown.add(name)
        if action.kind.torque:
            yield from callouts(action, placed.step, volume, wording, _around(placed))
            yield from bolt_patterns(action, volume, wording)
        if action.kind.checkpoint:
            checks += 1
            yield from telling(action, placed.step, volume)
            told = wording.told(placed.step) if "at" in action.roles else ""
            block = checkpoint(action, f"{placed.anchor}-k{checks}", volume.scope, wording, _around(placed), told)
            yield replace(block, notes=(*passing(action, placed.step, volume), *block.notes))


def _figures(placed: Placed, figures: Mapping[str, tuple[Figure, str]], shown: set[str]) -> Iterator[StepPart]:
    """Yield the figures that a step shows first, and a line for each other one; once in a section it has its title."""
    for name in pictures(placed.step):
        figure, first = figures[name]
        titled = f"title of {name} in {placed.section.id}"
        if first == placed.anchor:
            yield figure
        else:
            named = Named(f"figure {figure.number}", figure.id, turn_to=True)
            yield aside("See", named, *([] if titled in shown else [f", {figure.title}"]))
        shown.add(titled)


def _asides_before(placed: Placed, volume: Volume, wording: Wording, shown: set[str]) -> Iterator[StepPart]:
    step = placed.step
    if step.uses:
        yield aside("With", *in_turn([wording.named(name) for name in step.uses]), close=True)
    yield from where(placed, volume, shown)
    yield from windows(step, volume, wording, shown)
    yield from fluids(step, volume, wording)
    yield from filling(placed, volume, wording)
    yield from level_notes(placed, volume, wording, shown)
    yield from grows(step, volume, wording)
    yield from _materials(step, volume.scope)


def _materials(step: written.Step, scope: Scope) -> Iterator[Aside]:
    """Yield what the hand needs to know of a part that is fitted and of a consumable, where it is used."""
    for action in step.actions:
        for name in action.what if action.kind.counted else ():
            part = scope.things[name].thing
            if isinstance(part, Part):
                count = f"{action.count} × " if action.count > 1 else ""
                new = ", always new" if part.one_time else ""
                yield aside("Part", f"{count}{part.name}, {part.number}{new}", close=True)
    for name in dict.fromkeys([*step.uses, *(name for action in step.actions for name in action.what)]):
        thing = scope.things[name].thing
        if isinstance(thing, Consumable) and thing.limits:
            yield aside("Limits", f"{thing.name}: {thing.limits}", close=True)


def _asides_after(step: written.Step, wording: Wording) -> Iterator[Aside]:
    if step.why:
        yield Aside("Why", wording.passage(step.why))
    if step.tip:
        yield Aside("Tip", wording.passage(step.tip))


def decided_by(when: When, wording: Wording, within: When = ALWAYS) -> str:
    """Return for which vehicles a line of a list counts, in brackets, or nothing; `within` is what was told before."""
    told = wording.applies(when, within)
    return f" ({lowered(told)})" if told else ""
