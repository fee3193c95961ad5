"""The drawing of a garment on its wearer, from a plan."""

from __future__ import annotations

from loopwright.body import Body
from loopwright.fit import SizeFit
from loopwright.pictures import EaseLine, fit_figure
from loopwright.season import GarmentPlan, Season
from loopwright.season.wording import POINT_NAMES, Wording

__all__ = ["drawn_body", "fit_drawing"]

DRAWN_FROM = {
    "waist_girth": "waist_natural_girth",
    "hip_girth": "hip_girth",
    "shoulder_width": "shoulder_width_back",
    "upper_arm_girth": "upper_arm_girth",
    "wrist_girth": "wrist_girth",
    "scye_depth": "scye_depth",
    "back_neck_to_waist": "back_neck_to_waist",
    "back_neck_to_hip": "back_neck_to_hip",
    "underarm_to_wrist": "underarm_to_wrist",
    "head_girth": "head_girth",
    "neck_girth": "neck_girth",
}
"""What the drawing calls a measure, and the body's own key."""


def drawn_body(body: Body) -> dict[str, float]:
    """Give the measures that a body is drawn from, in cm, by the names of the drawing."""
    measures = {name: body.measure_cm(key) for name, key in DRAWN_FROM.items()}
    measures["bust_girth"] = body.chest_or_bust_cm
    return {name: cm for name, cm in measures.items() if cm is not None}


def _lines(own: SizeFit, wording: Wording) -> list[EaseLine]:
    return [
        EaseLine(
            point=point.point,
            ease=f"{POINT_NAMES[point.point]} {wording.signed(point.ease_cm)}",
            measures=f"{wording.cm(point.body_cm)} → {wording.cm(point.garment_cm)}"
            + (", estimated" if point.estimated else ""),
            off=point.penalty > 1,
        )
        for point in own.points
    ]


def fit_drawing(season: Season, garment: GarmentPlan, wording: Wording) -> str:
    """Draw a top on its wearer with the ease at each point; empty where there is nothing to draw.

    Heavy words are points that are off by more than they may be.
    """
    wearer = season.garment_by_key[garment.key].wearer
    own = next((fit for fit in garment.fits if fit.size == garment.size), None)
    if wearer is None or own is None or "bust_girth" not in garment.finished_cm:
        return ""
    estimated = {point.point: point.body_cm for point in own.points if point.estimated}
    body = estimated | drawn_body(season.body_by_key[wearer])
    if "bust_girth" not in body:
        return ""
    lines = _lines(own, wording)
    says = f"{garment.name} on {garment.wearer}: " + "; ".join(line.ease for line in lines)
    return fit_figure(body, garment.finished_cm, lines, says)
