"""The tail of a long-tail cast-on: how far from the end of the yarn to make the first loop."""

from __future__ import annotations

import math
from typing import Final

from loopwright.garment.draft import Draft
from loopwright.records import Record

__all__ = ["Tail", "long_tails", "tail_by_sample_cm", "tail_by_width_cm", "tail_by_wraps_cm"]

TIMES_WIDTH: Final = 4.0
SPARE_CM: Final = 15.24
"""Four times the width and 6 in. Source: a teacher's tutorial on the tail of a cast-on (read), 20 in → 86 in."""


class Tail(Record):
    """The tail for one piece that is cast on.

    :ivar made: how often the piece is cast on; the tail is for one.
    :ivar tail_cm: how long to make it, with something to spare.
    :ivar least_cm: one wrap of the needle a stitch, which is never enough; None where the needle is not known.
    """

    piece: str
    section: str
    made: int
    stitches: int
    tail_cm: float
    least_cm: float | None


def tail_by_width_cm(width_cm: float, *, times: float = TIMES_WIDTH, spare_cm: float = SPARE_CM) -> float:
    """Give the tail by the width cast on: ``times × width + spare``, in cm.

    Source: 4 × and 6 in (read); others take 3 × and 10 % (cross-read), that is ``times=3.3, spare_cm=0``.
    """
    return times * width_cm + spare_cm


def tail_by_sample_cm(stitches: int, sample: int, sample_cm: float) -> float:
    """Give the tail that so many stitches take when a sample of them took ``sample_cm``.

    Source: a craft page's rule of three (read).
    """
    return stitches * sample_cm / sample


def tail_by_wraps_cm(stitches: int, needle_mm: float) -> float:
    """Give the tail at one wrap of the needle a stitch, π × needle, in cm: a lower bound, since yarn has a thickness.

    Source: several craft notes (cross-read).
    """
    return stitches * math.pi * needle_mm / 10


def long_tails(draft: Draft, needle_mm: float | None = None) -> tuple[Tail, ...]:
    """Give the tail of every piece that is cast on, in the order of knitting."""
    return tuple(
        Tail(
            piece=piece.name,
            section=section.name,
            made=piece.made,
            stitches=section.first,
            tail_cm=tail_by_width_cm(section.first * section.stitch_width_cm),
            least_cm=None if needle_mm is None else tail_by_wraps_cm(section.first, needle_mm),
        )
        for piece, section in draft.sections()
        if section.begins == "cast on" and section.first and section.rows
    )
