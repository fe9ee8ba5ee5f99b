"""Several processes say what one says."""

from __future__ import annotations

import os
import signal
from collections.abc import Generator

import pytest

from authoring.checking import again as checking
from authoring.checking.again import Alone
from authoring.checking.known import State
from authoring.cli.workers import Forked, processes
from tests.checking.libraries import again, printed_again, printed_whole
from tests.checking.small_library import library

# Threads of a test runner are none of a worker's business: it asks them for nothing.
pytestmark = pytest.mark.filterwarnings("ignore:.*fork.*:DeprecationWarning")


def echo(name: bytes, *, dies: bool = False, raises: bool = False) -> Generator[bytes, bytes, None]:
    """Answer with a name, the message and the process; the second answer of one that dies never comes elsewhere."""
    here = os.getpid()
    message = yield b""
    message = yield name + message
    if dies and os.getpid() != TESTS:
        os.kill(os.getpid(), signal.SIGKILL)
    if raises:
        raise RuntimeError(name.decode())
    yield name + message + (b" elsewhere" if here != TESTS else b"")


TESTS = os.getpid()


def test_each_worker_has_its_own_messages() -> None:
    """Answers come in the order of the workers, however long they are, and only the first works here."""
    team = Forked([echo(b"a"), echo(b"b"), echo(b"c")])
    assert team.step([b"1", b"2" * 1_000_000, b"3"]) == [b"a1", b"b" + b"2" * 1_000_000, b"c3"]
    assert team.step([b"4", b"5", b"6"]) == [b"a4", b"b5 elsewhere", b"c6 elsewhere"]
    team.close()


def test_a_worker_that_dies_is_replaced() -> None:
    """Its share is done in this process, from the first message on."""
    team = Forked([echo(b"a"), echo(b"b", dies=True)])
    assert team.step([b"1", b"2"]) == [b"a1", b"b2"]
    assert team.step([b"3", b"4"]) == [b"a3", b"b4"]
    team.close()


def test_a_fault_of_ours_in_a_worker_shows_itself_here() -> None:
    """What a worker raises is raised again where somebody can be told, with its place."""
    team = Forked([echo(b"a"), echo(b"b", raises=True)])
    team.step([b"1", b"2"])
    with pytest.raises(RuntimeError, match="b"):
        team.step([b"3", b"4"])
    team.close()


@pytest.mark.parametrize("gather", [Alone, Forked])
def test_shared_out_work_comes_to_the_same(monkeypatch: pytest.MonkeyPatch, gather: type[Alone | Forked]) -> None:
    """A cold check, one after a change of the shop and one after a change of a procedure, each in three processes."""
    monkeypatch.setattr(checking, "LEAST_SHARE", 1)
    files, state = library(), State()
    for path in ("FL-110.yaml", "shop.yaml", "FL-130.yaml", "hob.yaml"):
        outcome, state = again(files, state, gather, 3)
        assert printed_again(outcome, files) == printed_whole(files)
        files = {**files, path: files[path] + b"# once more\n"}


def test_there_is_a_worker_for_each_core_but_not_for_hundreds(monkeypatch: pytest.MonkeyPatch) -> None:
    """One process is the least, and a large machine is not filled with the same library again and again."""
    if hasattr(os, "sched_getaffinity"):
        monkeypatch.delattr(os, "sched_getaffinity")
    told = []
    for cores in (None, 1, 2, 256):
        monkeypatch.setattr(os, "cpu_count", lambda cores=cores: cores)
        told.append(processes())
    assert told == [1, 1, 2, 8]
