from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.house import code_shape
from tests.outside_checkers.program import ROOT

Check = Callable[[Path], list[str]]

EVERYWHERE = [code_shape.long_files, code_shape.long_functions, code_shape.ignores_without_reason]
IN_THE_PACKAGE = [
    code_shape.filled_inits,
    code_shape.undocumented_modules,
    code_shape.possessive_groups,
    code_shape.rules_that_import_rules,
]

# A file's place and text, and whether the check must name it.
CASES: list[tuple[Check, str, str, bool]] = [
    (code_shape.long_files, "a.py", "x = 1\n" * 300, False),
    (code_shape.long_files, "a.py", "x = 1\n" * 301, True),
    (code_shape.long_functions, "a.py", "def f():\n" + "    x = 1\n" * 59, False),
    (code_shape.long_functions, "a.py", "def f():\n" + "    x = 1\n" * 60, True),
    (code_shape.long_functions, "a.py", "class C:\n    async def f(self):\n" + "        x = 1\n" * 60, True),
    (code_shape.filled_inits, "p/__init__.py", "", False),
    (code_shape.filled_inits, "p/__init__.py", "from p.a import b\n", True),
    (code_shape.undocumented_modules, "a.py", '"""What it is for."""\n', False),
    (code_shape.undocumented_modules, "a.py", "x = 1\n", True),
    (code_shape.undocumented_modules, "__init__.py", "", False),
    (code_shape.ignores_without_reason, "a.py", "x = 1  # noqa: S101 - tests assert\n", False),
    (code_shape.ignores_without_reason, "a.py", "x = 1  # type: ignore[misc]  # no types there\n", False),
    (code_shape.ignores_without_reason, "a.py", "x = '# noqa'  # a text about ignores\n", False),
    (code_shape.ignores_without_reason, "a.py", "x = 1  # noqa: S101\n", True),
    (code_shape.ignores_without_reason, "a.py", "x = 1  # noqa\n", True),
    (code_shape.ignores_without_reason, "a.py", "x = 1  # noqa - it is in the way\n", True),
    (code_shape.ignores_without_reason, "a.py", "# ruff: noqa\n", True),
    (code_shape.ignores_without_reason, "a.py", "x = 1  # type: ignore\n", True),
    (code_shape.ignores_without_reason, "a.py", "x = 1  # type: ignore[misc]\n", True),
    (code_shape.possessive_groups, "a.py", 'x = r"(?>(?:ab)?)[0-9]++"  # not (ab)?+\n', False),
    (code_shape.possessive_groups, "a.py", 'x = r"(?:ab)?+"\n', True),
    (code_shape.possessive_groups, "a.py", 'x = r"(?:ab){1,3}+"\n', True),
    (code_shape.rules_that_import_rules, "rules/safety/a.py", "from authoring.rules.rule import Fault\n", False),
    (code_shape.rules_that_import_rules, "rules/safety/a.py", "from authoring.model import safety\n", False),
    (code_shape.rules_that_import_rules, "rules/safety/a.py", "from authoring.rules.safety import b\n", True),
    (code_shape.rules_that_import_rules, "rules/safety/a.py", "from authoring.rules import safety\n", True),
    (code_shape.rules_that_import_rules, "rules/safety/a.py", "import authoring.rules.safety.b\n", True),
    (code_shape.rules_that_import_rules, "rules/safety/a.py", "def f():\n    import authoring.rules.safety\n", True),
]


@pytest.mark.parametrize("check", EVERYWHERE, ids=lambda check: check.__name__)
@pytest.mark.parametrize("folder", ["authoring", "tests"])
def test_all_our_code_keeps_the_shape(check: Check, folder: str) -> None:
    """Files and functions stay short, and a check is switched off only by name and for a reason."""
    assert check(ROOT / folder) == []


@pytest.mark.parametrize("check", IN_THE_PACKAGE, ids=lambda check: check.__name__)
def test_the_package_keeps_the_shape(check: Check) -> None:
    """Package roots stay empty, modules say what they are for, and no rule leans on another."""
    assert check(ROOT / "authoring") == []


def test_every_lint_rule_left_out_has_its_reason() -> None:
    """In the settings too, an ignore gives its reason on its line."""
    settings = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    assert code_shape.table_ignores_without_reason(settings) == []
    assert code_shape.table_ignores_without_reason('ignore = [\n  "D203",\n  "S101",  # tests assert\n]') == ["D203"]


@pytest.mark.parametrize(("check", "name", "text", "caught"), CASES)
def test_each_check_catches_its_fault(tmp_path: Path, check: Check, name: str, text: str, *, caught: bool) -> None:
    """A planted fault is named once, with its file; a lawful file beside the limit is not."""
    path = tmp_path / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    told = check(tmp_path)
    assert len(told) == caught
    assert all(line.startswith(name) for line in told)
