"""Shaping over rows: intervals, rows, and both rules against every pair of intervals."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.shaping import spread_along, spread_mixed
from loopwright.units import BadInput


@st.composite
def shapings(draw: st.DrawFn) -> tuple[int, int, int]:
    """Rows, times, step: as many times as fit, or fewer."""
    rows, step = draw(st.integers(0, 300)), draw(st.integers(1, 4))
    return rows, draw(st.integers(0, rows // step)), step


@given(shapings(), st.booleans())
def test_intervals_differ_by_one_step_at_most(shaping: tuple[int, int, int], quick_first: bool) -> None:
    rows, times, step = shaping
    found = spread_along(rows, times, step=step, quick_first=quick_first)
    intervals = found.intervals()
    assert (found.rows, found.times, len(intervals)) == (rows, times, times)
    assert all(interval % step == 0 and interval > 0 for interval in intervals)
    assert list(intervals) == sorted(intervals, reverse=not quick_first)
    assert not intervals or max(intervals) - min(intervals) in (0, step)


@given(shapings())
def test_rows_add_up_and_as_few_as_can_be_are_left(shaping: tuple[int, int, int]) -> None:
    rows, times, step = shaping
    found = spread_along(rows, times, step=step)
    assert sum(found.intervals()) + found.plain_rows == rows
    assert found.plain_rows == (rows % step if times else rows)


@given(shapings())
def test_shaping_rows_rise_within_the_rows(shaping: tuple[int, int, int]) -> None:
    rows, times, step = shaping
    at = spread_along(rows, times, step=step).shaping_rows()
    assert len(at) == times
    assert all(before < after for before, after in pairwise((-1, *at, rows)))


@pytest.mark.parametrize("step", [1, 2, 3])
@pytest.mark.parametrize("rows", range(1, 31))
def test_no_other_two_intervals_fill_the_rows(rows: int, step: int) -> None:
    """Every pair a, a + step with x + y = times and the same plain rows is the one found (F12 has one solution)."""
    for times in range(1, rows // step + 1):
        solutions = {
            tuple(group for group in ((a, times - y), (a + step, y)) if group[1])
            for a in range(step, rows + 1, step)
            for y in range(times)
            if a * (times - y) + (a + step) * y == rows - rows % step
        }
        assert solutions == {spread_along(rows, times, step=step).every}


@given(st.integers(1, 200), st.data())
def test_mixed_shaping_keeps_to_right_side_rows_if_it_can(rows: int, data: st.DataObject) -> None:
    times = data.draw(st.integers(0, rows))
    found = spread_mixed(rows, times)
    assert (found.times, found.rows) == (times, rows)
    if times <= rows // 2:
        assert all(row % 2 == 1 for row in found.shaping_rows())
    else:
        assert set(found.intervals()) <= {1, 2}
        assert found.plain_rows == 0


def test_an_interval_of_four_shapes_its_last_row() -> None:
    assert spread_along(12, 3).shaping_rows() == (3, 7, 11)
    assert spread_along(13, 3, step=2).shaping_rows() == (3, 7, 11)
    assert spread_along(13, 3, step=2).plain_rows == 1


def test_no_shaping_leaves_all_rows_plain() -> None:
    found = spread_along(12, 0)
    assert (found.every, found.plain_rows, found.shaping_rows()) == ((), 12, ())


def test_too_many_are_refused_with_the_most() -> None:
    with pytest.raises(BadInput, match='8 shaping rows in 15 rows"; wanted at most 7'):
        spread_along(15, 8, step=2)
    with pytest.raises(BadInput, match="wanted at most 15"):
        spread_mixed(15, 16)
