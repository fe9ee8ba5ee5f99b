"""Import what every command needs, without what it draws in and nobody here uses: a tenth of the time of a check.

The libraries work as ever; who imports our packages without the command line gets them with all they draw in.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from types import ModuleType


def import_lean() -> None:
    """Import the libraries of values and of schemas, before a module of ours asks for them."""
    # It takes newer spellings of what our Python has, and does without them where they are not installed.
    # Its identifiers ask the module of platforms for the system's name alone, to know how to read a network card.
    platform = ModuleType("platform")
    platform.__dict__["system"] = lambda: os.uname().sysname
    with _in_place_of("typing_extensions", None), _in_place_of("platform", platform):
        import msgspec  # noqa: F401, PLC0415  # only with the stand-in in its place
    # It reads the date of its own build by the module for mail, which brings sockets and random numbers.
    mail = ModuleType("email.utils")
    mail.__dict__["parsedate_to_datetime"] = str
    # Where it has no wheel, the schemas are compiled by another library, and that is for them to find out.
    with suppress(ImportError), _in_place_of("email.utils", mail):
        import jsonschema_rs  # noqa: F401, PLC0415  # only with the stand-in in its place


@contextmanager
def _in_place_of(name: str, stand_in: ModuleType | None) -> Iterator[None]:
    """Let an import find a stand-in for a module, or no such module; one that is loaded already stays."""
    if name in sys.modules:
        yield
        return
    sys.modules[name] = stand_in  # type: ignore[assignment]  # None is the language's own sign for "not there"
    try:
        yield
    finally:
        del sys.modules[name]
