"""Pieces of sections, how they join, and the whole draft of a garment."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Literal

from loopwright.fabric import Gauge
from loopwright.garment.draft.section import Section
from loopwright.units import Told

__all__ = ["Direction", "Draft", "Edge", "EdgeName", "Join", "JoinKind", "Landmark", "MeasureCheck", "Piece"]

Direction = Literal["bottom up", "top down", "sideways"]
EdgeName = Literal["begin", "end", "left", "right", "closed"]
"""The begin is the first edge of a section, the end its live stitches, closed those cast off in its last row; left and
right as seen from the right side."""

JoinKind = Literal[
    "carried on", "sewn", "sewn row to stitch", "set in", "picked up", "grafted", "three-needle cast-off"
]


@dataclass(frozen=True, slots=True)
class Landmark:
    """A place in a piece that measures and instructions refer to: after so many rows of a section.

    :ivar name: ``hem``, ``waist``, ``underarm``, ``shoulder``, ``neck`` …
    """

    name: str
    section: str
    row: int


@dataclass(frozen=True, slots=True)
class Edge:
    """A stretch of an edge of one section.

    :ivar amount: stitches along ``begin`` and ``end``, rows along ``left`` and ``right``.
    """

    piece: str
    section: str
    name: EdgeName
    amount: int

    @property
    def along_rows(self) -> bool:
        """Say whether the amount counts rows, not stitches."""
        return self.name in ("left", "right")


@dataclass(frozen=True, slots=True)
class Join:
    """Two edges that meet, and how.

    :ivar length_cm: true lengths of the two edges in cm, where they are joined by length and not by count.
    """

    kind: JoinKind
    one: Edge
    other: Edge
    length_cm: tuple[float, float] | None = None

    @property
    def mismatch(self) -> float | None:
        """Give how much longer the other edge is than the one, as a share, or None where counts are joined."""
        return None if self.length_cm is None else self.length_cm[1] / self.length_cm[0] - 1


@dataclass(frozen=True, slots=True)
class MeasureCheck:
    """One finished measure: wanted and drafted, in cm.

    :ivar grain_cm: the smallest change that one more stitch or row makes to this measure.
    :ivar reason: what kept it from lying within half of that, in words; empty where it does.
    """

    name: str
    wanted_cm: float
    drafted_cm: float
    grain_cm: float
    reason: Told = field(default_factory=Told)

    @property
    def off_cm(self) -> float:
        """Give drafted less wanted, in cm."""
        return self.drafted_cm - self.wanted_cm

    @property
    def is_exact(self) -> bool:
        """Say whether it lies within half a stitch or half a row."""
        return abs(self.off_cm) <= self.grain_cm / 2 + 1e-9


@dataclass(frozen=True, eq=False)
class Piece:
    """A part of a garment that is knitted without being joined to others on the way.

    :ivar made: how many of it are made, such as two sleeves.
    :ivar mirrored: whether the second is the mirror image of the first.
    """

    key: str
    name: str
    direction: Direction
    sections: tuple[Section, ...]
    landmarks: tuple[Landmark, ...] = ()
    made: int = 1
    mirrored: bool = False

    def section(self, key: str) -> Section:
        """Give one section by key.

        :raises KeyError: the piece has none of that key.
        """
        for one in self.sections:
            if one.key == key:
                return one
        raise KeyError(key)

    def base_cm(self, key: str) -> float:
        """Give how far above the first edge of the piece a section begins, in cm."""
        after = self.section(key).after
        return 0.0 if after is None else self.base_cm(after) + self.section(after).height_cm

    @property
    def height_cm(self) -> float:
        """Give the height of the piece in cm."""
        return max((self.base_cm(one.key) + one.height_cm for one in self.sections), default=0.0)

    @property
    def worked(self) -> int:
        """Give the stitches of one such piece."""
        return sum(one.worked for one in self.sections)


@dataclass(frozen=True, eq=False)
class Draft:
    """A garment computed by us: pieces, how they join, and how its measures came out.

    :ivar notes: what was decided on the way and what to know while knitting, in sentences.
    """

    construction: str
    direction: Direction
    gauge: Gauge
    pieces: tuple[Piece, ...]
    joins: tuple[Join, ...] = ()
    checks: tuple[MeasureCheck, ...] = ()
    notes: tuple[Told, ...] = ()

    def piece(self, key: str) -> Piece:
        """Give one piece by key.

        :raises KeyError: the draft has none of that key.
        """
        for one in self.pieces:
            if one.key == key:
                return one
        raise KeyError(key)

    def section(self, piece: str, key: str) -> Section:
        """Give one section by the keys of its piece and its own.

        :raises KeyError: there is none.
        """
        return self.piece(piece).section(key)

    def sections(self) -> Iterator[tuple[Piece, Section]]:
        """Give every section with its piece, in the order of knitting; a piece made twice comes once."""
        for piece in self.pieces:
            for section in piece.sections:
                yield piece, section

    def check(self, name: str) -> MeasureCheck:
        """Give the check of one measure.

        :raises KeyError: the draft has no such measure.
        """
        for one in self.checks:
            if one.name == name:
                return one
        raise KeyError(name)

    @property
    def stitches(self) -> int:
        """Give all stitches of the garment, every piece as often as it is made."""
        return sum(piece.worked * piece.made for piece in self.pieces)

    @property
    def area_cm2(self) -> float:
        """Give the fabric area of the garment in cm², bands and ribs included."""
        return sum(section.area_cm2 * piece.made for piece, section in self.sections())
