"""The shape of a piece as it is drawn: outlines of its sections turned upright, in cm, x to the right and y down."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Piece, Section, piece_outlines_cm
from loopwright.pictures.body_outline import Point
from loopwright.pictures.schematic_views import Turn, View

__all__ = ["PieceShape", "Ribs", "Turning", "piece_shape"]

Points = NDArray[np.float64]
Line = list[Point]
Span = tuple[float, float]

GRAIN_CM = 1e-6
LEVELS = 120
"""How finely the ends of a piece are known to what is written in and beside it."""


@dataclass(frozen=True, slots=True)
class Turning:
    """From the coordinates of a piece, y in knitting order, to those of the drawing.

    :ivar height: of the piece along its knitting, in cm.
    :ivar left: its leftmost point, in cm from its middle line.
    """

    turn: Turn
    height: float
    left: float

    def point(self, x: float, y: float) -> Point:
        """Give where a point is drawn."""
        if self.turn == "up":
            return x, self.height - y
        return (-x, y) if self.turn == "down" else (y, x - self.left)

    def line(self, points: Sequence[Point]) -> Line:
        """Give where a line is drawn."""
        return [self.point(x, y) for x, y in points]

    def outline(self, points: Points) -> Points:
        """Give where an outline is drawn; shape (points, 2)."""
        x, y = points[:, 0], points[:, 1]
        if self.turn == "up":
            return np.column_stack((x, self.height - y))
        return np.column_stack((-x, y) if self.turn == "down" else (y, x - self.left))


@dataclass(frozen=True, slots=True)
class Ribs:
    """Where wales of a rib run: from left to right end, from first to last row, one repeat apart; of the piece."""

    left: float
    right: float
    begin: float
    end: float
    repeat: float


@dataclass(frozen=True, eq=False)
class PieceShape:
    """A piece turned upright.

    :ivar sections: outline of every section by key, in drawn coordinates.
    :ivar outline: heavy lines: the edges of the piece.
    :ivar divides: thin lines between sections.
    :ivar behind: edges of the back, where a tube divides into front and back.
    :ivar left, right, height: the box that it fills, from y = 0.
    :ivar ends: left and right end at each of so many levels from the top; shape (2, levels).
    :ivar rims: left, top, right and bottom of every straight stretch of its edges; shape (stretches, 4).
    """

    turning: Turning
    sections: dict[str, Points]
    outline: list[Line]
    divides: list[Line]
    behind: list[Line]
    ribs: list[Ribs]
    left: float
    right: float
    height: float
    ends: Points
    rims: Points

    def extent(self, y: float) -> Span | None:
        """Give the left and right end of the piece near a height of the drawing; None where there is nothing."""
        place = min(max(int(y / self.height * LEVELS), 0), LEVELS - 1)
        left, right = float(self.ends[0, place]), float(self.ends[1, place])
        return (left, right) if left <= right else None

    def is_crossed(self, left: float, top: float, right: float, bottom: float) -> bool:
        """Say whether an edge of the piece may run through a rectangle of the drawing."""
        rims = self.rims
        meets = (rims[:, 0] < right) & (rims[:, 2] > left) & (rims[:, 1] < bottom) & (rims[:, 3] > top)
        return bool(meets.any())


def _rims(lines: Sequence[Line]) -> Points:
    ends = np.array([(*one, *other) for line in lines for one, other in pairwise(line)])
    x, y = ends[:, 0::2], ends[:, 1::2]
    return np.column_stack((x.min(axis=1), y.min(axis=1), x.max(axis=1), y.max(axis=1)))


def _ends(outlines: Iterable[Points], height: float) -> Points:
    """Give the left and the right end at the middle of each level of a drawing; shape (2, levels)."""
    levels = (np.arange(LEVELS) + 0.5) * height / LEVELS
    ends = np.array([np.full(LEVELS, np.inf), np.full(LEVELS, -np.inf)])
    for points in outlines:
        x0, y0 = points[:, :1], points[:, 1:]
        x1, y1 = np.roll(x0, -1, axis=0), np.roll(y0, -1, axis=0)
        crossed = (y0 <= levels) != (y1 <= levels)
        rise = np.where(y1 == y0, 1.0, y1 - y0)
        x = x0 + (levels - y0) / rise * (x1 - x0)
        ends[0] = np.minimum(ends[0], np.where(crossed, x, np.inf).min(axis=0))
        ends[1] = np.maximum(ends[1], np.where(crossed, x, -np.inf).max(axis=0))
    return ends


def piece_shape(view: View) -> PieceShape:
    """Give the shape of a piece, turned so that it grows up, down or to the right."""
    piece, turn = view.piece, view.turn
    if view.lying is not None:
        return _lying_shape(piece, turn, view.lying)
    outlines = {key: points for key, points in piece_outlines_cm(piece).items() if len(points)}
    points = np.concatenate(list(outlines.values()))
    turning = Turning(turn, float(points[:, 1].max()), float(points[:, 0].min()))
    turned = {key: turning.outline(one) for key, one in outlines.items()}
    drawn = np.concatenate(list(turned.values()))
    height = float(drawn[:, 1].max())
    outline, divides = _edges([outlines[one.key] for one in piece.sections if one.rows and one.face != "back"])
    behind: list[Line] = []
    if any(one.face == "back" for one in piece.sections):
        seen = _edges([outlines[one.key] for one in piece.sections if one.rows and one.face != "front"])[0]
        behind = [line for line in seen if line not in outline]
    edges = [turning.line(one) for one in outline]
    return PieceShape(
        turning=turning,
        sections=turned,
        outline=edges,
        divides=[turning.line(one) for one in divides],
        behind=[turning.line(one) for one in behind],
        ribs=[_ribs(one, piece.base_cm(one.key)) for one in piece.sections if "rib" in one.fabric and one.rows],
        left=float(drawn[:, 0].min()),
        right=float(drawn[:, 0].max()),
        height=height,
        ends=_ends(turned.values(), height),
        rims=_rims(edges),
    )


def _lying_shape(piece: Piece, turn: Turn, lying: Points) -> PieceShape:
    """Give the shape of a shawl as it is pinned out, all its sections in one outline."""
    points = lying - (0.0, float(lying[:, 1].min()))
    turning = Turning(turn, float(points[:, 1].max()), float(points[:, 0].min()))
    outline = turning.outline(points)
    line = [(x, y) for x, y in outline.tolist()]
    edges = [[*line, line[0]]]
    height = float(outline[:, 1].max())
    return PieceShape(
        turning=turning,
        sections={piece.key: outline},
        outline=edges,
        divides=[],
        behind=[],
        ribs=[],
        left=float(outline[:, 0].min()),
        right=float(outline[:, 0].max()),
        height=height,
        ends=_ends([outline], height),
        rims=_rims(edges),
    )


def _ribs(section: Section, base_cm: float) -> Ribs:
    right = section.left_edge + section.flat_stitches
    stitch = section.stitch_width_cm
    repeat = 4 if section.fabric.startswith("2x2") else 2
    return Ribs(
        float(section.left_edge.max()) * stitch,
        float(right.min()) * stitch,
        base_cm,
        base_cm + section.height_cm,
        repeat * stitch,
    )


def _edges(outlines: Sequence[Points]) -> tuple[list[Line], list[Line]]:
    """Give the edges of sections that stand on each other, and the lines between them.

    Where the end of one section meets the begin of another, what they share divides them; the rest is an edge.
    """
    sides: list[Line] = []
    ends: dict[float, list[Span]] = {}
    for points in outlines:
        top = int(points[:, 1].argmax())
        left, right = points[: top + 1].tolist(), points[top + 1 :].tolist()
        sides += [[(x, y) for x, y in left], [(x, y) for x, y in right]]
        for one, other in ((left[-1], right[0]), (left[0], right[-1])):
            level = next((known for known in ends if abs(known - one[1]) < GRAIN_CM), one[1])
            ends.setdefault(level, []).append((one[0], other[0]))
    edges: list[Line] = list(sides)
    divides: list[Line] = []
    for level, spans in ends.items():
        for one, other, times in _covered(spans):
            (edges if times == 1 else divides).append([(one, level), (other, level)])
    return edges, divides


def _covered(spans: Sequence[Span]) -> Iterator[tuple[float, float, int]]:
    """Give how many spans cover each stretch between their ends."""
    marks = sorted({end for span in spans for end in span})
    for one, other in pairwise(marks):
        middle = (one + other) / 2
        times = sum(low < middle < high for low, high in spans)
        if times and other - one > GRAIN_CM:
            yield one, other, times
