"""Armholes: every stitch is taken away, in the rows there are, and the gentlest way that these allow."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.draft import Kind
from loopwright.garment.parts.armhole import armhole_steps


def test_a_quarter_of_the_decreases_comes_every_fourth_row() -> None:
    steps = armhole_steps(13, 5, 60, slow_part=4)
    assert steps[0] == (0, Kind.CAST_OFF, 5)
    assert [row for row, _, _ in steps[1:]] == [2, 4, 6, 8, 10, 12, 16, 20]


def test_few_rows_quicken_the_decreases_and_then_cast_off_twos() -> None:
    assert [row for row, _, _ in armhole_steps(13, 5, 16, slow_part=4)[1:]] == [2, 4, 6, 8, 10, 12, 14, 16]
    assert [taken for _, _, taken in armhole_steps(13, 5, 12, slow_part=4)] == [5, 2, 2, 1, 1, 1, 1]


@given(st.integers(1, 20), st.integers(1, 40), st.integers(1, 60), st.sampled_from([0, 4]))
def test_it_takes_every_stitch_within_its_rows_and_never_faster_again(
    first: int, rest: int, pairs: int, slow_part: int
) -> None:
    room = max(2 * pairs, rest + rest % 2)
    steps = armhole_steps(first + rest, first, room, slow_part=slow_part)
    assert sum(taken for _, _, taken in steps) == first + rest
    assert steps[-1][0] <= room
    rates = [taken / (row - before) for (before, _, _), (row, _, taken) in pairwise(steps)]
    assert rates == sorted(rates, reverse=True)
    assert all(row % 2 == 0 for row, _, _ in steps)
