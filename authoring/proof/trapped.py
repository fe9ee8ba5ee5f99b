"""Whether a thing that was put up and is only held has been trapped by what it was held until."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from authoring.model.ends import Side
from authoring.model.on_and_off import PUTS_ON
from authoring.proof.job import Job
from authoring.proof.settings import Setting
from authoring.proof.track import Point

_TRAPS = PUTS_ON | {"close"}


def trapping_sides(thing: str, job: Job) -> Iterator[Side]:
    """Yield the sides that tell whether something has trapped a thing since it was put up."""
    until = {_until(point) for point in job.track.naming.get(thing, ())} - {""}
    yield from ((one, side) for one in sorted(until) for side in ("where", "lid"))


def is_trapped(setting: Setting, now: Mapping[Side, Setting], placed: Collection[str]) -> bool:
    """Tell whether what a thing was held until was put on or closed after it, or is one of the things placed now."""
    until = _until(setting.by) if isinstance(setting.by, Point) else ""
    since = [now[until, side] for side in ("where", "lid")] if until else []
    return until in placed or any(one.number > setting.number and _traps(one) for one in since)


def _until(point: Point) -> str:
    held = point.action is not None and point.action.kind.holds
    return point.action.roles.get("until", "") if held and point.action is not None else ""


def _traps(setting: Setting) -> bool:
    by = setting.by.action if isinstance(setting.by, Point) else None
    return by is not None and by.kind.name in _TRAPS
