"""A yoke being knitted: a needle that knows which of its stitches are back, front and sleeves."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Unpack

import numpy as np

from loopwright.fabric import Gauge, StructureName
from loopwright.garment.draft import Kind, Needle, Part, Place, Section, Shaping
from loopwright.garment.draft.section import Side

__all__ = ["PARTS", "PartChange", "PartedNeedle", "on_lines"]

PARTS = ("back", "front", "left sleeve", "right sleeve")
PartChange = tuple[Kind, Side, Mapping[str, int]]
"""What is done in one row: kind, side, and stitches by the part in which they lie."""


def on_lines(section: Section, places: int) -> Section:
    """Give a section in which the shaping along lines is one entry to a row and kind, shared out over these places."""
    kept = [one for one in section.shapings if one.side != "lines"]
    by_row: dict[tuple[int, Kind], int] = {}
    for one in section.shapings:
        if one.side == "lines":
            by_row[one.row, one.kind] = by_row.get((one.row, one.kind), 0) + one.stitches
    kept += [Shaping(row, kind, "lines", stitches, places) for (row, kind), stitches in by_row.items()]
    return replace(section, shapings=tuple(sorted(kept, key=lambda one: one.row)))


class PartedNeedle:
    """A :class:`~loopwright.garment.draft.Needle` whose stitches are counted by part."""

    LINES = 4
    """Lines between the parts, along which it is shaped."""

    def __init__(self, stitches: Mapping[str, int], *, in_the_round: bool) -> None:
        """Begin with stitches of each part on the needle."""
        self.now = {part: stitches[part] for part in PARTS}
        self.needle = Needle(sum(self.now.values()), in_the_round=in_the_round)
        self._rows: list[dict[str, int]] = []

    def row(self, *changes: PartChange) -> PartedNeedle:
        """Work one row with these changes."""
        for kind, _, stitches in changes:
            for part, count in stitches.items():
                self.now[part] += kind.sign * count
        self.needle.row(*((kind, side, sum(stitches.values())) for kind, side, stitches in changes))
        self._rows.append(dict(self.now))
        return self

    def section(self, key: str, name: str, fabric: StructureName, gauge: Gauge, **place: Unpack[Place]) -> Section:
        """Give what was knitted as a section with its parts."""
        parts = tuple(Part(part, np.array([row[part] for row in self._rows], dtype=np.int64)) for part in PARTS)
        with_parts: Place = {**place, "parts": parts}
        made = self.needle.section(key, name, fabric, gauge, **with_parts)
        return on_lines(made, self.LINES)
