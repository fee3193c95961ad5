"""A chart read row by row: in which direction, in which stretches, and whether the stitches add up."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from loopwright.chart.grid import Chart
from loopwright.chart.symbols import KNIT, MADE, NO_STITCH, SYMBOLS, TAKEN, Symbol

__all__ = ["CountFault", "RowRead", "Stretch", "count_faults", "read_row", "row_counts", "row_words"]


@dataclass(frozen=True, slots=True)
class Stretch:
    """Boxes side by side of one role and one stitch, in working order."""

    role: str
    symbol: Symbol
    boxes: int


@dataclass(frozen=True, slots=True)
class RowRead:
    """One row in working order.

    :ivar number: from 1 at the bottom.
    :ivar right_side: whether the right side of the fabric faces the knitter.
    :ivar leftwards: whether it is read from right to left.
    """

    number: int
    right_side: bool
    leftwards: bool
    stretches: tuple[Stretch, ...]


def read_row(chart: Chart, row: int) -> RowRead:
    """Give a row, counted from 0, as stretches in working order; boxes without a stitch are left out.

    Source: reading direction, common practice (four tutorials).
    """
    leftwards = chart.reads_leftwards(row)
    line = np.s_[::-1] if leftwards else np.s_[:]
    roles, stitches = chart.cells[row, line].astype(np.int64), chart.stitches[row, line].astype(np.int64)
    worked = stitches != NO_STITCH
    roles, stitches = roles[worked], stitches[worked]
    if not roles.size:
        return RowRead(row + 1, leftwards, leftwards, ())
    starts = np.r_[0, np.flatnonzero((np.diff(roles) != 0) | (np.diff(stitches) != 0)) + 1]
    lengths = np.diff(np.r_[starts, roles.size])
    stretches = tuple(
        Stretch(chart.roles[int(roles[at])].name, SYMBOLS[int(stitches[at])], int(length))
        for at, length in zip(starts, lengths, strict=True)
    )
    return RowRead(row + 1, leftwards, leftwards, stretches)


def row_words(read: RowRead, *, with_roles: bool = True) -> str:
    """Write a row in words: ``1 contrast, 2 main``; another stitch than knit is named as it is worked on that side.

    :param with_roles: whether roles are named; a chart of one colour needs none: ``knit, k2tog × 2``.
    """
    return ", ".join(_stretch_words(stretch, read.right_side, with_roles) for stretch in read.stretches)


def _stretch_words(stretch: Stretch, right_side: bool, with_roles: bool) -> str:
    times = stretch.boxes // stretch.symbol.boxes
    done = stretch.symbol.right_side if right_side else stretch.symbol.wrong_side
    if not with_roles:
        return f"{done} × {times}" if times > 1 else done
    plain = stretch.symbol is SYMBOLS[KNIT]
    return f"{times} {stretch.role}" if plain else f"{times} {stretch.role} {done}"


def row_counts(chart: Chart) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Give how many stitches each row takes from the row below, and how many it leaves; each of shape (rows,)."""
    return TAKEN[chart.stitches].sum(axis=1), MADE[chart.stitches].sum(axis=1)


@dataclass(frozen=True, slots=True)
class CountFault:
    """A row that works more or fewer stitches than the row below leaves.

    :ivar number: of the row, from 1 at the bottom.
    """

    number: int
    left_below: int
    taken: int


def count_faults(chart: Chart) -> tuple[CountFault, ...]:
    """Give every row whose stitches do not come out with the row below it.

    Law: what a row takes is what the row below has made; boxes without a stitch do not count.
    """
    taken, made = row_counts(chart)
    return tuple(
        CountFault(int(row) + 1, int(made[row - 1]), int(taken[row]))
        for row in np.flatnonzero(taken[1:] != made[:-1]) + 1
    )
