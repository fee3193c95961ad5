"""Ease that is meant: finished measure minus body measure, per point, in cm."""

from __future__ import annotations

from loopwright.records import GrowthCm, Record

__all__ = ["Ease"]


class Ease(Record):
    """Intended ease per point, in cm, where she or the pattern names it."""

    bust_girth: GrowthCm | None = None
    waist_girth: GrowthCm | None = None
    hip_girth: GrowthCm | None = None
    upper_arm_girth: GrowthCm | None = None
    shoulder_width: GrowthCm | None = None
    head_girth: GrowthCm | None = None
