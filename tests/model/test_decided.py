"""What a job decides: options and fitted parts that later steps follow, and methods of which one is done."""

from __future__ import annotations

from authoring.booklet.plan import Plan
from authoring.model.build import build_library
from authoring.model.fitments import fitments
from authoring.model.library import Library
from authoring.model.space import possible
from authoring.source.reader import read_document
from tests.rules.overlay import base_files, overlay

PROCEDURE = """
options:
  magnet:
    name: magnetic plug
    question: Does the customer want one?
    decided-by: customer
    values: {wanted: wanted, plain: not wanted}
choices:
  ring:
    name: ring
    question: Which brake does the machine have?
    parts:
      - {part: thin, when: {brake: drum}, tell: It is thin.}
      - {part: thick, when: {brake: disc}, equal: [thick-too], tell: It is thick.}
  seal:
    name: seal
    question: Which seal lies in the box?
    parts:
      - {part: thin, tell: It is thin.}
sections:
  - title: Clean
    steps:
      - step: Clean the [drop-box].
        when: {ring: [thick, thick-too], magnet: wanted}
        do: [{clean: drop-box}]
      - when: {brake: drum}
        either:
          - {id: wipe, do: [{clean: drop-box}]}
          - {when: {brake: [drum, disc], magnet: plain}, do: [{clean: drop-box}]}
      - do: [{clean: drop-box}]
"""
STOCK = """
parts:
  thin: {name: thin ring, number: P-1}
  thick: {name: thick ring, number: P-2}
  thick-too: {name: other thick ring, number: P-3}
"""


def made() -> Library:
    """Return a library with an option and two choices, of which a `when` names one."""
    files = base_files() | overlay([("procedure", PROCEDURE), ("stock", STOCK)]).files
    documents = [document for name, content in files.items() if (document := read_document(name, content)[0])]
    library, found = build_library(documents, {}, partial=False)
    assert not found
    return library


def test_options_and_asked_choices_are_features() -> None:
    """Steps may follow what was chosen in the job; a choice that no condition names is no feature."""
    library = made()
    vehicle = library.scope(library.procedures["FL-110"]).vehicle
    assert vehicle is not None
    assert set(vehicle.features) == {"brake", "magnet", "ring"}
    assert dict(vehicle.features["ring"].values) == {
        "thin": "thin ring",
        "thick": "thick ring",
        "thick-too": "other thick ring",
    }


def test_a_part_that_a_vehicle_never_gets_is_never_fitted() -> None:
    """The parts of a choice go with the features that decide it, equal parts like the one they stand beside."""
    library = made()
    vehicle = library.scope(library.procedures["FL-110"]).vehicle
    assert vehicle is not None
    together = {(one["brake"], one["ring"]) for one in fitments(vehicle, {}, ["brake", "ring"])}
    assert together == {("drum", "thin"), ("disc", "thick"), ("disc", "thick-too")}
    assert not possible(vehicle, {"ring": ("thin",), "brake": ("disc",)})


def test_methods_share_a_number_and_hold_for_no_more_than_the_step_around_them() -> None:
    """Methods are 2a and 2b; each has the condition of the step around it and its own."""
    library = made()
    procedure = library.procedures["FL-110"]
    plan = Plan(library, procedure, {})
    assert [placed.number for placed in plan.main.steps()] == ["1", "2a", "2b", "3"]
    whens = [dict(step.when) for _, step in procedure.steps()]
    assert whens[1] == {"brake": ("drum",)}
    assert whens[2] == {"brake": ("drum",), "magnet": ("plain",)}


def test_a_number_stays_where_a_method_is_left_out() -> None:
    """With the disc brake neither method is there, and the step behind them keeps its number."""
    library = made()
    plan = Plan(library, library.procedures["FL-110"], {"brake": "disc", "ring": "thick", "magnet": "plain"})
    assert [placed.number for placed in plan.main.steps()] == ["3"]
