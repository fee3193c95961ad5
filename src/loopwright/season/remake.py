"""The draft behind a garment's plan, whole: every row of it, for drawings and files."""

from __future__ import annotations

from loopwright.garment.draft import Draft
from loopwright.season.colour_work import draft_in_colours, work_of
from loopwright.season.drafted import brief_for
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
    brief = brief_for(garment, facts_of(season, garment), planned.finished_cm, swatch, body)
    return draft_in_colours(brief, work_of(season, garment))


def settled_draft(season: Season, one: Settled) -> Draft | None:
    """Give the same of a garment that is settled and not planned yet."""
    if one.drafted is None:
        return None
    brief = brief_for(one.garment, one.pattern, one.finished_cm, one.swatch, one.body)
    return draft_in_colours(brief, work_of(season, one.garment))
