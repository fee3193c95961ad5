"""Factors against the 1959 agreement and, one by one, against pint (a general-purpose units library)."""

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import UNITS, Unit, find_unit
from loopwright.units.factors import INCH, OUNCE, POUND, YARD, nearest_unit

PINT_NAMES = {"m": "metre", "in": "inch", "ft": "foot", "yd": "yard", "min": "minute", "h": "hour"}
PINT_BASE = {"length": "cm", "mass": "g", "time": "minute"}


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[Fraction]:
    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: unit.symbol)
def test_factor_agrees_with_pint(unit: Unit, registry: pint.UnitRegistry[Fraction]) -> None:
    one = registry.Quantity(Fraction(1), PINT_NAMES.get(unit.symbol, unit.symbol))
    assert one.to(PINT_BASE[unit.kind]).magnitude == unit.factor


@pytest.mark.parametrize(
    ("unit", "factor"),
    [(INCH, "2.54"), (YARD, "91.44"), (OUNCE, "28.349523125"), (POUND, "453.59237")],
    ids=lambda value: getattr(value, "symbol", value),
)
def test_factor_is_that_of_the_1959_agreement(unit: Unit, factor: str) -> None:
    assert unit.factor == Fraction(factor)


ALL_SPELLINGS = [(name, unit) for unit in UNITS for name in (unit.symbol, *unit.aliases)]


@pytest.mark.parametrize(("name", "unit"), ALL_SPELLINGS)
def test_every_spelling_is_found_in_capitals_and_with_a_dot(name: str, unit: Unit) -> None:
    assert find_unit(name) is unit
    assert find_unit(name.upper()) is unit
    assert find_unit(f" {name}. ") is unit


@pytest.mark.parametrize("name", ["", ".", "inchs", "furlong", "st", "%"])
def test_what_is_no_unit_is_not_found(name: str) -> None:
    assert find_unit(name) is None


@pytest.mark.parametrize(
    ("wrong", "symbol"),
    [("inchs", "in"), ("yrds", "yd"), ("centimters", "cm"), ("metrs", "m"), ("feets", "ft")],
)
def test_the_nearest_length_is_offered(wrong: str, symbol: str) -> None:
    nearest = nearest_unit(wrong, "length")
    assert nearest is not None
    assert nearest.symbol == symbol


def test_nothing_is_offered_for_a_word_like_no_unit() -> None:
    assert nearest_unit("stitches", "mass") is None


@given(st.fractions(), st.sampled_from(UNITS))
def test_to_base_and_back_is_exact(value: Fraction, unit: Unit) -> None:
    assert value * unit.factor / unit.factor == value
