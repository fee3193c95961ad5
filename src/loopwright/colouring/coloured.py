"""A draft with its roles in place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import groupby

import numpy as np

from loopwright.chart import Chart
from loopwright.chart.repeat import middle_axis
from loopwright.colouring.columns import PLAIN, columns_of_row
from loopwright.colouring.places import place_of, rows_before
from loopwright.colouring.work import ColourRow, ColourWork
from loopwright.garment.draft import Draft, Piece, RoleCells, RoleRun, Section

__all__ = ["coloured"]


@lru_cache(maxsize=256)
def coloured(draft: Draft, work: ColourWork) -> Draft:
    """Give a draft in which every section says whose yarn knits its rows, or each of its stitches.

    Rows are counted in the order of knitting from where a part of the garment begins; the same draft and plan give the
    same draft.
    """
    pieces = tuple(
        replace(piece, sections=tuple(_section(draft, piece, section, work) for section in piece.sections))
        for piece in draft.pieces
    )
    return replace(draft, pieces=pieces)


def _section(draft: Draft, piece: Piece, section: Section, work: ColourWork) -> Section:
    if not section.rows:
        return section
    rows = work.rows(place_of(piece, section), rows_before(draft, piece, section, work.plan), section.rows)
    if any(row.chart for row in rows):
        return replace(section, cells=_cells(section, rows, work))
    runs = [RoleRun(role, len(list(same))) for role, same in groupby(row.role for row in rows)]
    return replace(section, roles=tuple(runs))


def _cells(section: Section, rows: Sequence[ColourRow], work: ColourWork) -> RoleCells:
    charts = {key: work.chart(key) for key in dict.fromkeys(row.chart for row in rows if row.chart)}
    names = [row.role for row in rows if not row.chart]
    names += [role.name for chart in charts.values() for role in chart.roles]
    roles = tuple(dict.fromkeys(names))
    number = {role: at for at, role in enumerate(roles)}
    laid = {key: _Laid(section, chart, [number[role.name] for role in chart.roles]) for key, chart in charts.items()}
    cells = np.zeros((section.rows, int(section.stitches.max())), dtype=np.uint8)
    for at, row in enumerate(rows):
        count = int(section.stitches[at])
        cells[at, :count] = laid[row.chart].row(at, row.chart_row) if row.chart else number[row.role]
    return RoleCells(roles, cells)


class _Laid:
    """A chart laid over one section; rows of the same width and place are laid once."""

    def __init__(self, section: Section, chart: Chart, numbers: Sequence[int]) -> None:
        self._section = section
        self._cells = np.array(numbers, dtype=np.uint8)[chart.cells]
        self._ground = numbers[0]
        self._width = chart.columns
        self._axis = middle_axis(chart)
        self._known: dict[tuple[int, float], np.ndarray] = {}

    def row(self, at: int, chart_row: int) -> np.ndarray:
        """Give the roles of one row of the section, by number."""
        section = self._section
        key = (int(section.stitches[at]), float(section.left_edge[at]))
        if section.parts or key not in self._known:
            self._known[key] = columns_of_row(section, at, self._width, self._axis)
        columns = self._known[key]
        return np.where(columns == PLAIN, self._ground, self._cells[chart_row, columns])
