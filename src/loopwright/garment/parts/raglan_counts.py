"""The counts of a raglan: a small integer problem, solved over its whole grid.

Given the stitches round the bust B and the upper arm U, choose the underarm u, the sleeve's top t and the neck n (whole
stitches) and the rows R, so that with whole numbers of shapings on the body's and on the sleeve's side of the lines

    back at the underarm    B ÷ 2 − u = n + 2 · body times,      0 ≤ body times ≤ R
    sleeve at the underarm  U − u     = t + 2 · sleeve times,    0 ≤ sleeve times ≤ R
    depth                   R rows + t ÷ 2 stitches across       (half the sleeve's top lies before, half behind)

Order of preference: bust, then upper arm, each the nearest count. For any u and t, R is the nearest to the depth, and n
the nearest to the neck that back and rows allow, the larger of two. Of all u and t, those with the least sum of

    8 · rows by which the depth is off, where by more than half a row
    4 · stitches by which the neck is off, where by more than half a stitch
    2 · stitches by which t is off its rule
    1 · stitches by which u is off 8 % of the bust
    1 · rows by which the shaping of the body, and of the sleeve, strays from every 2nd row

Back and front are always alike. Of equals, the smaller u, then the smaller t. The weights are our judgement.

Sources: a sleeve's top is a third of the back neck where the front neck is shaped (Walker, *Knitting from the Top*,
1972, as a sweater class used it), half of it where the yoke is joined at once (⅓, ⅙, ⅓, ⅙; common practice, no source);
half the sleeve's top adds to the depth (a designer's article of 2013); 8 %: the percentage system.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

import numpy as np
from numpy.typing import NDArray

from loopwright.fabric import Gauge
from loopwright.garment.parts.yoke_counts import UNDERARM_SHARE
from loopwright.garment.shaping import Rhythm, nearest_count, spread_mixed
from loopwright.units import BadInput, told

__all__ = ["RaglanCounts", "RaglanTargets", "raglan_counts", "shaping_rows", "sleeve_top"]

WALKER_TOP = Fraction(1, 3)
JOINED_TOP = Fraction(1, 2)
LEAST_TOP = 2
LEAST_ROWS = 4
DEPTH_WEIGHT, NECK_WEIGHT, TOP_WEIGHT = 8.0, 4.0, 2.0
UNDERARM_RANGE = 2
"""The underarm takes no more than so many times its usual share, and no less than that part of it: 4 to 16 %, which
holds the 1 to 3 in of common practice. Our judgement."""


@dataclass(frozen=True, slots=True)
class RaglanTargets:
    """What the counts are to reach.

    :ivar bust: stitches all round.
    :ivar like: what back and front must be odd or even like, if anything.
    :ivar upper_arm, neck, top: stitches, not rounded.
    :ivar depth_cm: from the neck end of the shoulder to the underarm.
    :ivar flat: worked to and fro, so that the rows are even.
    """

    bust: int
    like: int | None
    upper_arm: float
    depth_cm: float
    neck: float
    top: float
    gauge: Gauge
    flat: bool


@dataclass(frozen=True, slots=True)
class RaglanCounts:
    """Counts of a raglan yoke, its front taken as closed.

    :ivar neck: stitches of the back at the neck.
    :ivar top: stitches of a sleeve at the neck.
    :ivar rows: in which the lines are shaped.
    :ivar body_times, sleeve_times: how often; each adds two stitches to back and front, or to both sleeves.
    """

    underarm: int
    upper_arm: int
    neck: int
    top: int
    rows: int
    body_times: int
    sleeve_times: int

    @property
    def back(self) -> int:
        """Give the stitches of the back at the underarm."""
        return self.neck + 2 * self.body_times

    @property
    def sleeve(self) -> int:
        """Give the stitches of a sleeve at the underarm."""
        return self.top + 2 * self.sleeve_times

    def half_top_cm(self, gauge: Gauge) -> float:
        """Give half the width of a sleeve's top in cm: so much lower than the shoulder do front and back begin."""
        return gauge.width_cm(self.top) / 2

    def depth_cm(self, gauge: Gauge) -> float:
        """Give the depth from the neck end of the shoulder to the underarm in cm: rows, and half the sleeve's top.

        Source: a designer's article of 2013; 5.5 in of raglan and a sleeve's top of 4 in are 7.5 in.
        """
        return self.rows * 10 / gauge.rows_or_usual_per_10cm + self.half_top_cm(gauge)


