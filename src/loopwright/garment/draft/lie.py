"""How shawls knitted from the middle of their top edge lie, once they are pinned out flat.

Their rows do not lie straight on one another: each section's stitches and area are right, its stacked outline is not
its shape. The whole piece, edge included, is taken as one plain shape of the same area as its rows:

* triangle shawl: right-angled, with two equal legs, depth D = √A and width 2·D;
* half-round shawl: half a disc, drawn out to half an ellipse: D is the height of its rows, width 4/π · A/D. It is a
  true half disc, twice as wide as deep, where the gauge goes with the doublings, as in stocking stitch it nearly does;
* crescent shawl: between two parabolas that meet in the tips, A = ⅔·width·D; D is the height of its rows, and the lower
  parabola is as long as the last row. The top edge is straight at the least, and then the last row lies looser.

A piece pinned out otherwise, or a fabric that is stretched in one direction, comes out otherwise: all three are
approximate. Source: geometry; which shape stands for which shawl is our choice.
"""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from loopwright.garment.draft.outline import Points
from loopwright.garment.draft.piece import Draft, Piece
from loopwright.pattern import Construction

__all__ = ["AREA_TOLERANCE", "crescent_size_cm", "half_round_size_cm", "lying_outline_cm", "triangle_size_cm"]

AREA_TOLERANCE: Final = 1e-3
"""Most by which the area within a lying outline differs from the sum over the rows, as a share: arcs are drawn as
straight lines between points."""
ARC_POINTS: Final = 97


def triangle_size_cm(area_cm2: float) -> tuple[float, float]:
    """Give width and depth in cm of a right-angled triangle with equal legs: 2·√A and √A."""
    depth = math.sqrt(area_cm2)
    return 2 * depth, depth


def half_round_size_cm(area_cm2: float, depth_cm: float) -> tuple[float, float]:
    """Give width and depth in cm of half an ellipse: 4/π · A/D along the straight edge, and D."""
    return 4 / math.pi * area_cm2 / depth_cm, depth_cm


def crescent_size_cm(area_cm2: float, depth_cm: float) -> tuple[float, float]:
    """Give width and depth in cm of a crescent between two parabolas: 3/2 · A/D from tip to tip, and D."""
    return 1.5 * area_cm2 / depth_cm, depth_cm


def lying_outline_cm(draft: Draft) -> Points | None:
    """Give the outline of a shawl knitted from the middle of its top edge, in cm; shape (points, 2).

    The middle of the top edge lies at 0, 0; x to the right, y in knitting order, so that the point or rim is highest.
    It stands for all sections of the one piece together. None for what is not knitted from the centre: there
    :func:`~loopwright.garment.draft.piece_outlines_cm` gives the shape.
    """
    if draft.construction not in _OUTLINES:
        return None
    return _OUTLINES[draft.construction](draft.pieces[0])


def _area_cm2(piece: Piece) -> float:
    return sum(section.area_cm2 for section in piece.sections)


def _triangle(piece: Piece) -> Points:
    width, depth = triangle_size_cm(_area_cm2(piece))
    return np.array([(-width / 2, 0.0), (width / 2, 0.0), (0.0, depth)])


def _half_round(piece: Piece) -> Points:
    width, depth = half_round_size_cm(_area_cm2(piece), piece.height_cm)
    angles = np.linspace(0.0, math.pi, ARC_POINTS)
    return np.column_stack((width / 2 * np.cos(angles), depth * np.sin(angles)))


def _crescent(piece: Piece) -> Points:
    width, depth = crescent_size_cm(_area_cm2(piece), piece.height_cm)
    last = piece.sections[-1]
    below_tips = max(_rise_cm(width, last.last * last.stitch_width_cm), depth)
    across = np.linspace(-1.0, 1.0, ARC_POINTS)
    lower = np.column_stack((across * width / 2, depth - below_tips * across**2))
    upper = np.column_stack((across * width / 2, (depth - below_tips) * across**2))
    return np.vstack((lower, upper[-2:0:-1]))


def _rise_cm(chord_cm: float, arc_cm: float) -> float:
    """Give the rise of a parabola's arc of this length over a chord, by halving; 0 where the arc is no longer."""
    low, high = 0.0, max(arc_cm, chord_cm)
    for _ in range(50):
        middle = (low + high) / 2
        steep = 4 * middle / chord_cm
        arc = chord_cm / 2 * (math.hypot(1, steep) + (math.asinh(steep) / steep if steep else 1.0))
        low, high = (middle, high) if arc < arc_cm else (low, middle)
    return low


_OUTLINES: Final = {
    Construction.TRIANGLE_SHAWL.value: _triangle,
    Construction.HALF_ROUND_SHAWL.value: _half_round,
    Construction.CRESCENT_SHAWL.value: _crescent,
}
