"""The same cells elsewhere."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.chart import Chart, RepeatBox, mirrored, quarter_turned, shifted, tiled, unrolled, upside_down
from tests.chart.samples import any_charts, lettered, stitched

PAIRED = {"skp", "sk2p"}
"""Stitches whose mirror is another one's too."""


@given(any_charts())
def test_mirrored_twice_is_the_same(chart: Chart) -> None:
    again = mirrored(mirrored(chart))
    assert np.array_equal(again.cells, chart.cells)
    assert again.repeat == chart.repeat
    plain = Chart(chart.cells, np.zeros_like(chart.cells), chart.roles, chart.in_the_round, chart.first_row_right_side)
    assert mirrored(mirrored(plain)) == plain


@given(any_charts(stitches=False))
def test_upside_down_twice_and_four_quarters_are_the_same(chart: Chart) -> None:
    assert upside_down(upside_down(chart)) == chart
    turned = chart
    for _ in range(4):
        turned = quarter_turned(turned)
    assert np.array_equal(turned.cells, chart.cells)


def test_a_quarter_turn_goes_clockwise_as_it_is_drawn() -> None:
    assert quarter_turned(lettered("AB", "CD", "EF")) == lettered("ECA", "FDB")


def test_a_mirrored_stitch_leans_the_other_way() -> None:
    assert mirrored(stitched(["k2tog", "knit", "make-one-left"])) == stitched(["make-one-right", "knit", "ssk"])


@given(any_charts(), st.integers(-12, 12), st.integers(-12, 12))
def test_a_shift_and_its_way_back(chart: Chart, right: int, up: int) -> None:
    assert shifted(shifted(chart, right, up), -right, -up) == chart


def test_a_crossing_at_the_edge_of_a_shift_becomes_knit() -> None:
    chart = stitched(["knit", *["cross-1-over-1-left"] * 2])
    assert shifted(chart, 1, 0).stitches.max() == 0
    assert shifted(chart, 3, 0) == chart


def test_laid_side_by_side() -> None:
    assert tiled(lettered("AB"), 3, 2) == lettered("ABABAB", "ABABAB")


@pytest.mark.parametrize(("times", "row"), [(1, "XABY"), (3, "XABABABY")])
def test_a_repeat_is_worked_between_its_edges(times: int, row: str) -> None:
    chart = unrolled(lettered("XABY", repeat=RepeatBox(1, 0, 2, 1)), times)
    assert chart == lettered(row)
