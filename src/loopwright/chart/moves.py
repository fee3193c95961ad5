"""A chart mirrored, turned, shifted or laid side by side: the same cells elsewhere."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from loopwright.chart.grid import Cells, Chart, RepeatBox
from loopwright.chart.symbols import BOXES, KNIT, MIRRORED

__all__ = ["mirrored", "quarter_turned", "shifted", "tiled", "unrolled", "upside_down"]


def mirrored(chart: Chart) -> Chart:
    """Give a chart with left and right changed, each stitch as its mirror.

    Mirrored twice it is the same again, but for a stitch whose mirror is another one's too: slip, knit, pass over
    comes back as slip, slip, knit, which leans as it did.
    """
    box = chart.repeat
    moved = None if box is None else replace(box, column=chart.columns - box.column - box.columns)
    return replace(
        chart, cells=chart.cells[:, ::-1], stitches=MIRRORED[chart.stitches[:, ::-1]].astype(np.uint8), repeat=moved
    )


def upside_down(chart: Chart) -> Chart:
    """Give a chart with its rows from the last to the first."""
    box = chart.repeat
    moved = None if box is None else replace(box, row=chart.rows - box.row - box.rows)
    return replace(chart, cells=chart.cells[::-1], stitches=chart.stitches[::-1], repeat=moved)


def quarter_turned(chart: Chart) -> Chart:
    """Give a chart turned by a quarter, clockwise as it is drawn. Colours turn; stitches cannot, and become knit.

    Cells are wider than high, so a motif comes out of another shape.
    """
    cells = np.rot90(chart.cells)  # row 0 is drawn at the bottom: what numpy calls counterclockwise is clockwise here
    return replace(chart, cells=cells, stitches=np.full(cells.shape, KNIT, np.uint8), repeat=None)


def shifted(chart: Chart, right: int, up: int) -> Chart:
    """Give a chart with every cell moved; what leaves at one side comes in at the other.

    Crossings that the edge would cut become knit.
    """
    cells = np.roll(chart.cells, (up, right), axis=(0, 1))
    stitches = np.roll(chart.stitches, (up, right), axis=(0, 1))
    if right % chart.columns and (BOXES[stitches] > 1).any():
        stitches = np.where(BOXES[stitches] > 1, KNIT, stitches)
    return replace(chart, cells=cells, stitches=stitches)


def tiled(chart: Chart, across: int, up: int = 1) -> Chart:
    """Give a chart laid side by side and above itself.

    :raises BadInput: it grows too large.
    """

    def laid(grid: Cells) -> Cells:
        return np.tile(grid, (up, across))

    return replace(chart, cells=laid(chart.cells), stitches=laid(chart.stitches), repeat=None)


def unrolled(chart: Chart, times: int) -> Chart:
    """Give a chart with its repeat worked so many times across, its edges once; without a box, as it stands.

    :raises BadInput: it grows too large.
    """
    box = chart.repeat
    if box is None:
        return chart
    order = column_order(chart.columns, box, times)
    return replace(chart, cells=chart.cells[:, order], stitches=chart.stitches[:, order], repeat=None)


def column_order(columns: int, box: RepeatBox, times: int) -> list[int]:
    """Give which column stands where once the repeat is worked so many times."""
    inside = list(range(box.column, box.column + box.columns))
    return [*range(box.column), *inside * times, *range(box.column + box.columns, columns)]
