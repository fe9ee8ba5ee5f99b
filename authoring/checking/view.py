"""A library as one procedure has it before it: itself, what it leads to, the shared files, and the names of all."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from authoring.model.library import Library, Named, called
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment
from authoring.source.document import BLOCK, NO_KEY, Document, Node, Places, Where
from authoring.source.images import Image
from authoring.source.lines import Lines


class Within(Mapping[str, Procedure]):
    """Procedures of which some are gone through, while others are there for who asks for them by their number."""

    def __init__(self, gone_through: Sequence[Procedure], led_to: Sequence[Procedure]) -> None:
        self._first = [one.number for one in gone_through]
        self._all = {one.number: one for one in (*gone_through, *led_to)}

    def __getitem__(self, number: str) -> Procedure:
        return self._all[number]

    def __iter__(self) -> Iterator[str]:
        return iter(self._first)

    def __len__(self) -> int:
        return len(self._first)

    def __contains__(self, number: object) -> bool:
        return number in self._all


class View(Library):
    """A part of a library under the names of all, which notes whether anybody asked if a file could not be read."""

    def __init__(
        self,
        whole: Library,
        procedures: Mapping[str, Procedure],
        equipment: Mapping[str, Equipment],
        names: Sequence[Named],
        *,
        partial: bool,
    ) -> None:
        super().__init__(whole.shop, whole.stock, equipment, procedures, whole.images, whole.allowances)
        self.asked = False
        self._partial = partial
        self._names = names

    @property
    def numbers(self) -> Sequence[Named]:
        """Every procedure of the whole library as a named thing."""
        return self._names

    @property
    def partial(self) -> bool:
        """Whether some file could not be read; who asks is noted in `asked`."""
        self.asked = True
        return self._partial

    @partial.setter
    def partial(self, partial: bool) -> None:
        self._partial = partial


def by_name(number: str, title: str, file: str) -> Named:
    """Return a procedure of which nothing is known but its number and its title."""
    document = Document(file, "", {}, Places(Node(NO_KEY, 0, 0, BLOCK, {}), Lines(file, "")))
    return called(
        Procedure(
            *(number, title, "", {}, None, None, None, None, None, None),
            *({}, {}, {}, {}, (), None, (), Where(document)),
        )
    )


CAN_BE_SHOWN = Image("", "", 0, 0, b"")
"""Stands for a picture where it counts only that it can be shown."""
