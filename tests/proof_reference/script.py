"""A procedure as one run of plain lines with jumps, in the order in which a technician reads it."""

from __future__ import annotations

from typing import Any, NamedTuple

from tests.proof_reference.told import Group


class Line(NamedTuple):
    """One thing to do: its kind, the section and the step or method it stands in, and what it is about.

    `to` are the lines that it may lead to instead of the next one.
    """

    kind: str
    section: Group
    step: Group
    about: Any
    to: tuple[int, ...] = ()


class Script:
    """The lines of one procedure, and the line at which each step and section that has a short name begins."""

    def __init__(self, told: Group, file: str) -> None:
        """Write out a procedure that was read from `file`."""
        self.told = told
        self.file = file
        self.number: str = told["procedure"]
        self.lines: list[Line] = []
        self.named: dict[str, int] = {}
        self.asked_for: set[str] = set()
        for section in told["sections"]:
            self._section(section)
        self._add("end", told, told, None)

    def _add(self, kind: str, section: Group, step: Group, about: Any) -> int:
        self.lines.append(Line(kind, section, step, about))
        return len(self.lines) - 1

    def _lead(self, line: int, *to: int) -> None:
        self.lines[line] = self.lines[line]._replace(to=to)

    def _section(self, section: Group) -> None:
        head = self._add("section", section, section, None)
        first = len(self.lines)
        if "id" in section:
            self.named[section["id"]] = first
        for step in section["steps"]:
            self._step(section, step)
        if "repeat" in section:
            self._lead(self._add("again", section, section, None), first)
        self._lead(head, len(self.lines))

    def _step(self, section: Group, step: Group) -> None:
        head = self._add("step", section, step, None)
        methods = step.get("either", [step])
        begins = []
        ends = []
        for method in methods:
            begins.append(len(self.lines))
            self._method(section, method)
            ends.append(self._add("jump", section, method, None))
        for end in ends:
            self._lead(end, len(self.lines))
        self._lead(head, len(self.lines), *begins)

    def _method(self, section: Group, method: Group) -> None:
        begin = self._add("begin", section, method, None)
        if "id" in method:
            # A way that leads to a step meets its condition like one that comes to it.
            self.named[method["id"]] = begin - 1 if self.lines[begin - 1].step is method else begin
        self.asked_for |= {*method.get("if-done", []), *method.get("unless-done", [])}
        for turn, action in enumerate(method["do"]):
            ((verb, value),) = action.items()
            self._add("action", section, method, (verb, value if isinstance(value, Group) else Group(what=value), turn))
        if "leaves" in method:
            self._add("leaves", section, method, method["leaves"])
        for outcome in [*method.get("noticed", []), *section.get("noticed", [])]:
            self._add("noticed", section, method, outcome)
        self._lead(begin, len(self.lines))
