"""The shapes of chart symbols, drawn by us after the descriptions in ``data/chart/symbols.csv``.

A shape is a path of M, L and C in a unit square, y downwards: single boxes in the square that stands in the middle of
the box, crossings over all their boxes, one unit to a box.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from loopwright.chart import SYMBOLS
from loopwright.pictures.svg import number

__all__ = ["SHAPES", "Shape", "placed"]

_TOKEN: Final = re.compile(r"[MLCZ]|-?[\d.]+")


@dataclass(frozen=True, slots=True)
class Shape:
    """How a symbol is drawn.

    :ivar lines: what is stroked; ``dots`` what is filled.
    :ivar spans: whether it fills all its boxes, rather than the square in the middle of one.
    """

    lines: str = ""
    dots: str = ""
    spans: bool = False


def _disc(x: float, y: float, r: float, wide: float = 1.0) -> str:
    """Give an ellipse as four curves. Source: 0.5523, the usual factor of a quarter circle."""
    a, b, k = r * wide, r, 0.5523
    return (
        f"M{number(x - a)} {number(y)}"
        f"C{number(x - a)} {number(y - k * b)} {number(x - k * a)} {number(y - b)} {number(x)} {number(y - b)}"
        f"C{number(x + k * a)} {number(y - b)} {number(x + a)} {number(y - k * b)} {number(x + a)} {number(y)}"
        f"C{number(x + a)} {number(y + k * b)} {number(x + k * a)} {number(y + b)} {number(x)} {number(y + b)}"
        f"C{number(x - k * a)} {number(y + b)} {number(x - a)} {number(y + k * b)} {number(x - a)} {number(y)}Z"
    )


def _crossing(front: int, back: int, *, right: bool, purl: bool) -> Shape:
    """Give a crossing: the front band whole, the back one where the front leaves it in sight."""
    boxes = front + back

    def at(x: float, y: float) -> str:
        return f"{number(x if right else boxes - x)} {number(y)}"

    lines = (
        f"M{at(0, 1)}L{at(back, 0)}M{at(front, 1)}L{at(boxes, 0)}"
        f"M{at(0, 0)}L{at(front * back / boxes, back / boxes)}"
        f"M{at(back + front * front / boxes, front / boxes)}L{at(boxes, 1)}"
    )
    if purl:
        half = 0.13 * back
        for x, y in ((0.42 * back, 0.2), (boxes - 0.42 * back, 0.8)):
            lines += f"M{at(x - half, y)}L{at(x + half, y)}"
    return Shape(lines, spans=True)


_RIGHT, _LEFT = "M0.25 0.8L0.75 0.2", "M0.25 0.2L0.75 0.8"
_THREE_RIGHT, _THREE_LEFT = "M0.18 0.8L0.6 0.2M0.42 0.8L0.84 0.2", "M0.16 0.2L0.58 0.8M0.4 0.2L0.82 0.8"
_VEE, _EM = "M0.25 0.2L0.5 0.8L0.75 0.2", "M0.22 0.78L0.22 0.2L0.5 0.58L0.78 0.2L0.78 0.78"
_LOOP = "M0.3 0.85C0.85 0.5 0.78 0.14 0.5 0.14C0.22 0.14 0.15 0.5 0.7 0.85"
_SINGLE: Final[Mapping[str, Shape]] = {
    "knit": Shape(),
    "purl": Shape("M0.25 0.5L0.75 0.5"),
    "yarn-over": Shape(_disc(0.5, 0.5, 0.29)),
    "k2tog": Shape(_RIGHT),
    "ssk": Shape(_LEFT),
    "skp": Shape(f"{_LEFT}M0.25 0.2L0.48 0.2"),
    "p2tog": Shape(_RIGHT, _disc(0.74, 0.76, 0.07)),
    "ssp": Shape(_LEFT, _disc(0.26, 0.76, 0.07)),
    "knit-back-loop": Shape(_LOOP),
    "purl-back-loop": Shape("M0.33 0.74C0.78 0.42 0.72 0.12 0.5 0.12C0.28 0.12 0.22 0.42 0.67 0.74M0.28 0.9L0.72 0.9"),
    "slip-purlwise": Shape(_VEE),
    "slip-purlwise-in-front": Shape(f"{_VEE}M0.18 0.55L0.82 0.55"),
    "slip-knitwise": Shape(f"{_VEE}L0.9 0.32"),
    "make-one": Shape(_EM),
    "make-one-left": Shape(f"{_EM}M0.22 0.78L0.04 0.78"),
    "make-one-right": Shape(f"{_EM}L0.96 0.78"),
    "make-one-purl": Shape("M0.24 0.7L0.24 0.16L0.5 0.5L0.76 0.16L0.76 0.7M0.34 0.88L0.66 0.88"),
    "kfb": Shape("M0.5 0.84L0.5 0.5L0.24 0.18M0.5 0.5L0.76 0.18"),
    "one-to-three": Shape("M0.5 0.84L0.18 0.2M0.5 0.84L0.5 0.16M0.5 0.84L0.82 0.2"),
    "k3tog": Shape(_THREE_RIGHT),
    "sssk": Shape(_THREE_LEFT),
    "sk2p": Shape("M0.28 0.16L0.76 0.84M0.52 0.5L0.26 0.84"),
    "cdd": Shape("M0.2 0.66L0.5 0.18L0.8 0.66M0.5 0.18L0.5 0.86"),
    "p3tog": Shape("M0.12 0.8L0.5 0.2M0.36 0.8L0.74 0.2", _disc(0.8, 0.76, 0.07)),
    "bobble": Shape("", _disc(0.5, 0.5, 0.3)),
    "cast-off": Shape("M0.18 0.86C0.18 0.55 0.82 0.55 0.82 0.86"),
    "cast-on": Shape("M0.18 0.6C0.18 0.94 0.82 0.94 0.82 0.6"),
    "no-stitch": Shape("", "M0 0L1 0L1 1L0 1Z", spans=True),
    "selvage": Shape("M0.28 0.5L0.72 0.5M0.5 0.28L0.5 0.72"),
    "wrap": Shape("", "", spans=True),
}
_CROSSED: Final = re.compile(r"cross-(\d)-over-(\d)-(right|left)(-purl)?")


def _shape(key: str) -> Shape:
    crossed = _CROSSED.fullmatch(key)
    if crossed is None:
        return _SINGLE[key]
    return _crossing(int(crossed[1]), int(crossed[2]), right=crossed[3] == "right", purl=bool(crossed[4]))


SHAPES: Final[tuple[Shape, ...]] = tuple(_shape(one.key) for one in SYMBOLS)
"""The shape of each symbol, in the order of :data:`~loopwright.chart.SYMBOLS`."""


def wrapped(boxes: int) -> str:
    """Give the long flat oval round a group of so many stitches."""
    return _disc(boxes / 2, 0.5, 0.3, wide=max(boxes * 0.5 - 0.12, 0.3) / 0.3)


def placed(path: str, x: float, y: float, width: float, height: float) -> str:
    """Give a path of the unit square where it belongs: its corner at x, y, one unit as large as said."""
    return _moved(path, lambda across: x + across * width, lambda down: y + down * height)


def _moved(path: str, across: Callable[[float], float], down: Callable[[float], float]) -> str:
    written, is_x = [], True
    for token in _TOKEN.findall(path):
        if token.isalpha():
            written.append(token)
            is_x = True
        else:
            value = float(token)
            written.append(f"{number(across(value) if is_x else down(value))} ")
            is_x = not is_x
    return "".join(written)
