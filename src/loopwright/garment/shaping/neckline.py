"""Necklines: a centre cast off at once, then the same stitches taken from both sides, row by row.

Row 0 is the first row after the centre has been cast off (for a V: after the work has been divided), so that with the
centre on a right-side row the odd rows are right-side rows.

Source: a designer's rules of 2014. Round necks cast off 40 to 55 % at the centre; a crew then takes half of the rest in
every row and half in every right-side row, a scoop half in every right-side row and half in every 4th or 6th; a V is
shaped evenly.
"""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.garment.shaping.along import Rhythm, spread_mixed
from loopwright.garment.shaping.bounds import at_least
from loopwright.garment.shaping.counts import nearest_count
from loopwright.garment.shaping.steps import cast_off_curve
from loopwright.units import BadInput

__all__ = ["NeckCurve", "boat_neck", "high_neck", "round_neck", "v_neck"]

_PACES = ((2, 6), (2, 4), (1, 2))
"""(interval of the first half, of the second half) of a round neck, slowest first."""


@dataclass(frozen=True, slots=True)
class NeckCurve:
    """A neckline, the same on both sides: ``centre`` + 2 · sum(``sides``) stitches.

    :ivar centre: stitches cast off at the centre before row 0.
    :ivar sides: stitches taken from each side, one entry to a shaping, from the centre outwards.
    :ivar at: the row of each, counted from 0, strictly increasing.
    :ivar rows: rows from the centre to the shoulder; those after the last shaping are plain.
    """

    centre: int
    sides: tuple[int, ...]
    at: tuple[int, ...]
    rows: int

    @property
    def stitches(self) -> int:
        """Give the stitches of the whole neck."""
        return self.centre + 2 * sum(self.sides)

    @property
    def plain_rows(self) -> int:
        """Give the rows after the last shaping."""
        return self.rows - (self.at[-1] + 1 if self.at else 0)

    def taken_by(self, row: int) -> int:
        """Give the stitches that one side has lost when ``row`` has been worked."""
        return sum(taken for taken, at in zip(self.sides, self.at, strict=True) if at <= row)


def round_neck(stitches: int, rows: int, *, centre_share: float = 0.45) -> NeckCurve:
    """Shape a round neck, crew or scoop by the depth that there is.

    The centre is the count nearest to ``centre_share`` · ``stitches`` that leaves both sides equal. Of the rest one
    half (the larger one) goes fast and the other slowly, a stitch at a time: in every 2nd and every 6th row, every 2nd
    and every 4th (scoop), or every row and every 2nd (crew), the slowest of these that ends within ``rows``. Where even
    the crew is too long, the sides follow :func:`cast_off_curve` in every 2nd row; in under two rows all goes at the
    centre.

    :param rows: rows from the centre to the shoulder, the centre's own row not counted.
    :param centre_share: 0.40 to 0.55 in handbooks; over 0 and up to 1.
    Source: see the head of the module; 36 stitches: 16 and 10 a side, in 15 rows as a crew, in 30 as a scoop.
    """
    at_least(stitches, 1, "stitches")
    at_least(rows, 0, "rows")
    if not 0 < centre_share <= 1:
        raise BadInput(found=f"a centre of {centre_share * 100:g} %", wanted="over 0 % and up to 100 %")
    centre = nearest_count(centre_share * stitches, like=stitches, most=stitches)
    each = (stitches - centre) // 2
    if rows < 2:
        return NeckCurve(stitches, (), (), rows)
    slow = each // 2
    for first, second in _PACES:
        if first * (each - slow) + second * slow <= rows:
            groups = ((first, each - slow), (second, slow))
            return _one_by_one(centre, Rhythm(tuple(group for group in groups if group[1]), rows))
    sides = cast_off_curve(each, rows)
    return NeckCurve(centre, sides, tuple(2 * step + 1 for step in range(len(sides))), rows)


def v_neck(stitches: int, rows: int) -> NeckCurve:
    """Shape a V: one stitch at the centre of an odd count, none of an even one, the rest evenly over the depth.

    In right-side rows if they suffice, else in every row for a part (:func:`spread_mixed`); shorter intervals first.

    :raises BadInput: when a side has more stitches than there are rows.
    Source: see the head of the module; 18 a side over 56 rows: every 2nd row 8 times and every 4th row 10 times.
    """
    at_least(stitches, 1, "stitches")
    at_least(rows, 0, "rows")
    each = stitches // 2
    if each > rows:
        raise BadInput(
            found=f"a V of {stitches} stitches in {rows} rows",
            wanted=f"{each} rows or more, or at most {2 * rows + 1} stitches",
            hint="begin the V lower, or take a round neck",
        )
    quick_first = sorted(spread_mixed(rows, each).every)
    return _one_by_one(stitches % 2, Rhythm(tuple(quick_first), rows))


def boat_neck(stitches: int, rows: int, *, each_side: int = 2) -> NeckCurve:
    """Shape a boat neck: nearly all at the centre, the last ``each_side`` stitches a side one in every 2nd row.

    Fewer a side where the rows or the stitches do not suffice.

    Source: common practice, no source; the two stitches a side are our judgement.
    """
    at_least(stitches, 1, "stitches")
    at_least(rows, 0, "rows")
    at_least(each_side, 0, "stitches a side")
    each = min(each_side, rows // 2, (stitches - 1) // 2)
    return _one_by_one(stitches - 2 * each, Rhythm(((2, each),) if each else (), rows))


def high_neck(stitches: int, rows: int) -> NeckCurve:
    """Leave the neck straight: all stitches at the centre, ``rows`` plain rows beside it.

    Source: definition of a straight neck.
    """
    return boat_neck(stitches, rows, each_side=0)


def _one_by_one(centre: int, rhythm: Rhythm) -> NeckCurve:
    return NeckCurve(centre, (1,) * rhythm.times, rhythm.shaping_rows(), rhythm.rows)
