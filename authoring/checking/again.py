"""A library checked once more: whatever nothing has changed for is taken as it was found before.

Each procedure is checked apart, with what it leads to and the shared files before it, and what that comes to is kept
with the checksums of all that was read for it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Protocol, TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from authoring.checking.apart import Checker, Table, Wanted
from authoring.checking.digest import digest_of
from authoring.checking.files import SHARED, Disk, Files
from authoring.checking.known import Base, State, Weighed
from authoring.checking.loader import Loader, TangledError
from authoring.checking.share import DONE, ENCODER, HEADS, Asked, Done, Share, names, share
from authoring.checking.surroundings import Surroundings
from authoring.checking.together import Outcome, together
from authoring.checking.view import CAN_BE_SHOWN
from authoring.rules.rule import all_rules
from authoring.source.document import Document
from authoring.source.images import Image

LEAST_SHARE = 12
"""So many procedures are worth a process of their own."""


class Team(Protocol):
    """Workers that go on step by step, each with the message for it."""

    def step(self, messages: Sequence[bytes], /) -> list[bytes]:
        """Give each worker its message, and return what each has to say then, in their order."""

    def close(self) -> None:
        """Let all workers go."""


Gather: TypeAlias = Callable[[Sequence[Share]], Team]
"""Makes a team of workers that are not begun, the first of which works in this process."""


class Alone:
    """A team that works in this process, one after the other."""

    def __init__(self, shares: Sequence[Share]) -> None:
        self._shares = shares
        for one in shares:
            next(one)

    def step(self, messages: Sequence[bytes], /) -> list[bytes]:
        """Give each worker its message, and return what each has to say then, in their order."""
        return [one.send(message) for one, message in zip(self._shares, messages, strict=True)]

    def close(self) -> None:
        """Let all workers go."""
        for one in self._shares:
            one.close()


class Checked(Struct, frozen=True):
    """What a check came to, what to keep of it, and the documents and pictures that it has read, by file."""

    outcome: Outcome
    state: State
    documents: Mapping[str, Document | None]
    images: Mapping[str, Image]


def check_again(disk: Disk, kept: State, gather: Gather = Alone, processes: int = 1) -> Checked:
    """Return what a library comes to, and what to keep of it.

    Raises TangledError where only a check of the whole does it justice: where names are double, where the shop or the
    stock is missing, or where files change meanwhile.
    """
    run = _Run(disk, kept, gather, processes)
    try:
        return run.outcome()
    except UnicodeEncodeError as error:  # a file with a name that is no text
        raise TangledError from error
    finally:
        run.close()


class _Run:
    """One check; nothing of it outlives the check."""

    def __init__(self, disk: Disk, kept: State, gather: Gather, processes: int) -> None:
        self._kept = kept
        self._gather = gather
        self._processes = processes
        self._files = Files(disk, kept)
        pictures = self._files.pictures()
        self._loader = Loader(self._files.read, {path: reason or CAN_BE_SHOWN for path, reason in pictures.items()})
        self._table = Table(kept.table)
        self._shared_read = False
        self._teams: list[Team] = []

    def close(self) -> None:
        for team in self._teams:
            team.close()

    def outcome(self) -> Checked:
        files = self._files
        new = files.unknown(procedures=False)
        if new:
            self._read_shared(new)
        team, shares = self._read_procedures(all_again=bool(new))
        around = Surroundings(files)
        wanted = [around.wanted(path) for path in around.procedures]
        wanted = [one for one in wanted if not around.holds(files.by_path[one.path].apart, one)]
        if wanted:
            self._check(around, wanted, team, shares)
        base = self._base(around)
        weighed = {rule: self._weighed(rule, base, around) for rule in base.marked}
        state = State(files.by_path, tuple(self._table.rows), base, weighed)
        if new:
            state = compact(state)
        outcome = together(state, files.unread, all_rules, partial=around.around.partial)
        return Checked(outcome, state, self._loader.documents, files.images)

    def _read_shared(self, new: Sequence[str] = ()) -> None:
        """Read all shared files once, and learn what the new ones are."""
        if not self._shared_read:
            known = [path for path, head in self._files.heads().items() if head.kind in SHARED]
            self._loader.load_shared([path for path in self._files.by_path if path in {*known, *new}])
            self._files.learn(dict(self._loader.heads(new, {})))
            self._shared_read = True

    def _read_procedures(self, *, all_again: bool) -> tuple[Team, list[list[str]]]:
        """Read the procedures of which nothing is known, or that were read beside another equipment file."""
        files = self._files
        machines = {head.name: files.by_path[path].digest for path, head in files.of_kind("equipment").items()}
        procedures = files.of_kind("procedure")
        moved = [path for path, head in procedures.items() if head.against != machines.get(head.equipment, b"")]
        stale = [*files.unknown(procedures=True), *moved]
        if stale:
            self._read_shared()
        team, shares = self._gathered(stale, len(stale) + (len(procedures) if all_again else 0), machines)
        for told in team.step([b""] * len(shares)):
            heads = HEADS.decode(told).heads
            if heads is None:
                raise TangledError
            files.learn(heads)
        return team, shares

    def _gathered(self, stale: Sequence[str], work: int, machines: Mapping[str, bytes]) -> tuple[Team, list[list[str]]]:
        count = max(1, min(self._processes, work // LEAST_SHARE))
        shares = [list(stale[place::count]) for place in range(count)]
        self._teams.append(self._gather([share(self._loader, paths, machines) for paths in shares]))
        return self._teams[-1], shares

    def _check(self, around: Surroundings, wanted: Sequence[Wanted], team: Team, shares: list[list[str]]) -> None:
        """Check procedures apart, each by the worker that has read it, else by one that has few."""
        self._read_shared()
        if len(shares) == 1 < len(wanted) // LEAST_SHARE and self._processes > 1:
            team, shares = self._gathered([], len(wanted), {})
            team.step([b""] * len(shares))
        readers = {path: place for place, paths in enumerate(shares) for path in paths}
        asked: list[list[Wanted]] = [
            [one for one in wanted if readers.get(one.path) == place] for place in range(len(shares))
        ]
        for one in wanted:
            if one.path not in readers:
                min(asked, key=len).append(one)
        known = around.names()
        messages = [ENCODER.encode(Asked(known, around.around, some)) for some in asked]
        for answer in team.step(messages):
            self._take(DONE.decode(answer))

    def _take(self, done: Done) -> None:
        if done.apart is None:
            raise TangledError
        places = [self._table.place(one) for one in done.table]
        for path, apart in done.apart.items():
            moved = replace(apart, every=tuple(places[place] for place in apart.every))
            self._files.by_path[path] = replace(self._files.by_path[path], apart=moved)

    def _base(self, around: Surroundings) -> Base:
        base = self._kept.base
        if base is not None and base.key == around.base_key:
            return base
        return self._checker(around).base(around.base_key)

    def _checker(self, around: Surroundings) -> Checker:
        self._read_shared()
        return Checker(self._loader, names(self._loader, around.names()), around.around, self._table)

    def _weighed(self, rule: str, base: Base, around: Surroundings) -> Weighed:
        """Return what a rule says of the shared files: it has before it the first procedure with each mark."""
        files, seen, paths = self._files.by_path, set[str](), []
        for path in around.procedures:
            apart = files[path].apart
            marks = set(apart.marks.get(rule, ())) if apart is not None else set()
            if not marks <= seen:
                seen |= marks
                paths.append(path)
        key = digest_of([base.key, *(files[path].digest for path in paths)])
        before = self._kept.weighed.get(rule)
        if before is not None and before.key == key:
            return before
        if not paths:
            return Weighed(key, base.marked[rule])
        self._read_shared()
        self._loader.load(paths)
        return Weighed(key, self._checker(around).weighed(rule, paths))


def compact(state: State) -> State:
    """Return the same with a table that holds what is told and nothing else."""
    table = Table()
    places = [-1] * len(state.table)

    def moved(every: Sequence[int]) -> tuple[int, ...]:
        for place in every:
            if places[place] < 0:
                places[place] = table.place(state.table[place])
        return tuple(places[place] for place in every)

    files = {
        path: replace(one, apart=replace(one.apart, every=moved(one.apart.every))) if one.apart is not None else one
        for path, one in state.files.items()
    }
    base = replace(state.base, every=moved(state.base.every)) if state.base is not None else None
    return State(files, tuple(table.rows), base, state.weighed)
