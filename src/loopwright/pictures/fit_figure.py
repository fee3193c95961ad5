"""Body and garment from the front, to one scale, with the ease drawn at each point."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from loopwright.pictures.body_outline import (
    SKIN,
    SKIN_EDGE,
    BodyFrame,
    BodyShape,
    Point,
    body_side,
    closed_path,
    half_width_cm,
    on_arm,
)
from loopwright.pictures.svg import INK, NEUTRAL, element, picture

__all__ = ["EaseLine", "fit_figure", "half_width_cm"]

WIDTH, TOP, MIDDLE = 142.0, 26.0, 43.0
TEXT_X, TEXT_SIZE = 86.0, 5.2


@dataclass(frozen=True, slots=True)
class EaseLine:
    """What is written at one point: the ease, then the measures, and whether it is off by more than it may be."""

    point: str
    ease: str
    measures: str
    off: bool = False


def _worn_shape(garment: Mapping[str, float], body: BodyShape) -> BodyShape:
    bust = garment["bust_girth"]
    hip = garment.get("hip_girth", bust)
    upper_arm = garment.get("upper_arm_girth", 0.0)
    return BodyShape(
        shoulder=garment.get("shoulder_width", 2 * body.shoulder) / 2,
        bust=half_width_cm(bust),
        waist=half_width_cm(garment.get("waist_girth", (bust + hip) / 2)),
        hip=half_width_cm(hip),
        upper_arm=half_width_cm(upper_arm, 1.0),
        wrist=half_width_cm(garment.get("wrist_girth", 0.65 * upper_arm), 1.0),
    )


def _garment_side(frame: BodyFrame, shape: BodyShape, garment: Mapping[str, float]) -> list[Point]:
    """Give the right side of a garment from the neckline round the sleeve, if it has one, to the hem."""
    hem = garment.get("length", frame.hip)
    side: list[Point] = [(frame.neck_half + 2.0, 0.6), (shape.shoulder, 3.4)]
    if shape.upper_arm and "sleeve_length" in garment:
        end = garment["sleeve_length"]
        side += [
            on_arm(frame, 0, shape.upper_arm),
            on_arm(frame, end, shape.wrist),
            on_arm(frame, end, -shape.wrist),
        ]
    else:
        side.append((shape.shoulder - 0.8, frame.underarm * 0.6))
    side.append((shape.bust, frame.underarm + 2.0))
    if hem > frame.waist + 3:
        side.append((shape.waist, frame.waist))
    share = min(max((hem - frame.underarm) / (frame.hip - frame.underarm), 0.0), 1.0)
    side.append((shape.bust + (shape.hip - shape.bust) * share, hem))
    return side


def _levels(frame: BodyFrame, body: BodyShape, worn: BodyShape) -> dict[str, tuple[float, float, float]]:
    """Give, for each point, where the body's and the garment's edge stand, and at what height."""
    arm_body, arm_worn = on_arm(frame, 3, body.upper_arm), on_arm(frame, 3, worn.upper_arm)
    return {
        "shoulder_width": (body.shoulder, worn.shoulder, 3.5),
        "upper_arm_girth": (arm_body[0], arm_worn[0], arm_body[1]),
        "bust_girth": (body.bust, worn.bust, frame.underarm + 3.5),
        "waist_girth": (body.waist, worn.waist, frame.waist),
        "hip_girth": (body.hip, worn.hip, frame.hip),
    }


def fit_figure(body: Mapping[str, float], garment: Mapping[str, float], eases: Sequence[EaseLine], says: str) -> str:
    """Draw a body and a garment on it to one scale, seen from the front, with the ease written at each level.

    Trunks are drawn as ellipses with depth 0.7 of the width, arms as round. Lengths that the body lacks are drawn by
    proportion.

    :param body: measures in cm by point (``bust_girth`` for a chest too); at least ``bust_girth``.
    :param garment: finished measures in cm by point; at least ``bust_girth``.
    :param eases: what to write, by point; points that cannot be drawn are left out.
    :param says: read aloud instead of the drawing.
    """
    frame, body_shape = BodyFrame.of(body), BodyShape.of_body(body)
    worn = _worn_shape(garment, body_shape)
    bottom = max(frame.hip + 12, on_arm(frame, frame.arm_length + 17, 0)[1], garment.get("length", 0.0) + 4)
    head_half = half_width_cm(body.get("head_girth", 0.58 * body["bust_girth"]), 1.25)
    parts = [
        element(
            "ellipse",
            cx=MIDDLE,
            cy=-14.5,
            rx=head_half,
            ry=head_half * 1.32,
            fill=SKIN,
            stroke=SKIN_EDGE,
            stroke_width=0.4,
        ),
        element(
            "path",
            d=closed_path(body_side(frame, body_shape), middle=MIDDLE, smooth=True),
            fill=SKIN,
            stroke=SKIN_EDGE,
            stroke_width=0.4,
        ),
        element(
            "path",
            d=closed_path(_garment_side(frame, worn, garment), middle=MIDDLE, smooth=False),
            fill="none",
            stroke=INK,
            stroke_width=0.7,
            stroke_linejoin="round",
        ),
    ]
    parts += _labels(eases, _levels(frame, body_shape, worn))
    drawing = element("g", "".join(parts), transform=f"translate(0 {TOP})")
    return picture(drawing, WIDTH, bottom + TOP, says, class_="figure", keep_shape=True)


def _labels(eases: Sequence[EaseLine], levels: Mapping[str, tuple[float, float, float]]) -> list[str]:
    """Write each ease beside its level: the gap between body and garment in heavy ink, a thin lead to the words."""
    parts: list[str] = []
    free_y = -99.0
    for ease in sorted((ease for ease in eases if ease.point in levels), key=lambda ease: levels[ease.point][2]):
        inner, outer, y = levels[ease.point]
        text_y = max(y, free_y)
        free_y = text_y + TEXT_SIZE * 2.5
        lead = f"M{MIDDLE + max(inner, outer):.2f} {y:.2f} L{TEXT_X - 8:.2f} {y:.2f} L{TEXT_X - 2:.2f} {text_y:.2f}"
        parts += [
            element("line", x1=MIDDLE + inner, x2=MIDDLE + outer, y1=y, y2=y, stroke=INK, stroke_width=1.6),
            element("path", d=lead, fill="none", stroke=NEUTRAL, stroke_width=0.4),
            _words(ease.ease, text_y, bold=ease.off),
            _words(ease.measures, text_y + TEXT_SIZE * 1.15, bold=False),
        ]
    return parts


def _words(text: str, y: float, *, bold: bool) -> str:
    return element("text", text, x=TEXT_X, y=y + 1, font_size=TEXT_SIZE, fill=INK, font_weight="700" if bold else "400")
