"""Picking up stitches along an edge: how many, and which rows are passed over.

Ratio = stitches of the band ÷ rows of the edge over the same length. It is worked as groups, "4 of 5" being four
stitches from four rows and a fifth row passed over.

Sources: 20 and 26 over the same width make 10/13 = 3 of 4, 3 of 4, 4 of 5; 71 stitches from 88 rows are 4 of 5
seventeen times, then 3 of 3.
"""

from __future__ import annotations

from fractions import Fraction

from loopwright.garment.shaping.across import even_sections
from loopwright.garment.shaping.bounds import at_least
from loopwright.garment.shaping.counts import nearest_count
from loopwright.units import BadInput

__all__ = ["pick_up_pattern", "pick_up_ratio", "pick_up_steps", "picked_up"]


def pick_up_ratio(stitches_per_10cm: float, rows_per_10cm: float, *, longest: int = 20) -> Fraction:
    """Give stitches picked up for each row: the fraction nearest to band stitches ÷ edge rows.

    :param stitches_per_10cm: of the band, in its own stitch pattern; over 0.
    :param rows_per_10cm: of the edge; over 0.
    :param longest: rows after which the pattern has to come round again; the fraction's denominator is no larger.
    :raises BadInput: for a gauge of nothing, or a ratio nearer to nothing than to 1/``longest``.
    Source: see the head of the module; twenty rows as the longest pattern to keep in mind are our judgement.
    """
    at_least(longest, 1, "rows")
    if not (stitches_per_10cm > 0 and rows_per_10cm > 0):
        raise BadInput(
            found=f"{stitches_per_10cm:g} stitches and {rows_per_10cm:g} rows to 10 cm", wanted="both over 0"
        )
    ratio = Fraction(stitches_per_10cm / rows_per_10cm).limit_denominator(longest)
    if ratio == 0:
        raise BadInput(
            found=f"{stitches_per_10cm:g} stitches and {rows_per_10cm:g} rows to 10 cm",
            wanted=f"at least one stitch to {longest} rows",
        )
    return ratio


def picked_up(edge_rows: int, ratio: Fraction, *, multiple: int = 1, plus: int = 0) -> int:
    """Give the stitches to pick up along ``edge_rows`` rows: rows · ratio, to the nearest count of the band's repeat.

    :raises BadInput: for an edge without rows or a ratio of nothing.
    Source: see the head of the module; 80 of 120 rows at 2/3. Garter edges count their ridges: one stitch to each.
    """
    at_least(edge_rows, 1, "rows")
    if ratio <= 0:
        raise BadInput(found=f"a ratio of {ratio}", wanted="a ratio over 0")
    return nearest_count(edge_rows * ratio, multiple=multiple, plus=plus)


def pick_up_pattern(rows: int, stitches: int) -> tuple[tuple[int, int], ...]:
    """Give the groups (stitches, of rows) along an edge, in order; they sum to ``stitches`` and ``rows``.

    Every group but the last ends in one row passed over; the last picks up from all of its rows. Preferred, in this
    order: groups that differ by one stitch at most; a last group that is none of the larger; the larger spread evenly
    (:func:`even_sections`). Where no more stitches are picked up than rows passed over, one from each group of rows.
    With more stitches than rows the same the other way round: every group but the last makes one stitch more than it
    has rows.

    :raises BadInput: for an edge without rows or stitches.
    Source: see the head of the module.
    """
    at_least(rows, 1, "rows")
    at_least(stitches, 1, "stitches")
    if stitches > rows:
        return tuple((taken, of) for of, taken in pick_up_pattern(stitches, rows))
    passed = rows - stitches
    if passed == 0:
        return ((stitches, rows),)
    if stitches <= passed:
        return tuple((1, of) for of in even_sections(rows, stitches))
    last = stitches // (passed + 1)
    return (*((size, size + 1) for size in even_sections(stitches - last, passed)), (last, last))


def pick_up_steps(ratio: Fraction) -> tuple[tuple[int, int], ...]:
    """Give the groups (stitches, of rows) that work a ratio when they are repeated all along the edge.

    As in :func:`pick_up_pattern`, but every group ends in a row passed over (or a stitch more): 10/13 is 3 of 4, 4 of
    5, 3 of 4, in any order that goes round.

    :raises BadInput: for a ratio of nothing.
    Source: a yarn firm's page of 2015 takes 10/13 apart in this way.
    """
    stitches, rows = ratio.numerator, ratio.denominator
    at_least(stitches, 1, "stitches")
    if stitches > rows:
        return tuple((taken, of) for of, taken in pick_up_steps(1 / ratio))
    passed = rows - stitches
    if passed == 0:
        return ((1, 1),)
    if stitches <= passed:
        return tuple((1, of) for of in even_sections(rows, stitches, mirrored=False))
    return tuple((size, size + 1) for size in even_sections(stitches, passed, mirrored=False))
