"""What each procedure leads to, and the checksums of all that its check reads."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.checking.apart import Around, Wanted
from authoring.checking.digest import digest_of
from authoring.checking.files import SHARED, Files
from authoring.checking.known import Apart, Head
from authoring.checking.loader import TangledError


class Surroundings:
    """The whole of a library by the heads of its files; raises TangledError where they are no plain whole.

    A procedure leads to every procedure whose number stands in it, in the shop or stock file or in its equipment's
    file, whatever it stands there for, and on from those.
    """

    def __init__(self, files: Files) -> None:
        self._files = files
        heads = files.heads()
        self.procedures = {path: head for path, head in heads.items() if head.kind == "procedure"}
        self.equipment = {head.name: path for path, head in heads.items() if head.kind == "equipment"}
        self._paths = {head.name: path for path, head in self.procedures.items()}
        shops, stocks, machines = (files.of_kind(kind) for kind in ("shop", "stock", "equipment"))
        partial = bool(files.unread) or any(not head.kind for head in heads.values())
        if max(len(shops), len(stocks)) > 1 or not (partial or (shops and stocks)):
            raise TangledError
        if (len(self._paths), len(self.equipment)) != (len(self.procedures), len(machines)):
            raise TangledError
        self._pictures = files.pictures()
        self._common = [*shops, *stocks]
        self._shared = [path for path, head in heads.items() if head.kind in SHARED]
        names = digest_of(
            [word for head in self.procedures.values() for word in (head.name, head.title)]
            + ["", *self.equipment, "", *self._pictures]
        )
        self.around = Around(
            names=names,
            machines=digest_of(files.by_path[path].digest for path in self.equipment.values()),
            shared=frozenset(self._shared),
            shop=next(iter(shops), ""),
            partial=partial,
        )
        self.base_key = digest_of(
            [*self._signed(self._shared), self.around.names, b"partial" if partial else b""]
            + [word for path in self._shared for word in self._drawn(heads[path])]
        )

    def names(self) -> list[tuple[str, str, str]]:
        """Return number, title and file of every procedure, in order."""
        return [(head.name, head.title, path) for path, head in self.procedures.items()]

    def wanted(self, path: str) -> Wanted:
        """Return what has to be known to check a procedure."""
        led_to = self._led_to(path)
        heads = [self.procedures[one] for one in (path, *led_to)]
        machines = {head.equipment for head in heads}
        own = self.procedures[path].equipment
        equipment = [name for name in self.equipment if name in machines or own not in self.equipment]
        read = [path, *led_to, *self._common, *(self.equipment[name] for name in equipment)]
        drawn = [word for head in heads for word in self._drawn(head)]
        return Wanted(path, digest_of([*self._signed(read), *drawn]), tuple(led_to), tuple(equipment))

    def holds(self, apart: Apart | None, wanted: Wanted) -> bool:
        """Tell whether what a procedure came to once is what it would come to now."""
        around = self.around
        return (
            apart is not None
            and apart.key == wanted.key
            and (apart.partial == around.partial or (around.partial and apart.firm))
            and (apart.names == around.names or not (apart.found or apart.once))
            and (apart.machines == around.machines or not apart.in_shop)
        )

    def _signed(self, paths: list[str]) -> Iterator[str | bytes]:
        for path in paths:
            yield path
            yield self._files.by_path[path].digest

    def _drawn(self, head: Head) -> Iterator[str]:
        for file in head.figures:
            yield file
            yield self._pictures.get(file, "missing")

    def _led_to(self, path: str) -> list[str]:
        found: set[str] = set()
        waiting = [path]
        while waiting:
            for number in self._numbers(waiting.pop()):
                other = self._paths.get(number)
                if other is not None and other != path and other not in found:
                    found.add(other)
                    waiting.append(other)
        return [one for one in self.procedures if one in found] if found else []

    def _numbers(self, path: str) -> Iterator[str]:
        head = self.procedures[path]
        yield from head.numbers
        for other in self._files.heads_of((*self._common, *self._machines(head))):
            yield from other.numbers

    def _machines(self, head: Head) -> tuple[str, ...]:
        return (self.equipment[head.equipment],) if head.equipment in self.equipment else tuple(self.equipment.values())
