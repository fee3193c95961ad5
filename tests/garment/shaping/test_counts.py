"""Whole counts: nearest by scanning, repeats and parity."""

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from loopwright.garment.shaping import fits_repeat, nearest_count, shaping_times
from loopwright.units import BadInput

quarters = st.integers(-40, 1200).map(lambda n: Fraction(n, 4))
repeats = st.integers(1, 30)


def scanned(wanted: Fraction, fitting: list[int]) -> int:
    """The nearest of all counts that fit, the larger of two."""
    return min(fitting, key=lambda count: (abs(count - wanted), -count))


@given(quarters, repeats, st.integers(-10, 20), st.none() | st.integers(0, 9), st.integers(0, 40))
def test_nearest_is_what_a_scan_finds(wanted: Fraction, multiple: int, plus: int, like: int | None, least: int) -> None:
    fitting = [
        count
        for count in range(least, 500)
        if count >= plus and (count - plus) % multiple == 0 and (like is None or (count - like) % 2 == 0)
    ]
    assume(fitting)
    asked = {"multiple": multiple, "plus": plus, "least": least}
    assert nearest_count(wanted, like=like, **asked) == scanned(wanted, fitting)
    assert nearest_count(float(wanted), like=like, **asked) == scanned(wanted, fitting)


@given(quarters, repeats, st.integers(-10, 20), st.integers(0, 40), st.integers(0, 40))
def test_a_count_stays_in_its_range(wanted: Fraction, multiple: int, plus: int, least: int, width: int) -> None:
    most = least + width
    fitting = [count for count in range(least, most + 1) if fits_repeat(count, multiple, plus)]
    if fitting:
        found = nearest_count(wanted, multiple=multiple, plus=plus, least=least, most=most)
        assert found == scanned(wanted, fitting)
    else:
        with pytest.raises(BadInput, match=f"{most}"):
            nearest_count(wanted, multiple=multiple, plus=plus, least=least, most=most)


@given(st.integers(1, 2000), st.floats(1, 90))
def test_a_tie_that_floats_blur_goes_up(stitches: int, per_10cm: float) -> None:
    """Half a stitch more than a whole count, through centimetres and back."""
    width_cm = (stitches + 0.5) / per_10cm * 10
    assert nearest_count(width_cm * per_10cm / 10) == stitches + 1


def test_nearly_a_tie_is_none() -> None:
    assert nearest_count(10.499999) == 10
    assert nearest_count(11.999, multiple=4, plus=2) == 10
    assert nearest_count(12, multiple=4, plus=2) == 14


def test_parity_joins_an_odd_repeat() -> None:
    assert nearest_count(100, multiple=3, like=1) == 99
    assert nearest_count(100, multiple=3, plus=1, like=7) == 103


def test_repeat_and_parity_that_never_meet_are_both_named() -> None:
    with pytest.raises(BadInput, match=r"repeat of 4n \+ 2, whose counts are all even.*odd counts, like 7"):
        nearest_count(100, multiple=4, plus=2, like=7)


@pytest.mark.parametrize("wanted", [float("nan"), float("inf"), float("-inf")])
def test_no_number_is_no_count(wanted: float) -> None:
    with pytest.raises(BadInput, match="wanted a number"):
        nearest_count(wanted)


def test_a_repeat_of_nothing_is_refused() -> None:
    with pytest.raises(BadInput, match='"0 stitches in a repeat"; wanted 1 or more'):
        nearest_count(100, multiple=0)


@given(st.integers(0, 300), repeats, st.integers(0, 30))
def test_a_count_of_repeats_fits(repeat_count: int, multiple: int, plus: int) -> None:
    count = repeat_count * multiple + plus
    assert fits_repeat(count, multiple, plus)
    assert fits_repeat(count + 1, multiple, plus) is (multiple == 1)


def test_edge_stitches_are_all_there() -> None:
    assert not fits_repeat(7, 10, 17)
    assert fits_repeat(17, 10, 17)


@given(st.integers(1, 300), st.integers(0, 40), st.integers(1, 8))
def test_shaping_rows_lead_from_count_to_count(start: int, times: int, per_row: int) -> None:
    assert shaping_times(start, start + times * per_row, per_row=per_row) == times
    assert shaping_times(start + times * per_row, start, per_row=per_row) == times


def test_a_count_that_cannot_be_reached_says_by_how_much() -> None:
    with pytest.raises(BadInput, match="change one of them by 1"):
        shaping_times(54, 77, per_row=4)
