"""What is worked out for the reader from the demo library: printed beside its step, and right by other arithmetic."""

from __future__ import annotations

import math
import re

from authoring.booklet.blocks import Booklet
from authoring.booklet.step_parts import Checkpoint
from authoring.cli.disk import read_library
from authoring.pipeline import check, compose
from tests.booklet.goldens import TREE
from tests.booklet.plain_text import plain_text

FILES, UNREAD = read_library(str(TREE / "procedures"))


def _words(number: str, *changes: tuple[str, str, str]) -> str:
    """Return the booklet of a procedure of the demo library as one run of words, after changes to its files."""
    files = dict(FILES)
    for name, old, new in changes:
        text = files[name].decode()
        assert old in text
        files[name] = text.replace(old, new, 1).encode()
    return " ".join(plain_text(_booklet(files, number)).split())


def _booklet(files: dict[str, bytes], number: str) -> Booklet:
    return compose(check(files, UNREAD), number, {})


def test_the_time_to_cool_is_newtons() -> None:
    """From 350 to 40 °C in air of 25 °C with a time constant of 25 min: t = 25 ln(325/15), rounded up."""
    minutes = math.ceil(25 * math.log((350 - 25) / (40 - 25)))
    words = _words("FL-130")
    assert f"takes about {minutes} min from 350 °C to 40 °C, in air of 25 °C" in words
    assert "An estimate from its time constant: measure before you touch it." in words
    warmer = math.ceil(25 * math.log((350 - 30) / (40 - 30)))
    assert f"takes about {warmer} min from 350 °C" in _words("FL-130", ("shop.yaml", "15 to 25 °C", "15 to 30 °C"))


def test_the_time_to_cool_follows_from_two_readings() -> None:
    """85 to 48 °C in 20 min in air of 20 °C: the same law twice, and the constant drops out of the ratio."""
    minutes = math.ceil(20 * math.log((90 - 25) / (40 - 25)) / math.log((85 - 20) / (48 - 20)))
    words = _words("FL-210")
    assert f"The output carrier takes about {minutes} min from 90 °C to 40 °C" in words
    assert "An estimate from two readings" in words


def test_a_bore_grows_by_its_metal() -> None:
    """12 millionths for each kelvin of steel: from where the ring falls in, and the room at the least heat."""
    least = 20 + (72.000 + 0.015 - 71.970) / (12e-6 * 71.970)
    room = 71.970 * (1 + 12e-6 * 60) - 72.000
    words = _words("FL-210")
    told = re.search(r"wider than its shaft by ([\d.]+) mm to [\d.]+ mm .*?: below (\d+) °C it sticks", words)
    assert told is not None
    assert room <= float(told[1]) <= room + 0.001
    assert int(told[2]) == math.ceil(least)


def test_readings_pass_inside_the_limits_by_what_the_gauge_may_be_off() -> None:
    """1.5 ± 0.3 mm on a gauge that may be off by 0.05 mm leaves 1.25 to 1.75 mm; without the rule no line stands."""
    line = "Passes: a reading of 1.25 mm to 1.75 mm on the depth gauge, which may be off by 0.05 mm, unverified."
    assert line in _words("FL-210")
    assert "Passes:" not in _words("FL-210", ("shop.yaml", "decision-rule: guarded\n", ""))
    finer = ("stock.yaml", "    accuracy: {value: 0.05 mm, source: bench-book, at: page 4}\n  feeler", "  feeler")
    assert "a reading of 1.25 mm to 1.75 mm on the depth gauge, which may be off by 0.025 mm, unverified." in _words(
        "FL-210", finer
    )


def test_a_reading_tells_which_part_it_is() -> None:
    """17.0 ± 0.1 mm and 19.0 ± 0.1 mm on a gauge that may be off by 0.05 mm; a reading in between is neither."""
    told = (
        "width of the outer ring on the vernier gauge (it may be off by 0.05 mm, unverified): "
        "18.95 mm to 19.05 mm is the 19 mm bearing, brass cage; 16.95 mm to 17.05 mm is the 17 mm bearing. "
        "Any other reading is none of these."
    )
    assert told in _words("FL-210")
    simple = ("shop.yaml", "decision-rule: guarded\n", "")
    assert "18.90 mm to 19.10 mm is the 19 mm bearing, brass cage; 16.90 mm to 17.10 mm" in _words("FL-210", simple)


def test_a_checkpoint_that_no_gauge_reads_has_no_such_line() -> None:
    """What is felt or seen has no reading to pass."""
    steps = [block for chapter in _booklet(FILES, "FL-130").chapters for block in chapter.blocks]
    checks = [part for step in steps for part in getattr(step, "parts", ()) if isinstance(part, Checkpoint)]
    felt = [one for one in checks if one.way == "Feel"]
    assert felt
    assert all("Passes:" not in str(one.notes) for one in felt)
