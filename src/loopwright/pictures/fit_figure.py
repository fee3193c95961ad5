"""Body and garment from the front, to one scale, with the ease drawn at each point."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from loopwright.pictures.svg import INK, NEUTRAL, element, picture

__all__ = ["EaseLine", "fit_figure", "half_width_cm"]

DEPTH_OVER_WIDTH = 0.7
"""Depth over width of a trunk taken as an ellipse; our judgement, for drawing only."""
ARM_LEAN = math.radians(13)
WIDTH, TOP, MIDDLE = 142.0, 26.0, 43.0
TEXT_X, TEXT_SIZE = 86.0, 5.2
SKIN, SKIN_EDGE = "#e2e3e2", "#8f9293"

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class EaseLine:
    """What is written at one point: the ease, then the measures, and whether it is off by more than it may be."""

    point: str
    ease: str
    measures: str
    off: bool = False


def half_width_cm(girth_cm: float, depth_over_width: float = DEPTH_OVER_WIDTH) -> float:
    r"""Give half the width, seen from the front, of an ellipse with this girth.

    Perimeter after Ramanujan (1914, from memory): :math:`\pi (3(a+b) - \sqrt{(3a+b)(a+3b)})` with b = ratio × a.
    """
    k = depth_over_width
    return girth_cm / (math.pi * (3 * (1 + k) - math.sqrt((3 + k) * (1 + 3 * k))))


@dataclass(frozen=True, slots=True)
class _Frame:
    """Heights in cm below the side of the neck; what the body lacks is drawn by proportion, for looks alone."""

    neck_half: float
    shoulder_half: float
    underarm: float
    waist: float
    hip: float
    arm_length: float

    @classmethod
    def of(cls, body: Mapping[str, float]) -> _Frame:
        bust = body["bust_girth"]
        scale = min(max(bust / 95, 0.4), 1.3) ** 0.5
        underarm = body.get("scye_depth", 20 * scale)
        waist = max(body.get("back_neck_to_waist", 41 * scale), underarm + 6)
        return cls(
            neck_half=half_width_cm(body.get("neck_girth", 0.37 * bust), 0.9),
            shoulder_half=body.get("shoulder_width", 0.4 * bust) / 2,
            underarm=underarm,
            waist=waist,
            hip=max(body.get("back_neck_to_hip", waist + 18 * scale), waist + 8),
            arm_length=body.get("underarm_to_wrist", 44 * scale),
        )


@dataclass(frozen=True, slots=True)
class _Shape:
    """Half widths of a body or of a garment at each level, and its arm."""

    shoulder: float
    bust: float
    waist: float
    hip: float
    upper_arm: float
    wrist: float

    @classmethod
    def of_body(cls, body: Mapping[str, float]) -> _Shape:
        bust = body["bust_girth"]
        return cls(
            shoulder=body.get("shoulder_width", 0.4 * bust) / 2,
            bust=half_width_cm(bust),
            waist=half_width_cm(body.get("waist_girth", 0.84 * bust)),
            hip=half_width_cm(body.get("hip_girth", 1.03 * bust)),
            upper_arm=half_width_cm(body.get("upper_arm_girth", 0.32 * bust), 1.0),
            wrist=half_width_cm(body.get("wrist_girth", 0.17 * bust), 1.0),
        )

    @classmethod
    def of_garment(cls, garment: Mapping[str, float], body: _Shape) -> _Shape:
        bust = garment["bust_girth"]
        hip = garment.get("hip_girth", bust)
        upper_arm = garment.get("upper_arm_girth", 0.0)
        return cls(
            shoulder=garment.get("shoulder_width", 2 * body.shoulder) / 2,
            bust=half_width_cm(bust),
            waist=half_width_cm(garment.get("waist_girth", (bust + hip) / 2)),
            hip=half_width_cm(hip),
            upper_arm=half_width_cm(upper_arm, 1.0),
            wrist=half_width_cm(garment.get("wrist_girth", 0.65 * upper_arm), 1.0),
        )


def _on_arm(frame: _Frame, below_underarm: float, aside: float) -> Point:
    """Give a point of the leaning arm: so far below the underarm along it, so far to its outer side."""
    along = frame.underarm + below_underarm
    x = frame.shoulder_half - 2.2 + along * math.sin(ARM_LEAN) + aside * math.cos(ARM_LEAN)
    return x, along * math.cos(ARM_LEAN) + 2.5 - aside * math.sin(ARM_LEAN)


def _body_side(frame: _Frame, shape: _Shape) -> list[Point]:
    """Give the right side of a body from the neck round the hand to the thigh."""
    hand = frame.arm_length + 8
    return [
        (frame.neck_half, -5.0),
        (frame.neck_half + 0.4, -0.5),
        (shape.shoulder, 3.6),
        _on_arm(frame, -frame.underarm * 0.35, shape.upper_arm * 1.05),
        _on_arm(frame, 4, shape.upper_arm),
        _on_arm(frame, frame.arm_length * 0.5, (shape.upper_arm + shape.wrist) / 2 * 0.98),
        _on_arm(frame, frame.arm_length, shape.wrist),
        _on_arm(frame, hand, shape.wrist * 1.25),
        _on_arm(frame, hand + 8, shape.wrist * 0.4),
        _on_arm(frame, hand, -shape.wrist * 1.1),
        _on_arm(frame, frame.arm_length, -shape.wrist),
        _on_arm(frame, frame.arm_length * 0.5, -(shape.upper_arm + shape.wrist) / 2 * 0.98),
        _on_arm(frame, 5, -shape.upper_arm),
        (shape.bust, frame.underarm + 1.5),
        (shape.bust * 0.99, frame.underarm + 6),
        (shape.waist, frame.waist),
        (shape.hip, frame.hip),
        (shape.hip * 0.97, frame.hip + 10),
    ]


def _garment_side(frame: _Frame, shape: _Shape, garment: Mapping[str, float]) -> list[Point]:
    """Give the right side of a garment from the neckline round the sleeve, if it has one, to the hem."""
    hem = garment.get("length", frame.hip)
    side: list[Point] = [(frame.neck_half + 2.0, 0.6), (shape.shoulder, 3.4)]
    if shape.upper_arm and "sleeve_length" in garment:
        end = garment["sleeve_length"]
        side += [
            _on_arm(frame, 0, shape.upper_arm),
            _on_arm(frame, end, shape.wrist),
            _on_arm(frame, end, -shape.wrist),
        ]
    else:
        side.append((shape.shoulder - 0.8, frame.underarm * 0.6))
    side.append((shape.bust, frame.underarm + 2.0))
    if hem > frame.waist + 3:
        side.append((shape.waist, frame.waist))
    share = min(max((hem - frame.underarm) / (frame.hip - frame.underarm), 0.0), 1.0)
    side.append((shape.bust + (shape.hip - shape.bust) * share, hem))
    return side


def _closed(side: Sequence[Point], *, smooth: bool) -> str:
    """Give the outline of a side and its mirror image; smooth by Catmull and Rom's curve through the points."""
    points = [*((MIDDLE + x, y) for x, y in side), *((MIDDLE - x, y) for x, y in reversed(side))]
    start = f"M{points[0][0]:.2f} {points[0][1]:.2f}"
    if not smooth:
        return start + "".join(f" L{x:.2f} {y:.2f}" for x, y in points[1:]) + " Z"
    curves = []
    for number, (one, two) in enumerate(pairwise(points)):
        before, after = points[max(number - 1, 0)], points[min(number + 2, len(points) - 1)]
        first = (one[0] + (two[0] - before[0]) / 6, one[1] + (two[1] - before[1]) / 6)
        second = (two[0] - (after[0] - one[0]) / 6, two[1] - (after[1] - one[1]) / 6)
        curves.append(" C" + " ".join(f"{x:.2f} {y:.2f}" for x, y in (first, second, two)))
    return start + "".join(curves) + " Z"


def _levels(frame: _Frame, body: _Shape, worn: _Shape) -> dict[str, tuple[float, float, float]]:
    """Give, for each point, where the body's and the garment's edge stand, and at what height."""
    arm_body, arm_worn = _on_arm(frame, 3, body.upper_arm), _on_arm(frame, 3, worn.upper_arm)
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
    frame, body_shape = _Frame.of(body), _Shape.of_body(body)
    worn = _Shape.of_garment(garment, body_shape)
    bottom = max(frame.hip + 12, _on_arm(frame, frame.arm_length + 17, 0)[1], garment.get("length", 0.0) + 4)
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
            "path", d=_closed(_body_side(frame, body_shape), smooth=True), fill=SKIN, stroke=SKIN_EDGE, stroke_width=0.4
        ),
        element(
            "path",
            d=_closed(_garment_side(frame, worn, garment), smooth=False),
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
