"""The front neck of a raglan: stitches that the front lacks at the neck, and the rows in which it gets or loses them.

Worked to and fro from the neck end of the front's lines down to its middle; there a closed front is joined. The front
begins with one stitch beside each line. Source of that: Walker, *Knitting from the Top*, 1972, as a sweater class used
it; curves as of any other neck.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from loopwright.fabric import Gauge
from loopwright.garment.draft import Kind
from loopwright.garment.draft.section import Side
from loopwright.garment.parts.plan import neck_curve
from loopwright.garment.wanted import Neckline
from loopwright.units import BadInput

__all__ = ["BESIDE_LINE", "FrontNeck", "front_neck"]

BESIDE_LINE = 1
"""Stitches of the front between each raglan line and the neck, where it begins."""

NeckChange = tuple[int, Kind, Side, int]


@dataclass(frozen=True, slots=True)
class FrontNeck:
    """Counts and rows of the front's neck edge.

    :ivar rows: even, from the neck end of the lines down to the middle; 0 where the yoke is joined at once.
    :ivar top: stitches of the front, both halves together, at the neck end of its lines.
    :ivar centre: stitches of the middle, cast on or off at once.
    :ivar steps: (row from the middle upwards, stitches lost at each side).
    """

    rows: int
    top: int
    centre: int
    steps: tuple[tuple[int, int], ...]

    def upwards(self) -> list[NeckChange]:
        """Give what is done at both neck edges, by rows from 0 above the middle."""
        changes: list[NeckChange] = []
        for row, stitches in self.steps:
            kind = Kind.DECREASE if stitches == 1 else Kind.CAST_OFF
            changes += [(row, kind, "right", stitches), (row + (stitches > 1), kind, "left", stitches)]
        return changes

    def downwards(self) -> list[NeckChange]:
        """Give the same by rows from 0 at the neck end of the lines: what was lost is gained."""
        changes: list[NeckChange] = []
        for up, stitches in self.steps:
            row, kind = self.rows - up, Kind.INCREASE if stitches == 1 else Kind.CAST_ON
            changes += [(row, kind, "right", stitches), (row + (stitches > 1), kind, "left", stitches)]
        return changes

    def side_cm(self, gauge: Gauge) -> float:
        """Give the length of one side's neck edge in cm: one or two stitches as a slope, more as a step."""
        lost = dict(self.steps)
        width, height = gauge.width_cm(1), 10 / gauge.rows_or_usual_per_10cm
        return math.fsum(
            math.hypot(lost.get(row, 0) * width, height) if lost.get(row, 0) <= 2 else lost[row] * width + height
            for row in range(self.rows)
        )

    def edge_cm(self, gauge: Gauge) -> float:
        """Give the length of the whole front neck edge in cm."""
        return gauge.width_cm(self.top if self.rows == 0 else self.centre) + 2 * self.side_cm(gauge)


def front_neck(style: Neckline, stitches: int, rows: int) -> FrontNeck:
    """Give the neck of a front that would have ``stitches`` at the neck if it had no opening.

    :param stitches: without those that front bands take up; even where it opens.
    :param rows: even, from the neck end of the lines down to the middle.
    :raises BadInput: too few stitches for a neck.
    """
    if rows == 0:
        return FrontNeck(0, stitches, 0, ())
    width = stitches - 2 * BESIDE_LINE
    if width < 1:
        raise BadInput(
            found=f"{max(stitches, 0)} stitches for the front of the neck",
            wanted="a wider neck, or narrower front bands",
            place="neck_width",
        )
    curve = neck_curve(style, width, rows - 1)
    steps = tuple((at + 1, lost) for at, lost in zip(curve.at, curve.sides, strict=True) if lost)
    return FrontNeck(rows, 2 * BESIDE_LINE, curve.centre, steps)
