"""From rows of knitting to the picture and back: a piece that lies flat, upright or turned upside down."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

__all__ = ["Flat", "Lie", "Mirrored", "Sagging", "is_level"]

Floats = NDArray[np.floating]
Pair = tuple[Floats, Floats]


class Lie(Protocol):
    """How rows lie: from (u, v) of the rows to (x, y) of the picture in cm, x to the right and y down, and back.

    Arrays of any shapes that broadcast; what lies outside of the rows comes back as any (u, v) outside of them.
    """

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        ...

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        ...


@dataclass(frozen=True, slots=True)
class Flat:
    """Rows lie level: knitted upwards, or turned upside down where they were knitted from the top.

    :ivar x, y: where u = 0, v = 0 lies.
    """

    x: float
    y: float
    down: bool = False

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        return (self.x - u, self.y + v) if self.down else (self.x + u, self.y - v)

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        return (self.x - x, y - self.y) if self.down else (x - self.x, self.y - y)


@dataclass(frozen=True, slots=True)
class Mirrored:
    """The mirror image, about x = 0: the other sleeve, the other front, or the inside of the other face."""

    of: Lie

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        x, y = self.of.to_picture(u, v)
        return -x, y

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        return self.of.from_picture(-x, y)


@dataclass(frozen=True, slots=True)
class Sagging:
    """A body below a round yoke: its upper end follows the arc of the yoke, its lower end lies level.

    Rows lie the closer in the middle the lower the arc hangs there; the fabric of a real one gives as much.

    :ivar of: how it would lie level.
    :ivar top, bottom: y of its upper end at the sides, and of its lower end.
    :ivar arc_y, radius: the arc, about x = 0.
    """

    of: Flat
    top: float
    bottom: float
    arc_y: float
    radius: float

    def _upper(self, x: Floats) -> Floats:
        arc = self.arc_y + np.sqrt(np.maximum(self.radius**2 - x**2, 0))
        upper: Floats = np.maximum(arc, self.top)
        return upper

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        x, level = self.of.to_picture(u, v)
        share = (self.bottom - level) / (self.bottom - self.top)
        return x, self.bottom - share * (self.bottom - self._upper(x))

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        share = (self.bottom - y) / (self.bottom - self._upper(x))
        return self.of.from_picture(x, self.bottom - share * (self.bottom - self.top))


def is_level(lie: Lie) -> bool:
    """Say whether u depends on x alone and v on y alone."""
    return isinstance(lie.of if isinstance(lie, Mirrored) else lie, Flat)
