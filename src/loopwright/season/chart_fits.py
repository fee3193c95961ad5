"""A chart laid over the sections of the garment that it is for."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from loopwright.chart import Chart, Fit, fit_chart
from loopwright.garment import Garment
from loopwright.garment.parts.girth import SEAM
from loopwright.season.remake import settled_draft
from loopwright.season.season import Season
from loopwright.season.settle import settle
from loopwright.units import BadInput

__all__ = ["SectionFit", "section_fits"]


@dataclass(frozen=True, slots=True)
class SectionFit:
    """The chart laid over that stretch of a section that keeps one count the longest.

    :ivar from_row: row of the section from which on it keeps this count, from 1.
    :ivar rows: for how many rows; ``whole_high`` repeats go into them.
    """

    section: str
    fit: Fit
    from_row: int
    rows: int
    whole_high: int


def section_fits(season: Season, chart: Chart, garment: Garment) -> tuple[SectionFit, ...]:
    """Lay the chart over the longest stretch of every section that keeps one count; edges are left out."""
    try:
        settled = settle(season, garment)
    except BadInput:  # a garment that cannot be planned says so on its own page
        return ()
    made = settled_draft(season, settled)
    if made is None:
        return ()
    high = chart.repeat.rows if chart.repeat else chart.rows
    found: dict[tuple[str, int, int], SectionFit] = {}
    for piece in made.pieces:
        for section in piece.sections:
            first, rows, count = _level(section.stitches)
            if "rib" in section.fabric or rows < high or count <= SEAM:
                continue
            name = piece.name if piece.name == section.name else f"{piece.name}, {section.name}"
            edge = 0 if section.in_the_round else SEAM // 2
            fit = fit_chart(chart, count, in_the_round=section.in_the_round, edge=edge)
            found.setdefault((name, count, rows), SectionFit(name, fit, first + 1, rows, rows // high))
    return tuple(found.values())


def _level(stitches: NDArray[np.int64]) -> tuple[int, int, int]:
    """Give the longest stretch of rows with one count: its first row, from 0, its rows, and the count."""
    if not stitches.size:
        return 0, 0, 0
    edges = np.r_[0, np.flatnonzero(np.diff(stitches)) + 1, stitches.size]
    longest = int(np.diff(edges).argmax())
    first = int(edges[longest])
    return first, int(edges[longest + 1]) - first, int(stitches[first])
