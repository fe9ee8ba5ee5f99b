"""Whatever form a quantity has, at whatever key, the demo library is checked and composed without a failure."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest

from authoring.cli.disk import read_library
from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check, compose
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.read import read_quantity
from authoring.quantities.units import Dimension
from tests.booklet.steps_booklet import steps

TURN = re.compile(r"(?P<key>)(?P<text>\d+ °)(?=\])")
LIBRARY = Path(__file__).parents[2] / "procedures"
COMPOSED = ("FL-120", "FL-210")
NEEDED = (*COMPOSED, "FL-110", "FL-115")
GROUPS = (
    ("torque",),
    ("friction",),
    ("nut-factor",),
    ("stages",),
    ("grip", "accuracy"),
    ("engaged", "angle"),
    ("shear-strength", "circle", "resolution"),
    ("range",),
    ("length",),
)
"""The keys of fasteners and tools; those that stand together do not meet in any reckoning."""

NAMED = {key for keys in GROUPS for key in keys}
OTHERS = ("all others",)
STATED = re.compile(
    r'\b(?P<key>[a-z][a-z-]*): (?:\{(?:value: )?|\[)?"?(?P<text>[^\[\]{},:"#\n]+?)"?(?=\s*(?:[,}#\]]|$))', re.MULTILINE
)


@cache
def demo() -> Mapping[str, bytes]:
    """Return the files of the demo library."""
    files, unread = read_library(str(LIBRARY))
    assert unread == []
    return files


def formed(quantity: Quantity, form: Form) -> str:
    """Return a quantity of the same size and unit in another form."""
    number = float(quantity.typed[0])
    more = abs(number) / 5 or 1.0
    most = float(quantity.typed[-1]) if quantity.form is Form.RANGE else number + more
    words = {
        Form.VALUE: f"{number:g}",
        Form.TOLERANCE: f"{number:g} ± {more:g}",
        Form.RANGE: f"{number:g} to {most:g}",
        Form.MINIMUM: f"at least {number:g}",
        Form.MAXIMUM: f"at most {number:g}",
        Form.ABOUT: f"about {number:g}",
    }
    return f"{words[form]} {quantity.unit.symbol}".strip()


def changed(keys: tuple[str, ...], form: Form) -> tuple[dict[str, bytes], set[str]]:
    """Return the demo library with each quantity at some keys in another form, and the keys at which one stands."""
    met: set[str] = set()

    def swap(match: re.Match[str]) -> str:
        key = match["key"] or "stages"
        quantity = read_quantity(match["text"], Dimension.RATIO if key in {"friction", "nut-factor"} else None)
        if not isinstance(quantity, Quantity) or (keys == OTHERS and not quantity.unit.symbol):
            return match[0]
        if (key in NAMED) if keys == OTHERS else (key not in keys):
            return match[0]
        met.add(key)
        quote = "" if '"' in match[0] else '"'
        return match[0].replace(match["text"], f"{quote}{formed(quantity, form)}{quote}", 1)

    files = {file: content for file, content in demo().items() if not file.startswith("FL-") or file[:6] in NEEDED}
    for file, content in files.items():
        if file.endswith(".yaml") and not file.startswith("FL-"):
            text = content.decode()
            text = text.replace("friction: {", "nut-factor: {") if "nut-factor" in keys else text
            files[file] = (TURN if "stages" in keys else STATED).sub(swap, text).encode()
    return files, met


@pytest.mark.parametrize("form", Form, ids=lambda form: form.value)
@pytest.mark.parametrize("keys", [*GROUPS, OTHERS], ids=" ".join)
def test_no_form_of_a_quantity_makes_the_program_fail(keys: tuple[str, ...], form: Form) -> None:
    """Each form is either refused at its place or reckoned with, and what is without an error is composed."""
    files, met = changed(keys, form)
    assert met == set(keys) or (keys == OTHERS and met)
    checked = check(files, [])
    errors = [one.message for one in checked.findings if one.severity is Severity.ERROR]
    if form is Form.RANGE and keys != OTHERS:
        assert errors == []
    for number in COMPOSED if not errors else ():
        assert list(steps(compose(checked, number, {})))
