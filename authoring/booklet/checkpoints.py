"""Checkpoints: what is looked at or measured, the window, a blank for the reading, and what follows from each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from authoring.booklet.phrases import all_the, in_turn, the, times
from authoring.booklet.readings import readings
from authoring.booklet.step_parts import Checkpoint, Noticed, Outcome
from authoring.booklet.wording import Wording
from authoring.booklet.words import Blank, Text, Words
from authoring.model.action_kind import Kind
from authoring.model.library import Scope
from authoring.model.procedure import Action, Choice, ChoicePart
from authoring.model.procedure import Outcome as Written
from authoring.model.specification import ALWAYS, When
from authoring.model.things import FastenerGroup, Value
from authoring.quantities.quantity import Quantity

_SIGNED: Text = (
    Words("Met, name "),
    Blank(label="Name of who met the hold point"),
    Words(" time "),
    Blank(label="Time at which it was met"),
)
_WAYS = {"seen": "Look", "felt": "Feel", "heard": "Listen", "measured": "Measure", "counted": "Count"}


def checkpoint(
    action: Action, anchor: str, scope: Scope, wording: Wording, within: When = ALWAYS, told: str = ""
) -> Checkpoint:
    """Return the block of one inspecting, measuring, comparing or counting action; `told` is the step's sentence."""
    window, unit = _window(action, scope, wording)
    return Checkpoint(
        id=anchor,
        way="Compare" if action.kind.name == "compare" else _WAYS[action.way],
        what=(*_what(action, wording), *_at(action, wording, told)),
        window=window,
        entries=readings(action, unit, scope, wording),
        outcomes=_outcomes(action.outcomes, wording, within, action.roles.get("against")),
        hold=action.hold,
        notes=(*_more_sizes(action, scope, wording), *_notes(action, wording)),
        signed=_SIGNED if action.hold else (),
    )


def noticed(outcomes: Iterable[Written], anchor: str, wording: Wording, within: When) -> Iterator[Noticed]:
    """Yield the table of what may be noticed unasked, where the selection leaves anything."""
    left = _outcomes(outcomes, wording, within, None)
    if left:
        yield Noticed(f"{anchor}-noticed", left)


def _what(action: Action, wording: Wording) -> Text:
    what = in_turn([wording.named(name) for name in action.what])
    if action.kind.name != "compare" or "with" not in action.roles:
        return what
    # Two readings are compared, so there are two lines to write them on.
    first = (Words(" "), Blank(), Words(" ")) if action.way == "measured" else (Words(" "),)
    return (*what, *first, Words("with "), *wording.named(action.roles["with"]))


def _at(action: Action, wording: Wording, told: str) -> Text:
    """Return where it is seen or felt, with the word that the instruction uses."""
    if "at" not in action.roles:
        return ()
    return (Words(" through " if "through" in told else " at "), *the(action.roles["at"], wording))


def _notes(action: Action, wording: Wording) -> Iterator[Text]:
    if "against" in action.roles:
        yield (Words("Compare it with "), *wording.named(action.roles["against"]), Words("."))
    when = action.critical_when
    if when and not wording.holds(when):
        yield (Words(f"Here a habit: the result decides only {wording.whose(when)}."),)
    elif when and wording.applies(when):
        yield (Words(f"The result decides only {wording.whose(when)}; elsewhere it is a habit."),)


def _window(action: Action, scope: Scope, wording: Wording) -> tuple[Text, str]:
    value = scope.things[action.roles["value"]].thing if "value" in action.roles else None
    if isinstance(value, Value) and value.specification.value is not None:
        quantity = value.specification.value
        return wording.amount_of(scope.things[action.roles["value"]]), wording.units(quantity)[0].symbol
    if action.kind.name == "measure":
        return _sizes(action, scope, wording)
    if action.kind.name == "count":
        groups = [scope.things[name].thing for name in action.what if scope.things[name].kind is Kind.FASTENERS]
        number = sum(group.count for group in groups if isinstance(group, FastenerGroup))
        return ((Words(str(number)),) if number else ()), ""
    return (), ""


def _sizes(action: Action, scope: Scope, wording: Wording) -> tuple[Text, str]:
    """Return the window of the first size that is measured at a part choice; `_more_sizes` has the others."""
    for _, told, unit in _measured(action, scope, wording):
        return told, unit
    return (), ""


