"""What is decided on the way through a job, and which of it the rules follow."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.booklet.phrases import in_turn
from authoring.booklet.plan import Placed, Plan
from authoring.booklet.words import Inline, Named, Text, Words
from authoring.diagnostics.words import joined

_NONE = "Nothing is decided on the way: no methods, nothing to skip, no way back."
_FOLLOWED = "What the job does to each thing is followed on each of these ways; a step that is repeated counts once."


def decisions(plan: Plan) -> Text:
    """Return the methods, what may be skipped, what depends on it, the options, the ways back, and what is followed."""
    placed = [one for volume in plan.volumes for one in volume.steps()]
    followed: list[Text] = [
        *_some("One of several methods: step", _methods(placed)),
        *_some("May be skipped: step", [_step(one) for one in placed if _optional(one)]),
        *_some(
            "Depends on whether another step was done: step",
            [_step(one) for one in placed if one.step.if_done or one.step.unless_done],
        ),
    ]
    options = [option.name for volume in plan.volumes for option in volume.procedure.options.values()]
    told = [*followed, *([(Words(f"Decided in the job: {joined(options, 'and')}."),)] if options else [])]
    told += _some("Repeated, or leads back: step", [_step(one) for one in placed if _leads_back(one)])
    return in_turn([*told, (Words(_FOLLOWED),)], " ") if told else (Words(_NONE),)


def _some(words: str, steps: Sequence[Inline]) -> Iterator[Text]:
    if steps:
        yield (Words(f"{words}{'s' if len(steps) > 1 else ''} "), *in_turn([(one,) for one in steps]), Words("."))


def _step(placed: Placed) -> Named:
    return Named(placed.number, placed.anchor)


def _methods(placed: Sequence[Placed]) -> list[Inline]:
    return [_step(one) for one in placed if one.step.method is not None]


def _optional(placed: Placed) -> bool:
    return placed.step.optional is not None or placed.section.optional is not None


def _leads_back(placed: Placed) -> bool:
    step = placed.step
    outcomes = (*step.noticed, *(one for action in step.actions for one in action.outcomes))
    return step.repeat is not None or any(one.at_most is not None for one in outcomes)
