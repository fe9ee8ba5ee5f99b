"""How an author would change a step's text along with its actions."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from typing import Any

from authoring.model.action_kinds import action_kinds
from authoring.model.brackets import BRACKET, brackets
from tests.seeded.demo import ActionAt, StepAt
from tests.seeded.edits import Edit, both, cut, put
from tests.seeded.variant import Variant

_SENTENCE = re.compile(r"(?<=[.])\s+")
_JOINT = re.compile(r"(, then |, and | and |, )")


def dropped_action(action: ActionAt, told: str) -> Variant | None:
    """Return the variant without one action: without its step where it is the only one, and with all its methods.

    None for the other methods of such a step, which would be the same variant again.
    """
    step = action.step
    if len(step.data["do"]) == 1:
        if not step.is_method:
            return dropped_step(step, told)
        around = step.path[:-2]
        return None if step.path[-1] else Variant(step.document.file, step.path, told, (cut(around),))
    here = cut((*step.path, "do", action.place))
    return _reworded(action, told, here, _without_action(action))


def dropped_thing(action: ActionAt, name: str, told: str) -> Variant:
    """Return the variant whose action acts on one thing less; there are at least two."""
    left = [one for one in action.what if one != name]
    given = {**action.given, "what": left} if isinstance(action.given, dict) else left
    return _reworded(action, told, put(action.path, given), without(action.step.text, {name}, (), ()))


def dropped_step(step: StepAt, told: str) -> Variant:
    """Return the variant without a step; a section of nothing else goes with it."""
    *section, _, _ = step.path
    steps: Any = step.document.data
    for key in (*section, "steps"):
        steps = steps[key]
    gone = tuple(section) if len(steps) == 1 else step.path
    return Variant(step.document.file, step.path, told, (cut(gone),))


def _reworded(action: ActionAt, told: str, edit: Edit, text: str) -> Variant:
    step = action.step
    if not step.text:
        return Variant(step.document.file, action.path, told, (edit,))
    made = cut((*step.path, "step"))
    forms = (both(edit, put((*step.path, "step"), text)), both(edit, made)) if text else (both(edit, made),)
    return Variant(step.document.file, action.path, told, forms, made, f"made {step.path}")


def _without_action(action: ActionAt) -> str:
    others = [next(iter(one)) for place, one in enumerate(action.step.data["do"]) if place != action.place]
    kept = {name for one in action.step.data["do"] for given in one.values() for name in _named(given)}
    gone = set(action.what) - (kept - set(action.what))
    return without(action.step.text, gone, _verbs([action.name]), _verbs(others))


def _named(given: object) -> Sequence[str]:
    what = given.get("what", ()) if isinstance(given, dict) else given
    return [what] if isinstance(what, str) else [str(one) for one in what] if isinstance(what, list) else []


def _verbs(names: Sequence[str]) -> tuple[str, ...]:
    return tuple(verb.split()[0] for name in names for verb in action_kinds()[name].words)


def without(text: str, gone: Collection[str], verbs: Sequence[str], others: Sequence[str]) -> str:
    """Return a text without the parts of its sentences that say one of the verbs, or name only what is gone.

    What says a verb of the others stays. An empty text means that nothing was left, or that nothing was found.
    """
    kept = [part for sentence in _SENTENCE.split(text.strip()) if (part := _left_of(sentence, gone, verbs, others))]
    left = " ".join(kept)
    return left if left != " ".join(text.split()) else ""


def _left_of(sentence: str, gone: Collection[str], verbs: Sequence[str], others: Sequence[str]) -> str:
    pieces = _JOINT.split(sentence.rstrip("."))
    kept: list[str] = []
    for place in range(0, len(pieces), 2):
        piece = pieces[place]
        words = set(re.findall(r"\w+", piece.lower()))
        names = {one.name for one in brackets(piece)}
        only_gone = bool(names) and names <= set(gone)
        said = bool(words & set(verbs)) and not words & set(others)
        if said or (only_gone and not words & set(others)):
            continue
        kept += [pieces[place - 1] if kept else "", piece]
    left = "".join(kept).strip()
    return f"{left[0].upper()}{left[1:]}." if left else ""


def renamed(text: str, old: str, new: str) -> str:
    """Return a text that names another thing in brackets."""
    return text.replace(f"[{old}]", f"[{new}]")


def in_plain_words(text: str, name: str, words: str) -> str:
    """Return a text that says a thing in words, without brackets."""
    return text.replace(f"[{name}]", words)


def names_in(text: str) -> set[str]:
    """Return the names that stand in brackets in a text."""
    return {match[1] for match in BRACKET.finditer(text)}
