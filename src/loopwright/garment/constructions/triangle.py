"""Triangle shawl from the middle of its top edge down: every 2nd row adds 4 stitches, 2 at the edges, 2 at the spine.

N = cast-on + 2·rows. Source: a designer's page on top-down triangles (14 stitches and 72 rows are 158) and a knitter's
weblog of 2013 (5 stitches and 100 rows are 205). How it lies: :mod:`loopwright.garment.draft.lie`.
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from loopwright.garment.draft import Counts, Draft, Kind, Needle
from loopwright.garment.draft.lie import triangle_size_cm
from loopwright.garment.draft.needle import Change
from loopwright.garment.parts.edge import trim_count
from loopwright.garment.parts.shawl import from_the_top, refuse_for_a_shawl, rows_for_size
from loopwright.garment.wanted import Brief

__all__ = ["CAST_ON", "draft_triangle", "triangle_counts", "work_triangle"]

CAST_ON: Final = 5
"""Two edge stitches a side and the spine; the usual beginning, as in the source's 205."""
_WIDEN: Final[tuple[Change, ...]] = (
    (Kind.INCREASE, "left", 1),
    (Kind.INCREASE, "middle", 2),
    (Kind.INCREASE, "right", 1),
)


def triangle_counts(cast_on: int, rows: int) -> Counts:
    """Give the stitches of each row: 4 more in rows 0, 2, 4 …; after an even number of rows cast-on + 2·rows."""
    return cast_on + 4 * (np.arange(rows) // 2 + 1)


def work_triangle(needle: Needle, rows: int) -> Needle:
    """Work rows of a triangle, widened in right-side rows."""
    return needle.shape(rows, range(0, rows, 2), *_WIDEN)


def draft_triangle(brief: Brief) -> Draft:
    """Give the draft of a triangle shawl.

    The depth decides the rows; laid flat the triangle is right-angled and so twice as wide as deep. Where only a width
    is wanted it decides instead. The lower edge is widened like the rest, so that its point lies flat: with 4 stitches
    more each time every rib and moss stitch stays whole.

    :param brief: ``depth`` from the middle of the top edge to the point, ``width`` along the top edge, lower edge
        included; of the options it takes ``hem``, the lower edge.
    :raises BadInput: a size that the edge alone exceeds, or an option that a triangle has no use for.
    """
    refuse_for_a_shawl(brief)
    hem, gauge = brief.options.hem, brief.gauge
    edge_rows, edge_gauge = hem.rows(gauge, even=True), hem.gauge(gauge)
    stitch_cm2 = 100 / (gauge.stitches_per_10cm * gauge.rows_or_usual_per_10cm)
    edge_stitch_cm2 = 100 / (gauge.stitches_per_10cm * edge_gauge.rows_or_usual_per_10cm)

    def size_of(rows: int) -> tuple[float, float]:
        counts = triangle_counts(CAST_ON, rows)
        edge = triangle_counts(trim_count(hem, int(counts[-1]), in_the_round=False), edge_rows)
        return triangle_size_cm(int(counts.sum()) * stitch_cm2 + int(edge.sum()) * edge_stitch_cm2)

    needle = work_triangle(Needle(CAST_ON), rows_for_size(brief, size_of))
    body = needle.section("body", "triangle", brief.fabric, gauge)
    fitted = trim_count(hem, needle.now, in_the_round=False) - needle.now
    edge = Needle(needle.now).row((Kind.INCREASE if fitted > 0 else Kind.DECREASE, "evenly", abs(fitted)), *_WIDEN)
    work_triangle(edge.plain(1), edge_rows - 2)
    lower = edge.section(
        "edge", "lower edge", hem.fabric, edge_gauge, begins="carried on", after="body", ends="cast off"
    )
    return from_the_top(
        brief,
        (body, lower),
        size_of,
        "laid flat it is a right-angled triangle, twice as wide as deep",
        2 * math.sqrt(2) * size_of(body.rows)[1],
        f"{CAST_ON} stitches are cast on, and every 2nd row adds 4: one at each edge, one on each side of the spine.",
    )
