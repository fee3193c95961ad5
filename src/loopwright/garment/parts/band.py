"""Bands picked up along an edge: neckbands, armbands, front bands."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.fabric import Gauge
from loopwright.garment.draft import Edge, Join, Needle, Piece, Section, edge_length_cm
from loopwright.garment.draft.piece import EdgeName
from loopwright.garment.parts.edge import trim_count
from loopwright.garment.wanted import Trim

__all__ = ["Stretch", "neck_stretches", "picked_up_band", "shared_out", "side_stretch"]


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of an edge along which stitches are picked up, and its true length."""

    edge: Edge
    length_cm: float


def side_stretch(
    piece: str, section: Section, name: EdgeName, *, from_row: int = 0, to_row: int | None = None
) -> Stretch:
    """Give a stretch of a section's left or right edge; ``closed`` and ``begin`` give stitches across."""
    if name in ("left", "right"):
        length = edge_length_cm(section, name, from_row=from_row, to_row=to_row)
        return Stretch(Edge(piece, section.key, name, len(range(section.rows)[from_row:to_row])), length)
    amount = section.closed if name == "closed" else section.first if name == "begin" else section.live
    return Stretch(Edge(piece, section.key, name, amount), amount * section.stitch_width_cm)


def neck_stretches(piece: str, lower: Section, right: Section, left: Section) -> list[Stretch]:
    """Give the neck edge of one face: down one shoulder, across the middle, up the other."""
    across = [side_stretch(piece, lower, "closed")] if lower.closed else []
    return [side_stretch(piece, left, "right"), *across, side_stretch(piece, right, "left")]


def shared_out(count: int, lengths: Sequence[float]) -> list[int]:
    """Share stitches out over stretches in proportion to their lengths, by largest remainders."""
    whole = math.fsum(lengths)
    exact = [count * length / whole for length in lengths]
    shares = [math.floor(one) for one in exact]
    by_remainder = sorted(range(len(exact)), key=lambda place: (shares[place] - exact[place], place))
    for place in by_remainder[: count - sum(shares)]:
        shares[place] += 1
    return shares


def picked_up_band(
    stretches: Sequence[Stretch], trim: Trim, gauge: Gauge, key: str, name: str, *, in_the_round: bool, made: int = 1
) -> tuple[Piece, tuple[Join, ...]]:
    """Give a band picked up along stretches of edge, and its joins: one stitch per stitch's width of true length.

    Along rows that is the usual ratio of rows to stitches, and more of them along a slant. The count is the one
    nearest to the length that the band's repeat can be worked on. Source: handbooks' rule of picking up by the ratio of
    the two gauges, by the true length where an edge slants.
    """
    length = math.fsum(one.length_cm for one in stretches)
    count = trim_count(trim, max(round(gauge.stitches_in(length)), 1), in_the_round=in_the_round)
    needle = Needle(count, in_the_round=in_the_round).plain(trim.rows(gauge, even=not in_the_round))
    band = needle.section("band", name, trim.fabric, trim.gauge(gauge), begins="picked up", ends="cast off")
    shares = shared_out(count, [one.length_cm for one in stretches])
    joins = tuple(
        Join("picked up", one.edge, Edge(key, "band", "begin", share), (one.length_cm, gauge.width_cm(share)))
        for one, share in zip(stretches, shares, strict=True)
        if share
    )
    return Piece(key, name, "bottom up", (band,), made=made), joins
