r"""Floats: yarn that runs behind stitches of another colour, how long it is, and where to catch it."""

from __future__ import annotations

import bisect
import math
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.chart.grid import Chart
from loopwright.units import BadInput

__all__ = [
    "LEAST_LIMIT",
    "Floats",
    "LongFloat",
    "catch_cells",
    "find_floats",
    "long_floats",
    "roles_per_row",
    "usual_limit",
    "young_child_limit",
]

LEAST_LIMIT: Final = 3
"""A limit under three stitches would be catching everything; our judgement."""
_SHIFTS: Final = (0, 1, -1, 2, -2)
"""How far catches move aside so that they do not stand above those of the row below: common practice, no source."""


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
    Source: definition; limits of practice see :func:`usual_limit`.
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


# ------------------------------------------------------------------------------------------------------ catches
def usual_limit(stitch_width_mm: float) -> int:
    r"""Give how many stitches a float may pass: :math:`\min(5, \lfloor 25/w \rfloor)`, but not under 3.

    :param stitch_width_mm: width of one stitch, above 0.
    Source: common practice of tutorials, five stitches or one inch; taking the shorter is our proposal.
    """
    return max(LEAST_LIMIT, min(5, math.floor(25 / stitch_width_mm)))


def young_child_limit(stitch_width_mm: float) -> int:
    """Give the limit for a child under three: about 2 cm or three stitches, at least one.

    Source: the caution ``floats`` in ``data/caution/cautions.csv``; the limit is ours.
    """
    return max(1, min(LEAST_LIMIT, math.floor(20 / stitch_width_mm)))


def catch_cells(stitches: int, limit: int) -> tuple[int, ...]:
    r"""Give at which stitches a float is caught, counted from 1 in working order; the pieces are then within the limit.

    .. math:: k = \max(0, \lceil (n - m)/(m + 1) \rceil), \quad c_i = \lfloor i(n + 1)/(k + 1) \rfloor, i = 1..k

    for ``stitches`` n and ``limit`` m; the stitch at which it is caught breaks the float itself.

    :raises BadInput: the limit is under 1.
    Source: follows from evening out the pieces; a published swatch of 12 stitches caught twice agrees.
    """
    if limit < 1:
        raise BadInput(found=f"a limit of {limit}", wanted="one stitch or more", place="limit")
    catches = max(0, -((limit - stitches) // (limit + 1)))
    return tuple(number * (stitches + 1) // (catches + 1) for number in range(1, catches + 1))


@dataclass(frozen=True, slots=True)
class LongFloat:
    """A float over the limit, with where to catch it.

    :ivar row: number of the row, from 1 at the bottom.
    :ivar role: its role's name.
    :ivar stitches: stitches that it passes; ``length_cm`` is that in cm.
    :ivar columns: columns that it passes behind, from 0 at the left, in working order.
    :ivar catch_columns: those at which it is caught.
    :ivar stacked: whether a catch stands above one of the row below, since no other place was free.
    """

    row: int
    role: str
    stitches: int
    length_cm: float
    columns: tuple[int, ...]
    catch_columns: tuple[int, ...]
    stacked: bool


def long_floats(
    chart: Chart, limit: int, stitch_width_mm: float, *, carry_to_edge: bool = False
) -> tuple[LongFloat, ...]:
    """Give every float longer than the limit with its catches, which avoid those of the row below where they can.

    :param limit: stitches that a float may pass uncaught.
    :param stitch_width_mm: width of one stitch.
    Source: :func:`catch_cells`; moving catches aside by one or two stitches is common practice, no source.
    """
    found = find_floats(chart, carry_to_edge=carry_to_edge)
    long = np.flatnonzero(found.stitches > limit)
    told = []
    row_before, worked, caught = -1, [0], {-1: set[int]()}
    for row, role, after, stitches, inside in zip(
        found.row[long].tolist(),
        found.role[long].tolist(),
        found.after[long].tolist(),
        found.stitches[long].tolist(),
        found.to_next_repeat[long].tolist(),
        strict=True,
    ):
        if row != row_before:
            row_before, worked = row, np.flatnonzero(chart.worked[row]).tolist()
        columns = _passed(_inside(chart, worked) if inside else worked, after, stitches)
        if chart.reads_leftwards(row):
            columns.reverse()
        catches, stacked = _aside(columns, limit, caught.get(row - 1, set()))
        caught.setdefault(row, set()).update(catches)
        length_cm = stitches * stitch_width_mm / 10
        name = chart.roles[role].name
        told.append(LongFloat(row + 1, name, stitches, length_cm, tuple(columns), catches, stacked))
    return tuple(told)


def _inside(chart: Chart, worked: list[int]) -> list[int]:
    """Give the columns of those worked that lie in the repeat."""
    box = chart.repeat
    return worked if box is None else [one for one in worked if box.column <= one < box.column + box.columns]


def _passed(worked: list[int], after: int, stitches: int) -> list[int]:
    """Give the columns that a float passes behind, from left to right, on from the row's end to its beginning."""
    start = bisect.bisect_right(worked, after)
    return [worked[(start + step) % len(worked)] for step in range(stitches)]


def _aside(columns: list[int], limit: int, below: set[int]) -> tuple[tuple[int, ...], bool]:
    """Choose the catches of one float so that none stands above one of the row below, if the limit leaves room."""
    usual = catch_cells(len(columns), limit)
    for shift in _SHIFTS:
        moved = [cell + shift for cell in usual]
        if moved[0] < 1 or moved[0] - 1 > limit or not 0 <= len(columns) - moved[-1] <= limit:
            continue
        chosen = tuple(columns[cell - 1] for cell in moved)
        if not below.intersection(chosen):
            return chosen, False
    return tuple(columns[cell - 1] for cell in usual), True
