from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

import authoring
from authoring.diagnostics.diagnostic import Severity
from authoring.rules.rule import Rule, all_rules
from authoring.source import names
from tests.rules.overlay import Example, base_files, examples, findings, told

PACKAGE = Path(authoring.__file__).parent
RULES = PACKAGE / "rules"
CASES = Path(__file__).parent / "cases"
REQUIREMENTS = (Path(__file__).parent / "requirements.txt").read_text(encoding="utf-8").split()

# Findings that no example can show: why not, and what brings each about (None takes a file away).
# A finding without files is brought about by the tests named in its reason.
UNSHOWN: dict[str, tuple[str, dict[str, bytes | None]]] = {
    "file-too-large": ("no page is that long", {"long.yaml": b"# " + b"x" * 4_000_000}),
    "not-utf8": ("a page is UTF-8 itself", {"old.yaml": "procedure: 45 °C".encode("latin-1")}),
    "missing-file": ("an example is laid over a library that is whole", {"stock.yaml": None}),
    "unreadable-file": ("an example is never on a disk; tests/cli puts it there", {}),
    "parted-pages": ("an example is never printed; tests/render prints", {}),
}


def each_rule() -> list[Any]:
    """Return every rule under its id."""
    return [pytest.param(rule, id=rule.id) for rule in all_rules().values()]


def pages(rule: Rule) -> Iterator[str]:
    """Yield the texts that hold a rule's examples: its page, and its file of further cases."""
    yield rule.page
    cases = CASES / f"{rule.id}.md"
    if cases.exists():
        yield cases.read_text(encoding="utf-8")


def each_example(heading: str) -> list[Any]:
    """Return every example below a heading, with the rule whose page it is on."""
    return [
        pytest.param(rule, example, id=f"{rule.id}-{place}")
        for rule in all_rules().values()
        for place, example in enumerate((one for page in pages(rule) for one in examples(page, heading)), 1)
    ]


@pytest.mark.parametrize("rule", each_rule())
def test_each_rule_has_a_page(rule: Rule) -> None:
    """A page says in one line what is wrong, then why it matters, and shows it wrong and right."""
    first, blank, why = rule.page.split("\n")[:3]
    assert re.fullmatch(r"[A-Z\"].{5,85}\.", first)
    assert not blank
    assert re.match(r"[A-Z\"]", why)
    assert examples(rule.page, "Right")
    assert bool(examples(rule.page, "Wrong")) is (rule.id not in UNSHOWN)


@pytest.mark.parametrize("rule", each_rule())
def test_each_rule_is_lawful(rule: Rule) -> None:
    """A rule's name is words joined by hyphens; it has a severity, and requirements that exist, none twice."""
    assert re.fullmatch(r"[a-z]+[0-9]?(-[a-z]+[0-9]?)+", rule.id)
    assert isinstance(rule.severity, Severity)
    assert set(rule.requirements) <= set(REQUIREMENTS)
    assert len(set(rule.requirements)) == len(rule.requirements)
    # A file of bad form is refused because nobody could read it, whatever a standard asks.
    assert rule.requirements or rule.family == "reading"
    assert rule.check is None or rule.over in {"procedure", "equipment", "library"}


def test_each_file_is_a_rule_of_its_own() -> None:
    """No two families have a rule of the same name, and no file of a family is anything else."""
    files = [path.stem.replace("_", "-") for path in RULES.glob("*/*.py") if path.stem != "__init__"]
    assert sorted(files) == sorted(all_rules())


def test_each_case_file_belongs_to_a_rule() -> None:
    """A file of cases bears a rule's name and holds examples, so that none is left behind unseen."""
    assert {path.stem for path in CASES.iterdir()} <= set(all_rules())
    for path in CASES.iterdir():
        text = path.read_text(encoding="utf-8")
        shown = len(examples(text, "Wrong")) + len(examples(text, "Right"))
        assert shown, path.name
        assert text.count("\n```yaml ") >= shown, path.name


def test_the_base_library_is_sound() -> None:
    """The library under every example has no finding itself."""
    assert findings(base_files()) == []


@pytest.mark.parametrize(("rule", "example"), each_example("Wrong"))
def test_wrong_examples_are_told_on(rule: Rule, example: Example) -> None:
    """A wrong example yields exactly the findings marked in it, on their lines, and one of its own rule."""
    assert told(example, rule.id) == sorted(example.expected)
    assert rule.id in {expected for _, _, expected in example.expected}


@pytest.mark.parametrize(("rule", "example"), each_example("Right"))
def test_right_examples_pass(rule: Rule, example: Example) -> None:
    """A right example yields nothing, from this rule or any other, and marks nothing."""
    assert example.expected == []
    assert told(example, rule.id) == []


@pytest.mark.parametrize("name", [name for name, (_, files) in UNSHOWN.items() if files])
def test_what_no_example_can_show_is_told(name: str) -> None:
    """A file of bad bytes, or a missing one, brings its finding about, and no other."""
    changed = {**base_files(), **UNSHOWN[name][1]}
    files = {file: content for file, content in changed.items() if content is not None}
    assert {found.rule for found in findings(files)} == {name}


def emitted(folder: Path) -> set[str]:
    """Return the ids that the code of a folder gives to findings as plain words."""
    return {
        call.args[0].value
        for path in folder.rglob("*.py")
        for call in ast.walk(ast.parse(path.read_bytes()))
        if isinstance(call, ast.Call)
        and isinstance(call.func, ast.Name)
        and call.func.id == "Diagnostic"
        and call.args
        and isinstance(call.args[0], ast.Constant)
        and isinstance(call.args[0].value, str)
    }


def test_whatever_is_told_has_a_page() -> None:
    """Every id that reading, building or printing gives to a finding can be explained; all else has a check."""
    ids = emitted(PACKAGE) | names.RULES
    assert "missing-file" in ids
    assert ids <= set(all_rules())
    assert {rule.id for rule in all_rules().values() if rule.check is None} <= ids
    assert set(UNSHOWN) <= ids


@pytest.mark.parametrize("rule", each_rule())
def test_examples_are_told_in_sentences(rule: Rule) -> None:
    """What a wrong example yields is a sentence that stands alone, with a cure, at a stretch of one line."""
    for page in pages(rule):
        for example in examples(page, "Wrong"):
            for found in findings(example.files):
                if found.rule != rule.id:
                    continue
                assert re.match(r"[A-Z\"0-9/]", found.message)
                assert found.message.endswith((".", "?")), found.message
                assert found.cure.endswith((".", "?")), found.cure
                # A rule that warns may know some cases for certain; none is milder than its page says.
                assert found.severity in {rule.severity, Severity.ERROR}
                assert found.span.line == found.span.end_line
                # An empty file has nothing to underline.
                assert found.span.end_column > found.span.column or rule.id == names.EMPTY_FILE
