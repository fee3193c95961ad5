"""The outline of a section, computed from its counts and its gauge."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft.piece import Piece
from loopwright.garment.draft.section import Section

__all__ = ["STEP_FROM_STITCHES", "edge_length_cm", "piece_outlines_cm", "section_outline_cm"]

STEP_FROM_STITCHES = 2.0
"""An edge that moves by more than this from one row to the next is drawn as a step, not as a slope."""

Points = NDArray[np.float64]


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


def edge_length_cm(
    section: Section, side: Literal["left", "right"], *, from_row: int = 0, to_row: int | None = None
) -> float:
    """Give the true length of a section's left or right edge in cm, from one row to another.

    Row by row: the height of the row, and across it the stitches by which the edge moves (Pythagoras). Stitches cast
    off or on at once, more than two, count with their whole width, shaping of one or two stitches as a slope.
    """
    edge, begin = section.left_edge, section.begin_left
    if side == "right":
        edge = edge + section.flat_stitches
        begin += section.first / (2 if section.in_the_round else 1)
    across = np.abs(np.diff(edge, prepend=begin))[from_row:to_row]
    height = section.row_height_cm
    stepped = across > STEP_FROM_STITCHES
    slopes = np.hypot(across[~stepped] * section.stitch_width_cm, height).sum()
    return float(slopes + (across[stepped] * section.stitch_width_cm + height).sum())
