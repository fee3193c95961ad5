"""Finished measures of a garment of one's own, from the body and the ease that is wanted."""

from __future__ import annotations

from collections.abc import Mapping

from loopwright.garment.wanted.measures import GarmentMeasures
from loopwright.pattern import Construction

__all__ = ["measures_for_body"]

BELOW_WAIST_CM = 12.7
"""Standard length: 5 in below the natural waist. Source: a knitter's weblog quoting the usual figures (read)."""
WRIST_EASE_CM = 3.5
"""Middle of 2 to 5 cm at the cuff; common practice, no source."""
HAT_HEIGHT_SHARE = 0.37
"""Height of a close hat over the head's girth, brim not turned up; common practice, no source."""
_ARMHOLE_EASE_CM = ((5.0, 2.0), (10.0, 3.25), (15.0, 5.0))
"""Armhole depth over the body's, by bust ease up to so much: close 1.5 to 2.5, standard 2.5 to 4, loose 5 to 8 cm;
common practice, no source. Above: 6.5 cm."""


def _armhole_ease_cm(bust_ease_cm: float) -> float:
    return next((ease for limit, ease in _ARMHOLE_EASE_CM if bust_ease_cm <= limit), 6.5)


def measures_for_body(
    body_cm: Mapping[str, float], ease_cm: Mapping[str, float], construction: Construction
) -> GarmentMeasures:
    """Give the finished measures that a body and the wanted ease ask for; what the body lacks is left out.

    Girths are body plus ease. The hip is shaped where it asks for more than the bust. Length is the back to the waist
    and 12.7 cm; the armhole is the body's depth with room by the bust's ease. A sleeve runs from underarm to wrist; one
    that hangs from a dropped shoulder is centre back to wrist less a quarter of the garment.

    :param body_cm: by the keys of a season file (``bust_girth`` also for a chest).
    :param ease_cm: by finished measure.
    """
    if construction is Construction.HAT:
        return _hat(body_cm, ease_cm)
    if not construction.is_top or "bust_girth" not in body_cm:
        return GarmentMeasures()
    bust_ease = ease_cm.get("bust_girth", 7.5)
    bust = body_cm["bust_girth"] + bust_ease
    found: dict[str, float] = {"bust_girth": bust}
    hip = body_cm.get("hip_girth", 0.0) + ease_cm.get("hip_girth", 5.0)
    if "hip_girth" in body_cm and hip > bust:
        found["hip_girth"] = hip
    if "back_neck_to_waist" in body_cm:
        found["length"] = body_cm["back_neck_to_waist"] + BELOW_WAIST_CM
    if "scye_depth" in body_cm:
        found["armhole_depth"] = body_cm["scye_depth"] + _armhole_ease_cm(bust_ease)
    if "shoulder_width_back" in body_cm and construction is not Construction.DROP:
        found["shoulder_width"] = body_cm["shoulder_width_back"] + ease_cm.get("shoulder_width", 0.5)
    if construction.has_sleeves:
        found |= _sleeve(body_cm, ease_cm, construction, bust)
    return GarmentMeasures.model_validate(found)


def _sleeve(
    body_cm: Mapping[str, float], ease_cm: Mapping[str, float], construction: Construction, bust_cm: float
) -> dict[str, float]:
    found = {}
    if "upper_arm_girth" in body_cm:
        found["upper_arm_girth"] = body_cm["upper_arm_girth"] + ease_cm.get("upper_arm_girth", 3.75)
    if "wrist_girth" in body_cm:
        found["wrist_girth"] = body_cm["wrist_girth"] + WRIST_EASE_CM
    if construction is Construction.DROP and "back_neck_to_wrist" in body_cm:
        found["sleeve_length"] = max(body_cm["back_neck_to_wrist"] - bust_cm / 4, 1.0)
    elif "underarm_to_wrist" in body_cm:
        found["sleeve_length"] = body_cm["underarm_to_wrist"]
    return found


def _hat(body_cm: Mapping[str, float], ease_cm: Mapping[str, float]) -> GarmentMeasures:
    if "head_girth" not in body_cm:
        return GarmentMeasures()
    head = body_cm["head_girth"]
    return GarmentMeasures(head_girth_cm=head + ease_cm.get("head_girth", -3.75), length_cm=HAT_HEIGHT_SHARE * head)
