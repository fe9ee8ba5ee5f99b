"""What changes when a library lacks one key: its findings, or what a reader gets."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any

from authoring.booklet.blocks import Booklet
from authoring.booklet.compose import compose
from authoring.booklet.proof import Proof
from authoring.cli.disk import read_library
from authoring.diagnostics.diagnostic import Diagnostic, has_errors, in_order
from authoring.model.build import build_library
from authoring.model.library import Library
from authoring.rules.rule import Rule, all_rules, checking_rules, run_rule, run_rules
from authoring.rules.settle import settle
from authoring.source.document import Document
from authoring.source.images import Image, read_image
from authoring.source.reader import read_document
from tests.readers.deletions import Deletion, otherwise, without

TREE = Path(__file__).parent.parent.parent
NO_PROOF = Proof((), ())


class Judged:
    """One library of this tree, as it stands and without any one of its keys."""

    def __init__(self, folder: str) -> None:
        files, _ = read_library(str(TREE / folder))
        self._images: dict[str, Image | str] = {}
        self.documents: list[Document] = []
        for name, content in files.items():
            if name.endswith(".yaml"):
                document, _ = read_document(name, content)
                assert document is not None, name
                self.documents.append(document)
            else:
                image, reason = read_image(name, content)
                self._images[name] = image if image is not None else reason
        library, findings = self._made(self.documents)
        assert not has_errors(findings), findings[0]
        self._findings = _told(findings)
        self._plain = {(rule.id, key): _told(run_rule(rule, one, library)) for rule, key, one in _asked(library)}
        self._features = {
            name: list(feature.values)
            for equipment in library.equipment.values()
            for name, feature in equipment.features.items()
        }
        self._booklets = {number: _booklet(library, number) for number in library.procedures}

    def _made(self, documents: Sequence[Document]) -> tuple[Library, list[Diagnostic]]:
        library, found = build_library(documents, self._images, partial=False)
        if not has_errors(found):
            standing, _ = settle(in_order([*found, *run_rules(library)]), library, all_rules())
            found = list(standing)
        return library, found

    def is_noticed(self, deletion: Deletion) -> bool:
        """Tell whether anybody notices that a key is missing; it stops at the first who does, and `effects` goes on."""
        if "allow" in deletion.path:
            return next(self.effects(deletion), None) is not None
        changed = without(next(one for one in self.documents if one.file == deletion.file), deletion.path)
        documents = [changed if one.file == deletion.file else one for one in self.documents]
        library, found = build_library(documents, self._images, partial=False)
        if found:
            return True
        # Other procedures are asked last: whoever changes one procedure mostly changes that one's booklet alone.
        others = {("procedure", number) for number in library.procedures if number not in self._nearest(deletion)}
        asked = sorted(_asked(library), key=lambda one: one[1][0] != "procedure")
        if any(self._tells_otherwise(*one, library) for one in asked if one[1] not in others):
            return True
        if any(self._differs(library, number) for number in self._nearest(deletion)):
            return True
        return any(self._tells_otherwise(*one, library) for one in asked if one[1] in others)

    def _tells_otherwise(self, rule: Rule, key: tuple[str, str], subject: Any, library: Library) -> bool:
        return _told(run_rule(rule, subject, library)) != self._plain.get((rule.id, key))

    def effects(self, deletion: Deletion) -> Iterator[str]:
        """Yield what tells that a key is missing: the ids of rules, then "booklet" for a page that differs."""
        yield from self._effects(deletion, lambda document: without(document, deletion.path))

    def effects_of_another(self, deletion: Deletion) -> Iterator[str]:
        """Yield what tells that a key has another value, as `effects` does."""
        yield from self._effects(deletion, lambda document: otherwise(document, deletion.path, self._features))

    def _effects(self, deletion: Deletion, change: Callable[[Document], Document]) -> Iterator[str]:
        documents = [change(one) if one.file == deletion.file else one for one in self.documents]
        library, found = self._made(documents)
        yield from sorted({rule for rule, _ in _told(found) ^ self._findings})
        if not has_errors(found) and any(self._differs(library, number) for number in self._nearest(deletion)):
            yield "booklet"

    def _nearest(self, deletion: Deletion) -> list[str]:
        """Return the procedures whose booklets may differ: the file's own, or all for a file that they share."""
        own = next(one for one in self.documents if one.file == deletion.file).data.get("procedure")
        return [own] if own in self._booklets else list(self._booklets)

    def _differs(self, library: Library, number: str) -> bool:
        return number not in library.procedures or _booklet(library, number) != self._booklets[number]


def _asked(library: Library) -> Iterator[tuple[Rule, tuple[str, str], Any]]:
    """Yield each rule with each of its subjects, and a name for the subject."""
    subjects: dict[str, Mapping[str, Any]] = {
        "library": {"": library},
        "equipment": library.equipment,
        "procedure": library.procedures,
    }
    for rule in checking_rules():
        for name, subject in subjects[rule.over].items():
            yield rule, (rule.over, name), subject


def _booklet(library: Library, number: str) -> Booklet:
    return compose(library, library.procedures[number], {}, NO_PROOF)


def _told(findings: Iterable[Diagnostic]) -> set[tuple[str, str]]:
    return {(one.rule, one.message) for one in findings}


@cache
def judged(folder: str) -> Judged:
    """Return a library of this tree; read once."""
    return Judged(folder)
