"""Checkpoints: what is looked at or measured, the window, a blank for the reading, and what follows from each."""

from __future__ import annotations

from collections.abc import Mapping

from authoring.booklet.step_parts import Checkpoint, Outcome
from authoring.booklet.wording import Wording
from authoring.booklet.words import Blank, Inline, Text, Words
from authoring.model.action_kind import Kind
from authoring.model.library import Scope
from authoring.model.procedure import Action, Choice
from authoring.model.procedure import Outcome as Written
from authoring.model.things import FastenerGroup, Value

_WAYS = {"seen": "Look", "felt": "Feel", "heard": "Listen", "measured": "Measure", "counted": "Count"}


def checkpoint(action: Action, anchor: str, scope: Scope, wording: Wording) -> Checkpoint:
    """Return the block of one inspecting, measuring or counting action."""
    window, unit = _window(action, scope, wording)
    return Checkpoint(
        id=anchor,
        way=_WAYS[action.way],
        what=_all(action, wording),
        window=window,
        entry=Blank(unit) if action.way in {"measured", "counted"} else None,
        outcomes=tuple(_outcome(one, wording) for one in action.outcomes),
        hold=action.hold,
    )


def _all(action: Action, wording: Wording) -> Text:
    words: list[Inline] = []
    for name in action.what:
        words += [Words(", "), *wording.named(name)] if words else wording.named(name)
    return tuple(words)


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
    """Return the window of each part that a measured choice leaves, with its name where several are left."""
    choices = [choice for name in action.what if isinstance(choice := scope.things[name].thing, Choice)]
    left = [part for choice in choices for part in choice.parts if part.size is not None and wording.holds(part.when)]
    words: list[Inline] = []
    unit = ""
    for part in left:
        if part.size is not None:
            words += [Words("; ")] if words else []
            words += [Words(f"{scope.things[part.part].words}: ")] if len(left) > 1 else []
            words.append(wording.amount(part.size))
            unit = wording.units(part.size)[0].symbol
    return tuple(words), unit


def _outcome(outcome: Written, wording: Wording) -> Outcome:
    said = (Words(" "), *wording.line(outcome.say)) if outcome.say else ()
    return Outcome(
        found=wording.line(outcome.found),
        follows=(*_follows(outcome, wording), *said),
        good=outcome.then == "go-on",
    )


_SENTENCES: Mapping[str, Text] = {
    "go-on": (Words("Go on."),),
    "put-right": (Words("Put it right, then check again."),),
    "stop": (Words("Stop the job.", "strong"),),
    "ask-customer": (Words("Ask the customer before you go on."),),
    "next-time": (Words("Write it down for the next job, and go on."),),
}


def _follows(outcome: Written, wording: Wording) -> Text:
    to = wording.named(outcome.to) if outcome.to else ()
    match outcome.then:
        case "do":
            return (Words("Carry out "), *to, Words(", then come back to this step."))
        case "go-to":
            return (Words("Go to "), *to, Words("."))
        case other:
            return _SENTENCES[other]