def sleeve_top(neck: float, front_depth: float) -> float:
    """Give the stitches of a sleeve's top that go with a back neck, not rounded.

    :param front_depth: of the neck, in stitches' widths. Half the sleeve's top lies in front of the shoulder, so a neck
        no deeper than a quarter of the back neck needs no shaping in front: the top is then twice its depth.
    """
    if is_joined_at_once(neck, front_depth):
        return max(2 * front_depth, float(WALKER_TOP) * neck)
    return float(WALKER_TOP) * neck


def is_joined_at_once(neck: float, front_depth: float) -> bool:
    """Say whether a front neck is shallow enough for the yoke to be joined in its first round."""
    return 2 * front_depth <= float(JOINED_TOP) * neck * (1 + 1e-9)


def shaping_rows(rows: int, times: int, *, up: bool) -> tuple[int, ...]:
    """Give the rows in which a line is shaped, from 0 in working order: every 2nd, slower where fewer will do.

    Where every 2nd row does not suffice, every row for a part, next to the underarm. Worked down, the
    shaping of every 2nd row lies in even rows; worked up, in those that have an even number of rows from them to the
    end, themselves included: right-side rows of what is worked to and fro.
    """
    rhythm: Rhythm = spread_mixed(rows, times)
    at = rhythm.shaping_rows()
    if up:
        return tuple(rows - 1 - row for row in reversed(at))
    return at if times == rows else tuple(row - 1 for row in at)


def raglan_counts(targets: RaglanTargets) -> RaglanCounts:
    """Solve the problem at the head of the module.

    :raises BadInput: an upper arm that the rows cannot reach, naming the nearest that they can.
    """
    upper = nearest_count(targets.upper_arm, least=4)
    usual = max(round(UNDERARM_SHARE * targets.bust), 1)
    least, most = -(-usual // UNDERARM_RANGE), min(UNDERARM_RANGE * usual, targets.bust // 2 - LEAST_TOP)
    top_most = max(round(targets.neck), LEAST_TOP + 1)
    under = np.arange(least, most + 1)[:, None]
    tops = np.arange(LEAST_TOP, top_most + 1)[None, :]
    step = 2 if targets.flat else 1
    row_cm, stitch_cm = 10 / targets.gauge.rows_or_usual_per_10cm, targets.gauge.width_cm(1)
    exact = (targets.depth_cm - tops * stitch_cm / 2) / row_cm
    rows = np.maximum(step * np.rint(exact / step), LEAST_ROWS).astype(np.int64)
    back = targets.bust // 2 - under
    body = np.clip(np.ceil((back - targets.neck) / 2 - 0.5), 0, rows).astype(np.int64)
    neck = back - 2 * body
    arm = upper - under - tops
    fits = (arm % 2 == 0) & (arm >= 0) & (arm <= 2 * rows) & (neck >= 1)
    if targets.like is not None:
        fits &= (back - targets.like) % 2 == 0
    if not fits.any():
        raise _out_of_reach(upper, least + LEAST_TOP, int(np.max(under + tops + 2 * rows)), stitch_cm)
    cost = (
        DEPTH_WEIGHT * _where_off(rows - exact)
        + NECK_WEIGHT * _where_off(neck - targets.neck)
        + np.abs(under - usual)
        + TOP_WEIGHT * np.abs(tops - round(targets.top))
        + np.abs(2 * body - rows)
        + np.abs(arm - rows)
    )
    place = np.unravel_index(int(np.argmin(np.where(fits, cost, np.inf))), cost.shape)
    u, t = int(under[place[0], 0]), int(tops[0, place[1]])
    return RaglanCounts(u, upper, int(neck[place]), t, int(rows[0, place[1]]), int(body[place]), (upper - u - t) // 2)


def _where_off(off: NDArray[np.floating[Any]]) -> NDArray[np.floating[Any]]:
    """Give by how much something is off, nothing up to half a stitch or row."""
    return np.where(np.abs(off) > 0.5 + 1e-9, np.abs(off), 0.0)


def _out_of_reach(upper: int, least: int, most: int, stitch_cm: float) -> BadInput:
    return BadInput(
        found=told("an upper arm of {}", upper * stitch_cm),
        wanted=told("from {} to {} with this bust and this depth of yoke", least * stitch_cm, most * stitch_cm),
        place="upper_arm_girth",
    )
