"""The outline of a section, computed from its counts and its gauge."""

from __future__ import annotations

import math
from collections.abc import Iterable
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from loopwright.fabric import Gauge
from loopwright.garment.draft.piece import Piece
from loopwright.garment.draft.section import Kind, Section

__all__ = [
    "CURVE_WITHIN_ROWS",
    "STEP_FROM_STITCHES",
    "Move",
    "edge_length_cm",
    "piece_outlines_cm",
    "section_outline_cm",
    "shaped_length_cm",
]

STEP_FROM_STITCHES = 2.0
"""An edge that moves by more than this from one row to the next is drawn as a step, not as a slope."""

Points = NDArray[np.float64]
Move = tuple[int, float, bool]
"""Row, stitches by which an edge moves, and whether they are cast off or on at once."""


def _edge(edge_sts: NDArray[np.float64]) -> list[tuple[float, float]]:
    """Give an edge from the first row's begin to the last row's end as (stitches, rows)."""
    points = [(float(edge_sts[0]), 0.0), (float(edge_sts[0]), 0.5)]
    for row, (one, other) in enumerate(pairwise(edge_sts.tolist())):
        if abs(one - other) > STEP_FROM_STITCHES:
            points += [(one, row + 1.0), (other, row + 1.0)]
        points.append((other, row + 1.5))
    points.append((float(edge_sts[-1]), float(len(edge_sts))))
    return points


def _without_straight_points(points: list[tuple[float, float]]) -> list[tuple[float, float]]:
    kept: list[tuple[float, float]] = []
    for point in points:
        while len(kept) >= 2:
            (x0, y0), (x1, y1) = kept[-2], kept[-1]
            if abs((x1 - x0) * (point[1] - y0) - (point[0] - x0) * (y1 - y0)) > 1e-9:
                break
            kept.pop()
        if not kept or kept[-1] != point:
            kept.append(point)
    return kept


def section_outline_cm(section: Section, base_cm: float = 0.0) -> Points:
    """Give the outline of a section as it lies flat, in cm; shape (points, 2), x to the right, y in knitting order.

    Edges run through the middle of each row's end, so the area within equals the sum over the rows exactly; a change
    of more than two stitches is drawn as a step between the rows. A tube is drawn once, at half its stitches. Empty for
    a section without rows.
    """
    if section.rows == 0:
        return np.zeros((0, 2))
    left = section.left_edge
    right = left + section.flat_stitches
    points = [*_without_straight_points(_edge(left)), *reversed(_without_straight_points(_edge(right)))]
    outline = np.array(points) * (section.stitch_width_cm, section.row_height_cm)
    outline[:, 1] += base_cm
    return outline


def piece_outlines_cm(piece: Piece) -> dict[str, Points]:
    """Give the outline of every section of a piece, each standing on the one that it carries on, in cm."""
    return {one.key: section_outline_cm(one, piece.base_cm(one.key)) for one in piece.sections}


CURVE_WITHIN_ROWS = 4
"""Stitches cast off within so many rows of the shaping before belong to one curve; later, to a corner."""


def shaped_length_cm(moves: Iterable[Move], rows: int, gauge: Gauge) -> float:
    """Give the length of an edge as it is sewn or picked up: straight from one shaping to the next, in cm.

    √((stitches × width)² + (rows × height)²) from one to the next: to the end of the row in which stitches are
    decreased or increased, to the begin of one in which they are cast off or on. What is cast off after a longer
    upright stretch makes a corner, and what is cast off in row 0 a level stretch. Above the last shaping the edge is
    upright. Row by row, as a zigzag, the same edge would be a tenth longer where every second row is shaped; nobody
    sews that.

    :param moves: in the order of rows.
    Source: Pythagoras, as a magazine article measures armhole and cap: at 5 and 7 to the inch, 5 stitches cast off, 5
    decreased over 10 rows and 46 rows straight are 1 + √(1² + 1.429²) + 6.571 = 9.315 in.
    """
    width, height = gauge.width_cm(1), 10 / gauge.rows_or_usual_per_10cm
    length, before = 0.0, 0
    for row, stitches, at_once in moves:
        across, to = abs(stitches) * width, row + (not at_once)
        if at_once and row - before > CURVE_WITHIN_ROWS:
            length += across + (to - before) * height
        else:
            length += math.hypot(across, (to - before) * height)
        before = to
    return length + (rows - before) * height


def edge_length_cm(
    section: Section, side: Literal["left", "right"], *, from_row: int = 0, to_row: int | None = None
) -> float:
    """Give the length of a section's left or right edge in cm, from one row to another: :func:`shaped_length_cm`."""
    edge, begin = section.left_edge, section.begin_left
    if side == "right":
        edge = edge + section.flat_stitches
        begin += section.first / (2 if section.in_the_round else 1)
    at_once = {one.row - from_row for one in section.shapings if one.side == side and one.kind in _AT_ONCE}
    moved = np.diff(edge, prepend=begin)[from_row:to_row]
    moves = ((int(row), float(moved[row]), int(row) in at_once) for row in np.flatnonzero(moved))
    return shaped_length_cm(moves, len(moved), section.gauge)


_AT_ONCE = frozenset({Kind.CAST_OFF, Kind.CAST_ON, Kind.REST, Kind.TAKE_UP})
