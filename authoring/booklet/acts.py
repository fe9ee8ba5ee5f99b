"""What single actions say beside the instruction: a position, who is told, what keeps a thing up, a level, a wait."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from msgspec import Struct

from authoring.booklet.phrases import WHO, all_the, aside, in_turn, the
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.windows import names_value
from authoring.booklet.wording import Wording
from authoring.booklet.words import Blank, Bullets, Inline, Pick, Text, Words
from authoring.model.changes import Option
from authoring.model.procedure import Action, Step
from authoring.model.things import Item, Value
from authoring.quantities.show import limits


class _Act(Struct, frozen=True):
    """One action in its step."""

    action: Action
    step: Step
    volume: Volume
    wording: Wording

    def named(self, name: str) -> Text:
        """Return a thing with its article."""
        return the(name, self.wording)


_Teller = Callable[[_Act], Iterator[Aside]]


def acts(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield what the actions of a step say of themselves, for those few that do."""
    for action in step.actions:
        tell = _TELLERS.get(action.kind.name)
        if tell is not None:
            yield from tell(_Act(action, step, volume, wording))


def _set(act: _Act) -> Iterator[Aside]:
    told: list[Text] = []
    for name in act.action.what:
        item = act.volume.scope.things[name].thing
        position = act.action.details["position"]
        words = item.positions.get(position, position) if isinstance(item, Item) else position
        # An instruction that names the position has said it all.
        if words.casefold() not in act.wording.told(act.step):
            told.append((*act.wording.named(name), Words(f": {words}")))
    if told:
        yield aside("Set to", *in_turn(told, "; "), close=True)


def _tell(act: _Act) -> Iterator[Aside]:
    yield aside("Tell", f"{WHO[act.action.details['who']]}, of ", *all_the(act.action.what, act.wording), close=True)


def _ask(act: _Act) -> Iterator[Aside]:
    """Yield who is asked, with a box for each answer that the booklet leaves open, and a line for the name."""
    for name in act.action.what:
        option = act.volume.scope.things[name].thing
        if isinstance(option, Option):
            picked = act.volume.selection.get(name)
            answers = [Pick(words) for value, words in option.values.items() if picked in {None, value}]
            who = WHO[act.action.details["who"]]
            signed = Blank(label=f"Name of who decided: {option.name}")
            yield aside(
                "Ask", f"{who}: ", *act.wording.line(option.question), " ", *answers, "Name ", signed, close=True
            )


def _hold(act: _Act) -> Iterator[Aside]:
    by = (Words("by "), *act.named(act.action.roles["by"]), Words(", ")) if "by" in act.action.roles else ()
    until = (Words("until "), *act.named(act.action.roles["until"]), Words(" is in place"))
    yield aside("Held", Words("Not yet secured: ", "strong"), *by, *until, close=True)


def _trial(act: _Act) -> Iterator[Aside]:
    without = (Words(", without "), *act.named(act.action.roles["without"])) if "without" in act.action.roles else ()
    yield aside("Trial", "only to try it", *without, "; it comes off again", close=True)


def _level(act: _Act) -> Iterator[Aside]:
    roles = act.action.roles
    told: list[Text] = [(Words("seen at "), *act.named(roles["at"]))]
    # What must be so before the step, or its own sentence, has named the window already.
    if "window" in roles and not names_value(act.step, roles["window"]):
        told.append((Words("it counts at "), *act.wording.named(roles["window"])))
    if "level" in roles:
        level = act.volume.scope.things[roles["level"]].words
        told.append((Words(f"{level}: "), *act.wording.named(roles["level"])))
    if "expected" in roles:
        told.append((*act.wording.named(roles["expected"]), Words(" in all, which is expected and not a target")))
    yield Aside("Level", (Bullets(tuple(told)),), close=True)


def _empty(act: _Act) -> Iterator[Aside]:
    yield aside("Empty", *in_turn([act.wording.named(name) for name in act.action.what]), ": on purpose", close=True)


def _keep(act: _Act) -> Iterator[Aside]:
    box = act.action.roles.get("in")
    # An instruction that names the place has said it all.
    if box is None or act.wording.plain(box).casefold() in act.wording.told(act.step):
        return
    yield aside(
        "Kept", *in_turn([act.wording.named(name) for name in act.action.what]), ", in ", *act.named(box), close=True
    )


def _wait(act: _Act) -> Iterator[Aside]:
    for name in act.action.what:
        value = act.volume.scope.things[name].thing
        told: list[str | Inline] = ["begun at ", Blank(label="Time at which the wait began")]
        for words, later in _ends(value, act.wording):
            told += [f", {words} ", Blank(label=f"Time, {later} later"), f" ({later} later)"]
        yield aside("Time", *told, close=True)


def _ends(value: object, wording: Wording) -> Iterator[tuple[str, str]]:
    """Yield when a wait may be over, and when it must be: the words, and how much later that is."""
    quantity = value.specification.value if isinstance(value, Value) and len(value.windows) == 1 else None
    if quantity is None:
        yield "over at", "the time"
        return
    shown = limits(quantity, wording.units(quantity)[0])
    if shown.low is None and shown.high is None:
        yield "over at", f"{shown.nominal} {shown.unit}"
    if shown.low is not None:
        yield "not before", f"{shown.low} {shown.unit}"
    if shown.high is not None:
        yield "not after", f"{shown.high} {shown.unit}"


_TELLERS: Mapping[str, _Teller] = {
    "ask": _ask,
    "set": _set,
    "tell": _tell,
    "hold": _hold,
    "trial-fit": _trial,
    "fill-to-level": _level,
    "leave-empty": _empty,
    "keep": _keep,
    "wait": _wait,
}
