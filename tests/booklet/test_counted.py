"""How much comes back in all, by the vehicle."""

from __future__ import annotations

import pytest

from authoring.booklet.blocks import Table
from tests.booklet.composed import chapter_of, table

MACHINE = """\
features:
  brake:
    name: parking brake
    tell: Look behind the rear wheel.
    values: {drum: drum brake, disc: disc brake, belt: belt brake}
items:
  drop-box: {name: drop box}
  lid: {name: lid}
  disc: {name: brake disc, when: {brake: disc}}
  hole: {name: spare hole}
fasteners:
  lid-bolts: {name: lid bolts, count: 4, thread: M8, on: lid, torque: {value: 22 ± 2 N·m, source: plate, at: line 5}}
  stay-bolts: {name: stay bolts, count: 2, thread: M8, on: lid, when: {brake: [drum, disc]},
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}}
"""
WORK = """\
sections:
  - title: Strip
    steps:
      - step: Remove them.
        do: [{remove: lid-bolts}, {remove: lid}, {leave-empty: hole}]
      - step: Remove those.
        when: {brake: [drum, disc]}
        do: [{remove: stay-bolts}]
      - step: Take it off.
        when: {brake: disc}
        do: [{remove: disc}]
  - title: Refit
    steps:
      - step: Put it on.
        when: {brake: disc}
        do: [{fit: disc}]
      - step: Tighten those.
        when: {brake: [drum, disc]}
        do: [{tighten: stay-bolts}]
      - step: Put it on.
        do: [{fit: lid}, {tighten: lid-bolts}]
"""


def in_all(work: str = WORK, **selection: str) -> list[tuple[str, ...]]:
    """Return the table by vehicles."""
    return table(chapter_of("closing", selection, equipment=MACHINE, procedure=work), "count-in-all")


def note(work: str = WORK, **selection: str) -> str:
    """Return what stands below the closing count."""
    closing = chapter_of("closing", selection, equipment=MACHINE, procedure=work)
    return next(one.note for one in closing.blocks if isinstance(one, Table) and one.id == "count")


def test_each_group_of_vehicles_has_its_count() -> None:
    """The lid's four bolts always, two more with two of the brakes, the disc with one; an empty hole is no thing."""
    assert in_all() == [
        ("Parking brake: drum brake", "1", "6", "stay bolts", ""),
        ("Parking brake: disc brake", "2", "6", "stay bolts and brake disc", ""),
        ("Parking brake: belt brake", "1", "4", "nothing", ""),
    ]
    assert note() == ""


@pytest.mark.parametrize(
    ("brake", "told"),
    [("drum", "1 thing and 6 fasteners"), ("disc", "2 things and 6 fasteners"), ("belt", "1 thing and 4 fasteners")],
)
def test_a_booklet_for_one_vehicle_has_its_own_count(brake: str, told: str) -> None:
    """One sentence below the table, and no other vehicle's."""
    assert note(brake=brake) == f"In all: {told}."
    assert in_all(brake=brake) == []


def test_what_is_alike_for_all_is_told_once() -> None:
    """A job that does the same to every vehicle has one count."""
    work = WORK.replace("        when: {brake: [drum, disc]}\n", "").replace("        when: {brake: disc}\n", "")
    alike = MACHINE.replace(", when: {brake: disc}", "").replace(", when: {brake: [drum, disc]}", "")
    closing = chapter_of("closing", {}, equipment=alike, procedure=work)
    assert table(closing, "count-in-all") == []
    assert next(one.note for one in closing.blocks if isinstance(one, Table)) == "In all: 2 things and 6 fasteners."


def test_what_comes_off_on_some_jobs_only_makes_a_span() -> None:
    """Optional work may leave the bolts alone."""
    work = WORK.replace(
        "      - step: Remove those.\n", "      - step: Remove those.\n        optional: If it helps.\n"
    )
    assert note(work, brake="drum") == "In all: 1 thing and 4 to 6 fasteners."


def test_each_method_takes_it_off() -> None:
    """One of the two is done, and both take the lid off: it is counted for certain. By one alone it is not."""
    one = "          - {step: Lift it., do: [{remove: lid}]}\n"
    other = "          - {step: Draw it., do: [{%s: lid}]}\n"
    ways = "  - title: Strip\n    steps:\n      - either:\n" + one + other
    back = "  - title: Refit\n    steps:\n      - step: Put it on.\n        do: [{fit: lid}]\n"
    assert note("sections:\n" + ways % "remove" + back) == "In all: 1 thing."
    assert note("sections:\n" + ways % "clean" + back) == "In all: 0 to 1 things."


def test_nothing_to_count_needs_no_sum() -> None:
    """The table says so already."""
    work = "sections:\n  - title: Look\n    steps:\n      - step: Clean it.\n        do: [{clean: lid}]\n"
    assert note(work) == ""
    assert in_all(work) == []
