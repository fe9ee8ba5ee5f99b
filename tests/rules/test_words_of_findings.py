"""What a finding says in words, where the words are what was wrong with it."""

from __future__ import annotations

import re

import pytest

from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check, html
from tests.rules.overlay import findings, overlay


def messages(rule: str, *blocks: tuple[str, str]) -> list[str]:
    """Return what a rule says of examples laid over the small library."""
    return [one.message for one in findings(overlay(list(blocks)).files) if one.rule == rule]


METHODS = """\
sections:
  - title: Open
    steps:
      - either:
          - step: Remove the [drop-box] and keep it.
            do: [{{remove: drop-box}}, {{keep: drop-box}}]
          - step: Do it another way.
            do: {other}
"""


@pytest.mark.parametrize(
    ("one", "other", "words"),
    [
        ("[remove, keep]", "[remove, discard]", ('ends with "keep"', 'ends with "discard"')),
        ("[remove, keep]", "[open]", ('ends with "keep"', 'ends with "open"')),
        ("[remove, keep]", "[clean]", ('ends with "keep"', "does nothing of the kind to it")),
        ("[open, keep]", "[keep]", ('ends with "open"', "does nothing of the kind to it")),
        ("[remove]", "[clean, leaves open]", ('ends with "remove"', "leaves it open")),
        ("[set low]", "[set high]", ('ends with "set" to low', 'ends with "set" to high')),
    ],
)
def test_methods_are_told_apart_by_what_each_does_last(one: str, other: str, words: tuple[str, str]) -> None:
    """A thing that one method takes off and keeps is not told to be as it was; one finding for one thing."""
    equipment = "items:\n  drop-box: {name: drop box, positions: {low: low, high: high}}\n"
    said = messages("methods-differ", ("equipment", equipment), ("procedure", methods(one, other)))
    assert said == [f'The methods differ in "drop-box": the other one {words[0]}, and this one {words[1]}.']


def methods(*ways: str) -> str:
    """Return a procedure with methods that do these things to the drop box."""
    written = []
    for way in ways:
        acts = []
        for act in way.strip("[]").split(", "):
            name, _, more = act.partition(" ")
            if name != "leaves":
                acts.append(f"{{set: {{what: drop-box, position: {more}}}}}" if more else f"{{{name}: drop-box}}")
        written.append(f"          - do: [{', '.join(acts)}]")
        written += ["            leaves: {drop-box: open}"] if "leaves open" in way else []
    return "\n".join(["sections:", "  - title: Open", "    steps:", "      - either:", *written, ""])


@pytest.mark.parametrize(
    ("more", "sums", "cover"),
    [
        ("", "The sections take 15 min together", "15 min"),
        (
            "\n    optional: Worth doing in summer.",
            "The sections take 10 min together at the least without what may be skipped, and 15 min at the most",
            "15 min",
        ),
        (
            "\n    when: {brake: drum}",
            "The sections of one vehicle take 10 min together at the least, and 15 min at the most",
            "10 min to 15 min",
        ),
    ],
)
def test_both_sums_are_said(more: str, sums: str, cover: str) -> None:
    """The sum that the cover prints stands beside that of what no machine can do without."""
    procedure = f"""\
time: 60 min
sections:
  - title: Wipe
    time: 5 min{more}
    steps:
      - do: [{{clean: drop-box}}]
  - title: Wipe again
    time: 10 min
    steps:
      - do: [{{clean: drop-box}}]
"""
    said = messages("times-do-not-add-up", ("procedure", procedure))
    assert said == [f"{sums}, but the procedure says 60 min."]
    page = html(check(overlay([("procedure", procedure)]).files, []), "FL-110", {})
    assert f"60 min; the sections together {cover}" in re.sub(r"<[^>]*>", "", page).replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("steps", "severity", "message"),
    [
        ("[{remove: drop-box}]", Severity.ERROR, "is removed here and is never brought back."),
        (
            "[{remove: drop-box}, {keep: drop-box}]",
            Severity.WARNING,
            "is removed here and kept, but is never brought back.",
        ),
        (
            "[{remove: drop-box}]\n      - do: [{fit: drop-box}]\n        when: {brake: disc}",
            Severity.ERROR,
            "is removed here and is never brought back for a machine with parking brake: drum brake.",
        ),
        (
            (
                "[{remove: drop-box}]\n      - either:\n          - {id: cut, do: [{mark: drop-box}]}\n"
                "          - do: [{clean: drop-box}]\n      - do: [{fit: drop-box}]\n        if-done: [cut]"
            ),
            Severity.ERROR,
            "is removed here and is never brought back where the method of line 20 is done.",
        ),
    ],
)
def test_what_never_comes_back_is_certain_but_where_it_was_kept(steps: str, severity: Severity, message: str) -> None:
    """The fewest features, or the way through the job, stand in the sentence; what was kept is a warning."""
    procedure = f"sections:\n  - title: Open\n    steps:\n      - do: {steps}\n"
    example = overlay([("procedure", procedure)])
    found = [one for one in findings(example.files) if one.rule == "never-put-back"]
    assert [(one.severity, one.message) for one in found] == [(severity, f'"drop-box" {message}')]
