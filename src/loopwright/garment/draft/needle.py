"""Knitting a section row by row: what is done to a row and what it leaves, written down once."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import TypedDict, Unpack

import numpy as np

from loopwright.fabric import Gauge, StructureName
from loopwright.garment.draft.section import Begins, Ends, Face, Kind, Part, RoleRun, Section, Shaping, Side
from loopwright.units import BadInput

__all__ = ["Change", "Needle", "Place"]

Change = tuple[Kind, Side, int]
"""What is done in one row: kind, side, stitches."""


class Place(TypedDict, total=False):
    """Where a section stands: see :class:`~loopwright.garment.draft.section.Section`."""

    begins: Begins
    ends: Ends
    after: str | None
    roles: tuple[RoleRun, ...]
    parts: tuple[Part, ...]
    face: Face
    closed: int


class Needle:
    """A section being knitted; each call works rows and records what was done in them.

    Left edges follow from the changes: those at the left edge move it, those in the middle, along lines or spread
    evenly move both edges by half, those at the right edge leave it.
    """

    def __init__(self, stitches: int, *, left: float | None = None, in_the_round: bool = False) -> None:
        """Begin with stitches on the needle.

        :param left: left end in stitches from the middle line of the piece; left out, they lie about it.
        """
        self.first = stitches
        self.now = stitches
        self.in_the_round = in_the_round
        self._left = Fraction(-stitches, 2) if left is None else Fraction(left)
        self._counts: list[int] = []
        self._lefts: list[Fraction] = []
        self._shapings: list[Shaping] = []

    @property
    def rows(self) -> int:
        """Give the rows worked so far."""
        return len(self._counts)

    @property
    def left(self) -> float:
        """Give where the left end of the last row lies, in stitches from the middle line."""
        return float(self._left)

    def plain(self, rows: int) -> Needle:
        """Work rows without shaping."""
        for _ in range(rows):
            self._end_row()
        return self

    def row(self, *changes: Change, places: int = 1) -> Needle:
        """Work one row with these changes; nothing is recorded of a change by no stitch."""
        for kind, side, stitches in changes:
            if stitches == 0:
                continue
            shaping = Shaping(self.rows, kind, side, stitches, places)
            self._shapings.append(shaping)
            self.now += shaping.change
            if self.now < 0:
                raise BadInput(
                    found=f"{kind} of {stitches} stitches where only {self.now + stitches} are left",
                    wanted="a shaping that the row can bear",
                )
            if side == "left":
                self._left -= shaping.change
            elif side != "right":
                self._left -= Fraction(shaping.change, 2)
        self._end_row()
        return self

    def shape(self, rows: int, at: Iterable[int], *changes: Change, places: int = 1) -> Needle:
        """Work so many rows, with the same changes in each of the rows named (from 0)."""
        shaped = set(at)
        for row in range(rows):
            self.row(*(changes if row in shaped else ()), places=places)
        return self

    def _end_row(self) -> None:
        self._counts.append(self.now)
        self._lefts.append(self._left)

    def section(self, key: str, name: str, fabric: StructureName, gauge: Gauge, **place: Unpack[Place]) -> Section:
        """Give what was knitted as a section."""
        counts = np.array(self._counts, dtype=np.int64)
        lefts = -counts / 4 if self.in_the_round else np.array([float(left) for left in self._lefts])
        return Section(
            key=key,
            name=name,
            fabric=fabric,
            gauge=gauge,
            first=self.first,
            stitches=counts,
            left_edge=lefts,
            in_the_round=self.in_the_round,
            shapings=tuple(self._shapings),
            **place,
        )
