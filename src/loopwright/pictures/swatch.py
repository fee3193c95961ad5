"""A swatch with the windows that were counted on it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.pictures.svg import INK, NEUTRAL, PAPER, element, number, picture

__all__ = ["CountedWindow", "swatch_figure"]

WIDTH = 320.0
FABRIC_WIDTH, MARGIN = 316.0, 2.0
MOST_WINDOWS = 6
STITCH_ROWS = 3
LEAST_CM = 1.0


@dataclass(frozen=True, slots=True)
class CountedWindow:
    """One counted window.

    :ivar label: what was counted in it, short, such as ``22 × 30``.
    :ivar across_cm, along_cm: its size; 10 cm where it is not known.
    """

    label: str
    across_cm: float = 10.0
    along_cm: float = 10.0


def swatch_figure(
    windows: Sequence[CountedWindow],
    width_cm: float | None,
    height_cm: float | None,
    gauge: tuple[float, float],
    says: str,
) -> str:
    """Draw a swatch to scale: its edge, a few rows of stitches in their true proportion, and the counted windows.

    Windows are put side by side along the slant of the swatch, since only their size is known, not their place; the
    first six are drawn.

    :param width_cm, height_cm: of the swatch; where one is not known it is taken half as large again as the windows.
    :param gauge: stitches and rows to 10 cm.
    :param says: read aloud instead of it.
    """
    shown = windows[:MOST_WINDOWS]
    across = max([LEAST_CM, *(window.across_cm for window in shown)])
    along = max([LEAST_CM, *(window.along_cm for window in shown)])
    wide, high = max(width_cm or 1.5 * across, across), max(height_cm or 1.5 * along, along)
    scale = min(FABRIC_WIDTH / wide, FABRIC_WIDTH / high)
    left, right, bottom = MARGIN, MARGIN + wide * scale, MARGIN + high * scale
    parts = [
        element(
            "rect", x=left, y=MARGIN, width=wide * scale, height=high * scale, fill=PAPER, stroke=INK, stroke_width=1.4
        ),
        _stitches(left, right, bottom, gauge, scale),
    ]
    for place, window in enumerate(shown):
        share = place / max(len(shown) - 1, 1) if len(shown) > 1 else 0.5
        x = left + share * (wide - window.across_cm) * scale
        y = MARGIN + share * (high - window.along_cm) * scale
        parts.append(_window(window, x, y, scale, place, len(shown)))
    return picture("".join(parts), WIDTH, bottom + MARGIN, says, class_="swatch-figure", keep_shape=True)


def _stitches(left: float, right: float, bottom: float, gauge: tuple[float, float], scale: float) -> str:
    """Draw the lowest rows as knit stitches, each as wide and high as it is."""
    stitches, rows = gauge
    wale, course = 10 / stitches * scale, 10 / rows * scale
    paths = []
    for row in range(STITCH_ROWS):
        y = bottom - row * course
        across = int((right - left) / wale)
        start = left + (right - left - across * wale) / 2
        for stitch in range(across):
            x = start + stitch * wale
            top, foot = number(y - course * 0.95), number(y - course * 0.08)
            paths.append(
                f"M{number(x + 0.08 * wale)} {top}L{number(x + wale / 2)} {foot}L{number(x + 0.92 * wale)} {top}"
            )
    return element("path", d="".join(paths), fill="none", stroke=NEUTRAL, stroke_width=1)


def _window(window: CountedWindow, x: float, y: float, scale: float, place: int, of: int) -> str:
    """Draw one window with its label in the corner that the next window leaves free."""
    wide, high = window.across_cm * scale, window.along_cm * scale
    frame = element(
        "rect", x=x, y=y, width=wide, height=high, fill=PAPER, fill_opacity=0.85, stroke=INK, stroke_width=1.1
    )
    ticks = "".join(
        element("line", x1=x + share * wide, x2=x + share * wide, y1=y, y2=y + 5, stroke=INK, stroke_width=0.8)
        for share in (0.25, 0.5, 0.75)
    )
    inside = element(
        "text",
        window.label,
        x=x + 5,
        y=y + 19,
        fill=INK,
        stroke=PAPER,
        stroke_width=4,
        paint_order="stroke",
        font_size=13,
        font_weight=600 if of == 1 or place == 0 else 400,
    )
    return frame + ticks + inside
