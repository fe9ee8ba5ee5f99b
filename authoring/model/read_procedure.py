"""A procedure file to values."""

from __future__ import annotations

from collections.abc import Iterator
from types import MappingProxyType

from authoring.model.changes import Condition, Glance, Modification, Option
from authoring.model.procedure import Choice, ChoicePart, Measured, Procedure, Revision, Trial
from authoring.model.read_steps import read_section
from authoring.model.read_things import read_figure, read_messages, read_values
from authoring.model.reader import Reader
from authoring.model.specification import ALWAYS
from authoring.quantities.units import Dimension


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
        conditions=None if "conditions" not in at.data else tuple(_conditions(at)),
        hazards=_list_or_none(at, "hazards"),
        values=read_values(at),
        safety=read_messages(at),
        choices={name: _choice(name, one) for name, one in at.each("choices")},
        figures={name: read_figure(name, one) for name, one in at.each("figures")},
        sections=tuple(read_section(place, one) for place, one in enumerate(at.listed("sections"), 1)),
        trial=_trial(at),
        revisions=tuple(_revision(one) for one in at.listed("revisions")),
        where=at.where,
        needs=at.states("needs"),
        leaves=at.states("leaves"),
        options={name: _option(name, one) for name, one in at.each("options")},
        modifications={name: _modification(name, one) for name, one in at.each("modifications")},
        while_there=tuple(
            Glance(one.text("look"), one.maybe("only-if"), one.when(), one.where) for one in at.listed("while-there")
        ),
    )


def _conditions(at: Reader) -> Iterator[Condition]:
    given = at.data["conditions"]
    for place, entry in enumerate(() if given == "none" else given):
        if isinstance(entry, str):
            yield Condition(entry.strip(), None, None, ALWAYS, at.where, ("conditions", place))
        else:
            one = Reader(entry, at.where.child("conditions", place), at.findings, at.order)
            yield Condition(one.text("so"), one.maybe("by"), one.maybe("afterwards"), one.when(), one.where, ("so",))


def _option(name: str, at: Reader) -> Option:
    return Option(
        id=name,
        name=at.text("name"),
        question=at.text("question"),
        decided_by=at.text("decided-by"),
        why=at.maybe("why"),
        values=MappingProxyType(dict(at.data["values"])),
        where=at.where,
    )


def _modification(name: str, at: Reader) -> Modification:
    return Modification(
        id=name,
        name=at.text("name"),
        when=at.when(),
        as_found=at.text("as-found"),
        as_left=at.text("as-left"),
        why=at.maybe("why"),
        adds=at.names("adds"),
        leaves_out=at.names("leaves-out"),
        tell=at.names("tell"),
        where=at.where,
        replaces=MappingProxyType(dict(at.data.get("replaces", {}))),
    )


def _list_or_none(at: Reader, key: str) -> tuple[str, ...] | None:
    if key not in at.data:
        return None
    return () if at.data[key] == "none" else tuple(at.data[key])


def _choice(name: str, at: Reader) -> Choice:
    return Choice(
        id=name,
        name=at.text("name"),
        question=at.text("question"),
        parts=tuple(_choice_part(one) for one in at.listed("parts")),
        where=at.where,
        dimensions={
            key: Measured(key, one.text("name"), one.data.get("decides", True), one.where)
            for key, one in at.each("dimensions")
        },
        if_wrong=at.maybe("if-wrong"),
        no_matter=at.maybe("no-matter"),
    )


def _choice_part(at: Reader) -> ChoicePart:
    return ChoicePart(
        part=at.text("part"),
        when=at.when(),
        stated=at.specification("size", None),
        tell=at.text("tell"),
        where=at.where,
        sizes={key: one.as_specification(None) for key, one in at.each("sizes")},
        equal=at.names("equal"),
    )


def _trial(at: Reader) -> Trial | None:
    if at.data.get("trial", "none") == "none":
        return None
    one = at.below("trial")
    return Trial(one.text("date"), one.text("by"), one.text("on"), one.text("result"), one.where)


def _revision(at: Reader) -> Revision:
    return Revision(
        at.text("revision"), at.text("date"), at.text("author"), at.text("approver"), at.text("reason"), at.where
    )
