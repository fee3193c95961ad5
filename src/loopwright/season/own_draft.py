"""A garment without a pattern: the facts that a pattern would give, worked out from body, ease and swatch."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.body import Body, Wearer
from loopwright.fabric import Swatch
from loopwright.fit import BODY_MEASURE_OF, intended_ease_cm
from loopwright.garment import Garment
from loopwright.garment.wanted import GarmentMeasures, measures_for_body
from loopwright.pattern import Construction, FinishedMeasures, PatternFacts
from loopwright.season.facts import SeasonFacts
from loopwright.season.wording import ONE_SIZE

__all__ = ["OWN_DRAFT", "facts_of", "own_ease_cm", "own_facts"]

OWN_DRAFT = "your own draft"
"""What stands where a pattern's name would."""


def facts_of(season: SeasonFacts, garment: Garment) -> PatternFacts:
    """Give the facts that a garment is made from: its pattern's, or those of her own draft."""
    if garment.pattern is not None:
        return season.pattern_by_key[garment.pattern]
    body = season.body_by_key[garment.wearer] if garment.wearer else None
    return own_facts(garment, body, season.swatch_by_key[garment.swatch or ""])


def own_ease_cm(garment: Garment, construction: Construction, wearer: Wearer) -> dict[str, float]:
    """Give the ease of a draft in cm by finished measure: her own figure, else that of the style she names."""
    eases = {}
    for point in BODY_MEASURE_OF:
        own: float | None = getattr(garment.ease, point)
        by_style = intended_ease_cm(
            point,
            garment.fit or "standard",
            child=wearer is Wearer.CHILD,
            hat=construction is Construction.HAT,
        )
        if own is not None or by_style is not None:
            eases[point] = own if own is not None else by_style or 0.0
    return eases


def own_facts(garment: Garment, body: Body | None, swatch: Swatch) -> PatternFacts:
    """Give the facts of a draft of her own: one size, at her own gauge, without amounts of yarn."""
    assert garment.draft is not None  # by Garment._has_a_shape
    assert garment.draft.construction is not None
    construction, own = garment.draft.construction, garment.draft.measures
    worked = GarmentMeasures()
    if body is not None:
        worked = measures_for_body(_body_cm(body), own_ease_cm(garment, construction, body.wearer), construction)
    girth = garment.changes.bust_girth_cm
    if girth is not None:
        worked = worked.model_copy(update={"bust_girth_cm": girth})
    finished = dict(own.filled(worked).known())
    return PatternFacts(
        key=f"{garment.key}-draft",
        name=OWN_DRAFT,
        construction=construction,
        fabric=swatch.fabric,
        gauge=swatch.gauge,
        sizes=(ONE_SIZE,),
        finished=_finished(finished),
        opens_in_front=garment.draft.opens_in_front,
    )


def _body_cm(body: Body) -> Mapping[str, float]:
    known = dict(body.known())
    if "bust_girth" not in known and "chest_girth" in known:
        known["bust_girth"] = known["chest_girth"]
    return known


def _finished(measures: Mapping[str, float]) -> FinishedMeasures:
    rows = {name: (cm,) for name, cm in measures.items() if name in FinishedMeasures.model_fields}
    return FinishedMeasures.model_validate(rows)
