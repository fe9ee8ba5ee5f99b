"""`bayleaf explain`: print a rule's page."""

from __future__ import annotations

import argparse
import itertools

from authoring.cli.wrong_use import WrongUseError
from authoring.diagnostics.nearest import did_you_mean
from authoring.rules.rule import Rule, all_rules


def run(arguments: argparse.Namespace) -> int:
    """Print one page, or the list of all rules; return the exit status."""
    rules = all_rules()
    if arguments.rule is None:
        print(_list(list(rules.values())))
        return 0
    rule = rules.get(arguments.rule)
    if rule is None:
        near = did_you_mean(arguments.rule, rules) or '"bayleaf explain" lists all rules.'
        message = f'there is no rule "{arguments.rule}". {near}'
        raise WrongUseError(message)
    print(_page(rule))
    return 0


def _page(rule: Rule) -> str:
    asked = f", requirement {', '.join(rule.requirements)}" if rule.requirements else ""
    return f"{rule.id} ({rule.severity.value}{asked})\n\n{rule.page}"


def _list(rules: list[Rule]) -> str:
    lines = []
    wide = max(len(rule.id) for rule in rules)
    for family, members in itertools.groupby(
        sorted(rules, key=lambda one: (one.family, one.id)), lambda one: one.family
    ):
        lines.append(family)
        lines += [f"  {rule.id:<{wide}}  {rule.page.splitlines()[0]}" for rule in members]
    return "\n".join(lines)
