from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from msgspec.msgpack import Decoder, Encoder

from authoring.checking.again import check_again
from authoring.checking.apart import Checker, Wanted
from authoring.checking.known import Apart, State
from authoring.checking.loader import TangledError
from authoring.diagnostics.diagnostic import Diagnostic
from tests.checking.libraries import again, disk, printed_again, printed_whole
from tests.checking.small_library import Files, changes, library, ordered


@given(st.data())
@settings(max_examples=60, suppress_health_check=[HealthCheck.too_slow])
def test_a_check_again_says_what_a_cold_one_says(data: st.DataObject) -> None:
    """After each of some random changes, text, JSON, SARIF and what is allowed are those of a cold run to the byte."""
    files, state = library(), State()
    for _ in range(data.draw(st.integers(2, 5))):
        try:
            outcome, state = again(files, state)
        except TangledError:
            pass
        else:
            assert printed_again(outcome, files) == printed_whole(files)
        # What is kept goes through a file, as it does between two runs.
        state = Decoder(State).decode(Encoder().encode(state))
        if not files:
            break
        files = ordered(data.draw(changes(files))(files))


@pytest.fixture
def checked(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Give the files of the procedures that are checked, in order, as it happens."""
    seen: list[str] = []
    apart = Checker.apart

    def watched(self: Checker, wanted: Wanted) -> Apart:
        seen.append(wanted.path)
        return apart(self, wanted)

    monkeypatch.setattr(Checker, "apart", watched)
    return seen


def changed(path: str, old: bytes, new: bytes) -> Callable[[Files], Files]:
    """Return a change of words in one file, in which they must stand."""

    def change(files: Files) -> Files:
        assert old in files[path]
        return {**files, path: files[path].replace(old, new)}

    return change


@pytest.mark.parametrize(
    ("change", "reached"),
    [
        pytest.param(dict, [], id="nothing"),
        pytest.param(
            changed("FL-110.yaml", b"wipe", b"rub"), ["FL-110.yaml", "FL-120.yaml", "FL-130.yaml"], id="called"
        ),
        pytest.param(changed("FL-130.yaml", b"wipe", b"rub"), ["FL-130.yaml"], id="calling"),
        pytest.param(changed("FL-140.yaml", b"hot", b"old"), ["FL-140.yaml"], id="with a finding"),
        pytest.param(changed("teal.yaml", b"Teal site", b"Great site"), ["FL-140.yaml"], id="its equipment"),
        pytest.param(
            changed("shop.yaml", b"burns", b"scalds"),
            ["FL-110.yaml", "FL-120.yaml", "FL-130.yaml", "FL-140.yaml"],
            id="the shop",
        ),
        pytest.param(lambda files: {**files, "pictures/box.svg": b"none"}, ["FL-140.yaml"], id="a picture"),
        pytest.param(lambda files: {**files, "FL-140.yaml": files["FL-140.yaml"] + b"\n\t{"}, [], id="a broken file"),
    ],
)
def test_only_what_a_change_reaches_is_checked(
    checked: list[str], change: Callable[[Files], Files], reached: list[str]
) -> None:
    """What leads to the changed file is checked again, and nothing else, with the findings of a cold run."""
    files = library()
    _, state = again(files, State())
    assert checked == [path for path in files if path.startswith("FL-")]
    checked.clear()
    files = change(files)
    outcome, _ = again(files, state)
    assert checked == reached
    assert printed_again(outcome, files) == printed_whole(files)


def test_a_new_number_is_for_those_who_may_have_meant_it(checked: list[str]) -> None:
    """A new procedure is offered where a name was mistyped, and leads nobody else to be checked."""
    files = changed("FL-130.yaml", b"FL-120", b"FL-151")(library())
    outcome, state = again(files, State())
    assert "FL-150" not in printed_again(outcome, files)[0]
    checked.clear()
    new = files["FL-110.yaml"].replace(b"procedure: FL-110", b"procedure: FL-150")
    files = ordered({**files, "FL-150.yaml": new})
    outcome, _ = again(files, state)
    assert 'Did you mean "FL-150"?' in printed_again(outcome, files)[0]
    assert printed_again(outcome, files) == printed_whole(files)
    assert checked == [
        "FL-150.yaml",
        "FL-130.yaml",
        "FL-140.yaml",
    ]  # the last has a finding, whose words may quote names


def test_a_file_that_cannot_be_read_silences_who_may_have_meant_it() -> None:
    """A name that nobody knows is told, not while it may stand in a broken file, and told again after that."""
    files = changed("FL-130.yaml", b"[rag]", b"[ragg]")(library())
    outcome, state = again(files, State())
    assert "unknown-name" in {one.rule for one in outcome.findings}
    broken = ordered({**files, "notes.yaml": b"\t{"})
    outcome, state = again(broken, state)
    assert "unknown-name" not in {one.rule for one in outcome.findings}
    assert printed_again(outcome, broken) == printed_whole(broken)
    assert printed_again(again(files, state)[0], files) == printed_whole(files)


def test_what_is_told_of_the_shop_file_speaks_of_all_machines() -> None:
    """A machine that no procedure in question is for may change the words for the vehicles of a shared message."""
    files = changed("shop.yaml", b"    harm: person\n", b"    harm: person\n    when: {brake: disc}\n")(library())
    files = changed("shop.yaml", b"[gauntlets]", b"[gauntlet]")(files)
    outcome, state = again(files, State())
    assert "parking brake: disc brake" in {one.fitments for one in outcome.findings if one.rule == "unknown-name"}
    files = changed("teal.yaml", b"name: parking brake", b"name: hand brake")(files)
    outcome, _ = again(files, state)
    assert printed_again(outcome, files) == printed_whole(files)


def test_a_young_file_is_held_by_its_content(checked: list[str]) -> None:
    """A file whose time cannot be trusted is read, and where its content is the same it is not checked."""
    files = library()
    state = check_again(disk(files, at_rest=False), State()).state
    assert not any(one.trusted for one in state.files.values())
    checked.clear()
    read: list[str] = []
    young = disk(files)

    def reading(path: str) -> bytes:
        read.append(path)
        return files[path]

    check_again(type(young)(young.signatures, reading, (), young.at_rest_before), state)
    assert read == list(files)
    assert checked == []


@pytest.mark.parametrize(
    "spoilt",
    [
        lambda files: {**files, "more.yaml": files["shop.yaml"]},
        lambda files: {**files, "more.yaml": files["hob.yaml"]},
        lambda files: {**files, "more.yaml": files["FL-110.yaml"]},
        lambda files: {name: content for name, content in files.items() if name != "stock.yaml"},
    ],
)
def test_what_is_tangled_is_left_to_a_check_of_the_whole(spoilt: Callable[[Files], Files]) -> None:
    """Two files of one name, and a library without a stock, are told from each other nowhere but in the whole."""
    with pytest.raises(TangledError):
        again(ordered(spoilt(library())), State())


def test_the_first_procedure_with_each_wrench_is_weighed(monkeypatch: pytest.MonkeyPatch) -> None:
    """A bolt is judged by every wrench that some procedure takes to it; a second one with the same adds nothing."""
    seen: dict[str, list[str]] = {}
    weighed = Checker.weighed

    def watched(self: Checker, rule: str, paths: list[str]) -> tuple[Diagnostic, ...]:
        seen[rule] = paths
        return weighed(self, rule, paths)

    monkeypatch.setattr(Checker, "weighed", watched)
    files = library()
    _, state = again(files, State())
    assert seen["bolt-overloaded"] == ["FL-120.yaml", "FL-130.yaml"]
    again(changed("FL-130.yaml", b"long-wrench", b"wrench")(files), state)
    assert seen["bolt-overloaded"] == ["FL-120.yaml"]
