"""Rows read in working order, and stitches that add up."""

from hypothesis import given

from loopwright.chart import Chart, count_faults, read_row, row_counts, row_words
from tests.chart.samples import any_charts, lettered, stitched


def test_a_right_side_row_is_read_from_the_right() -> None:
    """Example 2 of our study of charts: A B B C is knitted C B B A, and A B B C on the wrong side (computed)."""
    chart = lettered("ABBC", "ABBC")
    runs = [[(one.role, one.boxes) for one in read_row(chart, row).stretches] for row in (0, 1)]
    assert runs == [[("c", 1), ("b", 2), ("a", 1)], [("a", 1), ("b", 2), ("c", 1)]]
    assert row_words(read_row(chart, 0)) == "1 c, 2 b, 1 a"


def test_stitches_are_named_as_they_are_worked_on_that_side() -> None:
    chart = stitched(["knit", "k2tog", "yarn-over"], ["purl", "purl", "knit"])
    assert row_words(read_row(chart, 0), with_roles=False) == "knit, purl × 2"
    assert row_words(read_row(chart, 1), with_roles=False) == "purl, p2tog, yarn over"


def test_boxes_without_a_stitch_are_left_out() -> None:
    read = read_row(stitched(["no-stitch", "knit", "no-stitch"]), 0)
    assert [(one.symbol.key, one.boxes) for one in read.stretches] == [("knit", 1)]


def test_a_row_that_works_more_than_there_is() -> None:
    chart = stitched(["knit"] * 3, ["knit", "k2tog", "knit"])
    (fault,) = count_faults(stitched(["knit"] * 3, ["knit", "cast-off", "knit"]))
    assert (fault.number, fault.left_below, fault.taken) == (2, 2, 3)
    assert count_faults(chart) == ()
    assert row_counts(chart)[0].tolist() == [4, 3]


@given(any_charts())
def test_a_row_is_all_of_its_boxes(chart: Chart) -> None:
    for row in range(chart.rows):
        read = read_row(chart, row)
        assert sum(one.boxes for one in read.stretches) == int(chart.worked[row].sum())
