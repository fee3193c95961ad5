"""Half-round shawl from the middle of its top edge down: its stitches double each time the radius has doubled.

A half circle grows in proportion to its radius, so it is enough to double the stitches after 4, 8, 16, 32, 64 … rows.
Source: a knitter's page on the half-pi shawl, worked flat: 9 → 17 → 29 → 53 → 101 → 197 → 389, with 3, 7, 15, 31 and 63
plain rows between; its counts are 5 edge stitches and 12, 24, 48 … others. How it lies:
:mod:`loopwright.garment.draft.lie`.
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from loopwright.garment.draft import Counts, Draft, Kind, Needle
from loopwright.garment.draft.lie import half_round_size_cm
from loopwright.garment.parts.edge import edge_after, trim_count
from loopwright.garment.parts.shawl import from_the_top, refuse_for_a_shawl, rows_for_size
from loopwright.garment.wanted import Brief

__all__ = ["CAST_ON", "doubled", "draft_half_round", "half_round_counts", "plain_rows"]

CAST_ON: Final = 9
FIRST: Final = 17
"""Stitches after the first row; as in the source."""
EDGE: Final = 5
"""Stitches that are not doubled, shared by the two edges."""
LEAST_AFTER: Final = 4
"""Rows that must follow a doubling: it is left out where the fabric ends sooner, as it would only ruffle the edge. Our
judgement."""


def doubled(stitches: int, times: int, *, edge: int = 0) -> int:
    """Give the stitches after so many doublings of all but the edge stitches: (N − e)·2ᵏ + e."""
    return ((stitches - edge) << times) + edge


def plain_rows(times: int, *, first: int = 1) -> tuple[int, ...]:
    """Give the plain rows after each of so many doublings, the doubling row being one of a stretch that doubles too.

    :param first: rows of the first stretch, its doubling row not counted. 3 gives 3, 7, 15, 31, 63.
    """
    return tuple((first + 1) * 2**time - 1 for time in range(times))


def _doubling_rows(rows: int) -> list[int]:
    """Give the rows that widen, from 0: 0, 4, 12, 28, 60, 124 … as far as enough rows follow."""
    found, row, stretch = [0], 4, 8
    while rows - row >= LEAST_AFTER:
        found.append(row)
        row, stretch = row + stretch, 2 * stretch
    return found


def half_round_counts(rows: int) -> Counts:
    """Give the stitches of each row of a half-round shawl of so many rows."""
    starts = _doubling_rows(rows)
    counts = [doubled(FIRST, time, edge=EDGE) for time in range(len(starts))]
    return np.repeat(np.array(counts, dtype=np.int64), np.diff([*starts, rows]))


def draft_half_round(brief: Brief) -> Draft:
    """Give the draft of a half-round shawl.

    The depth decides the rows, and so how often the stitches double and how many plain rows come last. The width
    follows from the area: in stocking stitch about twice the depth. Where only a width is wanted it decides instead.

    :param brief: ``depth`` from the middle of the top edge to the rim, ``width`` along the straight top edge, lower
        edge included; of the options it takes ``hem``, the lower edge.
    :raises BadInput: a size that the edge alone exceeds, or an option that such a shawl has no use for.
    """
    refuse_for_a_shawl(brief)
    hem, gauge = brief.options.hem, brief.gauge
    edge_rows, edge_gauge = hem.rows(gauge, even=True), hem.gauge(gauge)
    row_cm, edge_row_cm = 10 / gauge.rows_or_usual_per_10cm, 10 / edge_gauge.rows_or_usual_per_10cm

    def size_of(rows: int) -> tuple[float, float]:
        counts = half_round_counts(rows)
        edge = trim_count(hem, int(counts[-1]), in_the_round=False) * edge_rows
        area = gauge.width_cm(1) * (int(counts.sum()) * row_cm + edge * edge_row_cm)
        return half_round_size_cm(area, rows * row_cm + edge_rows * edge_row_cm)

    rows = rows_for_size(brief, size_of, least=LEAST_AFTER)
    needle = Needle(CAST_ON)
    widens = set(_doubling_rows(rows))
    for row in range(rows):
        more = 0 if row not in widens else FIRST - CAST_ON if row == 0 else needle.now - EDGE
        needle.row((Kind.INCREASE, "evenly", more), places=max(more, 1))
    body = needle.section("body", "half disc", brief.fabric, gauge)
    width, depth = size_of(rows)
    lower = edge_after(hem, needle.now, gauge, "edge", in_the_round=False, after="body")
    return from_the_top(
        brief,
        (body, lower),
        size_of,
        "laid flat, as half an ellipse, its width follows from its area",
        math.pi * math.hypot(width / 2, depth) / math.sqrt(2),
        f"The stitches double, but for {EDGE} at the edges, {len(widens) - 1} times after the first row, each time "
        "after twice as many rows.",
    )
