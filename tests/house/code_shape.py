"""The house's limits on the shape of a file, each a function over a folder that names what breaks it."""

from __future__ import annotations

import ast
import io
import re
import tokenize
from collections.abc import Iterator
from pathlib import Path

LONGEST_FILE = 300
LONGEST_FUNCTION = 60

LINT_IGNORE = re.compile(r"#\s*(?:ruff:\s*)?(?:noqa|type:\s*ignore)")
IGNORE_WITH_REASON = re.compile(
    r"#\s*(?:noqa:\s*[A-Z]+\d+(?:,\s*[A-Z]+\d+)*|type:\s*ignore\[[\w, -]+\])\s*(?:#|-|–)\s*\w+(?:\W+\w+)+"
)
POSSESSIVE_GROUP = re.compile(r"\)(?:[?*+]|\{[0-9,]+\})\+")
TABLE_IGNORE = re.compile(r'^\s+"(?P<code>[A-Z]+\d+)",')


def python_files(root: Path) -> Iterator[Path]:
    """Yield every Python file below a folder, in order."""
    yield from sorted(root.rglob("*.py"))


def long_files(root: Path) -> list[str]:
    """Name the files of more than 300 lines: each has become more than one idea."""
    counts = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in python_files(root)}
    return [f"{path.relative_to(root)} has {lines} lines" for path, lines in counts.items() if lines > LONGEST_FILE]


def long_functions(root: Path) -> list[str]:
    """Name the functions of more than 60 lines, decorators left out."""
    found = []
    for path in python_files(root):
        for node in ast.walk(ast.parse(path.read_bytes())):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
                lines = (node.end_lineno or node.lineno) - node.lineno + 1
                if lines > LONGEST_FUNCTION:
                    found.append(f"{path.relative_to(root)}: {node.name} has {lines} lines")
    return found


def filled_inits(root: Path) -> list[str]:
    """Name the `__init__.py` files that are not empty: a convenient root is how rings of imports begin."""
    return [
        f"{path.relative_to(root)} is not empty"
        for path in python_files(root)
        if path.name == "__init__.py" and path.stat().st_size
    ]


def undocumented_modules(root: Path) -> list[str]:
    """Name the modules without a docstring that says what they are for."""
    return [
        f"{path.relative_to(root)} has no docstring"
        for path in python_files(root)
        if path.name != "__init__.py" and not ast.get_docstring(ast.parse(path.read_bytes()))
    ]


def ignores_without_reason(root: Path) -> list[str]:
    """Name the places that switch off a check without naming its code and giving a reason on the same line."""
    found = []
    for path in python_files(root):
        for token in tokenize.generate_tokens(io.StringIO(path.read_text(encoding="utf-8")).readline):
            if token.type != tokenize.COMMENT or not LINT_IGNORE.search(token.string):
                continue
            if not IGNORE_WITH_REASON.search(token.string):
                found.append(f"{path.relative_to(root)}:{token.start[0]}: {token.string}")
    return found


def possessive_groups(root: Path) -> list[str]:
    """Name the texts with a possessive quantifier after a group, as in `(ab)?+`.

    Before 3.11.5, Python goes on from where the group's last, failed attempt stopped and so matches wrongly; Debian 12
    has 3.11.2. An atomic group around the plain quantifier, `(?>(ab)?)`, means the same and is right everywhere.
    """
    return [
        f"{path.relative_to(root)}:{token.start[0]}: {found[0]}"
        for path in python_files(root)
        for token in tokenize.generate_tokens(io.StringIO(path.read_text(encoding="utf-8")).readline)
        if token.type == tokenize.STRING and (found := POSSESSIVE_GROUP.search(token.string))
    ]


def table_ignores_without_reason(settings: str) -> list[str]:
    """Name the lint codes in `pyproject.toml` that stand without a reason on their line."""
    return [
        code["code"]
        for line in settings.splitlines()
        if (code := TABLE_IGNORE.match(line)) and not re.search(r"#\s*\w+\W+\w+", line)
    ]


def rules_that_import_rules(root: Path) -> list[str]:
    """Name the rule files (`rules/FAMILY/NAME.py` below `root`) that import from any family, their own included.

    What two rules share belongs to the model or to `rules/` itself, where it has a name and a test.
    """
    families = {path.parent.name for path in (root / "rules").glob("*/*.py")}
    found = []
    for path in sorted((root / "rules").glob("*/*.py")):
        for module in sorted(imported_modules(path)):
            parts = module.split(".")
            if "rules" in parts and families & set(parts[parts.index("rules") + 1 :][:1]):
                found.append(f"{path.relative_to(root)} imports {module}")
    return found


def imported_modules(path: Path) -> set[str]:
    """Return every module a file imports, wherever in it, with the names taken from a package as modules too."""
    found = set()
    for node in ast.walk(ast.parse(path.read_bytes())):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {f"{node.module}.{alias.name}" for alias in node.names}
    return found
