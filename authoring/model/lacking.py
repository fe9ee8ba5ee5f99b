"""Which covered machine asks for something and is not given it."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from authoring.model.applicability import known
from authoring.model.concern import concern_of, concern_of_groups
from authoring.model.fitments import LIMIT, concerned, fitments, too_many
from authoring.model.smallest import Fitment, smallest, told
from authoring.model.space import Cells, Space, cells_of
from authoring.model.specification import When
from authoring.model.things import Equipment


def tried(vehicle: Equipment, covers: When, whens: Sequence[When]) -> list[Fitment]:
    """Return every covered fitment over the features that the conditions name.

    It is empty where nothing can be said: a name is unknown or the combinations are too many, both told elsewhere.
    """
    features = {feature for when in whens for feature in when}
    if not all(known(when, vehicle) for when in (covers, *whens)) or too_many(vehicle, covers, features):
        return []
    return list(fitments(vehicle, covers, concerned(vehicle, features)))


class Lack(Struct, frozen=True):
    """A covered machine that goes without: the fewest features that show it, in words too, and all it concerns.

    `whom` follows a sentence, such as " for a machine with axle: wide axle"; it is empty where every machine does.
    """

    fewest: Fitment
    whom: str
    fitments: str


def without(vehicle: Equipment, covers: When, asked: Sequence[When], given: Sequence[When]) -> Lack | None:
    """Return the covered machines that meet one of `asked` and none of `given`; None where there is none."""
    space, bad = _bad(vehicle, covers, asked, given)
    if space is None or not bad:
        return None
    fewest = space.fewest(bad)
    whom = f" for {told(fewest, vehicle)}" if fewest else ""
    return Lack(fewest, whom, concern_of_groups(space.groups(bad), vehicle.features, covers))


def bare(vehicle: Equipment, covers: When, asked: Sequence[When], given: Sequence[When]) -> list[When]:
    """Return conditions that together hold for just the covered machines that `without` tells of; none for none."""
    space, bad = _bad(vehicle, covers, asked, given)
    return space.groups(bad) if space is not None and bad else []


def _bad(vehicle: Equipment, covers: When, asked: Sequence[When], given: Sequence[When]) -> tuple[Space | None, Cells]:
    """Return the machines that meet one of `asked` and none of `given`, in their space; None where nothing is said."""
    if not all(given):
        return None, 0  # what holds for all lacks nowhere
    whens = (*asked, *given)
    features = {feature for when in whens for feature in when}
    if not all(known(when, vehicle) for when in (covers, *whens)) or cells_of(vehicle, covers, features) > LIMIT:
        return None, 0
    space = Space(vehicle, covers, features)
    return space, space.either(asked) & ~space.either(given)


def lack(vehicle: Equipment, covers: When, bad: Sequence[Fitment], good: Sequence[Fitment]) -> Lack:
    """Return what is lacking for these fitments and no others; at least one is bad."""
    fewest = smallest(bad, good)
    whom = f" for {told(fewest, vehicle)}" if fewest else ""
    return Lack(fewest, whom, concern_of(bad, vehicle.features, covers))
