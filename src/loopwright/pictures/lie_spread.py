"""From rows of knitting to the picture and back: a shawl knitted from the middle of its top edge, pinned out.

Every row encloses the rows before it, so the rows within one take the share of the area that their stitches have of
all: v is that share, and every stitch has the same area. u is the share of the row. Shapes as
:mod:`loopwright.garment.draft.lie` gives them, the top edge at y = 0 and the point or rim below it.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

__all__ = ["CrescentSpread", "HalfRoundSpread", "TriangleSpread"]

Floats = NDArray[np.floating]
Pair = tuple[Floats, Floats]
LEAST = 1e-9


@dataclass(frozen=True, slots=True)
class TriangleSpread:
    """Rows run parallel to the two lower sides, from tip to tip."""

    width: float
    depth: float

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        size, across = np.sqrt(v), 1 - 2 * u
        return size * across * self.width / 2, size * (1 - np.abs(across)) * self.depth

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        across, down = 2 * x / self.width, y / self.depth
        size = np.abs(across) + down
        u = (1 - across / np.maximum(size, LEAST)) / 2
        return u, np.where(down >= 0, size**2, -1)


@dataclass(frozen=True, slots=True)
class HalfRoundSpread:
    """Rows are halves of ellipses about the middle of the top edge."""

    width: float
    depth: float

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        size, angle = np.sqrt(v), np.pi * u
        return size * np.cos(angle) * self.width / 2, size * np.sin(angle) * self.depth

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        across, down = 2 * x / self.width, y / self.depth
        u = np.arctan2(down, across) / np.pi
        return u, np.where(down >= 0, across**2 + down**2, -1)


@dataclass(frozen=True, slots=True)
class CrescentSpread:
    """Rows are parabolas between the ends of the rows on the curved top edge.

    :ivar rise: how far the tips lie above the middle of the top edge; 0 where it is straight.
    """

    width: float
    depth: float
    rise: float

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        size = np.sqrt(v)
        along = np.linspace(-1, 1, 2001)
        across = np.interp(1 - np.asarray(u), _share_of(along), along)
        x = size * across
        return x * self.width / 2, size * (1 - across**2) * self.depth - self.rise * x**2

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        across = 2 * x / self.width
        down = (y + self.rise * across**2) / self.depth
        size = (down + np.sqrt(np.maximum(down**2 + 4 * across**2, 0))) / 2
        along = np.clip(across / np.maximum(size, LEAST), -1, 1)
        return 1 - _share_of(along), np.where(down >= 0, size**2, -1)


def _share_of(along: Floats) -> Floats:
    """Give the share of a row's area up to a place of its span from −1 to 1: the cells widen towards the ends."""
    return (along + along**3 / 3) * 3 / 8 + 0.5
