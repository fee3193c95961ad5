"""The heights that add up to a piece: its sections from first to last edge, those side by side counted as one.

Coordinates are those of the piece: x in cm from its middle line, y in cm in knitting order.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from loopwright.garment.draft import Piece, Section
from loopwright.pictures.yoke_shares import is_folded

__all__ = ["GRAIN_CM", "Run", "begin_end", "face_runs"]

GRAIN_CM = 1e-6


@dataclass(frozen=True, eq=False)
class Run:
    """Sections of one piece that add up to one height: one after another, or beside each other at the end."""

    sections: tuple[Section, ...]
    beside: tuple[Section, ...]
    begin: float
    end: float

    @property
    def rows(self) -> int:
        """Give its rows or rounds."""
        section = (*self.sections, *self.beside)[0]
        if not self.beside:
            return sum(one.rows for one in self.sections)
        return round((self.end - self.begin) / section.row_height_cm)

    @property
    def in_the_round(self) -> bool:
        """Say whether it is worked in rounds throughout."""
        return all(one.in_the_round and not is_folded(one) for one in (*self.sections, *self.beside))


def begin_end(piece: Piece, section: Section) -> tuple[float, float]:
    """Give where a section begins and ends above the first edge of its piece, in cm."""
    base = piece.base_cm(section.key)
    return base, base + section.height_cm


def face_runs(piece: Piece, face: Literal["front", "back"]) -> list[Run]:
    """Give the heights of one face from first to last edge; sections side by side count with the one that they meet."""
    sections = [one for one in piece.sections if one.face in ("whole", face) and one.rows]
    spans = {one.key: begin_end(piece, one) for one in sections}
    beside = [
        one
        for one in sections
        if any(
            min(spans[one.key][1], spans[other.key][1]) - max(spans[one.key][0], spans[other.key][0]) > GRAIN_CM
            for other in sections
            if other is not one
        )
    ]
    runs: list[Run] = []
    for one in sorted((one for one in sections if one not in beside), key=lambda one: spans[one.key]):
        before = runs[-1] if runs else None
        if before is not None and is_folded(one) and is_folded(before.sections[-1]):
            runs[-1] = Run((*before.sections, one), (), before.begin, spans[one.key][1])
        else:
            runs.append(Run((one,), (), *spans[one.key]))
    if not beside:
        return runs
    low = min(spans[one.key][0] for one in beside)
    high = max(spans[one.key][1] for one in beside)
    met = next((run for run in runs if abs(run.end - low) < GRAIN_CM), None) or next(
        (run for run in runs if abs(run.begin - high) < GRAIN_CM), None
    )
    if met is None:
        return sorted([*runs, Run((), tuple(beside), low, high)], key=lambda run: run.begin)
    runs[runs.index(met)] = Run(met.sections, tuple(beside), min(met.begin, low), max(met.end, high))
    return runs
