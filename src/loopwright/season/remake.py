"""The draft behind a garment's plan, whole: every row of it, for drawings and files."""

from __future__ import annotations

from loopwright.colouring import coloured
from loopwright.garment import Garment
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief
from loopwright.season.colour_work import work_of
from loopwright.season.drafted import brief_for, draft_for
from loopwright.season.own_draft import facts_of
from loopwright.season.result import GarmentPlan
from loopwright.season.season import Season
from loopwright.season.settle import Settled

__all__ = ["draft_of", "settled_draft"]


def draft_of(season: Season, planned: GarmentPlan) -> Draft | None:
    """Give the draft that a plan's figures rest on, or None where there is none.

    Its colours are in place where she says where they go.
    """
    if planned.drafted is None:
        return None
    garment = season.garment_by_key[planned.key]
    swatch = season.swatch_by_key[garment.swatch] if garment.swatch else None
    body = season.body_by_key[garment.wearer] if garment.wearer else None
    return _coloured(season, garment, brief_for(garment, facts_of(season, garment), planned.finished_cm, swatch, body))


def settled_draft(season: Season, one: Settled) -> Draft | None:
    """Give the same of a garment that is settled and not planned yet."""
    if one.drafted is None:
        return None
    return _coloured(season, one.garment, brief_for(one.garment, one.pattern, one.finished_cm, one.swatch, one.body))


def _coloured(season: Season, garment: Garment, brief: Brief) -> Draft:
    made, work = draft_for(brief), work_of(season, garment)
    return made if work is None else coloured(made, work)
