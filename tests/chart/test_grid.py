"""The grid: what makes a chart, and what is refused by row and stitch."""

import numpy as np
import pytest

from loopwright.chart import Chart, ChartRole, RepeatBox, plain_chart
from loopwright.chart.symbols import BY_KEY
from loopwright.units import BadInput
from tests.chart.samples import lettered, stitched

TWO = (ChartRole("main"), ChartRole("contrast"))


def test_row_one_is_at_the_bottom() -> None:
    chart = lettered("AA", "AB")
    assert chart.cells.tolist() == [[0, 1], [0, 0]]


def test_its_arrays_cannot_be_written_to() -> None:
    with pytest.raises(ValueError, match="read-only"):
        plain_chart(3, 2).cells[0, 0] = 1


@pytest.mark.parametrize(
    ("cells", "roles", "message"),
    [
        ([[0, 2]], TWO, "row 1, stitch 1: found .*role number 2"),
        ([[0, 0], [2, 0]], TWO, "row 2, stitch 2"),
        ([[]], TWO, "0 stitches by 1 rows"),
        ([[0]], (ChartRole("main"), ChartRole("main")), "'main' twice"),
        ([[0]], (), "0 roles"),
    ],
)
def test_what_is_no_chart_is_refused(cells: list[list[int]], roles: tuple[ChartRole, ...], message: str) -> None:
    grid = np.array(cells, dtype=np.uint8)
    with pytest.raises(BadInput, match=message):
        Chart(grid, np.zeros_like(grid), roles)


def test_a_crossing_has_all_its_boxes() -> None:
    left = ["cross-1-over-1-left"]
    assert stitched([*left * 4, "knit"]).columns == 5
    with pytest.raises(BadInput, match=r"row 1, stitch 2: found .*3 boxes of 1 over 1 left cross.*2 boxes"):
        stitched([*left * 3, "knit"])


def test_a_repeat_lies_inside() -> None:
    with pytest.raises(BadInput, match="outside the chart"):
        lettered("ABAB", repeat=RepeatBox(2, 0, 3, 1))


def test_rows_are_read_by_the_side_that_faces_her() -> None:
    flat, tube = lettered("A", "A", "A"), lettered("A", "A", in_the_round=True)
    assert [flat.reads_leftwards(row) for row in range(3)] == [True, False, True]
    assert [tube.reads_leftwards(row) for row in range(2)] == [True, True]
    wrong = Chart(flat.cells, flat.stitches, flat.roles, first_row_right_side=False)
    assert [wrong.reads_leftwards(row) for row in range(3)] == [False, True, False]


def test_a_part_keeps_the_way_its_rows_are_read() -> None:
    part = lettered("AB", "BA", "AB").part(RepeatBox(0, 1, 2, 2))
    assert [part.reads_leftwards(row) for row in range(2)] == [False, True]


@pytest.mark.parametrize(("columns", "rows"), [(0, 5), (5, 0), (1001, 5)])
def test_a_plain_chart_has_a_size(columns: int, rows: int) -> None:
    with pytest.raises(BadInput, match="from 1 to 1000"):
        plain_chart(columns, rows)


def test_a_box_without_a_stitch_is_not_worked() -> None:
    assert stitched(["knit", "no-stitch", "purl"]).worked.tolist() == [[True, False, True]]
    assert BY_KEY["no-stitch"] != 0
