"""A repeat fitted to a count: the stitches add up, the middle is the middle, mirrors mirror."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.chart import (
    Chart,
    RepeatBox,
    fit_chart,
    fit_flat,
    fit_round,
    fit_rows,
    laid_out,
    mirror_axes,
    mirrored,
    tiled,
)
from loopwright.chart.repeat import middle_axis, whole_counts
from loopwright.units import BadInput
from tests.chart.samples import any_charts, lettered, stitched

counts = st.integers(1, 400)
widths = st.integers(1, 60)


@given(counts, widths)
def test_a_round_is_its_repeats_and_its_panel(count: int, width: int) -> None:
    fit = fit_round(count, width)
    assert fit.columns.size == count
    assert fit.whole * width + fit.plain == count
    assert fit.exact == (count % width == 0)
    assert fit.fewer <= count <= fit.more


@given(counts, widths, st.integers(0, 3), st.integers(0, 119), st.booleans())
def test_a_flat_row_is_its_repeats_its_cut_ones_and_its_edges(
    count: int, width: int, edge: int, twice_axis: int, mirror: bool
) -> None:
    if count <= 2 * edge:
        return
    fit = fit_flat(count, width, twice_axis % (2 * width) / 2, edge, mirror=mirror)
    assert fit.columns.size == count == fit.whole * width + fit.cut + fit.plain
    assert fit.cut >= 0
    assert (fit.columns[:edge] == -1).all()
    assert int((fit.columns == -1).sum()) == 2 * edge
    assert fit.fewer <= count <= fit.more


@given(st.integers(0, 60), widths, st.integers(0, 119))
def test_a_motif_stands_in_the_middle(half: int, width: int, twice_axis: int) -> None:
    """Stitches as far from the middle as each other show columns as far from the axis as each other."""
    axis = twice_axis % (2 * width) / 2
    count = 2 * half + (1 if axis.is_integer() else 2)
    fit = fit_flat(count, width, axis)
    assert fit.axis_off == 0
    assert ((fit.columns + fit.columns[::-1] - round(2 * axis)) % width == 0).all()


@given(any_charts(), st.integers(1, 40), st.integers(0, 2))
def test_a_mirrored_fit_is_its_own_mirror(chart: Chart, count: int, edge: int) -> None:
    if count <= 2 * edge:
        return
    fit = fit_chart(chart, count, in_the_round=False, edge=edge, mirror=True)
    whole = laid_out(chart, fit)
    inner = np.s_[:, : count // 2]
    assert np.array_equal(whole.cells[inner], mirrored(whole).cells[inner])


@given(any_charts(stitches=False))
def test_an_axis_is_one(chart: Chart) -> None:
    """About each axis found the endless repeat is its mirror, about no other half column it is."""
    wide = tiled(Chart(chart.cells, chart.stitches, chart.roles), 3).cells
    width = chart.columns
    for twice in range(2 * width):
        column = np.arange(width)
        is_axis = np.array_equal(wide[:, width + column], wide[:, width + (twice - column) % width])
        assert (twice / 2 in mirror_axes(chart)) == is_axis


@given(any_charts(stitches=False), st.integers(1, 5))
def test_a_chart_that_comes_out_even_is_laid_side_by_side(chart: Chart, times: int) -> None:
    plain = Chart(chart.cells, chart.stitches, chart.roles, in_the_round=True)
    fit = fit_chart(plain, plain.columns * times, in_the_round=True)
    assert laid_out(plain, fit) == tiled(plain, times)


def test_the_middle_axis_is_the_nearest_to_the_middle() -> None:
    assert middle_axis(lettered("BAAA")) == 2
    assert middle_axis(lettered("ABCD")) == 1.5


def test_a_fit_takes_the_box_of_the_repeat() -> None:
    chart = lettered("XABBX", repeat=RepeatBox(1, 0, 3, 1))
    assert fit_chart(chart, 12, in_the_round=True).width == 3


@pytest.mark.parametrize(("rows", "height", "first"), [(60, 12, 0), (64, 12, 8), (5, 12, 7)])
def test_a_motif_is_whole_at_the_top(rows: int, height: int, first: int) -> None:
    fit = fit_rows(rows, height)
    assert (fit.first_row, (fit.first_row + rows) % height) == (first, 0)
    assert fit.whole * height + fit.left == rows


def test_counts_that_end_alike_are_a_multiple_and_one() -> None:
    """Common practice: flat, a multiple of the repeat plus one stitch that balances it."""
    assert whole_counts(12, 6.0, 100) == (97, 109)
    assert whole_counts(12, 6.0, 100, edge=1) == (99, 111)


def test_crossings_that_are_cut_become_knit() -> None:
    chart = stitched(["knit", *["cross-1-over-1-left"] * 2])
    laid = laid_out(chart, fit_flat(5, 3, 1.0))
    assert laid == stitched(["knit", "knit", *["cross-1-over-1-left"] * 2, "knit"])


@pytest.mark.parametrize(("count", "edge"), [(0, 0), (4, 2)])
def test_nothing_to_fit_is_refused(count: int, edge: int) -> None:
    with pytest.raises(BadInput, match="some stitches beside the edges"):
        fit_flat(count, 3, 1.0, edge)
