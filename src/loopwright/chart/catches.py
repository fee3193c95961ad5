"""Long floats: how long one may be, and where it is caught."""

from __future__ import annotations

import bisect
import math
from dataclasses import dataclass
from typing import Final

import numpy as np

from loopwright.chart.floats import find_floats
from loopwright.chart.grid import Chart
from loopwright.units import BadInput

__all__ = ["LEAST_LIMIT", "LongFloat", "catch_cells", "long_floats", "usual_limit", "young_child_limit"]

LEAST_LIMIT: Final = 3
"""A limit under three stitches would be catching everything; our judgement."""
_SHIFTS: Final = (0, 1, -1, 2, -2)
"""How far catches move aside so that they do not stand above those of the row below: common practice, no source."""


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
