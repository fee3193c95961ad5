"""Garments to draw: for every construction that is drafted, the ways of making it that it allows."""

from __future__ import annotations

from functools import cache

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.constructions.any import _DRAFTS
from loopwright.garment.draft import Draft
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.units import BadInput

GAUGE = Gauge(stitches_per_10cm=22, rows_per_10cm=30)
TOP = {
    "bust_girth": 104.0,
    "length": 60.0,
    "shoulder_width": 39.0,
    "upper_arm_girth": 37.0,
    "wrist_girth": 21.0,
    "sleeve_length": 45.0,
}
CHILD = {
    "bust_girth": 62.0,
    "length": 36.0,
    "shoulder_width": 25.0,
    "upper_arm_girth": 23.0,
    "wrist_girth": 15.0,
    "sleeve_length": 27.0,
}
OTHER: dict[str, list[dict[str, float]]] = {
    "hat": [{"head_girth": 52.0, "length": 22.0}],
    "rectangle": [{"width": 30.0, "length": 170.0}, {"width": 170.0, "length": 30.0}],
    "cowl": [{"width": 60.0, "length": 30.0}],
    "crescent shawl": [{"width": 150.0, "depth": 45.0}],
}
ANY_SHAWL: list[dict[str, float]] = [{"depth": 60.0}]
WAYS: tuple[dict[str, object], ...] = (
    {},
    {"worked": "flat"},
    {"direction": "top down"},
    {"direction": "bottom up"},
    {"opens_in_front": True},
    {"opens_in_front": True, "neckline": "V"},
    {"sleeves": "none"},
    {"waist_above_hem": 20.0},
)


def sample(
    construction: Construction = Construction.DROP, measures: dict[str, float] | None = None, **way: object
) -> Draft:
    known = GarmentMeasures.model_validate(TOP if measures is None else measures)
    return draft(Brief(construction, known, GAUGE, DraftOptions.model_validate(way), head_girth_cm=56))


def _measures(construction: Construction, way: dict[str, object]) -> list[dict[str, float]]:
    if construction.is_top:
        waist = {"waist_girth": 86.0} if "waist_above_hem" in way else {}
        return [TOP | waist, *([CHILD] if not waist else [])]
    return OTHER.get(construction.value, ANY_SHAWL)


@cache
def samples() -> dict[str, Draft]:
    """Every construction in the register, made in every way that it allows, by name."""
    made: dict[str, Draft] = {}
    for construction in _DRAFTS:
        for way in WAYS:
            for place, measures in enumerate(_measures(construction, way)):
                try:
                    one = sample(construction, measures, **way)
                except BadInput:
                    continue
                made[f"{construction.value} {place} {' '.join(map(str, way.values()))}".strip()] = one
    return made
