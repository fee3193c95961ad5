"""Which column of a chart each stitch of a row shows.

A motif's axis stands in the middle of flat work, of the front of a tube, and of each share of a raglan yoke. What is
left of a round that the repeat does not divide is a plain panel at its end, at the side; the first and the last stitch
of flat work stay plain. Sources: definitions; that edges stay plain for the seam is common practice, no source.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Section

__all__ = ["PLAIN", "columns_of_row"]

PLAIN = -1
"""Stands for a stitch that shows nothing of the chart."""
Columns = NDArray[np.int64]


def columns_of_row(section: Section, row: int, width: int, axis: float) -> Columns:
    """Give the column of a repeat that each stitch of one row shows, from 0; plain stitches are −1.

    :param axis: the column that stands in the middle; a half lies between two.
    :returns: shape (stitches of the row,), from the left as seen from the right side; of a round the front first.
    """
    count = int(section.stitches[row])
    if section.parts:
        return _by_parts(section, row, width, axis)
    if section.in_the_round:
        columns = _about(np.arange(count) + 0.5 - count / 4, width, axis)
        columns[count - count % width :] = PLAIN
        return columns
    return _with_edges(_about(float(section.left_edge[row]) + np.arange(count) + 0.5, width, axis))


def _about(place: NDArray[np.floating], width: int, axis: float) -> Columns:
    """Give the columns of stitches whose middles lie so far from the middle of the work."""
    columns: Columns = (np.ceil(place - 1e-9).astype(np.int64) + int(axis // 1)) % width
    return columns


def _centred(count: int, width: int, axis: float) -> Columns:
    return _about(np.arange(count) + 0.5 - count / 2, width, axis)


def _by_parts(section: Section, row: int, width: int, axis: float) -> Columns:
    """Centre the motif on each share; of a row that is open in front, half of the front comes first and half last."""
    counts = {part.name: int(part.stitches[row]) for part in section.parts}
    front = _centred(counts["front"], width, axis)
    others = [_centred(counts[name], width, axis) for name in ("left sleeve", "back", "right sleeve")]
    if section.in_the_round:
        return np.concatenate([front, *others])
    last = front.size // 2
    return _with_edges(np.concatenate([front[last:], *others, front[:last]]))


def _with_edges(columns: Columns) -> Columns:
    columns[:1] = columns[-1:] = PLAIN
    return columns
