"""Strokes of a workshop drawing by kind, and dimension lines: a fine line with an arrowhead at each end."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Final, Literal

from loopwright.pictures.body_outline import Point
from loopwright.pictures.lettering import QUIET, Box
from loopwright.pictures.svg import INK, NEUTRAL, element, number

__all__ = ["Rule", "Stroke", "Strokes"]

Stroke = Literal["hatch", "witness", "divide", "behind", "outline", "dimension", "head"]

HEAD, HALF_HEAD = 6.5, 1.9
"""Length of an arrowhead and half its width."""
LEAST_BETWEEN = 2.6 * HEAD
"""Below this length the arrowheads stand outside and point inwards."""
CLEAR = 2.0
"""How far from words a line is broken."""

_LOOKS: Final[dict[Stroke, dict[str, str | float]]] = {
    "hatch": {"fill": "none", "stroke": "#cfd0d0", "stroke_width": 0.7},
    "witness": {"fill": "none", "stroke": NEUTRAL, "stroke_width": 0.6},
    "divide": {"fill": "none", "stroke": "#8f9293", "stroke_width": 0.8},
    "behind": {"fill": "none", "stroke": INK, "stroke_width": 0.9, "stroke_dasharray": "4 3"},
    "outline": {
        "fill": "none",
        "stroke": INK,
        "stroke_width": 1.4,
        "stroke_linejoin": "round",
        "stroke_linecap": "round",
    },
    "dimension": {"fill": "none", "stroke": QUIET, "stroke_width": 0.8},
    "head": {"fill": QUIET},
}


@dataclass(frozen=True, slots=True)
class Rule:
    """A straight line along an axis: a dimension line with its arrowheads, or a fine line without."""

    kind: Literal["witness", "dimension", "divide"]
    axis: Literal["x", "y"]
    at: float
    low: float
    high: float

    @property
    def is_short(self) -> bool:
        """Say whether its arrowheads stand outside."""
        return self.kind == "dimension" and self.high - self.low < LEAST_BETWEEN

    @property
    def ends(self) -> tuple[float, float]:
        """Give where its ink begins and ends."""
        tail = 2 * HEAD if self.is_short else 0.0
        return self.low - tail, self.high + tail

    @property
    def box(self) -> Box:
        """Give the room that it takes, without width."""
        low, high = self.ends
        return Box(low, self.at, high, self.at) if self.axis == "x" else Box(self.at, low, self.at, high)

    def point(self, along: float) -> Point:
        """Give a point of it."""
        return (along, self.at) if self.axis == "x" else (self.at, along)

    def clear_of(self, boxes: Iterable[Box]) -> list[tuple[float, float]]:
        """Give the stretches of it that do not cross words."""
        low, high = self.ends
        if self.axis == "x":
            crossed = [(box.left - CLEAR, box.right + CLEAR) for box in boxes if box.top < self.at < box.bottom]
        else:
            crossed = [(box.top - CLEAR, box.bottom + CLEAR) for box in boxes if box.left < self.at < box.right]
        left = []
        for begin, end in sorted(crossed):
            if begin > low:
                left.append((low, min(begin, high)))
            low = max(low, end)
        return [(begin, end) for begin, end in [*left, (low, high)] if begin < end]


@dataclass
class Strokes:
    """Lines of a drawing by kind, each kind one path."""

    paths: dict[Stroke, list[str]] = field(default_factory=dict)

    def line(self, kind: Stroke, points: Sequence[Point], *, closed: bool = False) -> None:
        """Add a line through points."""
        steps = "L".join(f"{number(x)} {number(y)}" for x, y in points)
        self.paths.setdefault(kind, []).append(f"M{steps}" + "Z" * closed)

    def head(self, tip: Point, along: Point) -> None:
        """Add an arrowhead that points along a direction of length 1."""
        (x, y), (dx, dy) = tip, along
        back = (x - HEAD * dx, y - HEAD * dy)
        aside = (-HALF_HEAD * dy, HALF_HEAD * dx)
        sides = [(back[0] + aside[0], back[1] + aside[1]), (back[0] - aside[0], back[1] - aside[1])]
        self.line("head", [tip, *sides], closed=True)

    def rule(self, rule: Rule, boxes: Sequence[Box]) -> None:
        """Add a straight line, broken where it would cross words."""
        for begin, end in rule.clear_of(boxes):
            self.line(rule.kind, [rule.point(begin), rule.point(end)])
        if rule.kind == "dimension":
            step = (1.0, 0.0) if rule.axis == "x" else (0.0, 1.0)
            back = (-step[0], -step[1])
            self.head(rule.point(rule.low), step if rule.is_short else back)
            self.head(rule.point(rule.high), back if rule.is_short else step)

    def arrow(self, tail: Point, tip: Point) -> None:
        """Add a thin arrow along an axis."""
        self.line("dimension", [tail, tip])
        length = abs(tip[0] - tail[0]) + abs(tip[1] - tail[1])
        self.head(tip, ((tip[0] - tail[0]) / length, (tip[1] - tail[1]) / length))

    def drawn(self) -> str:
        """Give the elements, from the faintest kind to the heaviest."""
        return "".join(
            element("path", "", d="".join(self.paths[kind]), class_=kind, **look)
            for kind, look in _LOOKS.items()
            if kind in self.paths
        )
