"""Heights along a piece and their rows: section by section, the neck, the whole."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from loopwright.garment.draft import Draft, Edge, Piece, Section
from loopwright.pictures.piece_runs import GRAIN_CM, begin_end, face_runs

__all__ = ["Along", "heights_of"]


@dataclass(frozen=True, slots=True)
class Along:
    """A height, and the rows or rounds in it.

    :ivar chained: whether it is one of the heights that add up to the whole.
    """

    begin: float
    end: float
    rows: int
    in_the_round: bool
    chained: bool

    @property
    def height_cm(self) -> float:
        """Give the height in cm."""
        return self.end - self.begin


def heights_of(piece: Piece, draft: Draft) -> list[Along]:
    """Give the heights of a piece: section by section, the depth of the neck in front and behind, and the whole."""
    runs = face_runs(piece, "front")
    heights = [Along(run.begin, run.end, run.rows, run.in_the_round, True) for run in runs]
    necks = {(round(neck.begin, 6), round(neck.end, 6)): neck for neck in _necks(piece, draft)}
    heights += necks.values()
    longest = max((runs, face_runs(piece, "back")), key=lambda each: each[-1].end - each[0].begin)
    if len(longest) > 1:
        rounds = all(run.in_the_round for run in longest)
        heights.append(Along(longest[0].begin, longest[-1].end, sum(run.rows for run in longest), rounds, False))
    return heights


def _necks(piece: Piece, draft: Draft) -> Iterator[Along]:
    """Give what the neck takes: sections side by side, rows of the back alone, and the slant of an open front."""
    front = face_runs(piece, "front")
    for run in (*front, *face_runs(piece, "back")):
        if run.beside and run.sections:
            spans = [begin_end(piece, one) for one in run.beside]
            rows = max(one.rows for one in run.beside)
            yield Along(min(one[0] for one in spans), max(one[1] for one in spans), rows, False, False)
        elif run.end <= front[0].begin + GRAIN_CM or run.begin >= front[-1].end - GRAIN_CM:
            yield Along(run.begin, run.end, run.rows, run.in_the_round, False)
    sections = {one.key: one for one in piece.sections}
    for join in draft.joins:
        edge = join.one
        if edge.piece == piece.key and join.other.piece == "neckband" and edge.section in sections:
            yield from _slant(piece, sections[edge.section], edge)


def _slant(piece: Piece, section: Section, edge: Edge) -> Iterator[Along]:
    """Give the height of a neck along one edge of a section, from the first row that moves it."""
    if edge.name not in ("left", "right") or edge.amount >= section.rows:
        return
    side = section.left_edge + (section.flat_stitches if edge.name == "right" else 0)
    moved = np.flatnonzero(np.diff(side))
    if len(moved):
        first = int(moved[0]) + 1
        begin, end = begin_end(piece, section)
        yield Along(begin + first * section.row_height_cm, end, section.rows - first, section.in_the_round, False)
