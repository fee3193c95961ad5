"""Words on a drawing, and the room that they take."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from html import escape
from typing import Literal

from loopwright.pictures.svg import element

__all__ = ["QUIET", "Box", "Words", "apart", "text_width"]

QUIET = "#56595b"
"""The colour of what is read second."""

Anchor = Literal["start", "middle", "end"]

_WIDTHS = {
    letter: width
    for letters, width in (
        ("ijl'", 0.28),
        (" .,:;|", 0.32),
        ("ft", 0.4),
        ("r()-/", 0.42),
        ("szc", 0.55),
        ("kvxy", 0.6),
        ("w", 0.82),
        ("mMW¼½¾⅛⅜⅝⅞", 0.98),
        ("ABCDEFGHJKLNOPQRSTUVXYZ×−", 0.79),
    )
    for letter in letters
}
_USUAL = 0.64
"""Widths in ems of the widest common sans-serif faces, digits and most small letters alike; our measure."""
_BOLD, _BOLD_WIDER = 600, 1.13
_ASCENT, _DESCENT = 0.8, 0.25


def text_width(text: str, size: float) -> float:
    """Give the room that a line of text takes at most, in the unit of its size."""
    return size * sum(_WIDTHS.get(letter, _USUAL) for letter in text)


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle of the drawing, y down."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Box, gap: float = 0.0) -> bool:
        """Say whether two boxes come nearer than a gap."""
        return (
            self.left < other.right + gap
            and other.left < self.right + gap
            and self.top < other.bottom + gap
            and other.top < self.bottom + gap
        )

    def with_(self, other: Box) -> Box:
        """Give the box that holds both."""
        return Box(
            min(self.left, other.left),
            min(self.top, other.top),
            max(self.right, other.right),
            max(self.bottom, other.bottom),
        )


@dataclass(frozen=True, slots=True)
class Words:
    """One line of text on a drawing.

    :ivar x, y: where its anchor stands on the base line.
    """

    text: str
    x: float
    y: float
    size: float
    colour: str = QUIET
    weight: int = 400
    anchor: Anchor = "middle"

    @property
    def box(self) -> Box:
        """Give the room that it takes."""
        width = text_width(self.text, self.size) * (_BOLD_WIDER if self.weight >= _BOLD else 1)
        left = self.x - {"start": 0.0, "middle": width / 2, "end": width}[self.anchor]
        return Box(left, self.y - _ASCENT * self.size, left + width, self.y + _DESCENT * self.size)

    def moved(self, right: float, down: float) -> Words:
        """Give the same words elsewhere."""
        return replace(self, x=self.x + right, y=self.y + down)

    def drawn(self) -> str:
        """Give the element."""
        return element(
            "text",
            escape(self.text),
            x=self.x,
            y=self.y,
            font_size=self.size,
            fill=self.colour,
            font_weight=str(self.weight),
            text_anchor=self.anchor,
        )


def apart(centres: Sequence[float], heights: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Give centres moved as little as possible, in their order, so that what is so high stands a gap apart.

    Those that would meet form a group about the mean of their wanted places (least squares under the order). They are
    kept between ``low`` and ``high`` where there is room, and otherwise centred on it.
    """
    order = sorted(range(len(centres)), key=lambda place: (centres[place], place))
    offset, offsets = 0.0, []
    for place in order:
        offsets.append(offset + heights[place] / 2)
        offset += heights[place] + gap
    whole = offset - gap if order else 0.0
    if whole > high - low:
        low, high = (low + high - whole) / 2, (low + high + whole) / 2
    groups: list[tuple[float, int]] = []
    for place, own in zip(order, offsets, strict=True):
        start, size = centres[place] - own, 1
        while groups and groups[-1][0] > start:
            before, many = groups.pop()
            start, size = (start * size + before * many) / (size + many), size + many
        groups.append((start, size))
    starts = [min(max(start, low), high - whole) for start, size in groups for _ in range(size)]
    moved = dict(zip(order, (start + own for start, own in zip(starts, offsets, strict=True)), strict=True))
    return [moved[place] for place in range(len(centres))]
