"""One plain figure from the front, the back and the side, on which a tape can be laid.

The middle of the body is x = 0, the crown of the head y = 0; units are centimetres of a person of 165 cm. It is a
drawing to point at, not a body to measure: its proportions are ours.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from loopwright.pictures.svg import element, number

__all__ = ["LINE", "Point", "curve", "figure", "mirrored"]

Point = tuple[float, float]

LINE: Final = "#8a8d90"
"""The figure is light, so that the tape on it is seen first."""

_HEAD: Final = ((0, 0), (6, 3), (7.6, 9.5), (6.6, 16.5), (3.6, 21.5), (0, 23))
_SHOULDER: Final = ((5.2, 20), (5.4, 25), (7.5, 28), (13, 30), (18, 31.6), (21, 34.5))
_ARM_OUTSIDE: Final = ((21, 34.5), (22.6, 42), (24.2, 54), (27, 66), (29.6, 80), (31.4, 86), (31.2, 93), (29.2, 98))
_ARM_INSIDE: Final = ((29.2, 98), (27, 93), (26.4, 86), (25.4, 80), (21.2, 68), (18, 56), (15.6, 46), (14.6, 43.5))
_SIDE_OF_TRUNK: Final = ((14.6, 43.5), (15.4, 47), (14.2, 56), (12.6, 64), (13.6, 70), (16.6, 80), (17.6, 87))
_LEG_OUTSIDE: Final = ((17.6, 87), (17, 98), (13.6, 116), (11.4, 126), (11.8, 138), (8.6, 156), (10.6, 163), (4, 164))
_LEG_INSIDE: Final = ((4, 164), (4.4, 156), (4.6, 140), (4.8, 126), (3, 108), (0.6, 93))
_PROFILE_FRONT: Final = (
    (1, 0.2),
    (7, 3.5),
    (8.6, 9),
    (9.8, 12.6),
    (8.4, 14.5),
    (8.2, 19.4),
    (5.4, 22.4),
    (5.2, 26.4),
    (8.8, 33),
    (11.8, 42),
    (13.4, 47.4),
    (11.4, 53),
    (9.4, 60),
    (9, 65),
    (9.8, 72),
    (9.2, 84),
    (8.4, 98),
    (6.4, 122),
    (4.2, 140),
    (3.6, 156),
    (11, 163),
    (11, 164.4),
)
_PROFILE_BACK: Final = (
    (-4.6, 164.4),
    (-4, 158),
    (-5.4, 138),
    (-3.4, 124),
    (-7.4, 104),
    (-12, 91),
    (-12.6, 84),
    (-8.4, 73),
    (-6.6, 64),
    (-8.2, 54),
    (-9.6, 42),
    (-7.8, 31),
    (-5.4, 25.6),
    (-5.6, 21),
    (-8.6, 16),
    (-9.4, 9),
    (-6.6, 3),
    (1, 0.2),
)
_BLADES_AND_SPINE: Final = (((0, 34), (0, 58), (0, 78)), ((4.5, 36), (10.5, 41), (9.5, 48)))
_NAVEL: Final = ((0, 69.4), (0.7, 70.6), (0, 71.6))
_COLLAR_BONE: Final = ((3.4, 29), (8, 30.6), (13, 31.4))
_BREAST: Final = ((3, 44), (6, 50), (10.5, 50.4), (13.6, 46.5))


def curve(points: Sequence[Point]) -> str:
    """Give the path of a smooth line through points: cubic curves with tangents along the neighbours' chord.

    Source: Catmull and Rom 1974, as cubic Bézier pieces (from memory).
    """
    ends = [points[0], *points, points[-1]]
    path = f"M{_at(points[0])}"
    for before, start, end, after in zip(ends, ends[1:], ends[2:], ends[3:], strict=False):
        first = (start[0] + (end[0] - before[0]) / 6, start[1] + (end[1] - before[1]) / 6)
        second = (end[0] - (after[0] - start[0]) / 6, end[1] - (after[1] - start[1]) / 6)
        path += f"C{_at(first)} {_at(second)} {_at(end)}"
    return path


def _at(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


def mirrored(points: Sequence[Point]) -> tuple[Point, ...]:
    """Give the same points on the other side of the body."""
    return tuple((-x, y) for x, y in points)


def _stroke(points: Sequence[Point]) -> str:
    return element(
        "path",
        d=curve(points),
        fill="none",
        stroke=LINE,
        stroke_width=1.1,
        stroke_linecap="round",
        vector_effect="non-scaling-stroke",
    )


def figure(side: str, *, with_bust: bool = False) -> str:
    """Give the figure's outline.

    :param side: ``front``, ``back`` or ``side``.
    :param with_bust: whether the breast is drawn in front; a tape that has nothing to do with it needs none.
    """
    if side == "side":
        return _stroke(_PROFILE_FRONT) + _stroke(_PROFILE_BACK)
    halves = (_HEAD, _SHOULDER, _ARM_OUTSIDE, _ARM_INSIDE, _SIDE_OF_TRUNK, _LEG_OUTSIDE, _LEG_INSIDE)
    front = (_NAVEL, _COLLAR_BONE, _BREAST) if with_bust else (_NAVEL, _COLLAR_BONE)
    inside = front if side == "front" else _BLADES_AND_SPINE
    return "".join(_stroke(half) + _stroke(mirrored(half)) for half in (*halves, *inside))
