"""Words on a drawing: the room they take, and how those that would meet are moved apart."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import isotonic_regression

from loopwright.pictures.dimension import Rule
from loopwright.pictures.lettering import Box, Words, apart, text_width

CENTRES = st.lists(st.floats(0, 100), min_size=1, max_size=6)
GAP = 2.0


@given(CENTRES, st.data())
def test_moved_apart_by_least_squares(centres: list[float], data: st.DataObject) -> None:
    """Against isotonic regression (scipy): places less what stands before them must not fall."""
    heights = data.draw(st.lists(st.floats(1, 30), min_size=len(centres), max_size=len(centres)))
    order = sorted(range(len(centres)), key=lambda place: (centres[place], place))
    before = np.cumsum([0, *(heights[place] + GAP for place in order[:-1])])
    own = before + np.array([heights[place] / 2 for place in order])
    fitted = isotonic_regression(np.array([centres[place] for place in order]) - own).x + own
    moved = apart(centres, heights, GAP, -1e6, 1e6)
    assert [moved[place] for place in order] == pytest.approx(list(fitted), abs=1e-6)


@given(CENTRES)
def test_kept_within_bounds_where_there_is_room(centres: list[float]) -> None:
    heights = [10.0] * len(centres)
    moved = sorted(apart(centres, heights, GAP, 0, 100))
    assert moved[0] >= 5 - 1e-9
    assert moved[-1] <= 95 + 1e-9
    assert all(other - one >= 10 + GAP - 1e-9 for one, other in pairwise(moved))


def test_centred_where_there_is_none() -> None:
    assert apart([1, 2], [10, 10], 2, 0, 12) == [0, 12]


def test_room_of_words() -> None:
    box = Words("54 cm", 100, 50, 10, anchor="end").box
    assert box.right == 100
    assert box.right - box.left == pytest.approx(text_width("54 cm", 10))
    assert box.top < 50 < box.bottom


def test_boxes_meet() -> None:
    one, other = Box(0, 0, 10, 10), Box(11, 0, 20, 10)
    assert not one.meets(other)
    assert one.meets(other, gap=2)
    assert one.with_(other) == Box(0, 0, 20, 10)


def test_a_line_is_broken_where_words_stand() -> None:
    rule = Rule("dimension", "y", at=5, low=0, high=100)
    assert rule.clear_of([Box(0, 40, 10, 50), Box(6, 60, 10, 70)]) == [(0, 38), (52, 100)]


def test_arrowheads_of_a_short_line_stand_outside() -> None:
    low, high = Rule("dimension", "x", at=0, low=0, high=10).ends
    assert low < 0
    assert high > 10
    assert Rule("dimension", "x", at=0, low=0, high=50).ends == (0, 50)
