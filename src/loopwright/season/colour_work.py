"""Where the colours of a garment go: what she says of it, with the season's charts."""

from __future__ import annotations

from loopwright.colouring import ColourWork, coloured
from loopwright.garment import Garment
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief
from loopwright.season.drafted import draft_for
from loopwright.season.season import Season

__all__ = ["draft_in_colours", "stranded_share", "work_of"]


def work_of(season: Season, garment: Garment) -> ColourWork | None:
    """Give where a garment's colours go, or None where she says nothing of it."""
    if not garment.colours.says_anything:
        return None
    charts = tuple((key, season.chart_by_key[key].chart) for key in garment.colours.charts)
    return ColourWork(garment.colours, garment.yarns[0].key, charts)


def draft_in_colours(brief: Brief, work: ColourWork | None) -> Draft:
    """Draft a garment, its colours in place where she says where they go; once for equal briefs.

    :raises BadInput: measures that cannot make it.
    """
    made = draft_for(brief)
    return made if work is None else coloured(made, work)


def stranded_share(draft: Draft) -> float:
    """Give the share of a draft's stitches that stand in rows of several roles, 0 to 1."""
    stranded = sum(
        piece.made * int(section.stitches[sum(rows > 0 for rows in section.stitches_by_role().values()) > 1].sum())
        for piece, section in draft.sections()
        if section.cells is not None
    )
    return stranded / draft.stitches if draft.stitches else 0.0
