"""Intended ease: finished measure minus body measure, as she wants it after washing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from loopwright.data import table

__all__ = ["BODY_MEASURE_OF", "intended_ease_cm"]

BODY_MEASURE_OF: Final[Mapping[str, str]] = {
    "bust_girth": "bust_girth",
    "waist_girth": "waist_natural_girth",
    "hip_girth": "hip_girth",
    "upper_arm_girth": "upper_arm_girth",
    "shoulder_width": "shoulder_width_back",
    "head_girth": "head_girth",
}
"""The body measure that each finished measure is compared with; ``bust_girth`` is the chest of a man or child."""


def _style_table() -> dict[tuple[str, str], tuple[float, float]]:
    return {
        (row["style"], row["point"]): (float(row["ease_low_cm"]), float(row["ease_high_cm"]))
        for row in table("fit/ease.csv")
    }


def intended_ease_cm(point: str, style: str, *, child: bool = False, hat: bool = False) -> float | None:
    """Give the ease a style wants at a point in cm: the middle of its range, or None where it names none.

    A child's chest takes the range that leaves room to grow, if that is more. Looser styles than a point's own
    table reaches take its loosest row, tighter ones its tightest.

    Source: ``data/fit/ease.csv``; the bust rows are read, the others common practice.
    """
    styles = ["very close", "close", "standard", "loose", "oversized"]
    rows = _style_table()
    if hat:
        low, high = rows["hat", "head_girth"]
        return (low + high) / 2 if point == "head_girth" else None
    known = [name for name in styles if (name, point) in rows]
    if not known:
        return None
    nearest = min(known, key=lambda name: abs(styles.index(name) - styles.index(style)))
    low, high = rows[nearest, point]
    middle = (low + high) / 2
    if child and point == "bust_girth":
        grow_low, grow_high = rows["child", "bust_girth"]
        middle = max(middle, (grow_low + grow_high) / 2)
    return middle
