"""The language can name every dimension that a quantity may have, and no other."""

from __future__ import annotations

import pytest

from authoring.model.language.shop import SCHEMA
from authoring.model.language.values import DIMENSIONS
from authoring.model.read_things import dimension_of, unit_for
from authoring.quantities.units import DIFFERENCES, UNITS, Dimension, Unit


def test_a_value_can_be_of_every_dimension() -> None:
    """The words of `of` are the dimensions, each once."""
    assert [dimension_of(word) for word in DIMENSIONS] == list(Dimension)


def test_a_shop_can_choose_its_unit_of_all_that_has_several() -> None:
    """A count and a ratio have no unit to choose; each of the others has a key among the shop's units."""
    named = {dimension_of(word) for word in SCHEMA["properties"]["units"]["properties"]}
    assert named == set(Dimension) - {Dimension.COUNT, Dimension.RATIO}


@pytest.mark.parametrize("unit", [*UNITS.values(), *DIFFERENCES.values()], ids=lambda unit: unit.symbol)
def test_a_shop_names_a_unit_by_the_symbol_that_is_printed(unit: Unit) -> None:
    """Every unit but the one of a count can be written into the shop file as it is shown."""
    assert unit_for(unit.symbol, unit.dimension) == (unit if unit.symbol else None)
