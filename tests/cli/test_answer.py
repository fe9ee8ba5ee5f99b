"""What a check printed is printed again while nothing has changed, and only then."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from authoring.cli import answer as answering
from authoring.cli import check, checked
from authoring.cli.answer import FORMS, asked
from authoring.cli.arguments import parser
from authoring.cli.keeping import keep, place, recall
from authoring.cli.main import main
from tests.cli.changing import change

WORDS = [
    "check",
    "build",
    "--strict",
    "--format",
    "--format=json",
    "--format=xml",
    "json",
    "text",
    "lib",
    "",
    "-h",
    "--",
]


@given(st.lists(st.sampled_from(WORDS), max_size=5))
def test_a_plain_check_is_understood_as_the_parser_does(words: list[str]) -> None:
    """Whatever is answered without the parser means what the parser takes it for; all else is left to it."""
    mine = asked(words)
    if mine is not None:
        theirs = parser().parse_args(words)
        assert (theirs.command, theirs.library, theirs.format, theirs.strict) == ("check", *mine)


@pytest.mark.parametrize("words", [["check"], ["check", "x", "--strict"], ["check", "--format=sarif", "x"]])
def test_a_plain_check_needs_no_parser(words: list[str]) -> None:
    """The checks that people and build servers ask for are answered without it."""
    assert asked(words) is not None


@pytest.fixture
def once(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Give the libraries that are really checked, in order, as it happens."""
    seen: list[str] = []
    really = checked.check_library

    def watched(folder: str) -> object:
        seen.append(folder)
        return really(folder)

    monkeypatch.setattr(check, "check_library", watched)
    return seen


@pytest.fixture
def old(library: Path) -> Path:
    """Give the small sound library, whose files have been at rest for a minute."""
    return aged(library)


def aged(library: Path) -> Path:
    """Let the files of a library have been at rest, as far as a file can say so of itself."""
    minute_ago = time.time() - 60
    for path in library.rglob("*.*"):
        os.utime(path, (minute_ago, minute_ago))
    return library


@pytest.mark.parametrize("form", FORMS)
def test_nothing_changed_is_nothing_checked(
    old: Path, once: list[str], capsys: pytest.CaptureFixture[str], form: str
) -> None:
    """The second answer is the first one, to the byte and with its status, also where it tells errors."""
    change(old, "- remove: level-plug", "- remove: levle-plug")
    assert main(["check", str(old), "--format", form]) == 1
    first = capsys.readouterr().out
    assert main(["check", str(old), "--format", form]) == 1
    assert capsys.readouterr().out == first
    assert len(once) == 1


def test_strictness_is_no_other_answer(old: Path, once: list[str]) -> None:
    """The same findings have two statuses."""
    change(old, "retention: In the folder of the machine, for as long as the shop has it.\n", "", "shop.yaml")
    assert main(["check", str(old)]) == 0
    assert main(["check", str(old), "--strict"]) == 1
    assert len(once) == 1


@pytest.mark.parametrize(
    "touched",
    [
        lambda library: change(library, "wipe", "rub"),
        lambda library: (library / "more.yaml").write_text("stock: Two\n", encoding="utf-8"),
        lambda library: (library / "stock.yaml").unlink(),
        lambda library: (library / "procedure.yaml").rename(library / "p.yaml"),
        lambda library: (library / "p.png").write_bytes(b"none"),
        lambda library: (library / "link.yaml").symlink_to(library / "stock.yaml"),
        lambda library: (library / "more").symlink_to(library, target_is_directory=True),
        lambda library: os.utime(library / "stock.yaml", (1, 1)),
    ],
)
def test_whatever_changes_is_looked_at(old: Path, once: list[str], touched: Callable[[Path], object]) -> None:
    """An edit, a new file, one that is gone, another name, a picture, a link, another time: none is passed over."""
    main(["check", str(old)])
    touched(old)
    main(["check", str(old)])
    assert len(once) == 2


