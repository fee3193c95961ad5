"""What is usual where a measure is not stated: neck, shoulder slope, wrist, armhole."""

from __future__ import annotations

from loopwright.garment.wanted.brief import Brief
from loopwright.garment.wanted.measures import GarmentMeasures
from loopwright.pattern import Construction

__all__ = ["usual_measures"]

NECK_SHARE = 1 / 3
"""Neck over shoulder width. Source: a handbook page, *width about a third of the sweater's width*."""
BOAT_SHARE = 0.55
"""The same of a boat neck, which runs from shoulder to shoulder; common practice, no source."""
CREW_DEPTH_CM = 8.0
"""Front depth of a round neck: 3 to 3½ in. Source: a designer's article on necklines, 2014."""
V_ABOVE_ARMHOLE_CM = 2.5
"""A V begins from 1 in above to 2 in below the armhole; the same source."""
INCH_CM = 2.54
"""Back neck drop and shoulder slope are 1 in in patterns. Source: a knitter's weblog on necklines, 2014."""
HIGH_DEPTH_CM = 6.5
BOAT_DEPTH_CM = 3.0
"""Front depth of a high and of a boat neck; common practice, no source."""
WRIST_SHARE = 0.65
"""Wrist over upper arm; our judgement."""
SHOULDER_SHARE = 0.40
"""Shoulder width over half the bust's girth, doubled: 0.40 of the bust; our judgement, used where nothing is stated."""
SHAPED_SHOULDER = (3 / 16, 21.0, 5 / 12)
"""Of shaped armholes: shoulder width is that share of the bust and so many cm, at most the last share of the bust.
Source: a printed vest in five sizes, cross back 15 in for a bust of 36 in (5/12) to 18 in for 52 in (3 in for 16)."""
STRAP_NECK_SHARE = 1 / 2
"""Neck over shoulder width of a sleeveless garment, half of it straps. Source: a printed vest table, whose shoulders of
3¾ to 4½ in this gives within ¼ in of the width above."""
YOKE_ARM_SHARE = 0.33
"""Upper arm over bust of a raglan or a round yoke. Source: the percentage system (*Knitting Without Tears*, 1971), in a
comparison sheet; its later editions say 0.35."""
ADULT_BUST_CM = 75.0
"""Below this bust a neck is made shallower in proportion, for children; our judgement."""


def _front_depth(brief: Brief, bust_cm: float, armhole_cm: float) -> float:
    small = min(bust_cm / ADULT_BUST_CM, 1.0)
    style = brief.options.neckline or "round"
    if style == "V":
        return max(armhole_cm - V_ABOVE_ARMHOLE_CM, armhole_cm / 2)
    return {"boat": BOAT_DEPTH_CM, "round": CREW_DEPTH_CM, "high": HIGH_DEPTH_CM}[style] * small


def _shoulder_width(brief: Brief, bust_cm: float) -> float:
    if brief.construction not in (Construction.SET_IN, Construction.SLEEVELESS):
        return SHOULDER_SHARE * bust_cm
    share, plus_cm, most = SHAPED_SHOULDER
    return min(share * bust_cm + plus_cm, most * bust_cm)


def _without_shoulders(construction: Construction, usual: dict[str, float], bust_cm: float) -> dict[str, float]:
    """Give what is usual of a raglan or a round yoke: no shoulders, and sleeves in proportion to the bust.

    The depth of the back neck follows from the short rows that raise it; the neck of a round yoke is one girth.
    """
    kept = {name: usual[name] for name in ("armhole_depth", "front_neck_depth")}
    kept |= {
        "neck_width": NECK_SHARE * SHOULDER_SHARE * bust_cm,
        "upper_arm_girth": YOKE_ARM_SHARE * bust_cm,
        "wrist_girth": usual.get("wrist_girth", WRIST_SHARE * YOKE_ARM_SHARE * bust_cm),
    }
    if construction is Construction.YOKE:
        del kept["neck_width"], kept["front_neck_depth"]
    return kept


def usual_measures(brief: Brief) -> GarmentMeasures:
    """Give the measures of a top with what is not stated filled in by what is usual.

    Hats, scarves and shawls come back as they are: nothing about them is usual enough.
    """
    measures = brief.measures
    if not brief.construction.is_top:
        return measures
    bust = measures.need("bust_girth")
    armhole = measures.armhole_depth_cm
    if armhole is None:
        armhole = measures.upper_arm_girth_cm / 2 + INCH_CM if measures.upper_arm_girth_cm else 0.12 * bust + 9.0
    drop = brief.construction is Construction.DROP
    shoulder = bust / 2 if drop else measures.shoulder_width_cm or _shoulder_width(brief, bust)
    share = BOAT_SHARE if brief.options.neckline == "boat" else NECK_SHARE
    if brief.construction is Construction.SLEEVELESS:
        share = max(share, STRAP_NECK_SHARE)
    usual: dict[str, float] = {
        "armhole_depth": armhole,
        "shoulder_width": shoulder,
        "neck_width": share * min(shoulder, SHOULDER_SHARE * bust),
        "front_neck_depth": _front_depth(brief, bust, armhole),
        "back_neck_depth": min(INCH_CM, armhole / 4),
        "shoulder_slope": min(INCH_CM, armhole / 5),
    }
    if measures.upper_arm_girth_cm is not None:
        usual["wrist_girth"] = WRIST_SHARE * measures.upper_arm_girth_cm
    if drop:
        measures = measures.model_copy(update={"shoulder_width_cm": None})
    if brief.construction in (Construction.RAGLAN, Construction.YOKE):
        measures = measures.model_copy(update={"shoulder_width_cm": None, "shoulder_slope_cm": None})
        usual = _without_shoulders(brief.construction, usual, bust)
    return measures.filled(GarmentMeasures.model_validate(usual))
