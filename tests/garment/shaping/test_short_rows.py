"""Short rows: turns in order, evenly apart, where they may lie."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.shaping import back_neck_raise, bust_short_rows, cup_depth_cm, measured_depth_cm
from loopwright.units import BadInput


@given(st.floats(0, 12), st.integers(20, 120), st.integers(0, 10), st.integers(0, 30), st.floats(10, 60))
def test_turns_run_evenly_from_the_side_to_the_point(
    depth_cm: float, half_front: int, side_gap: int, point_gap: int, rows_per_10cm: float
) -> None:
    try:
        found = bust_short_rows(depth_cm, half_front, side_gap, point_gap, rows_per_10cm)
    except BadInput as fault:
        assert "between the first turn and the last" in str(fault)
        return
    assert len(found.turns) == found.pairs
    assert abs(found.rows - depth_cm * rows_per_10cm / 10) <= 1 + 1e-6
    apart = [after - before for before, after in pairwise(found.turns)]
    assert not apart or (min(apart) >= 1 and max(apart) - min(apart) <= 1)
    if found.pairs:
        assert found.turns[0] == side_gap
    if found.pairs > 1:
        assert found.turns[-1] == half_front - point_gap


@given(st.floats(0, 8), st.floats(10, 60), st.integers(40, 200))
def test_a_back_neck_is_raised_from_both_ends(raise_cm: float, rows_per_10cm: float, stitches: int) -> None:
    try:
        found = back_neck_raise(raise_cm, rows_per_10cm, stitches)
    except BadInput as fault:
        assert "on each half" in str(fault)
        return
    assert len(found.turns) == found.pairs
    parts = [after - before for before, after in pairwise((0, *found.turns, stitches // 2))]
    assert min(parts) >= 1
    assert max(parts) - min(parts) <= 1


def test_turns_that_find_no_room_are_refused() -> None:
    with pytest.raises(BadInput, match='6 turns over 4 stitches of half a front of 50"; wanted 5 stitches or more'):
        bust_short_rows(4.3, 50, 21, 25, 28)
    with pytest.raises(BadInput, match="14 stitches or more"):
        back_neck_raise(4.3, 28, 12)


def test_no_depth_needs_no_short_rows() -> None:
    assert bust_short_rows(0, 50, 5, 25, 28).turns == back_neck_raise(0, 28, 80).turns == ()


@pytest.mark.parametrize(("depth_cm", "rows_per_10cm"), [(-1, 28), (4, 0), (4, -28)])
def test_a_depth_and_a_gauge_are_positive(depth_cm: float, rows_per_10cm: float) -> None:
    with pytest.raises(BadInput, match="0 cm or more and a gauge over 0"):
        bust_short_rows(depth_cm, 50, 5, 25, rows_per_10cm)


def test_a_d_cup_takes_one_and_a_half_to_two_inches() -> None:
    """A magazine's rule at second hand: D 1½ to 2 in (cross-read)."""
    assert cup_depth_cm(2) == pytest.approx((1.5 * 2.54, 2 * 2.54))


def test_stretch_may_leave_nothing_to_add() -> None:
    assert measured_depth_cm(40, 38) == 0
    assert measured_depth_cm(46, 38, stretch_cm=3) == pytest.approx(5)
