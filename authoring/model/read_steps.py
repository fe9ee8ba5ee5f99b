"""Sections and steps of a procedure file to values."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.model.demands import Deadline, Holding, Method, Repeat
from authoring.model.fitments import together
from authoring.model.procedure import Section, Step
from authoring.model.read_actions import read_action, read_outcomes
from authoring.model.reader import Reader
from authoring.model.says import instruction
from authoring.model.specification import When
from authoring.quantities.units import Dimension

# What the step around several methods may say for all of them.
_AROUND = frozenset({"either", "why", "when", "allow"})


def read_section(place: int, at: Reader) -> Section:
    """Read one section; `place` counts from 1."""
    steps = [step for number, one in enumerate(at.listed("steps"), 1) for step in _steps(f"{place}.{number}", one)]
    return Section(
        id=at.maybe("id") or f"section.{place}",
        title=at.text("title"),
        phase=at.maybe("phase"),
        when=at.when(),
        intro=at.maybe("intro"),
        safety=at.names("safety"),
        steps=tuple(steps),
        where=at.where,
        optional=at.maybe("optional"),
        time=at.quantity("time", Dimension.TIME),
        needs=at.states("needs"),
        bench=at.maybe("bench"),
        free=at.maybe("order") == "any",
        repeat=_repeat(at),
        noticed=read_outcomes(at, "noticed"),
        safe_to_stop=at.maybe("safe-to-stop"),
    )


def _steps(place: str, at: Reader) -> Iterator[Step]:
    """Yield the step, or each of the methods that stand in its place."""
    if "either" not in at.data:
        _ask_for_actions(at, 'Add "do" with its actions, or "either" with methods.')
        yield _step(place, at, at.when(), None)
        return
    for key in at.data:
        if key not in _AROUND:
            message = f'"{key}" does not stand beside "either".'
            _refuse(at, "unknown-key", message, f'Put "{key}" into each method that it is for.', key)
    methods = list(at.listed("either"))
    for number, one in enumerate(methods):
        if "either" in one.data:
            _refuse(one, "unknown-key", "A method holds no methods of its own.", "Write them side by side.", "either")
            continue
        _ask_for_actions(one, 'Add "do" with its actions.')
        method = Method(chr(ord("a") + number), len(methods), at.maybe("why"))
        # A method holds for no more vehicles than the step around it.
        yield _step(f"{place}.{number + 1}", one, together(at.when(), one.when()), method)


def _ask_for_actions(at: Reader, cure: str) -> None:
    if "do" not in at.data:
        _refuse(at, "missing-key", '"do" is missing in this step.', cure)


def _refuse(at: Reader, rule: str, message: str, cure: str, key: str = "") -> None:
    span = at.where.key(key) if key else at.where.span
    at.findings.append(Diagnostic(rule, Severity.ERROR, message, span, cure))


def _step(place: str, at: Reader, when: When, method: Method | None) -> Step:
    actions = tuple(read_action(one) for one in at.listed("do"))
    text = at.maybe("step")
    return Step(
        id=at.maybe("id") or f"step.{place}",
        text=text or instruction(actions),
        written=text is not None,
        when=when,
        actions=actions,
        uses=at.names("with"),
        safety=at.names("safety"),
        figures=at.names("figures"),
        why=at.maybe("why"),
        tip=at.maybe("tip"),
        where=at.where,
        method=method,
        if_done=at.names("if-done"),
        unless_done=at.names("unless-done"),
        optional=at.maybe("optional"),
        needs=at.states("needs"),
        leaves=at.states("leaves"),
        persons=at.data.get("persons"),
        holding=_holding(at),
        near=at.names("near"),
        leave=at.names("leave"),
        repeat=_repeat(at),
        deadline=_deadline(at),
        noticed=read_outcomes(at, "noticed"),
    )


def _holding(at: Reader) -> Holding | None:
    if "while" not in at.data:
        return None
    one = at.below("while")
    return Holding(one.names("hold"), one.maybe("how"), one.text("by"), one.where)


def _repeat(at: Reader) -> Repeat | None:
    if "repeat" not in at.data:
        return None
    one = at.below("repeat")
    return Repeat(one.maybe("until"), one.data.get("times"), one.data.get("at-most"), one.maybe("else"), one.where)


def _deadline(at: Reader) -> Deadline | None:
    if "deadline" not in at.data:
        return None
    one = at.below("deadline")
    return Deadline(one.text("from"), one.text("within"), one.text("else"), one.where)
