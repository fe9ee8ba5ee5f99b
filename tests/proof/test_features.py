"""What a job costs that differs by many features: only what is told together in one story counts together."""

from __future__ import annotations

from pathlib import Path

import pytest

from authoring.cli.disk import read_library
from authoring.model.library import Library
from authoring.pipeline import Checked, check
from authoring.proof.job import job_of
from tests.bench.make_features import NUMBER, THINGS, make_apart, make_coupled


def checked(folder: Path) -> Checked:
    """Return the library of a folder, checked."""
    return check(*read_library(str(folder)))


def cells(library: Library, thing: str) -> int:
    """Return over how many machines and ways the story of one thing is told."""
    job = job_of(library.procedures[NUMBER], library)
    assert job is not None
    story = job.story([(thing, "where")])
    assert story is not None
    return story.space.every.bit_count()


@pytest.mark.parametrize("features", [2, 20])
def test_each_story_is_told_over_its_own_features(tmp_path: Path, features: int) -> None:
    """A machine of 4 ** 20 fitments costs no more than one of sixteen, where each cover differs by one feature."""
    make_apart(tmp_path, features)
    found = checked(tmp_path)
    assert found.findings == []
    assert {cells(found.library, f"cover-{at}") for at in range(THINGS)} == {4}


@pytest.mark.parametrize("features", [2, 8])
def test_features_that_decide_together_are_told_together(tmp_path: Path, features: int) -> None:
    """The one machine in 65,536 that is left without its cover is found, by all that tells it from the others."""
    make_coupled(tmp_path, features)
    found = checked(tmp_path)
    assert cells(found.library, "cover-0") == 4**features
    told = "; ".join(f"part-{number}: kind d" for number in range(features))
    assert [(one.rule, one.fitments) for one in found.findings] == [("never-put-back", told)]


def test_too_many_features_are_told_and_not_walked(tmp_path: Path) -> None:
    """Past the limit nothing is guessed and nothing hangs: a finding names the thing and its features."""
    make_coupled(tmp_path, 11)
    assert [one.rule for one in checked(tmp_path).findings] == ["too-many-fitments"]
