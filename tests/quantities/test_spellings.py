"""How people type the units: each spelling is read as its unit, and as no other."""

from __future__ import annotations

import pytest

from authoring.quantities.show import NO_BREAK, spell
from authoring.quantities.spellings import ANGLE_SIGNS
from authoring.quantities.units import SPELLINGS, UNITS, Dimension, Unit, unit_named
from tests.quantities.quantity_texts import read


@pytest.mark.parametrize(("spelling", "unit"), SPELLINGS.items(), ids=list(SPELLINGS))
def test_every_spelling_is_read_behind_a_number(spelling: str, unit: Unit) -> None:
    """What the table of spellings lists can stand in a quantity, alone, behind a range and in brackets."""
    for text in (f"42 {spelling}", f"40 to 42 {spelling}", f"(42 ± 2) {spelling}", f"at least 42 {spelling}"):
        assert read(text, unit.dimension).unit == unit


@pytest.mark.parametrize(
    ("symbol", "typed"),
    [
        ("N·m", "N·m Nm N.m N*m N-m N⋅m N∙m N•m N‑m"),
        (
            "lbf·ft",
            "lbf·ft lbf-ft lb-ft lb·ft ft-lb ft-lbf ft·lbf ft.lb ftlb lbft lbs-ft ft.-lb. ft.-lbs. ft.lbs. lb.-ft.",
        ),
        ("lbf·in", "lbf·in in-lb in·lbf in-lbs in.-lb. in.lb. inlb lb-in"),
        ("ozf·in", "ozf·in oz-in in-oz ozf-in oz.-in."),
        ("kgf·m", "kgf·m kgfm kgf.m kgf-m"),
        ("cN·m", "cN·m cNm"),
        ("°C", "°C degC ºC ˚C ℃ Celsius"),
        ("°F", "°F degF ºF ℉ Fahrenheit"),
        ("K", "K kelvin"),
        ("in", 'in in. inch inches " ″ ”'),
        ("ft", "ft ft. foot feet"),
        ("mil", "mil mils mil. thou"),
        ("µm", "\u00b5m \u03bcm um micron microns"),
        ("L", "L l ℓ ltr ltrs litre litres liter liters"),
        ("mL", "mL ml millilitre"),
        ("cm³", "cm³ cm3 cm^3 cc ccm"),
        ("bar", "bar bars"),
        ("psi", "psi PSI lbf/in² lbf/in2"),
        ("N/mm²", "N/mm² N/mm2 N/mm^2"),
        ("h", "h hr hrs hr. hour hours"),
        ("min", "min mins minute minutes"),
        ("s", "s sec secs sec. second seconds"),
        ("r/min", "r/min rpm RPM rev/min min-1 min⁻¹ min^-1"),
        ("kg/m³", "kg/m³ kg/m3 kg/m^3"),
        ("kg/L", "kg/L kg/l kg/dm³ kg/dm3"),
        ("g/cm³", "g/cm³ g/cm3 g/mL g/ml g/cc"),
        ("lb", "lb lbs lb. lbs. pounds"),
        ("Ω", "\u03a9 \u2126 ohm ohms"),
        ("%", "%"),
    ],
)
def test_spellings_of_the_trade(symbol: str, typed: str) -> None:
    """Each way a technician or a manual writes the unit, apart and joined to its number, is that unit."""
    for spelling in typed.split():
        assert read(f"42 {spelling}").unit is UNITS[symbol], spelling
        assert read(f"42{spelling}").unit is UNITS[symbol], spelling


@pytest.mark.parametrize(
    ("symbol", "typed"),
    [
        ("N·m", ("N m", "N · m", "N\u00a0m", "newton metre", "newton-metres", "newton-meter")),
        (
            "lbf·ft",
            (
                "lbf ft",
                "ft lb",
                "ft lbf",
                "lb ft",
                "ft lbs",
                "ft. lbs.",
                "foot-pounds",
                "pound feet",
                "foot lbs",
                "foot-lbs",
                "ft pounds",
                "ft. lb.",
            ),
        ),
        ("lbf·in", ("lbf in", "in lb", "in. lbs.", "inch pounds", "inch lbs")),
        ("°C", ("° C", "deg C", "deg. C", "degrees C", "degrees Celsius")),
        ("US qt", ("US qt", "US qts", "US qt.", "US quarts", "U.S. qt", "us quart")),
        ("US gal", ("US gal", "US gal.", "US gallons")),
        ("US fl oz", ("US fl oz", "US fl. oz.", "US fluid ounces")),
        ("imp gal", ("imp gal", "imp. gal", "imp. gal.", "UK gal", "imperial gallons")),
        ("imp pt", ("imp pt", "Imp pt", "imp. pts", "UK pints")),
        ("in³", ("in³", "cu in", "cu. in.")),
        ("r/min", ("1/min", "revolutions per minute")),
    ],
)
def test_spellings_of_more_than_one_word(symbol: str, typed: tuple[str, ...]) -> None:
    """A unit of several words is read with any blank between them, and with the full stops of abbreviations."""
    for spelling in typed:
        assert read(f"42 {spelling}").unit is UNITS[symbol], spelling


@pytest.mark.parametrize(("sign", "symbol"), ANGLE_SIGNS.items())
def test_signs_of_arc_are_read_where_an_angle_is_asked_for(sign: str, symbol: str) -> None:
    """A prime is a minute of arc and a double prime a second, shown without a blank; where a length stands, an inch."""
    quantity = read(f"30{sign}", Dimension.ANGLE)
    assert quantity.unit is UNITS[symbol]
    assert spell(quantity) == f"30{symbol}"
    elsewhere = unit_named(sign)
    assert elsewhere is None or elsewhere is UNITS["in"]


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [("50 %", None, None), ("40 to 50 %", 40, 50), ("(50 ± 5) %", 45, 55), ("at least 50 %", 50, None)],
)
def test_a_percentage_is_a_ratio(text: str, low: int | None, high: int | None) -> None:
    """A share is a number by itself, and is shown so that it is read again as the same."""
    quantity = read(text)
    assert quantity.dimension is Dimension.RATIO
    assert (quantity.low, quantity.high) == (low, high)
    assert spell(quantity).endswith(f"{NO_BREAK}%")
    again = read(spell(quantity), Dimension.RATIO)
    assert (again.nominal, again.low, again.high) == (quantity.nominal, quantity.low, quantity.high)