def test_a_change_that_no_signature_shows_is_seen(
    library: Path, once: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A file that was young when it was checked is held by its content, whatever its size and its times say."""

    class Blind(answering.Listing):
        """Signs all files alike, as a disk does whose clock stands still."""

        def __init__(self, root: str) -> None:
            super().__init__(root)
            self.content = b"the same"

    monkeypatch.setattr(answering, "Listing", Blind)
    assert main(["check", str(library)]) == 0
    assert main(["check", str(library)]) == 0
    assert len(once) == 1
    change(library, "wipe", "wope")
    assert main(["check", str(library)]) == 1
    assert len(once) == 2


def test_young_files_are_trusted_once_they_are_at_rest(
    library: Path, once: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The first answer after they came to rest reads them, and is kept; the next one reads none."""
    main(["check", str(library)])
    monkeypatch.setattr(answering, "AT_REST", -60_000_000_000)
    read: list[bytes] = []
    unchanged = answering._unchanged  # noqa: SLF001  # whether files are read is the point

    def watched(folder: str, young: bytes) -> bool:
        read.append(young)
        return unchanged(folder, young)

    monkeypatch.setattr(answering, "_unchanged", watched)
    for _ in range(2):
        main(["check", str(library)])
    assert len(once) == 1
    assert read[0]
    assert not read[1]


@pytest.mark.parametrize(
    "damage",
    [
        pytest.param(lambda _: b"", id="empty"),
        pytest.param(lambda whole: whole[:-1], id="a byte short"),
        pytest.param(lambda whole: whole[:40] + b"\xff" + whole[41:], id="a byte wrong"),
        pytest.param(lambda whole: whole[::-1], id="turned round"),
        pytest.param(lambda _: b"Nothing of ours.", id="a text"),
    ],
)
@pytest.mark.parametrize("what", ["state", "text"])
def test_what_is_damaged_is_as_good_as_none(
    old: Path, capsys: pytest.CaptureFixture[str], what: str, damage: Callable[[bytes], bytes]
) -> None:
    """Whatever the damage, the findings are those of a cold run, and nothing is said of it."""
    change(old, "- remove: level-plug", "- remove: levle-plug")
    main(["check", str(old)])
    first = capsys.readouterr()
    path = Path(place(str(old), what))
    path.write_bytes(damage(path.read_bytes()))
    if what == "state":
        Path(place(str(old), "text")).unlink()
    assert main(["check", str(old)]) == 1
    assert capsys.readouterr() == first


def test_a_state_of_another_shape_is_as_good_as_none(old: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What is whole but holds something else is not taken for ours."""
    main(["check", str(old)])
    first = capsys.readouterr()
    keep(place(str(old), "state"), recall(place(str(old), "state"))[:16] + b"\x93\x01\x02\x03")
    Path(place(str(old), "text")).unlink()
    assert main(["check", str(old)]) == 0
    assert capsys.readouterr() == first


@pytest.mark.parametrize("home", ["/dev/null", "relative", "{}/file"])
def test_where_nothing_can_be_kept_all_is_as_ever(
    old: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], home: str
) -> None:
    """A folder that cannot be is no error; one that is not absolute is passed over, as the specification tells."""
    (tmp_path / "file").touch()
    monkeypatch.setenv("XDG_CACHE_HOME", home.format(tmp_path))
    monkeypatch.setenv("HOME", "/dev/null")
    for _ in range(2):
        assert main(["check", str(old)]) == 0
        assert capsys.readouterr() == ("1 procedure checked: no finding.\n", "")
    assert not (old / "relative").exists()


def test_two_libraries_are_kept_apart(old: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A copy with the same times and sizes has an answer of its own; one folder by two names has one."""
    copy = aged(Path(shutil.copytree(old, tmp_path / "copy")))
    change(copy, "- remove: level-plug", "- remove: levle-plug")
    link = tmp_path / "link"
    link.symlink_to(old, target_is_directory=True)
    assert [main(["check", str(one)]) for one in (old, copy, old, link)] == [0, 1, 0, 0]
    assert place(str(link), "text") == place(str(old), "text")
    assert "no finding" in capsys.readouterr().out


def test_what_nobody_asks_for_is_thrown_away(old: Path) -> None:
    """What was kept more than a month ago goes when something else is kept."""
    forgotten = Path(place("/nowhere", "state"))
    keep(str(forgotten), b"forgotten")
    os.utime(forgotten, (1, 1))
    main(["check", str(old)])
    assert not forgotten.exists()
    assert Path(place(str(old), "state")).exists()


def test_another_version_of_ours_answers_anew(old: Path, tmp_path: Path) -> None:
    """A changed rule, a new one and one that is gone are heard at once."""
    home = tmp_path / "home"
    source = Path(check.__file__).parents[1]
    shutil.copytree(source, home / "authoring", ignore=shutil.ignore_patterns("__pycache__"))
    rules = home / "authoring" / "rules" / "language"
    code = (
        "import sys; from authoring.cli.main import main; main(['check', sys.argv[1]]); print('msgspec' in sys.modules)"
    )

    def really() -> bool:
        where = os.environ | {"PYTHONPATH": str(home)}
        command = [sys.executable, "-c", code, str(old)]
        told = subprocess.run(command, capture_output=True, text=True, check=True, cwd=home, env=where)
        return told.stdout.splitlines()[-1] == "True"

    assert [really(), really()] == [True, False]
    with (rules / "vague_word.py").open("a", encoding="utf-8") as file:
        file.write("\n")
    assert [really(), really()] == [True, False]
    shutil.copy(rules / "vague_word.py", rules / "vaguer_word.py")
    assert [really(), really()] == [True, False]
    (rules / "vaguer_word.py").unlink()
    assert [really(), really()] == [True, False]


def test_an_answer_that_was_kept_loads_nothing(old: Path) -> None:
    """No word of the command line, no library, no rule and no template is loaded where nothing has changed."""
    code = (
        "import sys; from authoring.cli.main import main; main(['check', sys.argv[1]]); print(*sys.modules, sep='\\n')"
    )
    command = [sys.executable, "-c", code, str(old)]
    for _ in range(2):
        told = subprocess.run(command, capture_output=True, text=True, check=True).stdout.splitlines()
    assert told[0] == "1 procedure checked: no finding."
    ours = {name for name in told if name.startswith("authoring.")}
    assert ours == {
        *("authoring.checking", "authoring.checking.digest", "authoring.cli", "authoring.cli.answer"),
        *("authoring.cli.colour", "authoring.cli.keeping", "authoring.cli.main", "authoring.cli.wrong_use"),
    }
    assert not {"argparse", "contextlib", "importlib", "jinja2", "msgspec", "pathlib", "re", "typing", "yaml"} & {*told}
