"""Which covered machine asks for something and is not given it."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from authoring.model.applicability import known
from authoring.model.concern import concern_of
from authoring.model.fitments import Fitment, told
from authoring.model.space import Cells, Space, too_many
from authoring.model.specification import When
from authoring.model.things import Equipment


def laid_out(vehicle: Equipment, covers: When, whens: Sequence[When]) -> Space | None:
    """Return every covered fitment over the features that the conditions name.

    It is None where nothing can be said: a name is unknown or the combinations are too many, both told elsewhere.
    """
    features = {feature for when in whens for feature in when}
    if not all(known(when, vehicle) for when in (covers, *whens)) or too_many(vehicle, covers, features):
        return None
    return Space(vehicle, covers, features)


def taken_as_all(vehicle: Equipment) -> Space:
    """Return the space of no feature, in which every condition holds: for where nothing can be said of the vehicles."""
    return Space(vehicle, {}, ())


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
    return lack(space, bad) if space is not None and bad else None


def bare(vehicle: Equipment, covers: When, asked: Sequence[When], given: Sequence[When]) -> list[When]:
    """Return conditions that together hold for just the covered machines that `without` tells of; none for none."""
    space, bad = _bad(vehicle, covers, asked, given)
    return list(space.groups(bad)) if space is not None and bad else []


def _bad(vehicle: Equipment, covers: When, asked: Sequence[When], given: Sequence[When]) -> tuple[Space | None, Cells]:
    """Return the machines that meet one of `asked` and none of `given`, in their space; None where nothing is said."""
    if not all(given):
        return None, 0  # what holds for all lacks nowhere
    space = laid_out(vehicle, covers, (*asked, *given))
    return (None, 0) if space is None else (space, space.either(asked) & ~space.either(given))


def lack(space: Space, bad: Cells, among: Cells | None = None) -> Lack:
    """Return what is lacking for these machines and no others `among` those asked about; there is at least one."""
    fewest = space.fewest(bad, among)
    whom = f" for {told(fewest, space.vehicle)}" if fewest else ""
    return Lack(fewest, whom, concern_of(space.groups(bad), space.vehicle.features, space.covers))
