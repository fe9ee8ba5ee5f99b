"""Which covered machine asks for something and is not given it."""

from __future__ import annotations

from collections.abc import Sequence

from authoring.model.applicability import known
from authoring.model.fitments import concerned, fitments, may_hold, too_many
from authoring.model.smallest import Fitment, smallest
from authoring.model.things import Equipment, When


def tried(vehicle: Equipment, covers: When, whens: Sequence[When]) -> list[Fitment]:
    """Return every covered fitment over the features that the conditions name.

    It is empty where nothing can be said: a name is unknown or the combinations are too many, both told elsewhere.
    """
    features = {feature for when in whens for feature in when}
    if not all(known(when, vehicle) for when in (covers, *whens)) or too_many(vehicle, covers, features):
        return []
    return list(fitments(vehicle, covers, concerned(vehicle, features)))


def lacking(vehicle: Equipment, covers: When, asked: Sequence[When], given: Sequence[When]) -> Fitment | None:
    """Return the fewest features of a covered machine that meets one of `asked` and none of `given`, or None."""
    bad: list[Fitment] = []
    good: list[Fitment] = []
    for fitment in tried(vehicle, covers, [*asked, *given]):
        asks = any(may_hold(when, fitment) for when in asked)
        kept = bad if asks and not any(may_hold(when, fitment) for when in given) else good
        kept.append(fitment)
    return smallest(bad, good) if bad else None
