"""Findings in SARIF, held against the standard's own schema."""

from __future__ import annotations

import json
from typing import Any

import pytest
from jsonschema import ValidationError
from jsonschema.validators import validator_for
from msgspec.structs import replace

from authoring.cli.main import main
from authoring.diagnostics.as_sarif import About, as_sarif
from authoring.diagnostics.diagnostic import Diagnostic, Related, Severity, Span
from tests.booklet.goldens import TREE
from tests.outside_checkers.program import node_module

HERE = Span("figures/a b.yaml", 3, 5, 3, 9)
FINDING = Diagnostic(
    "unknown-name",
    Severity.ERROR,
    'No thing is called "plugg".',
    HERE,
    'Did you mean "plug"?',
    (Related(Span("shop.yaml", 1, 1, 1, 5), "stated here"),),
)
NOWHERE = Diagnostic("missing-file", Severity.ERROR, "The library has no shop file.", Span("", 1, 1, 1, 1))
ABOUT = {
    rule: About("A line.", "A page.", Severity.ERROR, ("A6",)) for rule in ("unknown-name", "missing-file", "silent")
}


def validate(log: dict[str, Any]) -> None:
    """Hold a log against the schema of SARIF 2.1.0 (OASIS), as it is published for Node."""
    schema = json.loads(node_module("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json").read_text("utf-8"))
    validator_for(schema)(schema).validate(log)


def test_a_log_is_valid() -> None:
    """A finding with a related place, and one without any place, make a valid log."""
    log = json.loads(as_sarif([FINDING, NOWHERE], ABOUT, "1.2.3"))
    validate(log)
    (run,) = log["runs"]
    assert [rule["id"] for rule in run["tool"]["driver"]["rules"]] == ["missing-file", "unknown-name"]
    named, nowhere = run["results"]
    assert named["ruleIndex"] == 1
    assert named["message"]["text"] == 'No thing is called "plugg". Did you mean "plug"?'
    (location,) = named["locations"]
    assert location["physicalLocation"]["artifactLocation"] == {"uri": "figures/a%20b.yaml", "uriBaseId": "LIBRARY"}
    assert location["physicalLocation"]["region"] == {"startLine": 3, "startColumn": 5, "endLine": 3, "endColumn": 9}
    assert named["relatedLocations"][0]["message"]["text"] == "stated here"
    assert "locations" not in nowhere


def test_the_vehicles_are_a_property_of_a_result() -> None:
    """A result says which vehicles it concerns, or that it is not about some of them, and the log stays valid."""
    log = json.loads(as_sarif([FINDING, replace(FINDING, fitments="axle: wide axle")], ABOUT, "1.2.3"))
    validate(log)
    assert [one["properties"] for one in log["runs"][0]["results"]] == [
        {"fitments": ""},
        {"fitments": "axle: wide axle"},
    ]


def test_an_empty_log_is_valid() -> None:
    """A library without a finding is a run without a result."""
    validate(json.loads(as_sarif([], {}, "1.2.3")))


def test_the_schema_refuses_a_wrong_log() -> None:
    """The outside check can fail: a level that SARIF does not have is refused."""
    log = json.loads(as_sarif([FINDING], ABOUT, "1.2.3"))
    log["runs"][0]["results"][0]["level"] = "fatal"
    with pytest.raises(ValidationError):
        validate(log)


def test_the_command_prints_it(capsys: pytest.CaptureFixture[str]) -> None:
    """`check --format sarif` prints one valid log and nothing else."""
    assert main(["check", str(TREE / "procedures"), "--format", "sarif"]) == 0
    validate(json.loads(capsys.readouterr().out))
