"""Two significant digits for the deviation, the mean to the same place (JCGM 100:2008, 7.2.6, from
memory)."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.units import (
    Reader,
    read_number,
    write_doubt,
    write_length_doubt,
    write_mass_doubt,
    write_yarn_length_doubt,
)


# The first row is the example of JCGM 100:2008, 7.2.2 (100.021 47 g, uncertain by 0.35 mg), from memory.
@pytest.mark.parametrize(
    ("mean", "sd", "text"),
    [
        (100.02147, 0.00035, "100.02147 ± 0.00035 g"),
        (960, 45, "960 ± 45 g"),
        (961.3, 44.8, "961 ± 45 g"),
        (1234, 126, "1,230 ± 130 g"),
        (12345, 4.5, "12,345.0 ± 4.5 g"),
        (2.5, 0.04, "2.500 ± 0.040 g"),
        (50, 9.96, "50 ± 10 g"),
        (50, 0.996, "50.0 ± 1.0 g"),
        (0.4, 12, "0 ± 12 g"),
        (3, 120, "0 ± 120 g"),
        (-4.26, 1.1, "−4.3 ± 1.1 g"),
        (960, 0, "960 g"),
        (1200.5, 0, "1,200.5 g"),
    ],
)
def test_writes(mean: float, sd: float, text: str) -> None:
    assert write_doubt(mean, sd, "g") == text


def test_no_symbol_leaves_no_space() -> None:
    assert write_doubt(22.04, 0.31) == "22.04 ± 0.31"


def test_the_reader_s_measures() -> None:
    reader = Reader("imperial")
    assert write_length_doubt(99, 1.5, reader) == "38.98 ± 0.59 in"
    assert write_yarn_length_doubt(960, 45, reader) == "1,050 ± 49 yd"
    assert write_mass_doubt(412, 18, reader) == "14.53 ± 0.63 oz"


@pytest.mark.parametrize(("mean", "sd"), [(1, -1), (1, float("nan")), (float("inf"), 1), (float("nan"), 0)])
def test_refuses_what_is_no_mean_or_deviation(mean: float, sd: float) -> None:
    with pytest.raises(ValueError, match="must be finite"):
        write_doubt(mean, sd)


@given(st.floats(-1e6, 1e6), st.floats(1e-6, 1e6))
def test_both_are_within_their_own_rounding(mean: float, sd: float) -> None:
    shown_mean, shown_sd = (float(read_number(part)) for part in write_doubt(mean, sd).split(" ± "))
    assert shown_sd == pytest.approx(sd, rel=0.051)
    assert abs(shown_mean - mean) <= 0.051 * sd


@given(st.floats(allow_nan=False, allow_infinity=False), st.floats(0, allow_nan=False, allow_infinity=False))
def test_every_finite_pair_is_written(mean: float, sd: float) -> None:
    assert re.fullmatch(r"−?[0-9,.]+( ± [0-9,.]+)?", write_doubt(mean, sd))
