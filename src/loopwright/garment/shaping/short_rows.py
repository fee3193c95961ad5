"""Short rows: pairs of turns that make one part of a piece longer (bust, back neck).

A pair of turns adds two rows. The turns lie evenly between two places.

Sources: depth of bust short rows by cup, a magazine rule at second hand; or front less back length less what the fabric
stretches (a designer's page of 2025); pairs = depth · rows ÷ 2: 1¾ in at 7 rows are 6.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import accumulate

from loopwright.garment.shaping.across import even_sections
from loopwright.garment.shaping.bounds import at_least
from loopwright.garment.shaping.counts import nearest_count
from loopwright.units import BadInput

__all__ = ["ShortRows", "back_neck_raise", "bust_short_rows", "cup_depth_cm", "measured_depth_cm"]

_IN_CM = 2.54
_CUP_IN = (0.75, 1.0)
_STRETCH_CM = 2 * _IN_CM


@dataclass(frozen=True, slots=True)
class ShortRows:
    """Pairs of short rows, one turn on each side to a pair.

    :ivar pairs: how many; they add 2 · ``pairs`` rows where they all run.
    :ivar turns: stitches between the edge of the piece and each turn, smallest first, the same on both sides. Worked
        longest first the first pair turns at ``turns[0]``; worked shortest first at ``turns[-1]``.
    """

    pairs: int
    turns: tuple[int, ...]

    @property
    def rows(self) -> int:
        """Give the rows that are added at most."""
        return 2 * self.pairs


def bust_short_rows(depth_cm: float, half_front: int, side_gap: int, point_gap: int, rows_per_10cm: float) -> ShortRows:
    """Place short rows over a bust, from the side seam towards the point.

    Pairs = depth · rows ÷ 2 to the nearest whole. The first turn lies ``side_gap`` stitches from the side seam, the
    last ``point_gap`` from the centre front, the others evenly between.

    :param depth_cm: length to add; 0 or more.
    :param half_front: stitches from the side seam to the centre front.
    :param point_gap: stitches from the last turn, a little outside the bust point, to the centre front.
    :raises BadInput: when the gaps leave fewer stitches than the turns need.
    Source: see the head of the module; half a front of 50, 5 at the side and 25 at the point: six turns, 4 apart.
    """
    at_least(side_gap, 0, "stitches at the side")
    at_least(point_gap, 0, "stitches at the point")
    pairs = _pairs(depth_cm, rows_per_10cm)
    span = half_front - side_gap - point_gap
    if span < max(0, pairs - 1):
        raise BadInput(
            found=f"{pairs} turns over {max(0, span)} stitches of half a front of {half_front}",
            wanted=f"{max(0, pairs - 1)} stitches or more between the first turn and the last",
            hint="let them end nearer to the side or the point, or add less depth",
        )
    between = even_sections(span, pairs - 1) if pairs > 1 else ()
    turns = tuple(accumulate(between, initial=side_gap)) if pairs else ()
    return ShortRows(pairs, turns)


def back_neck_raise(raise_cm: float, rows_per_10cm: float, stitches: int) -> ShortRows:
    """Place short rows that raise the back neck, from the ends of ``stitches`` towards their middle.

    Pairs = raise · rows ÷ 2 to the nearest whole; the turns part each half of the stitches evenly.

    :param stitches: those over which the short rows may run, such as the back and the tops of the sleeves.
    :raises BadInput: when half the stitches do not take so many turns.
    Source: the formula as for the bust; round yokes are raised by about six short rows (the percentage system). Turns
    evenly over the half: common practice, no source.
    """
    at_least(stitches, 0, "stitches")
    pairs = _pairs(raise_cm, rows_per_10cm)
    half = stitches // 2
    if pairs and half < pairs + 1:
        raise BadInput(
            found=f"{pairs} turns on each half of {stitches} stitches", wanted=f"{2 * (pairs + 1)} stitches or more"
        )
    return ShortRows(pairs, tuple(accumulate(even_sections(half, pairs + 1)))[:-1])


def cup_depth_cm(cups_above_b: int) -> tuple[float, float]:
    """Give the least and the most length to add for a cup: ¾ to 1 in for each cup above B (C is 1, D is 2).

    The rule is for patterns that are drafted for a B cup and loose rules of thumb; a measured difference is better
    (:func:`measured_depth_cm`).

    Source: a knitting magazine's rule, at second hand.
    """
    at_least(cups_above_b, 0, "cups")
    low, high = _CUP_IN
    return cups_above_b * low * _IN_CM, cups_above_b * high * _IN_CM


def measured_depth_cm(front_cm: float, back_cm: float, *, stretch_cm: float = _STRETCH_CM) -> float:
    """Give the length to add by measure: front − back − what the fabric stretches, never under 0.

    :param front_cm, back_cm: from the neck to under the bust, over the front and over the back.
    Source: a designer's page of 2025, which lets knitting stretch 2 in.
    """
    return max(0.0, front_cm - back_cm - stretch_cm)


def _pairs(depth_cm: float, rows_per_10cm: float) -> int:
    if depth_cm < 0 or rows_per_10cm <= 0:
        raise BadInput(
            found=f"{depth_cm:g} cm at {rows_per_10cm:g} rows to 10 cm", wanted="0 cm or more and a gauge over 0"
        )
    return nearest_count(depth_cm * rows_per_10cm / 20, least=0)
