"""Floats: yarn that runs behind stitches of another colour, and how many colours a row has."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from loopwright.chart.grid import Chart

__all__ = ["Floats", "find_floats", "roles_per_row"]

Found = tuple[NDArray[np.int64], NDArray[np.int64], NDArray[np.int64], NDArray[np.int64]]


@dataclass(frozen=True, slots=True, eq=False)
class Floats:
    """Every float of a chart, row by row; arrays of shape (floats,).

    :ivar row: from 0 at the bottom.
    :ivar role: place of its role in the chart's roles.
    :ivar after: column of the use before it, from 0 at the left; −1 where it runs in from the left edge.
    :ivar stitches: stitches that it passes behind.
    :ivar to_next_repeat: whether it runs from one repeat to the next, of a chart whose repeat has edges beside it.
    """

    row: NDArray[np.int64]
    role: NDArray[np.int64]
    after: NDArray[np.int64]
    stitches: NDArray[np.int64]
    to_next_repeat: NDArray[np.bool_]

    def __len__(self) -> int:
        return int(self.row.size)

    @property
    def longest(self) -> int:
        """Give the stitches of the longest, 0 where there is none."""
        return int(self.stitches.max()) if self.row.size else 0


def find_floats(chart: Chart, *, carry_to_edge: bool = False) -> Floats:
    """Give every float: the stitches between two uses of a colour in one row.

    In the round, and where the chart repeats all across, the row's end is followed by its beginning. Flat, a strand
    waits at its last use. Of a repeat with edges, the way from one repeat to the next counts too. Boxes without a
    stitch are passed over.

    :param carry_to_edge: flat, both strands go to both edges of every row.
    Source: definition; limits of practice see :mod:`~loopwright.chart.catches`.
    """
    found = _between_uses(chart, wraps=chart.wraps, carry=carry_to_edge and not chart.wraps)
    beside = np.zeros(found[0].size, np.bool_)
    box = chart.repeat
    if box is not None and not chart.wraps:
        around = _around(chart.part(box))
        more = (around[0] + box.row, around[1], around[2] + box.column, around[3])
        found = _joined([found, more])
        beside = np.r_[beside, np.ones(more[0].size, np.bool_)]
    order = np.lexsort((found[2], found[1], found[0]))
    row, role, after, stitches = found
    return Floats(row[order], role[order], after[order], stitches[order], beside[order])


def _between_uses(chart: Chart, *, wraps: bool, carry: bool) -> Found:
    """Give row, role, column before and length of the floats of each role, all rows at once."""
    place, total = _places(chart)
    parts: list[Found] = [_none()]
    if wraps:
        parts.append(_around(chart))
    for role in range(len(chart.roles)):
        rows, columns, at = _uses(chart, role, place)
        same = rows[1:] == rows[:-1]
        gap = np.diff(at) - 1
        keep = same & (gap > 0)
        parts.append((rows[:-1][keep], np.full(int(keep.sum()), role), columns[:-1][keep], gap[keep]))
        if carry and rows.size:
            first, last = _ends(rows)
            for row, before, length in (
                (rows[first], np.full(first.size, -1), at[first]),
                (rows[last], columns[last], total[rows[last]] - 1 - at[last]),
            ):
                keep = length > 0
                parts.append((row[keep], np.full(int(keep.sum()), role), before[keep], length[keep]))
    return _joined(parts)


def _around(chart: Chart) -> Found:
    """Give the floats that run from the last use in a row to the first one."""
    place, total = _places(chart)
    parts = [_none()]
    for role in range(len(chart.roles)):
        rows, columns, at = _uses(chart, role, place)
        if rows.size:
            first, last = _ends(rows)
            gap = total[rows[last]] - 1 - at[last] + at[first]
            keep = gap > 0
            parts.append((rows[last][keep], np.full(int(keep.sum()), role), columns[last][keep], gap[keep]))
    return _joined(parts)


def _none() -> Found:
    nothing = np.zeros(0, np.int64)
    return nothing, nothing, nothing, nothing


def _joined(parts: list[Found]) -> Found:
    row, role, after, stitches = (np.concatenate(arrays) for arrays in zip(*parts, strict=True))
    return row, role, after, stitches


def _places(chart: Chart) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Give each cell's place among the worked ones of its row, and how many there are."""
    worked = chart.worked
    return np.cumsum(worked, axis=1) - 1, worked.sum(axis=1)


def _uses(
    chart: Chart, role: int, place: NDArray[np.int64]
) -> tuple[NDArray[np.int64], NDArray[np.int64], NDArray[np.int64]]:
    rows, columns = np.nonzero((chart.cells == role) & chart.worked)
    return rows, columns, place[rows, columns]


def _ends(rows: NDArray[np.int64]) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Give where each row's uses begin and end in the list of uses."""
    turns = np.flatnonzero(np.diff(rows))
    return np.r_[0, turns + 1], np.r_[turns, rows.size - 1]


def roles_per_row(chart: Chart) -> NDArray[np.int64]:
    """Give how many roles each row knits with; shape (rows,)."""
    used = [((chart.cells == role) & chart.worked).any(axis=1) for role in range(len(chart.roles))]
    number: NDArray[np.int64] = np.sum(used, axis=0, dtype=np.int64)
    return number
