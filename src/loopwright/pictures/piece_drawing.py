"""A piece at a scale: what stands on its drawing, and how much room that takes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from loopwright.pictures.body_outline import BODY_FILL, Point, closed_path
from loopwright.pictures.dimension import Rule, Strokes
from loopwright.pictures.lettering import Box, Words
from loopwright.pictures.piece_shape import PieceShape
from loopwright.pictures.schematic_views import View
from loopwright.pictures.svg import element

__all__ = ["TIGHT", "Look", "PieceDrawing"]

TIGHT = 4.0
"""Least gap between words, in units of the drawing."""
LEAST_HATCH = 3.0


@dataclass(frozen=True, slots=True)
class Look:
    """Sizes of the drawing, in its own units.

    :ivar name, measure, count: sizes of words.
    :ivar most_height: most height of a piece.
    :ivar most_scale: most units to the centimetre.
    """

    width: float
    name: float
    measure: float
    count: float
    margin: float
    most_height: float
    most_scale: float


@dataclass
class PieceDrawing:
    """What stands on the drawing of a piece; y = 0 is its top, x = 0 its middle line, in units of the drawing.

    :ivar boxes: the room that words take.
    :ivar leads: lines from a dimension line to words that stand away from it.
    :ivar arrows: tails and tips.
    :ivar body: right side of a body behind the piece, from neck to thigh.
    """

    view: View
    shape: PieceShape
    scale: float
    look: Look
    words: list[Words] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)
    rules: list[Rule] = field(default_factory=list)
    leads: list[tuple[Point, Point]] = field(default_factory=list)
    arrows: list[tuple[Point, Point]] = field(default_factory=list)
    body: list[Point] = field(default_factory=list)

    @property
    def left(self) -> float:
        """Give the left end of the piece."""
        return self.shape.left * self.scale

    @property
    def right(self) -> float:
        """Give the right end of the piece."""
        return self.shape.right * self.scale

    @property
    def bottom(self) -> float:
        """Give the lower end of the piece."""
        return self.shape.height * self.scale

    @property
    def box(self) -> Box:
        """Give the room that everything takes."""
        whole = Box(self.left, 0, self.right, self.bottom)
        for one in (*self.boxes, *(rule.box for rule in self.rules)):
            whole = whole.with_(one)
        for x, y in self.body:
            whole = whole.with_(Box(-x, y, x, y))
        return whole

    def say(self, *words: Words) -> None:
        """Add words and keep their room."""
        self.words += words
        self.boxes += [one.box for one in words]

    def is_free(self, boxes: Sequence[Box]) -> bool:
        """Say whether boxes lie within the piece and clear of all words."""
        return all(self._within(box) for box in boxes) and not any(
            box.meets(other, TIGHT) for box in boxes for other in self.boxes
        )

    def is_divided(self, box: Box) -> bool:
        """Say whether a line between two sections runs through a box."""
        return any(
            box.top < y * self.scale < box.bottom and box.left < x * self.scale < box.right
            for line in self.shape.divides
            for x, y in [((line[0][0] + line[1][0]) / 2, line[0][1])]
        )

    def _within(self, box: Box) -> bool:
        if box.top < TIGHT or box.bottom > self.bottom - TIGHT:
            return False
        for y in (box.top, (box.top + box.bottom) / 2, box.bottom):
            ends = self.shape.extent(y / self.scale)
            if ends is None or ends[0] * self.scale + TIGHT > box.left or ends[1] * self.scale - TIGHT < box.right:
                return False
        sides = (box.left, box.top, box.right, box.bottom)
        return not self.shape.is_crossed(*(side / self.scale for side in sides))

    def drawn(self, right: float, down: float) -> str:
        """Give the element, moved to its place."""
        body = ""
        if self.body:
            body = element("path", d=closed_path(self.body, smooth=True), fill=BODY_FILL, class_="body")
        strokes = Strokes()
        self._hatch(strokes)
        for line in self.shape.divides:
            strokes.rule(_divide(*self._scaled(line)), self.boxes)
        for line in self.shape.behind:
            strokes.line("behind", self._scaled(line))
        for line in self.shape.outline:
            strokes.line("outline", self._scaled(line))
        for rule in self.rules:
            strokes.rule(rule, self.boxes)
        for lead in self.leads:
            strokes.line("witness", lead)
        for tail, tip in self.arrows:
            strokes.arrow(tail, tip)
        inside = body + strokes.drawn() + "".join(one.drawn() for one in self.words)
        return element("g", inside, class_="piece", transform=f"translate({right:.2f} {down:.2f})")

    def _scaled(self, line: Sequence[Point]) -> list[Point]:
        return [(x * self.scale, y * self.scale) for x, y in line]

    def _hatch(self, strokes: Strokes) -> None:
        for ribs in self.shape.ribs:
            every = ribs.repeat
            while every * self.scale < LEAST_HATCH:
                every += ribs.repeat
            x = ribs.left + every / 2
            while x < ribs.right:
                line = self.shape.turning.line([(x, ribs.begin), (x, ribs.end)])
                strokes.line("hatch", self._scaled(line))
                x += every


def _divide(one: Point, other: Point) -> Rule:
    """Give the line between two sections, which runs along an axis."""
    if abs(one[1] - other[1]) < abs(one[0] - other[0]):
        return Rule("divide", "x", one[1], min(one[0], other[0]), max(one[0], other[0]))
    return Rule("divide", "y", one[0], min(one[1], other[1]), max(one[1], other[1]))