def _more_sizes(action: Action, scope: Scope, wording: Wording) -> Iterator[Text]:
    """Yield a line to write on for each further size that is measured at a part choice."""
    if action.kind.name == "measure" and "value" not in action.roles:
        for name, told, unit in list(_measured(action, scope, wording))[1:]:
            yield (Words("Measure ", "strong"), Blank(unit, f"{name}, in {unit}"), Words(" "), *told)


def _measured(action: Action, scope: Scope, wording: Wording) -> Iterator[tuple[str, Text, str]]:
    """Yield each size that is measured: its name, its window for each part that is left, its unit."""
    for thing in (scope.things[name].thing for name in action.what):
        if isinstance(thing, Choice):
            left = [part for part in thing.parts if wording.holds(part.when)]
            single = [(part, part.size) for part in left if part.size is not None]
            if single:
                yield "", *_window_of(single, "", scope, wording)
            for dimension in sorted(thing.dimensions.values(), key=lambda one: not one.decides):
                sizes = [(part, part.sizes[dimension.id].value) for part in left if dimension.id in part.sizes]
                known = [(part, size) for part, size in sizes if size is not None]
                habit = "" if dimension.decides else " (by habit)"
                if known:
                    yield dimension.name, *_window_of(known, f"{dimension.name}{habit}: ", scope, wording)


def _window_of(sizes: list[tuple[ChoicePart, Quantity]], lead: str, scope: Scope, wording: Wording) -> tuple[Text, str]:
    told: list[Text] = []
    shared = len({wording.amount(size) for _, size in sizes}) == 1
    for part, size in sizes[:1] if shared else sizes:
        which = " or ".join(scope.things[name].words for name in (part.part, *part.equal))
        told.append((*([Words(f"{which}: ")] if not shared else []), wording.amount(size)))
    return (*([Words(lead)] if lead else []), *in_turn(told, "; ")), wording.units(sizes[0][1])[0].symbol


def _outcomes(outcomes: Iterable[Written], wording: Wording, within: When, against: str | None) -> tuple[Outcome, ...]:
    return tuple(_outcome(one, wording, within, against) for one in outcomes if wording.holds(one.when))


def _outcome(outcome: Written, wording: Wording, within: When, against: str | None) -> Outcome:
    like: Text = ()
    if outcome.like is not None:
        picture = (Words(" on "), *wording.named(against)) if against is not None else ()
        like = (Words(f" Like number {outcome.like}"), *picture, Words("."))
    more = [
        wording.line(outcome.say) if outcome.say else (),
        *_bound(outcome, wording),
        _bears_on(outcome, wording),
    ]
    return Outcome(
        found=(*wording.line(outcome.found), *like),
        follows=_follows(outcome, wording),
        good=outcome.then == "go-on",
        more=in_turn([text for text in more if text], " "),
        applies=wording.applies(outcome.when, within),
    )


def _bears_on(outcome: Written, wording: Wording) -> Text:
    """Return what else it means something for: a label alone where the sentence before tells what."""
    if not outcome.bears_on:
        return ()
    if outcome.say:
        return (Words("Concerns: "), *in_turn([wording.named(name) for name in outcome.bears_on]), Words("."))
    return (Words("It bears on "), *all_the(outcome.bears_on, wording), Words("."))


def _bound(outcome: Written, wording: Wording) -> Iterator[Text]:
    """Yield how often it may be tried, and what follows when it did not help."""
    if outcome.at_most is not None:
        yield (Words(f"Do this {times(outcome.at_most)} at most."),)
    if outcome.otherwise is not None:
        yield (Words("If that does not help: "), *wording.line(outcome.otherwise))


_SENTENCES: Mapping[str, Text] = {
    "go-on": (Words("Go on."),),
    "put-right": (Words("Put it right, then check again."),),
    "stop": (Words("Stop the job."),),
    "ask-customer": (Words("Ask the customer before you go on."),),
    "next-time": (Words("Write it down for the next job, and go on."),),
}


def _follows(outcome: Written, wording: Wording) -> Text:
    to = wording.named(outcome.to) if outcome.to else ()
    match outcome.then:
        case "do":
            return (Words("Carry out "), *to, Words(", then come back to this step."))
        case "do-after":
            return (Words("Go on. When this job is done, carry out "), *to, Words("."))
        case "go-to":
            return (Words("Go to "), *to, Words("."))
        case other:
            return _SENTENCES[other]
