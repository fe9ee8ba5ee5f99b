"""The words of the command line."""

from __future__ import annotations

import argparse

from authoring.cli.version import VERSION

_EPILOG = """\
exit status: 0 no error; 1 errors in the library; 2 wrong use; 3 a fault of bayleaf itself;
130 interrupted
"""


def parser() -> argparse.ArgumentParser:
    """Return the parser of the whole command line."""
    top = argparse.ArgumentParser(
        prog="bayleaf",
        description="Check workshop procedures written as data, and print them as booklets.",
        epilog=_EPILOG,
        formatter_class=_unprinted,
    )
    top.add_argument("--version", action="version", version=f"bayleaf {VERSION}")
    # The name is given, so that argparse need not set a usage line, with all that it imports, to find it.
    commands = top.add_subparsers(prog="bayleaf", dest="command", metavar="COMMAND", required=True)
    for name, about, words in (
        ("check", "say what is wrong in a library, where, and how to mend it", _check),
        ("build", "check a library, then write its booklets as HTML and PDF", _build),
        ("explain", "print the page of a rule, or the list of rules", _explain),
    ):
        words(commands.add_parser(name, help=about, formatter_class=_unprinted))
    top.formatter_class = argparse.RawDescriptionHelpFormatter
    for command in commands.choices.values():
        command.formatter_class = argparse.HelpFormatter
    return top


def _unprinted(prog: str) -> argparse.HelpFormatter:
    """Return a form that no help is printed in: the usual one loads what measures the terminal, for every word."""
    return argparse.HelpFormatter(prog, width=80)


def _library(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "library", metavar="LIBRARY", nargs="?", default="procedures", help="the library's folder (default: procedures)"
    )
    command.add_argument("--strict", action="store_true", help="warnings count as errors")


def _check(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Read every file of a library and say what is wrong, where, for which vehicles where it is not for all, "
        "and how to mend it."
    )
    _library(command)
    command.add_argument(
        "--format",
        choices=("text", "json", "sarif"),
        default="text",
        help="text for people, json for programs, sarif for editors and build servers (default: text)",
    )


def _build(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Check a library, then write a booklet for each procedure. With an error nothing is written and the booklets "
        "that are there stay as they are."
    )
    _library(command)
    command.add_argument("--out", metavar="DIR", default="build", help="where the booklets go (default: build)")
    command.add_argument(
        "--only", metavar="NUMBER", action="append", default=[], help="only this procedure; may be given again"
    )
    command.add_argument(
        "--for",
        metavar="FEATURE=VALUE",
        dest="fitment",
        action="append",
        default=[],
        help="only for vehicles with this value of a feature; may be given again",
    )
    command.add_argument("--html", action="store_true", help="write HTML (without --html and --pdf: both)")
    command.add_argument("--pdf", action="store_true", help="write PDF (without --html and --pdf: both)")


def _explain(command: argparse.ArgumentParser) -> None:
    command.description = (
        "Print what a rule asks, why, and an example of wrong and right; without RULE, list all rules."
    )
    command.add_argument("rule", metavar="RULE", nargs="?", help="the rule's id, as a finding shows it")
