import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import (
    length_text,
    mass_text,
    read_length_cm,
    read_mass_g,
    read_yarn_length_m,
    yarn_length_text,
)

POSITIVE = st.floats(0, exclude_min=True, allow_infinity=False, allow_nan=False)
EXTREMES = [5e-324, sys.float_info.min, sys.float_info.max, 0.1, 1 / 3, 1e16, 1e22, 0.30000000000000004]


@given(POSITIVE)
def test_every_positive_float_reads_back_to_itself(value: float) -> None:
    assert read_length_cm(length_text(value)) == value
    assert read_yarn_length_m(yarn_length_text(value)) == value
    assert read_mass_g(mass_text(value)) == value


@pytest.mark.parametrize("value", EXTREMES)
def test_the_ends_of_the_range_read_back_too(value: float) -> None:
    assert read_length_cm(length_text(value)) == value


@given(POSITIVE)
def test_negative_lengths_read_back_where_allowed(value: float) -> None:
    assert read_length_cm(length_text(-value), negative=True) == -value


@pytest.mark.parametrize(
    ("value", "text"),
    [(35.56, "35.56 cm"), (36.0, "36 cm"), (1200, "1200 cm"), (1e-7, "0.0000001 cm"), (0, "0 cm")],
)
def test_writes_the_shortest_digits_without_an_exponent(value: float, text: str) -> None:
    assert length_text(value) == text


@pytest.mark.parametrize("bad", [float("nan"), float("inf")])
def test_what_is_not_finite_is_not_written(bad: float) -> None:
    with pytest.raises(ValueError, match="only a finite number"):
        mass_text(bad)
