"""Import what every command needs, without what it draws in and nobody here uses: a quarter of the time of a build.

The libraries work as ever: what is held back is fetched when something asks for it.
Who imports our packages without the command line gets them with all they draw in.
"""

from __future__ import annotations

import importlib
import os
import re
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from types import ModuleType


def import_words() -> None:
    """Import the library of the command line's words without the translations, of which we have none."""
    untranslated = ModuleType("gettext")
    untranslated.__dict__.update(gettext=str, ngettext=lambda one, many, count: one if count == 1 else many)
    with _in_place_of(untranslated):
        import argparse  # noqa: F401, PLC0415  # only with the stand-in in its place


def import_lean() -> None:
    """Import the libraries of paths, values, texts and schemas, before a module of ours asks for them."""
    # Identifiers ask the module of platforms for the system's name alone, to know how to read a network card.
    platform = _Later("platform")
    platform.__dict__["system"] = lambda: os.uname().sysname
    # The fast library reads the date of its own build by the module for mail, which brings sockets.
    mail = ModuleType("email.utils")
    mail.__dict__["parsedate_to_datetime"] = str
    unused = (_Later("urllib.parse", "quote_from_bytes"), _Later("msgspec.inspect"), _Later("textwrap"))
    # They take newer spellings of what our Python has, and do without them where they are not installed.
    with _in_place_of(platform, mail, *unused, missing=("typing_extensions",)), _patterns_at_first_use():
        import fractions  # noqa: F401, PLC0415  # only with the stand-ins in their place
        import pathlib  # noqa: F401, PLC0415  # as above

        import msgspec  # noqa: F401, PLC0415  # as above
        import yaml  # noqa: F401, PLC0415  # as above

        # Where it has no wheel, the schemas are compiled by another library, and that is for them to find out.
        with suppress(ImportError):
            import jsonschema_rs  # noqa: F401, PLC0415  # as above


def import_templates() -> None:
    """Import the library of templates without what it compiles them with: ours are compiled and kept."""
    unused = (
        _Later("ast", "literal_eval"),
        _built_in("hashlib", "_sha1", "sha1"),
        _Later("inspect", "getattr_static"),
        _Later("jinja2.compiler", "CodeGenerator", "generate"),
        _Later("jinja2.parser", "Parser"),
        _Later("json"),
        _built_in("pickle", "_pickle", "dump", "dumps", "load"),
        _Later("random", "choice", "randrange"),
        _Later("tempfile"),
        _Later("urllib.parse", "quote_from_bytes"),
    )
    with _in_place_of(*unused), _patterns_at_first_use():
        import jinja2  # noqa: F401, PLC0415  # only with the stand-ins in their place


def import_page_engine() -> None:
    """Import the page engine without the ciphers that a connection would ask for, seven megabytes; it makes none."""
    # What of Pango is missing is told when the first page is set.
    with suppress(OSError), _in_place_of(_built_in("hashlib", "_md5", "md5"), _Later("ssl")):
        import authoring.render.lean  # noqa: F401, PLC0415  # only with the stand-ins in their place


def _built_in(name: str, source: str, *called: str) -> ModuleType:
    """Stand for a module of which a library takes what is built in; the rest of it would bring far more."""
    stand_in = _Later(name, *called)
    with suppress(ImportError):
        built_in = importlib.import_module(source)
        stand_in.__dict__.update({one: getattr(built_in, one) for one in called})
    return stand_in


class _Later(ModuleType):
    """Stands for a module until something of it is used; what is named, to be called, may be imported before that."""

    def __init__(self, name: str, *called: str) -> None:
        super().__init__(name)
        self.__dict__.update({one: _AtCall(name, one) for one in called})

    def __getattr__(self, attribute: str) -> object:
        if attribute.startswith("__"):
            raise AttributeError(attribute)
        return getattr(_real(self.__name__), attribute)


class _AtCall:
    """Stands for a function or a class until it is called; no method, where it is kept in a class."""

    def __init__(self, module: str, name: str) -> None:
        self._place = module, name

    def __call__(self, *values: object, **named: object) -> object:
        module, name = self._place
        asked: Callable[..., object] = getattr(_real(module), name)
        return asked(*values, **named)


def _real(name: str) -> ModuleType:
    if isinstance(sys.modules.get(name), _Later):
        del sys.modules[name]
    return importlib.import_module(name)


@contextmanager
def _in_place_of(*stand_ins: ModuleType, missing: tuple[str, ...] = ()) -> Iterator[None]:
    """Let an import find stand-ins for the modules of their names, or no such module; one that is loaded stays."""
    placed: dict[str, ModuleType | None] = dict.fromkeys(missing) | {one.__name__: one for one in stand_ins}
    placed = {name: one for name, one in placed.items() if name not in sys.modules}
    sys.modules.update(placed)  # type: ignore[arg-type]  # None is the language's own sign for "not there"
    try:
        yield
    finally:
        for name, one in placed.items():
            if sys.modules[name] is one:  # and not what it stood for, which was used while it did
                del sys.modules[name]


class _Pattern:
    """A regular expression that is compiled when it is first used; most of a library's never are."""

    def __init__(self, pattern: str, flags: int = 0) -> None:
        self._asked = pattern, flags

    def __getattr__(self, attribute: str) -> object:
        found = getattr(_compile(*self._asked), attribute)
        setattr(self, attribute, found)
        return found


_compile = re.compile


@contextmanager
def _patterns_at_first_use() -> Iterator[None]:
    re.compile = _Pattern  # type: ignore[assignment]  # a pattern in all that the libraries ask of one
    try:
        yield
    finally:
        re.compile = _compile
