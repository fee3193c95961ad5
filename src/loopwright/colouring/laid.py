"""How a chart came to lie on each section: how often it goes round or across, and where counts change within it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from loopwright.chart import Fit, fit_chart
from loopwright.colouring.places import place_of, rows_before
from loopwright.colouring.work import ColourWork
from loopwright.garment.draft import Draft, Piece, Section
from loopwright.garment.wanted.colours import ColourPlace

__all__ = ["LaidChart", "laid_charts"]


@dataclass(frozen=True, slots=True)
class LaidChart:
    """A chart on the rows of one section.

    :ivar chart: its key; ``place`` the part of the garment.
    :ivar first, rows: the first row of the section that shows it, from 0, and how many do.
    :ivar fit: over the stitches of that first row; each share of a raglan yoke is centred by itself.
    :ivar changes: rows, from 0, whose count differs from the row below while the chart goes on.
    """

    chart: str
    place: ColourPlace
    piece: str
    section: str
    in_the_round: bool
    shared: bool
    first: int
    rows: int
    fit: Fit
    changes: tuple[int, ...]

    @property
    def is_even(self) -> bool:
        """Say whether it comes out even all the way."""
        return self.fit.exact and not self.changes


def laid_charts(draft: Draft, work: ColourWork) -> tuple[LaidChart, ...]:
    """Give every stretch of a section that shows a chart, in the order of knitting."""
    return tuple(one for piece, section in draft.sections() for one in _on(draft, piece, section, work))


def _on(draft: Draft, piece: Piece, section: Section, work: ColourWork) -> Iterator[LaidChart]:
    place = place_of(piece, section)
    rows = work.rows(place, rows_before(draft, piece, section, work.plan), section.rows)
    keys = np.array([row.chart for row in rows])
    edges = np.r_[0, np.flatnonzero(keys[1:] != keys[:-1]) + 1, keys.size] if keys.size else np.zeros(1, np.int64)
    for first, end in zip(edges[:-1].tolist(), edges[1:].tolist(), strict=True):
        key, count = str(keys[first]), int(section.stitches[first])
        edge = 0 if section.in_the_round else 1
        if not key or count <= 2 * edge:
            continue
        changed = np.flatnonzero(np.diff(section.stitches[first:end])) + first + 1
        yield LaidChart(
            chart=key,
            place=place,
            piece=piece.key,
            section=section.key,
            in_the_round=section.in_the_round,
            shared=bool(section.parts),
            first=first,
            rows=end - first,
            fit=fit_chart(work.chart(key), count, in_the_round=section.in_the_round, edge=edge),
            changes=tuple(changed.tolist()),
        )
