"""Which construction drafts what."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from loopwright.garment.constructions.crescent import draft_crescent
from loopwright.garment.constructions.drop import draft_drop
from loopwright.garment.constructions.half_round import draft_half_round
from loopwright.garment.constructions.hat import draft_hat
from loopwright.garment.constructions.raglan import draft_raglan
from loopwright.garment.constructions.rectangle import draft_cowl, draft_rectangle
from loopwright.garment.constructions.round_yoke import draft_round_yoke
from loopwright.garment.constructions.set_in import draft_set_in
from loopwright.garment.constructions.sleeveless import draft_sleeveless
from loopwright.garment.constructions.triangle import draft_triangle
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief, refuse_conflicts, usual_measures
from loopwright.pattern import Construction
from loopwright.units import BadInput

__all__ = ["draft"]

_DRAFTS: Final[dict[Construction, Callable[[Brief], Draft]]] = {
    Construction.DROP: draft_drop,
    Construction.RAGLAN: draft_raglan,
    Construction.YOKE: draft_round_yoke,
    Construction.SET_IN: draft_set_in,
    Construction.SLEEVELESS: draft_sleeveless,
    Construction.HAT: draft_hat,
    Construction.HALF_ROUND_SHAWL: draft_half_round,
    Construction.TRIANGLE_SHAWL: draft_triangle,
    Construction.CRESCENT_SHAWL: draft_crescent,
    Construction.RECTANGLE: draft_rectangle,
    Construction.COWL: draft_cowl,
}


def draft(brief: Brief) -> Draft:
    """Draft a garment: pieces, sections and rows with a count for every row, from measures, gauge and options.

    What is not stated of a top is filled in by what is usual. The measures of the result are within half a stitch or
    half a row of what was wanted, or say what kept them from it.

    :raises BadInput: measures that cannot stand together, naming the pair and the nearest value that works.
    """
    if brief.construction not in _DRAFTS:
        raise BadInput(
            found=f"a {brief.construction.value}", wanted=f"one of {', '.join(one.value for one in _DRAFTS)}"
        )
    filled = replace(brief, measures=usual_measures(brief), options=brief.options.over(brief.fabric))
    refuse_conflicts(filled.measures)
    return _DRAFTS[brief.construction](filled)
