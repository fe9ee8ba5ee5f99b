"""What lies on the bench at a point of the track: the sub-assemblies of the sections that it stands in."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.proof.track import Point


def benches(point: Point) -> Iterator[str]:
    """Yield the sub-assembly of each section at the bench that holds a point, or a step that leads to it."""
    steps = (*point.within, *((point.step,) if point.step is not None else ()))
    for procedure, step in zip(point.chain, steps, strict=False):
        yield from (one.bench for one in procedure.sections if one.bench is not None and step in one.steps)
