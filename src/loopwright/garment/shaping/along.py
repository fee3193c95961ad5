"""Shaping over rows: how often, and in which rows (side seams, waists, sleeves, raglans).

n shapings over R rows: q = R ÷ n, remainder s, so every q-th row n − s times and every (q + 1)-th row s times. Only in
right-side rows: the same with pairs of rows, which solves 2a·x + (2a + 2)·y = R, x + y = n.

Source: the quotient and remainder rule, widely printed; 140 rows and 36 times make every 3rd 4 times and every 4th 32
times, 108 rows and 11 times make every 9th twice and every 10th 9 times, or every 8th once and every 10th 10 times.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate, repeat

from loopwright.garment.shaping.bounds import at_least
from loopwright.units import BadInput

__all__ = ["Rhythm", "spread_along", "spread_mixed"]


@dataclass(frozen=True, slots=True)
class Rhythm:
    """A shaping repeated over rows.

    :ivar every: (interval, how often), in working order: ((3, 4), (4, 32)) is every 3rd row 4 times, then every 4th row
        32 times. The shaping is the last row of each interval.
    :ivar rows: rows in all.
    """

    every: tuple[tuple[int, int], ...]
    rows: int

    @property
    def times(self) -> int:
        """Give the number of shaping rows."""
        return sum(often for _, often in self.every)

    @property
    def plain_rows(self) -> int:
        """Give the rows after the last interval, worked plain."""
        return self.rows - sum(interval * often for interval, often in self.every)

    def intervals(self) -> tuple[int, ...]:
        """Give every interval, in working order."""
        return tuple(interval for interval, often in self.every for _ in repeat(None, often))

    def shaping_rows(self) -> tuple[int, ...]:
        """Give the rows of the shapings, counted from 0: an interval of 4 shapes rows 3, 7 and 11."""
        return tuple(end - 1 for end in accumulate(self.intervals()))


def spread_along(rows: int, times: int, *, step: int = 1, quick_first: bool = True) -> Rhythm:
    """Spread ``times`` shapings evenly over ``rows`` rows.

    Order of preference: no two intervals differ by more than ``step``; as few rows as can be are left plain at the end
    (the remainder of ``rows`` by ``step``); shorter intervals first, or last.

    :param step: every interval is a multiple of it; 2 keeps the shaping in right-side rows.
    :param quick_first: the shorter intervals come before the longer ones.
    :raises BadInput: when more than one shaping would fall in ``step`` rows.
    Source: see the head of the module.
    """
    at_least(rows, 0, "rows")
    at_least(times, 0, "shaping rows")
    at_least(step, 1, "rows to a step")
    if times == 0:
        return Rhythm((), rows)
    _refuse_too_many(rows, times, rows // step)
    quotient, rest = divmod(rows // step, times)
    groups = ((quotient * step, times - rest), ((quotient + 1) * step, rest))
    kept = tuple(group for group in groups if group[1])
    return Rhythm(kept if quick_first else kept[::-1], rows)


def spread_mixed(rows: int, times: int) -> Rhythm:
    """Spread ``times`` shapings over ``rows`` rows, in right-side rows if they suffice, else in every row for a part.

    Where half the rows suffice, all intervals are even (:func:`spread_along` with a step of 2): every 2nd row, or
    slower. Else x intervals of 2 and y of 1 with 2x + y = ``rows``, x + y = ``times``: every 2nd row
    ``rows`` − ``times`` times, then every row 2·``times`` − ``rows`` times, which leaves no row over.

    :raises BadInput: when there are more shapings than rows.
    Source: a sleeve cap of 38 rows and 20 decreases a side, every 2nd row 18 times and every row twice.
    """
    at_least(rows, 0, "rows")
    at_least(times, 0, "shaping rows")
    if 2 * times <= rows:
        return spread_along(rows, times, step=2)
    _refuse_too_many(rows, times, rows)
    groups = ((2, rows - times), (1, 2 * times - rows))
    return Rhythm(tuple(group for group in groups if group[1]), rows)


def _refuse_too_many(rows: int, times: int, most: int) -> None:
    if times > most:
        raise BadInput(
            found=f"{times} shaping rows in {rows} rows",
            wanted=f"at most {most}",
            hint="work more rows, shape more stitches in each, or shape in wrong-side rows too",
        )
