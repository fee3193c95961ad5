"""Crescent shawl from the middle of its top edge down: 8 more stitches in every 2nd row, along wedges and at the edges.

N = cast-on + 4·rows. Source: a knitter's weblog of 2013 on wedge crescents (13 stitches and 40 rows are 173). Where in
the row the 8 lie is our choice: 2 at each edge, which lengthen the top edge into tips, and 4 along wedge lines, which
bend the rows. How it lies: :mod:`loopwright.garment.draft.lie`.
"""

from __future__ import annotations

from typing import Final

import numpy as np

from loopwright.garment.draft import Counts, Draft, Kind, Needle
from loopwright.garment.draft.lie import crescent_size_cm
from loopwright.garment.draft.needle import Change
from loopwright.garment.parts.edge import edge_after, trim_count
from loopwright.garment.parts.shawl import from_the_top, refuse_for_a_shawl, rows_for_size
from loopwright.garment.wanted import Brief

__all__ = ["CAST_ON", "crescent_counts", "draft_crescent", "work_crescent"]

CAST_ON: Final = 13
"""As in the source."""
_WIDEN: Final[tuple[Change, ...]] = (
    (Kind.INCREASE, "left", 2),
    (Kind.INCREASE, "lines", 4),
    (Kind.INCREASE, "right", 2),
)


def crescent_counts(cast_on: int, rows: int) -> Counts:
    """Give the stitches of each row: 8 more in rows 0, 2, 4 …; after an even number of rows cast-on + 4·rows."""
    return cast_on + 8 * (np.arange(rows) // 2 + 1)


def work_crescent(needle: Needle, rows: int) -> Needle:
    """Work rows of a crescent, widened in right-side rows."""
    return needle.shape(rows, range(0, rows, 2), *_WIDEN)


def draft_crescent(brief: Brief) -> Draft:
    """Give the draft of a crescent shawl.

    The depth decides the rows and is their height; the width from tip to tip follows from the area and is near three
    quarters of the last row. Where only a width is wanted it decides instead. The lower edge is worked straight.

    :param brief: ``depth`` in the middle, from top edge to rim, ``width`` from tip to tip, lower edge included; of the
        options it takes ``hem``, the lower edge.
    :raises BadInput: a size that the edge alone exceeds, or an option that a crescent has no use for.
    """
    refuse_for_a_shawl(brief)
    hem, gauge = brief.options.hem, brief.gauge
    edge_rows, edge_gauge = hem.rows(gauge, even=True), hem.gauge(gauge)
    row_cm, edge_row_cm = 10 / gauge.rows_or_usual_per_10cm, 10 / edge_gauge.rows_or_usual_per_10cm

    def size_of(rows: int) -> tuple[float, float]:
        counts = crescent_counts(CAST_ON, rows)
        edge = trim_count(hem, int(counts[-1]), in_the_round=False) * edge_rows
        area = gauge.width_cm(1) * (int(counts.sum()) * row_cm + edge * edge_row_cm)
        return crescent_size_cm(area, rows * row_cm + edge_rows * edge_row_cm)

    needle = work_crescent(Needle(CAST_ON), rows_for_size(brief, size_of))
    body = needle.section("body", "crescent", brief.fabric, gauge)
    lower = edge_after(hem, needle.now, gauge, "edge", in_the_round=False, after="body")
    return from_the_top(
        brief,
        (body, lower),
        size_of,
        "laid flat, as a crescent of two thirds of width × depth, its width follows from its area",
        gauge.width_cm(lower.last),
        f"{CAST_ON} stitches are cast on, and every 2nd row adds 8: 2 at each edge, one at each of 4 wedge lines.",
    )
