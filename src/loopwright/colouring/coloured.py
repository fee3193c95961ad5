"""A draft with its roles in place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import groupby

import numpy as np

from loopwright.chart.repeat import middle_axis
from loopwright.colouring.columns import PLAIN, columns_of
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
    cells = np.zeros((section.rows, int(section.stitches.max())), dtype=np.uint8)
    cells += np.array([0 if row.chart else number[row.role] for row in rows], dtype=np.uint8)[:, None]
    for key, chart in charts.items():
        at = np.flatnonzero([row.chart == key for row in rows])
        shown = np.array([number[role.name] for role in chart.roles], dtype=np.uint8)[chart.cells]
        columns = columns_of(section, chart.columns, middle_axis(chart))[at]
        laid = shown[np.array([rows[row].chart_row for row in at.tolist()])[:, None], columns]
        cells[at] = np.where(columns == PLAIN, number[chart.roles[0].name], laid)
    return RoleCells(roles, cells)
