"""The table of requirements, its column of rules written anew from the rules."""

from __future__ import annotations

from pathlib import Path

from authoring.rules.rule import all_rules

TABLE = Path(__file__).parent / "REQUIREMENTS.md"
NONE = "–"


def cells(line: str) -> list[str]:
    """Return the four cells of a row: id, what is asked, rules, note; empty for a line that is no row."""
    found = [cell.strip() for cell in line.strip().strip("|").split("|")] if line.startswith("| ") else []
    return found if found[:1] not in ([], ["id"], ["---"]) else []


def fresh(table: str) -> str:
    """Return the table with the rules that serve each requirement."""
    serving: dict[str, list[str]] = {}
    for rule in sorted(all_rules().values(), key=lambda one: one.id):
        for requirement in rule.requirements:
            serving.setdefault(requirement, []).append(f"`{rule.id}`")
    lines = []
    for line in table.splitlines():
        row = cells(line)
        if row:
            row[2] = ", ".join(serving.get(row[0], [])) or NONE
        lines.append(f"| {' | '.join(row)} |" if row else line)
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    TABLE.write_text(fresh(TABLE.read_text(encoding="utf-8")), encoding="utf-8")
