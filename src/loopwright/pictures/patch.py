"""What a picture of a garment is made of: runs of rows in their places, the ones behind first."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from loopwright.pictures.laid_rows import LaidRows
from loopwright.pictures.lie_bent import Bend
from loopwright.pictures.lie_flat import Lie, Mirrored

__all__ = ["EVERYWHERE", "LAYERS", "Box", "Face", "Patch", "Placed", "both_sides", "left_and_right", "side_profile"]

Face = Literal["front", "back"]
"""Which side of the wearer is seen."""
Floats = NDArray[np.float64]

Box = tuple[float, float, float, float]
"""Left, top, right and bottom in cm."""
EVERYWHERE: Final[Box] = (-math.inf, -math.inf, math.inf, math.inf)

LAYERS: Final = {
    "inside": 1,
    "inside band": 2,
    "sleeve": 3,
    "body": 4,
    "yoke": 5,
    "neckband": 6,
    "armband": 7,
    "band below": 8,
    "band": 9,
}
"""What lies over what, from the back; a line is drawn where two of them meet."""


@dataclass(frozen=True, eq=False)
class Patch:
    """Rows in their place.

    :ivar inside: the inside of the garment is seen.
    :ivar bounds: left, top, right and bottom beyond which nothing of it is drawn.
    """

    rows: LaidRows
    lie: Lie
    layer: int
    inside: bool = False
    bounds: Box = EVERYWHERE

    def outline(self) -> Floats:
        """Give its outline in cm of the picture; shape (points, 2)."""
        return np.column_stack(self.lie.to_picture(*self.rows.outline().T))

    @cached_property
    def box(self) -> Box:
        """Give left, top, right and bottom in cm."""
        points = self.outline()
        (left, top), (right, bottom) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
        limits = self.bounds
        return max(left, limits[0]), max(top, limits[1]), min(right, limits[2]), min(bottom, limits[3])


@dataclass(frozen=True, slots=True, eq=False)
class Placed:
    """A garment seen from one side.

    :ivar patches: those behind come first.
    :ivar sleeve: how the sleeve on the right of the picture hangs, where there are sleeves.
    :ivar is_worn: on the trunk, so that a body can stand behind it.
    :ivar is_hat: on a head.
    :ivar neck_y: where the side of the neck lies.
    """

    patches: tuple[Patch, ...]
    sleeve: Bend | None = None
    is_worn: bool = False
    is_hat: bool = False
    neck_y: float = 0.0

    def box(self) -> Box:
        """Give left, top, right and bottom of all of it in cm."""
        boxes = np.array([patch.box for patch in self.patches])
        left, top = boxes[:, :2].min(axis=0)
        right, bottom = boxes[:, 2:].max(axis=0)
        return float(left), float(top), float(right), float(bottom)


def both_sides(rows_right: LaidRows, rows_left: LaidRows, lie: Lie, layer: int) -> list[Patch]:
    """Give what lies on the right of the picture and its like on the left."""
    return [Patch(rows_right, lie, layer), Patch(rows_left, Mirrored(lie), layer)]


def left_and_right(patch: Patch, levels: Floats) -> tuple[Floats, Floats]:
    """Give where a patch that lies level begins and ends at levels y of the picture; no number where it is not."""
    left, right = patch.rows.edges
    _, v = patch.lie.from_picture(np.zeros_like(levels), levels)
    v = np.asarray(v, dtype=np.float64)
    ends = []
    for edge in (left, right):
        u = np.interp(v, edge[:, 1], edge[:, 0], left=np.nan, right=np.nan)
        ends.append(patch.lie.to_picture(u, v)[0])
    return np.minimum(*ends), np.maximum(*ends)


def side_profile(patches: Iterable[Patch], levels: Floats) -> tuple[Floats, Floats]:
    """Give, at levels y, the right edge of a garment's trunk, and the edge of the neck to the right of the middle.

    No number where there is nothing, and for the neck where the middle is covered.
    """
    found: Sequence[tuple[Floats, Floats]] = [left_and_right(patch, levels) for patch in patches]
    rights = np.array([right for _, right in found])
    outer = np.where(
        np.isnan(rights).all(axis=0), np.nan, np.nanmax(np.where(np.isnan(rights), -np.inf, rights), axis=0)
    )
    inner = np.full(len(levels), np.inf)
    covered = np.zeros(len(levels), dtype=bool)
    for left, right in found:
        covered |= (left < 1e-6) & (right > -1e-6) & (right - left > 1e-6) & (left * right < -1e-9)
        inner = np.where(left >= -1e-6, np.fmin(inner, left), inner)
    inner = np.where(covered | ~np.isfinite(inner), np.nan, inner)
    return outer, inner
