"""From rows of knitting to the picture and back: a sleeve that bends, a round yoke, a band along an edge."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

__all__ = ["Along", "Bend", "Ring"]

Floats = NDArray[np.floating]
Pair = tuple[Floats, Floats]


@dataclass(frozen=True)
class Bend:
    """A sleeve on the right of the picture: straight from the armhole, then in an arc, then straight to the wrist.

    u is measured across it, from its middle line to the outside, v along it in knitting order. Rows spread on the
    outside of the arc and crowd on the inside; each keeps its area.

    :ivar x, y: where the middle of its upper end lies.
    :ivar first, last: its direction at both ends, in radians from straight down towards the right; first ≥ last.
    :ivar straight: cm along it before the arc.
    :ivar arc: cm of the arc.
    :ivar length: cm of the whole where it is knitted upwards; 0 where from the top.
    """

    x: float
    y: float
    first: float
    last: float
    straight: float
    arc: float
    length: float = 0.0

    @cached_property
    def _radius(self) -> float:
        return self.arc / max(self.first - self.last, 1e-6)

    @cached_property
    def _centre(self) -> tuple[float, float]:
        x, y = self._on_first(self.straight)
        return x - self._radius * math.cos(self.first), y + self._radius * math.sin(self.first)

    def _on_first(self, along: float) -> tuple[float, float]:
        return self.x + along * math.sin(self.first), self.y + along * math.cos(self.first)

    @cached_property
    def _second(self) -> tuple[float, float]:
        """Give where the second straight part begins."""
        x, y = self._centre
        return x + self._radius * math.cos(self.last), y - self._radius * math.sin(self.last)

    def _along(self, v: Floats) -> Floats:
        return self.length - v if self.length else v

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        along = self._along(v)
        turned = np.clip((along - self.straight) / self._radius, 0, self.first - self.last)
        angle = self.first - turned
        beyond = np.where(along < self.straight, along - self.straight, np.maximum(along - self.straight - self.arc, 0))
        x, y = self._centre
        out = self._radius + u
        return (
            x + out * np.cos(angle) + beyond * np.sin(angle),
            y - out * np.sin(angle) + beyond * np.cos(angle),
        )

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        sin1, cos1, sin2, cos2 = (
            float(turn(angle)) for angle in (self.first, self.last) for turn in (math.sin, math.cos)
        )
        dx, dy = x - self.x, y - self.y
        along1, out1 = dx * sin1 + dy * cos1, dx * cos1 - dy * sin1
        dx, dy = x - self._second[0], y - self._second[1]
        along2, out2 = dx * sin2 + dy * cos2, dx * cos2 - dy * sin2
        dx, dy = x - self._centre[0], self._centre[1] - y
        out = np.hypot(dx, dy) - self._radius
        along = self.straight + (self.first - np.arctan2(dy, dx)) * self._radius
        at_first, at_last = along1 <= self.straight, along2 >= 0
        u = np.where(at_last, out2, np.where(at_first, out1, out))
        v = np.where(at_last, along2 + self.straight + self.arc, np.where(at_first, along1, along))
        return u, self._along(v)


@dataclass(frozen=True, slots=True)
class Ring:
    """Half of a round yoke, spread flat: rows are arcs about one centre. u is the angle in radians from straight down.

    :ivar x, y: the centre.
    :ivar radius: of the end where v = 0.
    :ivar inward: whether rows come closer to the centre with v, as in a yoke knitted upwards.
    """

    x: float
    y: float
    radius: float
    inward: bool

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        radius, angle = (self.radius - v, u) if self.inward else (self.radius + v, -u)
        return self.x + radius * np.sin(angle), self.y + radius * np.cos(angle)

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        dx, dy = x - self.x, y - self.y
        angle, radius = np.arctan2(dx, dy), np.hypot(dx, dy)
        return (angle, self.radius - radius) if self.inward else (-angle, radius - self.radius)


@dataclass(frozen=True)
class Along:
    """A band along an edge: u is the share of the edge's length, v the distance from it, to the left of its way.

    :ivar points: of the edge, as it is gone along; shape (points, 2).
    """

    points: NDArray[np.float64]

    @cached_property
    def _steps(self) -> NDArray[np.float64]:
        return np.diff(self.points, axis=0)

    @cached_property
    def _lengths(self) -> NDArray[np.float64]:
        return np.hypot(self._steps[:, 0], self._steps[:, 1])

    @cached_property
    def _begins(self) -> NDArray[np.float64]:
        return np.concatenate(([0.0], np.cumsum(self._lengths)))

    @property
    def length(self) -> float:
        """Give the length of the edge in cm."""
        return float(self._begins[-1])

    def to_picture(self, u: Floats, v: Floats) -> Pair:
        """Give where points of the rows lie."""
        at = np.clip(u, 0, 1) * self.length
        place = np.clip(np.searchsorted(self._begins, at, side="right") - 1, 0, len(self._lengths) - 1)
        within = (at - self._begins[place]) / self._lengths[place]
        base = self.points[place] + within[..., None] * self._steps[place]
        corners = np.concatenate((self._steps[:1], self._steps[:-1] + self._steps[1:], self._steps[-1:]))
        way = corners[place] * (1 - within[..., None]) + corners[place + 1] * within[..., None]
        way = way / np.linalg.norm(way, axis=-1, keepdims=True)
        return base[..., 0] + way[..., 1] * v, base[..., 1] - way[..., 0] * v

    def from_picture(self, x: Floats, y: Floats) -> Pair:
        """Give which points of the rows lie there."""
        x, y = np.broadcast_arrays(x, y)
        nearest = np.full(x.shape, np.inf)
        u, side = np.zeros(x.shape), np.full(x.shape, -1.0)
        last = len(self._lengths) - 1
        for place, (begin, step, length) in enumerate(zip(self.points, self._steps, self._lengths, strict=False)):
            dx, dy = x - begin[0], y - begin[1]
            along = (dx * step[0] + dy * step[1]) / length
            low, high = (-np.inf if place == 0 else 0.0), (np.inf if place == last else length)
            kept = np.clip(along, low, high)
            away = (dx * step[1] - dy * step[0]) / length
            distance = away**2 + (along - kept) ** 2
            closer = distance < nearest
            nearest = np.where(closer, distance, nearest)
            side = np.where(closer, away, side)
            u = np.where(closer, (self._begins[place] + kept) / self.length, u)
        return u, np.where(side >= 0, np.sqrt(nearest), -1.0)
