"""What a run of the command line does not pay for."""

from __future__ import annotations

import gc
import platform
import subprocess
import sys
from pathlib import Path

import pytest

from authoring.cli.main import main
from authoring.model.build import shape_of


def run(code: str, *words: str) -> list[str]:
    """Run Python code in a process of its own and return the lines it prints."""
    return subprocess.run(
        [sys.executable, "-c", code, *words], capture_output=True, text=True, check=True
    ).stdout.splitlines()


def test_a_check_loads_nothing_it_does_not_use(library: Path) -> None:
    """Sockets, random numbers and the tools that look into code are no part of checking a library."""
    code = (
        "import sys; from authoring.cli.main import main; main(['check', sys.argv[1]]); print(*sys.modules, sep='\\n')"
    )
    loaded = set(run(code, str(library)))
    assert {"msgspec", "yaml"} <= loaded
    assert not loaded & {
        "email.utils",
        "inspect",
        "jinja2",
        "locale",
        "markdown_it",
        "msgspec.inspect",
        "platform",
        "random",
        "shutil",
        "socket",
        "textwrap",
        "typing_extensions",
        "urllib.parse",
    }


def test_a_booklet_in_html_loads_no_compiler_of_templates(library: Path, tmp_path: Path) -> None:
    """The templates are compiled and kept, and their keeper takes one checksum that is built in."""
    run("from authoring.render.typeset import compile_templates; compile_templates()")
    code = (
        "import sys; from authoring.cli.main import main;"
        "status = main(['build', sys.argv[1], '--html', '--out', sys.argv[2]]); print(status, *sys.modules, sep='\\n')"
    )
    status, *loaded = [line for line in run(code, str(library), str(tmp_path)) if not line.startswith(str(tmp_path))]
    assert status == "0"
    assert {"jinja2", "authoring.render.html"} <= set(loaded)
    assert not {"_hashlib", "ast", "inspect", "jinja2.compiler", "jinja2.parser", "pickle", "shutil", "ssl"} & set(
        loaded
    )


def test_what_was_held_back_can_be_imported_later(library: Path) -> None:
    """A library that comes after and wants the real modules finds them."""
    code = (
        "import sys; from authoring.cli.main import main; main(['check', sys.argv[1]]);"
        "import email.utils, platform, typing_extensions;"
        "print(email.utils.quote('a'), typing_extensions.Protocol.__name__, platform.python_implementation())"
    )
    assert run(code, str(library))[-1] == f"a Protocol {platform.python_implementation()}"


@pytest.mark.parametrize(
    ("use", "told"),
    [
        ("import jinja2; print(jinja2.Environment().from_string('{{ [1, 2] | join(sep) }}').render(sep='+'))", "1+2"),
        ("import jinja2; print(jinja2.Environment().from_string('{{ {1: 2} | tojson }}').render())", '{"1": 2}'),
        ("import jinja2; print(jinja2.Environment().from_string('{{ \"a b\" | urlencode }}').render())", "a%20b"),
        ("import jinja2; print(jinja2.Environment().from_string('{{ [3] | random }}').render())", "3"),
        ("import yaml; print(yaml.safe_load('a: [1, 0x1f, 2001-01-02]'))", "{'a': [1, 31, datetime.date(2001, 1, 2)]}"),
        ("import yaml; yaml.safe_load('\\x07')", "ReaderError"),
        ("import pathlib; print(pathlib.Path('/a b').as_uri())", "file:///a%20b"),
        ("import msgspec; print(msgspec.inspect.type_info(int) == msgspec.inspect.IntType())", "True"),
        ("import msgspec; print(msgspec.json.schema(list[int]))", "{'type': 'array', 'items': {'type': 'integer'}}"),
        ("import hashlib; print(hashlib.sha256(b'').hexdigest()[:8], hashlib.scrypt.__name__)", "e3b0c442 scrypt"),
        ("import re; print(isinstance(re.compile('a'), re.Pattern))", "True"),
    ],
)
def test_what_was_held_back_works_when_it_is_asked_for(library: Path, tmp_path: Path, use: str, told: str) -> None:
    """After a build in the same process, the libraries compile, quote, tell types and refuse as ever."""
    code = (
        "import sys; from authoring.cli.main import main;"
        "main(['build', sys.argv[1], '--html', '--out', sys.argv[2]]);"
        "exec(f'try:\\n {sys.argv[3]}\\nexcept Exception as error: print(type(error).__name__)')"
    )
    assert run(code, str(library), str(tmp_path), use)[-1] == told


def test_the_end_of_the_process_searches_for_no_rings() -> None:
    """What is left at the end is out of the collector's sight."""
    code = (
        "import atexit, gc; atexit.register(lambda: print(gc.get_freeze_count() > 10_000));"
        "from authoring.cli.main import main; main(['explain'])"
    )
    assert run(code)[-1] == "True"


def test_a_stand_in_that_is_asked_at_once_gives_way() -> None:
    """A library may use, while it is imported, what we thought it would not: it gets the real thing, which stays."""
    code = (
        "import sys; from authoring.cli import lean\n"
        "with lean._in_place_of(lean._Later('textwrap', 'wrap')):\n"
        "    from textwrap import dedent, wrap\n"
        "    print(dedent(' a'), *wrap('b c', 1), sys.modules['textwrap'].__file__[-11:])\n"
        "print(sys.modules['textwrap'].shorten('d', 9))"
    )
    assert run(code) == ["a b c textwrap.py", "d"]


def test_a_booklet_in_pdf_loads_no_ciphers(library: Path, tmp_path: Path) -> None:
    """The page engine may fetch from the network and ours never does; who wants a connection afterwards has one."""
    code = (
        "import sys; from authoring.cli.main import main;"
        "status = main(['build', sys.argv[1], '--pdf', '--out', sys.argv[2]]);"
        "print(status, 'weasyprint' in sys.modules, *{'_ssl', '_hashlib'} & {*sys.modules});"
        "import hashlib, http.client, ssl;"
        "print(hashlib.scrypt.__name__, ssl.create_default_context().protocol.name, http.client.ssl.CERT_REQUIRED.name)"
    )
    assert run(code, str(library), str(tmp_path / "out"))[-2:] == ["0 True", "scrypt PROTOCOL_TLS_CLIENT CERT_REQUIRED"]


def test_pages_are_set_without_the_schemas(library: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the first booklet is composed, the schemas that its files were checked by are let go."""
    held: list[int] = []

    def html(*_: object) -> str:
        held.append(shape_of.cache_info().currsize)
        return ""

    monkeypatch.setattr("authoring.cli.build.html", html)
    assert main(["build", str(library), "--html", "--out", str(tmp_path / "out")]) == 0
    assert set(held) == {0}


@pytest.mark.parametrize("words", [["explain"], ["explain", "no-such-rule"], ["--version"]])
def test_a_caller_keeps_its_collector(words: list[str]) -> None:
    """However a run ends, whoever called it from Python goes on with the collector as it was, and nothing frozen."""
    frozen = gc.get_freeze_count()
    try:
        main(words)
    except SystemExit:
        assert words == ["--version"]
    assert gc.isenabled()
    assert gc.get_freeze_count() == frozen
