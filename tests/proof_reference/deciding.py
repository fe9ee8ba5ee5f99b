"""What must be asked or looked at before it is used: an option of the customer's, and which part is the right one."""

from __future__ import annotations

from collections.abc import Iterator

from tests.proof_reference.script import Script
from tests.proof_reference.state import State, things_of
from tests.proof_reference.told import Group

_LOOKING = frozenset({"measure", "inspect", "compare"})

_USING = frozenset({"fit", "seat", "hold"})


class Deciding:
    """The options of the customer's in a job, and its choices of which the wrong part is told by its size or harm."""

    def __init__(self, root: Script) -> None:
        """Look for them in the job of `root`."""
        options: dict[str, Group] = root.told.get("options", {})
        self.options = {name for name, one in options.items() if one["decided-by"] == "customer"}
        choices: dict[str, Group] = root.told.get("choices", {})
        self.parts = {
            name: {name, *(part["part"] for part in one["parts"])}
            for name, one in choices.items()
            if "if-wrong" in one or any({"size", "sizes"} & set(part) for part in one["parts"])
        }

    def unasked(self, when: Group | None, state: State) -> Iterator[str]:
        """Yield the options that a condition depends on, and that nothing asked or told the customer of yet."""
        yield from (name for name in when or () if name in self.options and ("asked", name) not in state.marks)

    def unchecked(self, verb: str, value: Group, state: State) -> Iterator[str]:
        """Yield the choices that an action puts on first, and that nothing looked at yet."""
        named = set(things_of(value))
        for choice in self.parts:
            if verb in _USING and choice in named and not {("looked", choice), ("used", choice)} & state.marks:
                yield choice

    def marks(self, verb: str, value: Group) -> Iterator[tuple[str, str]]:
        """Yield what an action decides or uses."""
        named = set(things_of(value))
        if verb in {"ask", "tell"} and value.get("who") == "customer":
            yield from (("asked", name) for name in named & self.options)
        for choice, parts in self.parts.items():
            if verb in _LOOKING and parts & named:
                yield "looked", choice
            if verb in _USING and choice in named:
                yield "used", choice
