"""Edges knitted on: a hem or cuff before the fabric begins, or after it ends."""

from __future__ import annotations

from typing import Unpack

from loopwright.fabric import Gauge
from loopwright.garment.draft import Kind, Needle, Place, Section
from loopwright.garment.shaping import nearest_count
from loopwright.garment.wanted import Trim

__all__ = ["edge_after", "edge_before", "trim_count"]


def trim_count(trim: Trim, stitches: int, *, in_the_round: bool) -> int:
    """Give the count nearest to ``stitches`` that the trim's repeat can be worked on."""
    plus = trim.plus(in_the_round=in_the_round)
    return nearest_count(stitches, multiple=trim.multiple, plus=plus, least=trim.multiple + plus)


def edge_before(trim: Trim, stitches: int, gauge: Gauge, key: str, *, in_the_round: bool) -> Section:
    """Give an edge that is cast on and leaves ``stitches``.

    What its repeat lacks or has over is shaped in its last row, spread evenly.
    """
    count = trim_count(trim, stitches, in_the_round=in_the_round)
    needle = Needle(count, in_the_round=in_the_round).plain(trim.rows(gauge, even=not in_the_round) - 1)
    kind = Kind.INCREASE if stitches >= count else Kind.DECREASE
    needle.row((kind, "evenly", abs(stitches - count)), places=max(abs(stitches - count), 1))
    return needle.section(key, key, trim.fabric, trim.gauge(gauge))


def edge_after(
    trim: Trim,
    stitches: int,
    gauge: Gauge,
    key: str,
    *,
    in_the_round: bool,
    left: float | None = None,
    **place: Unpack[Place],
) -> Section:
    """Give an edge that carries on ``stitches`` and is cast off; it is brought to its repeat in its first row."""
    count = trim_count(trim, stitches, in_the_round=in_the_round)
    needle = Needle(stitches, left=left, in_the_round=in_the_round)
    kind = Kind.INCREASE if count >= stitches else Kind.DECREASE
    needle.row((kind, "evenly", abs(stitches - count)), places=max(abs(stitches - count), 1))
    needle.plain(trim.rows(gauge, even=not in_the_round) - 1)
    how: Place = {"begins": "carried on", "ends": "cast off", **place}
    return needle.section(key, key, trim.fabric, trim.gauge(gauge), **how)
