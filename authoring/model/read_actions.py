"""The actions of a step, and the outcomes of a checkpoint, to values."""

from __future__ import annotations

from types import MappingProxyType

from authoring.model.action_kind import ActionKind
from authoring.model.action_kinds import action_kinds
from authoring.model.language.manner import MANNER
from authoring.model.manner import PLAIN, Clearance, Engagement, Manner, Orientation
from authoring.model.procedure import Action, Outcome
from authoring.model.reader import Reader, as_names
from authoring.source.document import Where


def read_action(at: Reader) -> Action:
    """Read one action: a name, a list of names, or a group of keys."""
    (name,) = at.data
    kind = action_kinds()[name]
    given = at.data[name]
    where = at.where.child(name)
    if not isinstance(given, dict):
        return _bare(kind, as_names(given), where)
    one = Reader(given, where, at.findings, at.order)
    return Action(
        kind=kind,
        what=one.names("what"),
        roles={role: given[role] for role in given if role in kind.roles},
        count=given.get("count", 1),
        way=one.maybe("way") or _way(kind),
        outcomes=read_outcomes(one, "outcomes"),
        hold=given.get("hold", False),
        where=where,
        details=MappingProxyType({key: str(given[key]) for key in kind.details if key in given}),
        critical_when=one.when("critical-when"),
        manner=_manner(one) if not MANNER.keys().isdisjoint(given) else PLAIN,
    )


def _bare(kind: ActionKind, what: tuple[str, ...], where: Where) -> Action:
    return Action(kind=kind, what=what, roles={}, count=1, way=_way(kind), outcomes=(), hold=False, where=where)


def _way(kind: ActionKind) -> str:
    return kind.ways[0] if kind.ways else ""


def _manner(at: Reader) -> Manner:
    return Manner(
        how=at.texts("how"),
        because=at.maybe("because"),
        confirmed=MappingProxyType({way: text.strip() for way, text in at.data.get("confirmed", {}).items()}),
        orientation=_orientation(at.below("orientation")) if "orientation" in at.data else None,
        engages=tuple(
            Engagement(one.text("part"), one.text("with"), one.maybe("at"), one.where) for one in at.listed("engages")
        ),
        clear_of=tuple(Clearance(one.text("of"), one.maybe("by"), one.where) for one in at.listed("clear-of")),
        force=at.maybe("force"),
    )


def _orientation(at: Reader) -> Orientation:
    return Orientation(
        first=at.maybe("first"),
        mark=at.maybe("mark"),
        towards=at.maybe("towards"),
        clock=at.maybe("clock"),
        side=at.maybe("side"),
        seen_from=at.maybe("seen-from"),
        where=at.where,
    )


def read_outcomes(at: Reader, key: str) -> tuple[Outcome, ...]:
    """Read the list of outcomes at a key, which may be left out."""
    return tuple(
        Outcome(
            found=one.text("found"),
            then=one.text("then"),
            to=one.maybe("to"),
            say=one.maybe("say"),
            where=one.where,
            at_most=one.data.get("at-most"),
            otherwise=one.maybe("else"),
            like=one.data.get("like"),
            bears_on=one.names("bears-on"),
            when=one.when(),
        )
        for one in at.listed(key)
    )
