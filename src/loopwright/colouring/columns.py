"""Which column of a chart each stitch of a row shows.

A motif's axis stands in the middle of flat work, of the front of a tube, and of each share of a raglan yoke. What is
left of a round that the repeat does not divide is a plain panel at its end, at the side; the first and the last stitch
of flat work stay plain. Sources: definitions; that edges stay plain for the seam is common practice, no source.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Section

__all__ = ["PLAIN", "columns_of"]

PLAIN = -1
"""Stands for a stitch that shows nothing of the chart, and for what lies beyond a row's last stitch."""
Columns = NDArray[np.int64]


def columns_of(section: Section, width: int, axis: float) -> Columns:
    """Give the column of a repeat that each stitch of a section shows, from 0; plain stitches are −1.

    :param axis: the column that stands in the middle; a half lies between two.
    :returns: shape (rows, stitches of the widest row), each row from its left as seen from the right side; of a round
        the front first.
    """
    counts = section.stitches[:, None]
    stitch = np.arange(int(section.stitches.max(initial=0)))[None, :]
    if section.parts:
        place = _by_parts(section, stitch)
    elif section.in_the_round:
        place = stitch + 0.5 - counts / 4
    else:
        place = section.left_edge[:, None] + stitch + 0.5
    columns = (np.ceil(place - 1e-9).astype(np.int64) + int(axis // 1)) % width
    first, last = (1, counts - 1) if not section.in_the_round else (0, counts)
    if section.in_the_round and not section.parts:
        last = counts - counts % width
    return np.where((stitch >= first) & (stitch < last), columns, PLAIN)


def _by_parts(section: Section, stitch: Columns) -> NDArray[np.float64]:
    """Give how far each stitch lies from the middle of its share.

    Of a row that is open in front, half of the front comes first and the other half last.
    """
    counts = {part.name: part.stitches[:, None] for part in section.parts}
    front = counts["front"]
    ahead = front if section.in_the_round else front - front // 2  # of the front, before the first sleeve
    place = stitch + 0.5 - (front / 2 if section.in_the_round else 0)
    begin = ahead
    for name in ("left sleeve", "back", "right sleeve"):
        place = np.where(stitch >= begin, stitch - begin + 0.5 - counts[name] / 2, place)
        begin = begin + counts[name]
    behind = stitch - begin + 0.5 - front // 2
    return np.where(stitch >= begin, behind, place).astype(np.float64)
