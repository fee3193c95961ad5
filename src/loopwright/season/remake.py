"""The draft behind a garment's plan, whole: every row of it, for drawings and files."""

from __future__ import annotations

from loopwright.garment.draft import Draft
from loopwright.season.drafted import brief_for, draft_for
from loopwright.season.own_draft import facts_of
from loopwright.season.result import GarmentPlan
from loopwright.season.season import Season

__all__ = ["draft_of"]


def draft_of(season: Season, planned: GarmentPlan) -> Draft | None:
    """Give the draft that a plan's figures rest on, or None where there is none."""
    if planned.drafted is None:
        return None
    garment = season.garment_by_key[planned.key]
    swatch = season.swatch_by_key[garment.swatch] if garment.swatch else None
    body = season.body_by_key[garment.wearer] if garment.wearer else None
    return draft_for(brief_for(garment, facts_of(season, garment), planned.finished_cm, swatch, body))
