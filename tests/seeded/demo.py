"""The demo library as it stands, and a walk over what an author wrote in it."""

from __future__ import annotations

from collections.abc import Iterator
from difflib import SequenceMatcher
from functools import cached_property
from pathlib import Path as File
from typing import Any

from msgspec import Struct

from authoring.cli.disk import read_library
from authoring.model.build import build_library, kind_of
from authoring.model.library import Library, Named
from authoring.source.document import Document
from authoring.source.images import Image, read_image
from authoring.source.reader import read_document
from tests.seeded.edits import Path

FOLDER = File(__file__).parent.parent.parent / "procedures"


class StepAt(Struct, frozen=True):
    """One step or method as it was written: its file, its path and its data."""

    document: Document
    path: Path
    data: dict[str, Any]

    @property
    def is_method(self) -> bool:
        """Whether it is one of several methods."""
        return self.path[-2] == "either"

    @property
    def text(self) -> str:
        """The instruction as it was written, or an empty text."""
        return str(self.data.get("step", ""))

    @property
    def title(self) -> str:
        """A few words that tell which step it is."""
        words = " ".join((self.text or str(self.data["do"])).split())
        return words if len(words) <= _SHORT else f"{words[:_SHORT]}..."


_SHORT = 60


class ActionAt(Struct, frozen=True):
    """One action as it was written: its step, its place in `do`, its name, what it is given, and what it acts on."""

    step: StepAt
    place: int
    name: str
    given: Any
    what: tuple[str, ...]

    @property
    def path(self) -> Path:
        """The path of what stands behind the action's name."""
        return (*self.step.path, "do", self.place, self.name)


class Demo:
    """The demo library: its documents and pictures, the library that they make, and what stands in it."""

    def __init__(self) -> None:
        files, unread = read_library(str(FOLDER))
        assert not unread, unread
        self.images: dict[str, Image | str] = {}
        self.pictures = {name: content for name, content in files.items() if not name.endswith(".yaml")}
        self.documents: list[Document] = []
        for name, content in files.items():
            if name.endswith(".yaml"):
                document, wrong = read_document(name, content)
                assert document is not None, wrong
                self.documents.append(document)
            else:
                image, reason = read_image(name, content)
                self.images[name] = image if image is not None else reason

    @cached_property
    def library(self) -> Library:
        """The library as it stands."""
        return build_library(self.documents, self.images, partial=False)[0]

    def document(self, file: str) -> Document:
        """Return one file."""
        return next(one for one in self.documents if one.file == file)

    def of_kind(self, kind: str) -> Iterator[Document]:
        """Yield the files of one kind."""
        return (one for one in self.documents if kind_of(one) == kind)

    def sections(self) -> Iterator[tuple[Document, Path, dict[str, Any]]]:
        """Yield every section of every procedure, with its file and its path."""
        for document in self.of_kind("procedure"):
            for place, section in enumerate(document.data["sections"]):
                yield document, ("sections", place), section

    def steps(self) -> Iterator[StepAt]:
        """Yield every step of every procedure, and each method where a step has several."""
        for document, path, section in self.sections():
            for place, step in enumerate(section["steps"]):
                here = (*path, "steps", place)
                if "either" not in step:
                    yield StepAt(document, here, step)
                for number, method in enumerate(step.get("either", ())):
                    yield StepAt(document, (*here, "either", number), method)

    def actions(self) -> Iterator[ActionAt]:
        """Yield every action of every step."""
        for step in self.steps():
            for place, action in enumerate(step.data["do"]):
                ((name, given),) = action.items()
                what = given["what"] if isinstance(given, dict) else given
                yield ActionAt(step, place, name, given, (what,) if isinstance(what, str) else tuple(what))

    def things(self, document: Document) -> dict[str, Named]:
        """Return what each name means in a procedure; a step that nobody named has none."""
        procedure = self.library.procedures[document.data["procedure"]]
        scope = self.library.scope(procedure)
        return {name: one for name, one in scope.things.items() if "." not in name}

    def messages(self, document: Document) -> list[str]:
        """Return the names of the safety messages that a procedure may call."""
        procedure = self.library.procedures[document.data["procedure"]]
        return list(self.library.scope(procedure).safety)

    def nearest(self, document: Document, name: str, taken: set[str]) -> str | None:
        """Return the thing of the same kind whose name is most like this one, or None where there is no other."""
        things = self.things(document)
        if name not in things:
            return None
        others = [one for one in things if things[one].kind is things[name].kind and one not in taken | {name}]
        return max(others, key=lambda one: (_alike(one, name), one), default=None)


def _alike(one: str, other: str) -> float:
    shared = set(one.split("-")) & set(other.split("-"))
    return len(shared) + SequenceMatcher(None, one, other).ratio()
