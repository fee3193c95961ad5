"""The body behind a garment: head, trunk, arms and hands, to the same scale, its girths laid flat as the garment lies.

Trunk and arms are half their girth wide, so that beside a garment that lies flat the ease is seen. Head and neck are
drawn as they are seen. What the body lacks is drawn by proportion, for looks alone.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.pictures.body_outline import BodyFrame, BodyShape, half_flat_cm, trunk_side
from loopwright.pictures.lie_bent import Bend
from loopwright.pictures.patch import Placed
from loopwright.pictures.placing_sleeve import HANG

__all__ = ["body_outlines"]

Points = NDArray[np.float64]

HAND: Final = ((0.0, 1.0), (2.5, 0.95), (6.5, 0.98), (10.0, 0.88), (13.5, 0.66), (16.3, 0.38), (17.4, 0.0))
"""Of an adult: cm below the wrist, and half its width over half the wrist's."""
HEAD_HIGH: Final = 1.22
"""Height of a head over its width, its girth laid flat."""
HAT_ABOVE: Final = 0.6
"""Where the lower edge of a hat lies, of the head's height from its crown; common practice, no source."""


def body_outlines(placed: Placed, body: Mapping[str, float]) -> list[Points]:
    """Give the outlines of a body where a garment lies on it, in cm of the picture; empty where it lies on none.

    :param body: measures in cm by point; at least ``bust_girth``, for a hat ``head_girth``.
    """
    if placed.is_hat and "head_girth" in body:
        return _under_hat(placed, body)
    if not placed.is_worn or "bust_girth" not in body:
        return []
    frame, shape = BodyFrame.of(body), BodyShape.of_body(body, half_flat_cm)
    arm = _arm(placed, frame, shape)
    return [arm, arm * (-1, 1), _trunk(frame, shape) + np.array([0.0, placed.neck_y])]


def _smooth(points: Points, parts: int = 10) -> Points:
    """Give a smooth line through points, after Catmull and Rom 1974 (from memory)."""
    ends = np.vstack((points[:1], points, points[-1:]))
    t = np.linspace(0, 1, parts, endpoint=False)[:, None]
    lines = []
    for before, one, other, after in zip(ends, ends[1:], ends[2:], ends[3:], strict=False):
        lines.append(
            0.5
            * (
                2 * one
                + (other - before) * t
                + (2 * before - 5 * one + 4 * other - after) * t**2
                + (3 * one - before - 3 * other + after) * t**3
            )
        )
    return np.vstack((*lines, points[-1:]))


def _both(side: Points) -> Points:
    return np.vstack((side, side[::-1] * (-1, 1)))


def _trunk(frame: BodyFrame, shape: BodyShape) -> Points:
    """Give neck, trunk and legs; the neck and the legs go on beyond the picture."""
    side = [point for point in trunk_side(frame, shape) if point[1] < frame.hip - 1]
    neck = frame.neck_half
    upper = [(neck * 0.94, -9.5), (neck * 0.92, -6.0), (neck * 1.0, -2.2), *side[1:]]
    crotch, knee = frame.hip + 7.0, frame.hip + 34.0
    leg = [
        (shape.hip, frame.hip),
        (shape.hip * 0.985, frame.hip + 6),
        (shape.hip * 0.7, knee),
        (shape.hip * 0.62, knee + 8),
    ]
    inner = [(shape.hip * 0.14, knee + 8), (shape.hip * 0.09, knee), (1.0, crotch + 4), (0.0, crotch)]
    return _both(np.vstack((_smooth(np.array([*upper, *leg])), _smooth(np.array(inner)))))


def _arm(placed: Placed, frame: BodyFrame, shape: BodyShape) -> Points:
    """Give the right arm: in the middle of the sleeve where there is one, else hanging from the shoulder."""
    bend, wrist = placed.sleeve, frame.arm_length
    if bend is None:
        first = math.radians(62)
        top = shape.upper_arm * 0.9
        x, y = frame.shoulder_half * 0.98 - top * math.cos(first), placed.neck_y + 4.6 + top * math.sin(first)
        radius = 2.4 * shape.upper_arm
        bend = Bend(x, y, first, HANG, 1.0, radius * (first - HANG))
        wrist += 6.0
    else:
        bend = Bend(bend.x, bend.y, bend.first, bend.last, bend.straight, bend.arc)
        wrist += bend.straight - 2.0
    grown = min(max(frame.arm_length / 43, 0.45), 1.15)
    along = [3.0 if placed.sleeve else 0.0, 0.45 * wrist, wrist, *(wrist + grown * below for below, _ in HAND[1:])]
    half = [shape.upper_arm, (shape.upper_arm * 0.62 + shape.wrist * 0.42), shape.wrist]
    half += [shape.wrist * share for _, share in HAND[1:]]
    side = _smooth(np.column_stack((half, along)), 8)
    outline = np.vstack((side, side[::-1] * (-1, 1)))
    return np.column_stack(bend.to_picture(outline[:, 0], outline[:, 1]))


def _under_hat(placed: Placed, body: Mapping[str, float]) -> list[Points]:
    """Give a head, its girth laid flat, with the hat's lower edge on its brow."""
    half = half_flat_cm(body["head_girth"])
    high = half * HEAD_HIGH
    brow = placed.box()[3]
    middle = brow + (1 - 2 * HAT_ABOVE) * high
    angle = np.linspace(0, 2 * math.pi, 97)[:-1]
    x, y = half * np.sin(angle), -high * np.cos(angle)
    x = x * np.where(y > 0, 1 - 0.14 * (y / high) ** 2, 1)
    return [np.column_stack((x, middle + y))]
