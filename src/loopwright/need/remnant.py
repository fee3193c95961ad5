"""What a remnant can still knit: rows of a section, and where to change colour so that it can be finished.

All lengths are those of one piece. What a section takes besides its loops, such as seams and ends, is spread over its
loops, so that its rows and edges add up to its need exactly.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Section
from loopwright.need.edges import role_loops
from loopwright.need.shared_error import SectionNeed
from loopwright.uncertainty import Estimate, Origin, p_at_least

__all__ = ["RowLengths", "change_rows", "finishing_from_row", "p_rows", "row_lengths", "rows_possible"]

FLOAT_LOOPS: Final = 0.25
"""Yarn of a stitch passed by a float, in loops, as a loop is about four stitches wide; only shares out a known need."""


@dataclass(frozen=True, slots=True)
class RowLengths:
    """Metres that one piece of a section takes, row by row.

    :ivar begin_m: its first edge; :ivar end_m: its last.
    :ivar rows_m: each row; shape (rows,).
    :ivar relative_sd: doubt of any part of it, as a share.
    """

    begin_m: float
    rows_m: NDArray[np.float64]
    end_m: float
    relative_sd: float

    @property
    def rows(self) -> int:
        """Give the number of rows."""
        return len(self.rows_m)

    def metres(self, from_row: int, to_row: int) -> float:
        """Give the metres of the rows from one up to another, with the edges where they reach the first or last row.

        :param from_row, to_row: as many rows as are done before and after; 0 ≤ from_row ≤ to_row ≤ rows.
        """
        if not 0 <= from_row <= to_row <= self.rows:
            raise ValueError(f"found rows {from_row} to {to_row}; wanted within 0 to {self.rows}")
        if from_row == to_row:
            return 0.0
        edges = (self.begin_m if from_row == 0 else 0.0) + (self.end_m if to_row == self.rows else 0.0)
        return float(self.rows_m[from_row:to_row].sum()) + edges

    def need(self, from_row: int, to_row: int) -> Estimate:
        """Give the same with its doubt."""
        mean = self.metres(from_row, to_row)
        return Estimate(mean=mean, sd=mean * self.relative_sd, unit="m", origin=Origin.COMPUTED)


def row_lengths(section: Section, need: SectionNeed) -> RowLengths:
    """Give the metres of a section's rows and edges in one role; together they are its need, divided by its pieces."""
    loops = role_loops(section, need.role)[need.role]
    rows = loops.rows + FLOAT_LOOPS * loops.floated
    total = loops.begin + float(rows.sum()) + loops.end
    loop_m = need.length_m / need.made / total if total else 0.0
    relative = need.sd_m / need.length_m if need.length_m else 0.0
    return RowLengths(loops.begin * loop_m, rows * loop_m, loops.end * loop_m, relative)


def p_rows(have: Estimate, lengths: RowLengths, from_row: int, to_row: int) -> float:
    """Give the chance that yarn suffices for the rows from one up to another. Source: normal errors, independent."""
    return p_at_least(have, lengths.need(from_row, to_row))


def rows_possible(have: Estimate, lengths: RowLengths, from_row: int = 0, sureness: float = 0.5) -> int:
    """Give how many rows from here it can surely knit; to the last row only if the last edge can be worked too.

    :param from_row: rows of the section that are done.
    :param sureness: chance that is wanted.
    """
    low, high = from_row, lengths.rows
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if _suffices(have, lengths, from_row, middle, sureness) else (low, middle - 1)
    return low - from_row


def finishing_from_row(have: Estimate, lengths: RowLengths, sureness: float = 0.5) -> int:
    """Give the first row, counted as rows done before it, from which this yarn can finish the section.

    All rows where it cannot even work the last row and the edge.
    """
    low, high = 0, lengths.rows
    while low < high:
        middle = (low + high) // 2
        low, high = (low, middle) if _suffices(have, lengths, middle, lengths.rows, sureness) else (middle + 1, high)
    return low


def change_rows(
    now: Estimate, then: Estimate, lengths: RowLengths, from_row: int = 0, sureness: float = 0.5
) -> range | None:
    """Give after which rows to change from the yarn in hand to another so that the section can still be finished.

    The last of them is the last row at which to change: up to it the yarn in hand lasts.

    :param now: what is left of the yarn in hand; ``then``: of the other.
    :returns: rows done at the change, from the earliest to the latest; None where no row serves.
    """
    latest = from_row + rows_possible(now, lengths, from_row, sureness)
    earliest = max(finishing_from_row(then, lengths, sureness), from_row)
    return range(earliest, latest + 1) if earliest <= latest else None


def _suffices(have: Estimate, lengths: RowLengths, from_row: int, to_row: int, sureness: float) -> bool:
    return from_row == to_row or p_rows(have, lengths, from_row, to_row) >= sureness
