"""Set-in sleeve caps: as long along their edge as the armhole that they are sewn into.

The cap begins with the armhole's first cast-off and ends with a level one; between them both edges lose a stitch at a
time, as the rows ask for. Rows and final cast-off are whole numbers, searched through in a stated order.

Sources. The cap's edge is the armhole's or up to about an inch more, never less (a dressmaker's weblog, 2011); same
first cast-off, final cast-off about 3 in (a knitting magazine, 2005). Worked: at 5 stitches and 7 rows to the inch, an
armhole 8 in deep that casts off an inch and takes 5 stitches over 10 rows, upper arm 66 stitches, final cast-off 16:
38 rows, 0.67 of the depth.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from loopwright.fabric import Gauge
from loopwright.garment.draft import CAP_EASE_MOST, Kind, shaped_length_cm
from loopwright.garment.parts.face import AtRow, moves_of
from loopwright.garment.shaping import nearest_count, slant_rise_cm, spread_along

__all__ = ["USUAL_CAP_SHARE", "Cap", "cap_steps", "fitted_cap"]

USUAL_CAP_SHARE = 2 / 3
"""Cap height over armhole depth, a rule of thumb; the worked example of the head of the module gives 0.67."""
FINAL_SHARE = 16 / 66
"""Final cast-off over upper arm: 16 of 66 stitches, about 3 in, in two worked examples (2005, 2014)."""
FINAL_MOST_CM = 10.0
"""Above about 4 in a wide sleeve's final cast-off no longer grows with it; our judgement."""
FINAL_RANGE = (0.1, 0.5)
"""Least and most share of the upper arm that the final cast-off may be where the fit asks for it; our judgement."""
SHORTEST = -0.005
"""A cap that much shorter than its armhole, as a share, is taken before one that is shorter still."""
QUICKEST = 4
"""Most stitches a side that two rows take from a cap."""
NEAR_ROWS = 3
"""Rows tried on either side of the height that Pythagoras gives."""


@dataclass(frozen=True, slots=True)
class Cap:
    """A cap's shaping and how it fits.

    :ivar steps: what is done at both edges, rows from the underarm.
    :ivar final: stitches cast off at its top.
    :ivar half_cm: its edge from the underarm to the middle of its top.
    """

    steps: tuple[AtRow, ...]
    rows: int
    final: int
    half_cm: float

    def ease(self, half_armhole_cm: float) -> float:
        """Give how much longer it is than its armhole, as a share."""
        return self.half_cm / half_armhole_cm - 1


def fitted_cap(top: int, first: int, half_armhole_cm: float, most_rows: int, gauge: Gauge) -> Cap | None:
    """Give the cap that fits an armhole, or None where none does.

    Must hold: within ``CAP_EASE_MOST`` of the armhole's edge; no higher than the armhole. Preferred, in this order: not
    shorter than the armhole, or else hardly shorter (``SHORTEST``); final cast-off nearest to its usual share of the
    upper arm; length nearest to the armhole's; the larger cast-off; fewer rows.

    :param top: stitches of the upper arm.
    :param first: stitches cast off at each side, as for the armhole.
    :param half_armhole_cm: sewn length of the front's or the back's edge up to the shoulder.
    :param most_rows: rows of the armhole's edge.
    """
    if gauge.width_cm(top) > 2 * half_armhole_cm * (1 + CAP_EASE_MOST):
        return None  # no edge is shorter than what it spans
    best: tuple[tuple[int, int, float], Cap] | None = None
    usual = _usual_final(top, gauge)
    for final in _finals(top, first, usual):
        if best is not None and best[0] < (0, abs(final - usual)):
            break  # this and all others are further from the usual
        for cap in _near_caps(top, first, final, half_armhole_cm, most_rows, gauge):
            ease = cap.ease(half_armhole_cm)
            if abs(ease) > CAP_EASE_MOST:
                continue
            rank = (0 if ease >= 0 else 1 if ease >= SHORTEST else 2, abs(final - usual), abs(ease))
            if best is None or rank < best[0]:
                best = rank, cap
    return None if best is None else best[1]


def _usual_final(top: int, gauge: Gauge) -> int:
    return nearest_count(min(FINAL_SHARE * top, gauge.stitches_in(FINAL_MOST_CM)), like=top)


def _finals(top: int, first: int, usual: int) -> list[int]:
    """Give the final cast-offs that may be, nearest to the usual one first; odd or even as the upper arm is."""
    low, high = (share * top for share in FINAL_RANGE)
    most = min(high, top - 2 * first - 2)
    inside = [count for count in range(2 - top % 2, top, 2) if low <= count <= most]
    return sorted(inside, key=lambda count: (abs(count - usual), -count))


def _near_caps(top: int, first: int, final: int, half_cm: float, most_rows: int, gauge: Gauge) -> list[Cap]:
    width, height = gauge.width_cm(1), 10 / gauge.rows_or_usual_per_10cm
    each = (top - final) // 2 - first
    slope = half_cm - (first + final / 2) * width
    least = 2 + 2 * math.ceil(each / QUICKEST)
    rise = slant_rise_cm(slope, each * width) if slope > each * width else 0.0
    guess = max(round(rise / height), least)
    return [
        _cap(first, final, each, rows, gauge)
        for rows in range(max(guess - NEAR_ROWS, least), min(guess + NEAR_ROWS, most_rows) + 1)
    ]


def _cap(first: int, final: int, each: int, rows: int, gauge: Gauge) -> Cap:
    steps = cap_steps(first, each, rows)
    return Cap(steps, rows, final, shaped_length_cm(moves_of(steps), rows, gauge) + gauge.width_cm(final) / 2)


def cap_steps(first: int, each: int, rows: int) -> tuple[AtRow, ...]:
    """Give what is done at each edge of a cap: ``first`` cast off, then ``each`` stitches taken away up to the top.

    Rows go in pairs from a right-side row. Where there are more pairs than stitches, single decreases lie in right-side
    rows at intervals that differ by one pair at most; else every pair takes as many stitches as the next or one more:
    one in the right-side row, two in both rows, more cast off. What is quicker comes half at the foot and half at the
    top, the odd one at the top, so that the cap is steepest in the middle.

    :param rows: of the whole cap, the two of the first cast-off included; at least 2 + 2 · ``each`` ÷ ``QUICKEST``.
    """
    pairs = (rows - 1) // 2
    if each <= pairs:
        intervals = spread_along(pairs, each).intervals()
        at, pair = [], 0
        for interval in _quick_at_both_ends(intervals, quick=min(intervals, default=0)):
            pair += interval
            at.append(pair)
        shares = dict.fromkeys(at, 1)
    else:
        whole = rows // 2 - 1
        lone = pairs - whole  # a right-side row at the top without its wrong-side row
        base, more = divmod(each - lone, whole)
        sizes = _quick_at_both_ends((base + 1,) * more + (base,) * (whole - more), quick=base + 1)
        shares = dict(enumerate((*sizes, *(1,) * lone), start=1))
    return ((0, Kind.CAST_OFF, first), *(step for pair, taken in shares.items() for step in _pair(2 * pair, taken)))


def _quick_at_both_ends(values: tuple[int, ...], *, quick: int) -> list[int]:
    """Put half of the values that are ``quick`` first and half last, the odd one last."""
    often = values.count(quick)
    others = [value for value in values if value != quick]
    return [quick] * (often // 2) + others + [quick] * (often - often // 2)


def _pair(row: int, taken: int) -> tuple[AtRow, ...]:
    if taken > 2:
        return ((row, Kind.CAST_OFF, taken),)
    return tuple((row + place, Kind.DECREASE, 1) for place in range(taken))
