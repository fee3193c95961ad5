"""Necklines: both sides equal, rows in range, and the pace against every pace that the rule allows."""

from itertools import accumulate, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.shaping import NeckCurve, boat_neck, cast_off_curve, high_neck, round_neck, v_neck
from loopwright.units import BadInput

stitches_across = st.integers(1, 80)
depths = st.integers(0, 100)


def assert_sound(neck: NeckCurve, stitches: int, rows: int) -> None:
    assert neck.centre + 2 * sum(neck.sides) == neck.stitches == stitches
    assert neck.centre >= 0
    assert neck.rows == rows
    assert len(neck.at) == len(neck.sides)
    assert all(before < after for before, after in pairwise((-1, *neck.at, rows)))
    assert neck.plain_rows == rows - len(range(neck.at[-1] + 1 if neck.at else 0))
    assert all(taken > 0 for taken in neck.sides)


@given(stitches_across, depths, st.floats(0.05, 1))
def test_a_round_neck_is_whole_and_fits(stitches: int, rows: int, centre_share: float) -> None:
    neck = round_neck(stitches, rows, centre_share=centre_share)
    assert_sound(neck, stitches, rows)
    assert list(neck.sides) == sorted(neck.sides, reverse=True)


@given(stitches_across, st.integers(2, 100))
def test_the_centre_is_the_nearest_that_leaves_equal_sides(stitches: int, rows: int) -> None:
    centre = round_neck(stitches, rows).centre
    assert abs(centre - 0.45 * stitches) <= 1 + 1e-9 or centre == 2 - stitches % 2


@given(stitches_across, st.integers(2, 100))
def test_a_round_neck_takes_the_slowest_pace_that_fits(stitches: int, rows: int) -> None:
    """Half fast, half slow: rows 2 and 6, 2 and 4, 1 and 2 of the rule; else a curve in every second row."""
    neck = round_neck(stitches, rows)
    each = sum(neck.sides)
    paces = [[fast] * (each - each // 2) + [slow] * (each // 2) for fast, slow in ((2, 6), (2, 4), (1, 2))]
    fitting = [pace for pace in paces if sum(pace) <= rows]
    if fitting:
        assert neck.sides == (1,) * each
        assert neck.at == tuple(end - 1 for end in accumulate(max(fitting, key=sum)))
    else:
        assert neck.sides == cast_off_curve(each, rows)
        assert neck.at == tuple(range(1, 2 * len(neck.sides), 2))


def test_a_shallow_back_neck_falls_in_steps() -> None:
    neck = round_neck(36, 8)
    assert (neck.centre, neck.sides, neck.at) == (16, (5, 3, 1, 1), (1, 3, 5, 7))


def test_without_rows_all_goes_at_the_centre() -> None:
    assert round_neck(36, 1) == high_neck(36, 1) == NeckCurve(36, (), (), 1)


@pytest.mark.parametrize("share", [0.0, -0.1, 1.01])
def test_a_centre_is_a_share(share: float) -> None:
    with pytest.raises(BadInput, match="over 0 % and up to 100 %"):
        round_neck(36, 20, centre_share=share)


@given(stitches_across, depths)
def test_a_v_loses_one_stitch_at_a_time_or_says_why_not(stitches: int, rows: int) -> None:
    if stitches // 2 > rows:
        with pytest.raises(BadInput, match=rf"{stitches // 2} rows or more, or at most {2 * rows + 1} stitches"):
            v_neck(stitches, rows)
        return
    neck = v_neck(stitches, rows)
    assert_sound(neck, stitches, rows)
    assert (neck.centre, set(neck.sides) - {1}) == (stitches % 2, set())
    intervals = [after - before for before, after in pairwise((-1, *neck.at))]
    assert not intervals or max(intervals) - min(intervals) <= 2
    assert intervals == sorted(intervals)
    assert stitches // 2 > rows // 2 or all(row % 2 == 1 for row in neck.at)


@given(stitches_across, depths, st.integers(0, 5))
def test_a_boat_neck_is_nearly_all_centre(stitches: int, rows: int, each_side: int) -> None:
    neck = boat_neck(stitches, rows, each_side=each_side)
    assert_sound(neck, stitches, rows)
    assert sum(neck.sides) == min(each_side, rows // 2, (stitches - 1) // 2)


@given(stitches_across, depths)
def test_a_side_narrows_row_by_row(stitches: int, rows: int) -> None:
    neck = round_neck(stitches, rows)
    taken = [neck.taken_by(row) for row in range(-1, rows + 1)]
    assert taken[0] == 0
    assert taken[-1] == sum(neck.sides)
    assert tuple(row for row, (a, b) in enumerate(pairwise(taken)) if b > a) == neck.at
