"""Sleeves of another length than the arm: short and three-quarter, and how wide they end."""

from __future__ import annotations

from typing import Final

from loopwright.garment.wanted.measures import GarmentMeasures
from loopwright.garment.wanted.options import SleeveLength

__all__ = ["SHARE_OF_ARM", "with_sleeves"]

SHARE_OF_ARM: Final[dict[SleeveLength, float]] = {"none": 0.0, "short": 0.28, "three-quarter": 0.72, "long": 1.0}
"""Sleeve from the underarm, as a share of the arm from underarm to wrist; common practice, no source."""


def with_sleeves(measures: GarmentMeasures, sleeves: SleeveLength | None, own: GarmentMeasures) -> GarmentMeasures:
    """Give measures whose sleeve ends where she wants it, as wide there as a long one would be.

    :param measures: of the garment with long sleeves.
    :param own: her own figures, which are left as they stand.
    """
    if sleeves is None or measures.upper_arm_girth_cm is None:
        return measures
    if sleeves == "none":
        gone = {"upper_arm_girth_cm": None, "wrist_girth_cm": None, "sleeve_length_cm": None}
        return measures.model_copy(update=gone)
    share = SHARE_OF_ARM[sleeves]
    changed: dict[str, float] = {}
    if measures.sleeve_length_cm is not None and own.sleeve_length_cm is None:
        changed["sleeve_length_cm"] = share * measures.sleeve_length_cm
    if measures.wrist_girth_cm is not None and own.wrist_girth_cm is None:
        top = measures.upper_arm_girth_cm
        changed["wrist_girth_cm"] = top + (measures.wrist_girth_cm - top) * share
    return measures.model_copy(update=changed)
