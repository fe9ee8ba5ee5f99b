"""Each procedure checked apart from all that it does not lead to, and the shared files by themselves."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.checking.known import Apart, Base
from authoring.checking.loader import Loader, TangledError
from authoring.checking.view import View, Within
from authoring.diagnostics.diagnostic import Diagnostic
from authoring.model.library import Library, Named
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment
from authoring.rules.rule import Rule, Together, checking_rules, run_rule
from authoring.rules.whom import with_fitments


class Wanted(Struct, frozen=True):
    """One procedure to be checked: its file, the files it leads to, its equipment and theirs, and the checksums."""

    path: str
    key: bytes
    leads_to: tuple[str, ...]
    equipment: tuple[str, ...]


class Around(Struct, frozen=True):
    """What holds for every procedure of one run: the checksums of what words may quote, and what could be read."""

    names: bytes
    machines: bytes
    shared: frozenset[str]
    shop: str
    partial: bool


class Table:
    """Findings told many times over, each kept once."""

    def __init__(self, rows: Iterable[Diagnostic] = ()) -> None:
        self.rows = list(rows)
        self._places = {one: place for place, one in enumerate(self.rows)}

    def place(self, finding: Diagnostic) -> int:
        """Return where a finding is kept."""
        place = self._places.setdefault(finding, len(self.rows))
        if place == len(self.rows):
            self.rows.append(finding)
        return place


class Checker:
    """Checks procedures one by one from what a loader has read."""

    def __init__(self, loader: Loader, names: Sequence[Named], around: Around, table: Table) -> None:
        self._loader = loader
        self._names = names
        self._around = around
        self._rules = tuple(checking_rules())
        self._alone: dict[tuple[str, ...], list[Diagnostic]] = {}
        self.table = table

    def apart(self, wanted: Wanted) -> Apart:
        """Check one procedure; raises TangledError where a rule over the library does not keep to what it declares."""
        loader, around = self._loader, self._around
        procedure = loader.procedures[wanted.path]
        led_to = [loader.procedures[path] for path in wanted.leads_to]
        view = self._view(Within([procedure], led_to), wanted.equipment)
        gathered = _Gathered(procedure.where.document.file, around.shared)
        firm = True
        for rule in self._rules:
            view.asked = False
            told = len(gathered.found) + len(gathered.once)
            if rule.over == "procedure" and procedure.equipment in view.equipment:
                gathered.found += run_rule(rule, procedure, view)
            elif rule.over == "library":
                gathered.take(rule, run_rule(rule, view, view))
            if view.asked and len(gathered.found) + len(gathered.once) > told:
                firm = False
        if gathered.alone != self._alone_with(wanted.equipment):
            raise TangledError
        whole = self._with_all_machines([procedure, *led_to])
        found = with_fitments([*loader.told(wanted.path), *gathered.found], whole)
        once = with_fitments(gathered.once, whole)
        return Apart(
            *(wanted.key, around.names, around.machines, around.partial, firm),
            in_shop=any(one.span.file == around.shop for one in (*found, *once)),
            found=tuple(found),
            once=tuple(once),
            every=self._placed(gathered.every, whole),
            marks=dict(self._marks(procedure, view)),
        )

    def base(self, key: bytes) -> Base:
        """Check the shared files by themselves."""
        machines = tuple(self._loader.shared.equipment)
        view = self._view(Within([], []), machines)
        gathered = _Gathered("", self._around.shared)
        marked: dict[str, tuple[Diagnostic, ...]] = {}
        for rule in self._rules:
            if rule.over == "equipment":
                for equipment in view.equipment.values():
                    gathered.found += run_rule(rule, equipment, view)
            elif rule.over == "library" and rule.together is Together.MARKED:
                marked[rule.id] = tuple(run_rule(rule, view, view))
            elif rule.over == "library":
                gathered.take(rule, run_rule(rule, view, view))
        whole = self._with_all_machines([])
        told = [one for path in sorted(self._around.shared) for one in self._loader.told(path)]
        return Base(
            key,
            found=tuple(with_fitments([*told, *gathered.found, *gathered.alone], whole)),
            once=tuple(with_fitments(gathered.once, whole)),
            every=self._placed(gathered.every, whole),
            in_shop=tuple(with_fitments([one for one in gathered.every if one.span.file == self._around.shop], whole)),
            marked={rule: tuple(with_fitments(found, whole)) for rule, found in marked.items()},
        )

    def weighed(self, rule: str, paths: Iterable[str]) -> tuple[Diagnostic, ...]:
        """Return what one rule says of the shared files where it has these procedures before it."""
        procedures = [self._loader.procedures[path] for path in paths]
        view = self._view(Within(procedures, []), tuple(self._loader.shared.equipment))
        runs = next(one for one in self._rules if one.id == rule)
        found = [one for one in run_rule(runs, view, view) if one.span.file in self._around.shared]
        return tuple(with_fitments(found, self._with_all_machines([])))

    def _placed(self, every: Sequence[Diagnostic], whole: Library) -> tuple[int, ...]:
        """Return the places of findings in the table; those in the shop file name no vehicles yet."""
        mine = [one for one in every if one.span.file == self._around.shop]
        others = [one for one in every if one.span.file != self._around.shop]
        return tuple(self.table.place(one) for one in (*mine, *with_fitments(others, whole)))

    def _view(self, procedures: Mapping[str, Procedure], equipment: tuple[str, ...]) -> View:
        shared = self._loader.shared
        machines: Mapping[str, Equipment] = {name: shared.equipment[name] for name in equipment}
        return View(shared, procedures, machines, self._names, partial=self._around.partial)

    def _with_all_machines(self, procedures: Sequence[Procedure]) -> Library:
        shared, images = self._loader.shared, self._loader.images
        return Library(*(shared.shop, shared.stock, shared.equipment, {one.number: one for one in procedures}, images))

    def _alone_with(self, equipment: tuple[str, ...]) -> list[Diagnostic]:
        """Return what the shared files come to by themselves under rules that say they look at nothing else."""
        if equipment not in self._alone:
            view = self._view(Within([], []), equipment)
            gathered = _Gathered("", self._around.shared)
            for rule in self._rules:
                if rule.over == "library" and rule.together is Together.ALONE:
                    gathered.take(rule, run_rule(rule, view, view))
            self._alone[equipment] = gathered.alone
        return self._alone[equipment]

    def _marks(self, procedure: Procedure, view: View) -> Iterator[tuple[str, tuple[str, ...]]]:
        for rule in self._rules:
            if rule.together is Together.MARKED and rule.marks is not None and procedure.equipment in view.equipment:
                marks = tuple(sorted(set(rule.marks(procedure, view))))
                if marks:
                    yield rule.id, marks


class _Gathered:
    """The findings of one view, sorted by what others have to say to them; nothing of it leaves this module."""

    def __init__(self, own: str, shared: frozenset[str]) -> None:
        self._own = own
        self._shared = shared
        self.found: list[Diagnostic] = []
        self.once: list[Diagnostic] = []
        self.every: list[Diagnostic] = []
        self.alone: list[Diagnostic] = []

    def take(self, rule: Rule, findings: Iterable[Diagnostic]) -> None:
        """Sort what a rule over the library found."""
        shared = {
            Together.ALONE: self.alone,
            Together.ANY: self.once,
            Together.EVERY: self.every,
            Together.MARKED: [],  # told once all procedures are known
        }[rule.together]
        for one in findings:
            (shared if one.span.file in self._shared else self.found).append(one)
