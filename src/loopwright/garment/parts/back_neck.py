"""The back neck of a yoke, raised by short rows: a wedge over the back and the back halves of the sleeve tops."""

from __future__ import annotations

from typing import Unpack

from loopwright.garment.draft import Kind, Needle, Place, Section
from loopwright.garment.shaping import ShortRows, back_neck_raise
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told

__all__ = ["INCH_CM", "raise_rows", "raise_widths", "raised_back"]

INCH_CM = 2.54
"""The usual back neck drop. Source: a knitter's weblog on necklines, 2014; the percentage system raises the back by
about six short rows, at 7 rows to the inch a little less."""
LEAST_DEPTH_OF_RAISE = 6.0
"""The back is raised by at most a sixth of the yoke's depth, which tells on children's yokes; our judgement."""


def raise_rows(brief: Brief, asked_cm: float | None, stitches: int) -> ShortRows:
    """Place the short rows that raise the back neck.

    :param asked_cm: how far; left out, 1 in, less on a shallow yoke or where there are too few stitches.
    :param stitches: over which they may run: the back, and the half of each sleeve's top that lies towards it, so that
        neither the neck end of the shoulder nor the front is raised.
    :raises BadInput: more turns than the stitches take.
    """
    rows = brief.gauge.rows_or_usual_per_10cm
    most = 20 / rows * max(stitches // 2 - 1, 0)
    if asked_cm is None:
        usual = min(INCH_CM, brief.measures.need("armhole_depth") / LEAST_DEPTH_OF_RAISE)
        return back_neck_raise(min(usual, most), rows, stitches)
    try:
        return back_neck_raise(asked_cm, rows, stitches)
    except BadInput as fault:
        raise BadInput(
            found=told(f"a back neck raised by {{}} over {stitches} stitches", asked_cm),
            wanted=told("at most {}", most),
            place="back_neck_raise",
        ) from fault


def raise_widths(rows: ShortRows, stitches: int, *, up: bool) -> tuple[int, ...]:
    """Give the stitches worked in each short row: the longest first where the yoke is worked up, last where down."""
    widths = [stitches - 2 * turn for turn in (rows.turns if up else rows.turns[::-1])]
    return tuple(width for width in widths for _ in range(2))


def raised_back(brief: Brief, first: int, widths: tuple[int, ...], **place: Unpack[Place]) -> Section:
    """Give the wedge as a section of its own; all its stitches are on the needle when it ends."""
    needle = Needle(first)
    for width in widths:
        less = (needle.now - width) // 2
        kind = Kind.REST if less >= 0 else Kind.TAKE_UP
        needle.row((kind, "left", abs(less)), (kind, "right", abs(less)))
    return needle.section("back neck", "back neck", brief.fabric, brief.gauge, **place)
