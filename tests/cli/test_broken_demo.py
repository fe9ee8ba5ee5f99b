"""The demo library, broken on purpose in each way an author slips: every answer names place, reason and cure."""

from __future__ import annotations

from pathlib import Path

import pytest

from authoring.cli.disk import read_library
from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check

DEMO = Path(__file__).parent.parent.parent / "procedures"
FILES, UNREAD = read_library(str(DEMO))

# What is broken, in which file, what stands there, what is typed instead, the rule, and words of the line it points at.
BREAKS = [
    ("a misspelt name in the text", "FL-110", "Wipe the [drop-box]", "Wipe the [drop-bx]", "unknown-name", "drop-bx"),
    ("a misspelt name in an action", "FL-110", "top-up: {what: box-oil,", "top-up: {what: box-oli,",
     "unknown-name", "box-oli"),
    ("a fluid to be tightened", "FL-110", "- tighten: level-plug", "- tighten: box-oil", "wrong-kind", "tighten"),
    ("a tool nobody uses", "stock", "tools:\n", "tools:\n  mallet: {name: rubber mallet}\n", "unused-thing", "mallet"),
    ("one name twice", "stock", "tools:\n", "tools:\n  skip: {name: waste skip}\n", "duplicate-name", "skip"),
    ("a key typed twice", "FL-110", "persons: 1", "persons: 1\npersons: 2", "duplicate-key", "persons: 2"),
    ("an unknown key", "FL-110", "audience:", "audiense:", "unknown-key", "audiense"),
    ("a missing title", "FL-110", "title: Check the oil level of the drop box\n", "", "missing-key", "procedure"),
    ("a number for a text", "FL-110", "time: 45 min", "time: 45", "wrong-type", "time"),
    ("an unknown severity", "shop", "severity: death", "severity: deadly", "wrong-value", "deadly"),
    ("a torque typed as millinewtons", "hob", "22 ± 2 N·m", "22 ± 2 mN", "bad-quantity", "22 ± 2 mN"),
    ("a decimal comma", "FL-120", "value: 9.0 ± 0.3 mm", "value: '9,0 ± 0.3 mm'", "bad-quantity", "9,0"),
    ("a decimal comma inside braces", "hob", "1.6 to 1.7 L", "1,6 to 1,7 L", "wrong-value", "1,6"),
    ("gallons of no nation", "hob", "1.6 to 1.7 L", "0.4 gal", "bad-quantity", "0.4 gal"),
    ("a torque in litres", "hob", "58 ± 5 N·m", "58 ± 5 L", "bad-quantity", "58 ± 5 L"),
    ("a torque without source", "hob", "{value: 58 ± 5 N·m, source: plate-notes, ", "{value: 58 ± 5 N·m, ",
     "value-without-source", "58 ± 5"),
    ("an unknown source", "hob", "22 ± 2 N·m, source: plate-notes", "22 ± 2 N·m, source: plate-note", "unknown-source",
     "plate-note"),
    ("a source without edition", "hob", "    edition: issue 2, 2019\n", "", "source-without-edition", "plate-notes"),
    ("a loose torque in a text", "FL-110", "Tighten the [level-plug] with", "Tighten to 42 N·m the [level-plug] with",
     "loose-quantity", "42 N·m"),
    ("a text that names more", "FL-110", "Tighten the [level-plug] with", "Tighten the [level-plug], [drain-plug] with",
     "text-names-more", "drain-plug"),
    ("a text that names less", "FL-110", "Wipe the [drop-box] dry", "Wipe it dry", "text-names-less", "drop-box"),
    ("another verb", "FL-110", "Tighten the [level-plug]", "Loosen the [level-plug]", "verb-mismatch", "Loosen"),
    ("a message without avoidance", "shop",
     "    avoidance: Stay out from under the skip whenever the prop does not carry it.\n", "", "safety-incomplete",
     "skip-fall"),
    ("a typed signal word", "FL-110", "Tighten the [level-plug] with", "CAUTION! Tighten the [level-plug] with",
     "typed-signal-word", "CAUTION"),
    ("work inside a message", "shop", "avoidance: Stay out from under the deck while the engine",
     "avoidance: Remove the guard plate before the engine", "safety-holds-work", "Remove"),
    ("lasting injury to a machine", "FL-110", "harm: equipment\n    severity: moderate",
     "harm: equipment\n    severity: death", "harm-and-severity", "death"),
    ("persons left unsaid", "FL-110", "persons: 1\n", "", "stated-or-none", "procedure"),
    ("an unknown feature", "FL-120", "when: {brake: drum}", "when: {brakes: drum}", "unknown-feature", "brakes"),
    ("an unknown value", "FL-120", "when: {brake: drum}", "when: {brake: drums}", "unknown-feature-value", "drums"),
    ("a vehicle without a part", "FL-120", "{brake: disc}\n        size", "{brake: drum}\n        size",
     "choice-gap", "output-seal"),
    ("a figure that is not there", "FL-110", "figures/drop-box-side.svg", "figures/drop-box-sid.svg", "figure-file",
     "drop-box-sid.svg"),
    ("a figure without words", "FL-120", "    alt: >-\n      Both", "    alt: Both\n    title: >-\n      Both",
     "duplicate-key", "title"),
    ("approved by its author", "FL-110", "author: orla\n    approver: devan", "author: devan\n    approver: devan",
     "approver-is-author", "devan"),
    ("a revision left out", "FL-110", "- revision: C", "- revision: D", "revision-order", "D"),
    ("tightened without a torque", "hob",
     '    torque: {value: 42 ± 4 N·m, source: plate-notes, at: "sheet 4, line 1"}\n', "",
     "torque-missing", "level-plug"),
    ("a way out that leads nowhere", "FL-110", "then: go-to\n                  to: plug-in", "then: go-to",
     "outcome-target", "go-to"),
    ("a tab for indentation", "FL-110", "    steps:\n", "\tsteps:\n", "yaml-syntax", "steps"),
    ("an anchor", "FL-110", "title: Check", "title: &title Check", "yaml-feature", "title"),
    ("a torque with a nought too many", "teal", "71 ± 6 N·m", "710 ± 60 N·m", "unit-mistaken", "710"),
    ("a torque outside the tool", "teal", "29 ± 3 N·m", "129 ± 3 N·m", "wrench-unfit", "129 ± 3"),
    ("pound-feet typed as newton metres", "teal", "43 ± 3 N·m", "32 ± 2 N·m", "unit-mistaken", "32 ± 2"),
    ("a torque without a wrench", "FL-110", "with: [torque-wrench, socket-22", "with: [socket-22", "wrench-not-listed",
     "level-plug"),
    ("a wrench of unknown length", "stock", "    length: 380 mm\n", "", "setting-unknown", "torque-wrench"),
    ("a friction without its first digit", "teal", "0.12 to 0.16", "0.02 to 0.06", "bolt-overloaded", "0.02"),
    ("too few threads in soft metal", "teal", "engaged: 9 mm", "engaged: 0.9 mm", "thread-may-strip", "0.9 mm"),
    ("a torque between two marks", "teal", "54 ± 5 N·m", "54.2 to 54.4 N·m", "wrench-unfit", "54.2"),
    ("a window that vanishes on the scale", "teal", "value: 1.5 ± 0.3 mm", "value: 1.52 ± 0.03 mm", "range-vanishes",
     "1.52"),
    ("an order that skips a bolt", "teal", "order: [1, 3, 2, 4]", "order: [1, 3, 2, 3]",
     "order-not-complete", "3, 2, 3"),
    ("a look-alike inside the gauge's blur", "FL-210", "value: 17.0 ± 0.1 mm", "value: 18.8 ± 0.1 mm",
     "look-alikes-blurred", "output-bearing"),
    ("a limit at which a hand is burnt", "hob", "value: at most 40 °C", "value: at most 60 °C", "touch-limit-burns",
     "at most 60"),
    ("a level read without a thermometer", "FL-130",
     ("Hold the [thermometer] on the [tank], then look at the level of the [tank-oil] in its glass.\n"
     "        with: [thermometer]\n"), "Look at the level of the [tank-oil] in the glass of the [tank].\n",
     "temperature-unmeasured", "tank-temperature"),
    ("a wait that is too short", "teal", "value: 30 to 40 min", "value: 10 to 20 min", "waits-too-short", "10 to 20"),
    ("a bore that is not warm enough", "teal", "value: 80 to 90 °C", "value: 60 to 70 °C", "heat-too-little",
     "60 to 70"),
    ("a gauge that is too short", "teal", "value: 34.0 to 35.5 mm", "value: 154.0 to 155.5 mm", "gauge-out-of-range",
     "154.0"),
    ("a capacity that was retyped wrongly", "teal", "4.3 to 4.5 L", "3.3 to 3.5 L", "fills-do-not-add-up",
     "3.3 to 3.5"),
    ("a second filling", "FL-210", "because the total is compared at the end.\n",
     "so.\n      - step: Pour [first-fill] of [box-oil].\n        do: [{fill: {what: box-oil, amount: first-fill}}]\n",
     "fills-do-not-add-up", "amount: first-fill"),
    ("a level below the opening of the thermostat", "teal", "value: 65 to 75 °C", "value: 40 to 50 °C",
     "level-window-shut", "40 to 50"),
    ("a thermostat that opens later", "teal", "opens: 58 to 62 °C", "opens: 88 to 92 °C", "level-window-shut",
     "88 to 92"),
    ("a closed window without a reason", "teal", "opens: 58 to 62 °C", "opens: 20 to 25 °C", "window-unexplained",
     "always-open"),
    ("a level that the run does not reach", "FL-210",
     "[level-window].\n        do:\n          - run: {what: engine, at: idle-speed, until: level-window}",
     "[bore-temperature].\n        do:\n          - run: {what: engine, at: idle-speed, until: bore-temperature}",
     "level-window-out-of-reach", "bore-temperature"),
    ("an oil change without draining", "FL-220", "drain:\n              what: axle-oil\n              into: oil-tray",
     "bleed:\n              what: axle-oil", "fluids-mixed", "ester-oil"),
    ("an additive that may not come to the oil", "teal", "    mixes-with: [axle-oil, ester-oil]\n", "", "fluids-mixed",
     "friction modifier"),
    ("an expansion in per cent", "teal", 'value: "0.0007"', 'value: "0.07"', "growth-out-of-range", "0.07"),
]  # fmt: skip  # a table is read by its columns


@pytest.mark.parametrize(
    ("file", "old", "new", "rule", "shown"), [one[1:] for one in BREAKS], ids=[one[0] for one in BREAKS]
)
def test_a_break_is_told_with_place_reason_and_cure(file: str, old: str, new: str, rule: str, shown: str) -> None:
    """The rule that watches over it speaks, points at a line that shows the fault, and says how to mend it."""
    name = f"{file}.yaml"
    text = FILES[name].decode()
    assert old in text, "the demo library no longer holds what this test breaks"
    broken = text.replace(old, new, 1)
    checked = check(FILES | {name: broken.encode()}, UNREAD)
    told = [one for one in checked.findings if one.rule == rule]
    assert told, [f"{one.rule}: {one.message}" for one in checked.findings]
    for one in told:
        assert one.message.endswith((".", "?", "!")), one.message
        assert one.cure, one.message
    lines = broken.splitlines()
    places = [span for one in told for span in (one.span, *(related.span for related in one.related))]
    assert any(span.file == name and shown in lines[span.line - 1] for span in places), told


def test_the_demo_library_itself_has_no_error_and_no_warning() -> None:
    """What is broken above is sound before."""
    assert {one.severity for one in check(FILES, UNREAD).findings} <= {Severity.NOTE}
