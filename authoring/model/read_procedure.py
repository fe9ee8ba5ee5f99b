"""A procedure file to values."""

from __future__ import annotations

from authoring.model.action_kinds import action_kinds
from authoring.model.procedure import (
    Action,
    Callout,
    Choice,
    ChoicePart,
    Figure,
    Outcome,
    Procedure,
    Revision,
    Section,
    Step,
    Trial,
)
from authoring.model.read_things import read_messages, read_values
from authoring.model.reader import Reader, as_names
from authoring.model.says import instruction
from authoring.quantities.units import Dimension
from authoring.source.document import Where

_NOT_ROLES = frozenset({"what", "count", "way", "outcomes", "hold"})


def read_procedure(at: Reader) -> Procedure:
    """Read a procedure file."""
    return Procedure(
        number=at.text("procedure"),
        title=at.text("title"),
        equipment=at.text("equipment"),
        covers=at.when("covers"),
        job=at.maybe("job"),
        audience=at.maybe("audience"),
        persons=at.data.get("persons"),
        time=at.quantity("time", Dimension.TIME),
        conditions=_list_or_none(at, "conditions"),
        hazards=_list_or_none(at, "hazards"),
        values=read_values(at),
        safety=read_messages(at),
        choices={name: _choice(name, one) for name, one in at.each("choices")},
        figures={name: _figure(name, one) for name, one in at.each("figures")},
        sections=tuple(_section(place, one) for place, one in enumerate(at.listed("sections"), 1)),
        trial=_trial(at),
        revisions=tuple(_revision(one) for one in at.listed("revisions")),
        where=at.where,
    )


def _list_or_none(at: Reader, key: str) -> tuple[str, ...] | None:
    if key not in at.data:
        return None
    return () if at.data[key] == "none" else tuple(at.data[key])


def _choice(name: str, at: Reader) -> Choice:
    parts = tuple(
        ChoicePart(one.text("part"), one.when(), one.specification("size", None), one.text("tell"), one.where)
        for one in at.listed("parts")
    )
    return Choice(name, at.text("name"), at.text("question"), parts, at.where)


def _figure(name: str, at: Reader) -> Figure:
    callouts = tuple(
        Callout(one.text("on"), float(one.data["across"]), float(one.data["down"]), one.where)
        for one in at.listed("callouts")
    )
    return Figure(name, at.text("file"), at.text("title"), at.maybe("alt"), callouts, at.where)


def _trial(at: Reader) -> Trial | None:
    if at.data.get("trial", "none") == "none":
        return None
    one = at.below("trial")
    return Trial(one.text("date"), one.text("by"), one.text("on"), one.text("result"), one.where)


def _revision(at: Reader) -> Revision:
    return Revision(
        at.text("revision"), at.text("date"), at.text("author"), at.text("approver"), at.text("reason"), at.where
    )


def _section(place: int, at: Reader) -> Section:
    return Section(
        id=at.maybe("id") or f"section.{place}",
        title=at.text("title"),
        phase=at.maybe("phase"),
        when=at.when(),
        intro=at.maybe("intro"),
        safety=at.names("safety"),
        steps=tuple(_step(f"{place}.{number}", one) for number, one in enumerate(at.listed("steps"), 1)),
        where=at.where,
    )


def _step(place: str, at: Reader) -> Step:
    actions = tuple(_action(one) for one in at.listed("do"))
    text = at.maybe("step")
    return Step(
        id=at.maybe("id") or f"step.{place}",
        text=text or instruction(actions),
        written=text is not None,
        when=at.when(),
        actions=actions,
        uses=at.names("with"),
        safety=at.names("safety"),
        figures=at.names("figures"),
        why=at.maybe("why"),
        tip=at.maybe("tip"),
        where=at.where,
    )


def _action(at: Reader) -> Action:
    (name,) = at.data
    kind = action_kinds()[name]
    given = at.data[name]
    where = at.where.child(name)
    if not isinstance(given, dict):
        return _bare(kind.name, as_names(given), where)
    one = Reader(given, where, at.findings)
    return Action(
        kind=kind,
        what=one.names("what"),
        roles={role: str(value) for role, value in given.items() if role not in _NOT_ROLES},
        count=given.get("count", 1),
        way=one.maybe("way") or (kind.ways[0] if kind.ways else ""),
        outcomes=tuple(
            Outcome(each.text("found"), each.text("then"), each.maybe("to"), each.maybe("say"), each.where)
            for each in one.listed("outcomes")
        ),
        hold=given.get("hold", False),
        where=where,
    )


def _bare(name: str, what: tuple[str, ...], where: Where) -> Action:
    kind = action_kinds()[name]
    way = kind.ways[0] if kind.ways else ""
    return Action(kind=kind, what=what, roles={}, count=1, way=way, outcomes=(), hold=False, where=where)
