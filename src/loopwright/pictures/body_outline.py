"""The outline of a body from the front, in cm: y down from the side of the neck, x from the middle."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

__all__ = [
    "BODY_FILL",
    "SKIN",
    "SKIN_EDGE",
    "BodyFrame",
    "BodyShape",
    "Point",
    "body_side",
    "closed_path",
    "half_flat_cm",
    "half_width_cm",
    "on_arm",
    "trunk_side",
]

DEPTH_OVER_WIDTH = 0.7
"""Depth over width of a trunk taken as an ellipse; our judgement, for drawing only."""
ARM_LEAN = math.radians(13)
SKIN, SKIN_EDGE = "#e2e3e2", "#8f9293"
BODY_FILL = "#ebebea"
"""A body that stands behind a drawing."""

Point = tuple[float, float]


def half_width_cm(girth_cm: float, depth_over_width: float = DEPTH_OVER_WIDTH) -> float:
    r"""Give half the width, seen from the front, of an ellipse with this girth.

    Perimeter after Ramanujan (1914, from memory): :math:`\pi (3(a+b) - \sqrt{(3a+b)(a+3b)})` with b = ratio × a.
    """
    k = depth_over_width
    return girth_cm / (math.pi * (3 * (1 + k) - math.sqrt((3 + k) * (1 + 3 * k))))


def half_flat_cm(girth_cm: float, _depth_over_width: float = 0.0) -> float:
    """Give half the width of a girth laid flat, as a garment lies on a table: a quarter of it."""
    return girth_cm / 4


@dataclass(frozen=True, slots=True)
class BodyFrame:
    """Heights in cm below the side of the neck; what the body lacks is drawn by proportion, for looks alone."""

    neck_half: float
    shoulder_half: float
    underarm: float
    waist: float
    hip: float
    arm_length: float

    @classmethod
    def of(cls, body: Mapping[str, float]) -> BodyFrame:
        """Give the frame of a body from its measures in cm by point; at least ``bust_girth``."""
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
class BodyShape:
    """Half widths of a body or of a garment at each level, and its arm."""

    shoulder: float
    bust: float
    waist: float
    hip: float
    upper_arm: float
    wrist: float

    @classmethod
    def of_body(cls, body: Mapping[str, float], half_cm: Callable[[float, float], float] = half_width_cm) -> BodyShape:
        """Give the half widths of a body.

        :param half_cm: half the width of a girth with its depth over width: as seen, or as laid flat.
        """
        bust = body["bust_girth"]
        return cls(
            shoulder=body.get("shoulder_width", 0.4 * bust) / 2,
            bust=half_cm(bust, DEPTH_OVER_WIDTH),
            waist=half_cm(body.get("waist_girth", 0.84 * bust), DEPTH_OVER_WIDTH),
            hip=half_cm(body.get("hip_girth", 1.03 * bust), DEPTH_OVER_WIDTH),
            upper_arm=half_cm(body.get("upper_arm_girth", 0.32 * bust), 1.0),
            wrist=half_cm(body.get("wrist_girth", 0.17 * bust), 1.0),
        )


def on_arm(frame: BodyFrame, below_underarm: float, aside: float) -> Point:
    """Give a point of the leaning arm: so far below the underarm along it, so far to its outer side."""
    along = frame.underarm + below_underarm
    x = frame.shoulder_half - 2.2 + along * math.sin(ARM_LEAN) + aside * math.cos(ARM_LEAN)
    return x, along * math.cos(ARM_LEAN) + 2.5 - aside * math.sin(ARM_LEAN)


def body_side(frame: BodyFrame, shape: BodyShape) -> list[Point]:
    """Give the right side of a body from the neck round the hand to the thigh."""
    hand = frame.arm_length + 8
    return [
        (frame.neck_half, -5.0),
        (frame.neck_half + 0.4, -0.5),
        (shape.shoulder, 3.6),
        on_arm(frame, -frame.underarm * 0.35, shape.upper_arm * 1.05),
        on_arm(frame, 4, shape.upper_arm),
        on_arm(frame, frame.arm_length * 0.5, (shape.upper_arm + shape.wrist) / 2 * 0.98),
        on_arm(frame, frame.arm_length, shape.wrist),
        on_arm(frame, hand, shape.wrist * 1.25),
        on_arm(frame, hand + 8, shape.wrist * 0.4),
        on_arm(frame, hand, -shape.wrist * 1.1),
        on_arm(frame, frame.arm_length, -shape.wrist),
        on_arm(frame, frame.arm_length * 0.5, -(shape.upper_arm + shape.wrist) / 2 * 0.98),
        on_arm(frame, 5, -shape.upper_arm),
        (shape.bust, frame.underarm + 1.5),
        (shape.bust * 0.99, frame.underarm + 6),
        (shape.waist, frame.waist),
        (shape.hip, frame.hip),
        (shape.hip * 0.97, frame.hip + 10),
    ]


def trunk_side(frame: BodyFrame, shape: BodyShape) -> list[Point]:
    """Give the right side of a body without its arms, from the neck to the thigh."""
    return [
        (frame.neck_half, -5.0),
        (frame.neck_half + 0.4, -0.5),
        (shape.shoulder * 0.98, 4.2),
        (shape.shoulder * 0.98, frame.underarm * 0.55),
        ((shape.shoulder + shape.bust) / 2, frame.underarm * 0.88),
        (shape.bust, frame.underarm + 3),
        (shape.waist, frame.waist),
        (shape.hip, frame.hip),
        (shape.hip * 0.99, frame.hip + 4),
        (shape.hip * 0.94, frame.hip + 5.5),
        (shape.hip * 0.5, frame.hip + 5.5),
    ]


def closed_path(side: Sequence[Point], *, middle: float = 0.0, smooth: bool) -> str:
    """Give the outline of a side and its mirror image; smooth by Catmull and Rom's curve through the points.

    :param middle: where the middle line stands.
    """
    points = [*((middle + x, y) for x, y in side), *((middle - x, y) for x, y in reversed(side))]
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
