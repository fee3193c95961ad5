"""The rows of a round yoke, from the underarm up or from the neck down, shaped evenly in whole rounds."""

from __future__ import annotations

from itertools import pairwise

from loopwright.garment.draft import Edge, Kind, Landmark, Needle, Piece, Section
from loopwright.garment.draft.section import Ends
from loopwright.garment.parts.back_neck import raise_widths, raised_back
from loopwright.garment.parts.band import Stretch
from loopwright.garment.parts.round_yoke_counts import RoundYokeCounts, shaping_at
from loopwright.garment.shaping import ShortRows, spread_across, spread_decreases
from loopwright.garment.wanted import Brief

__all__ = ["neck_edge", "raised_over", "round_yoke"]


def raised_over(counts: RoundYokeCounts) -> int:
    """Give the stitches of the neck over which its back is raised: the back half, odd or even as the neck is."""
    half = counts.neck // 2
    return half - (counts.neck - half) % 2


def _changes(counts: RoundYokeCounts, *, up: bool, flat: bool) -> dict[int, int]:
    """Give by how many stitches the count changes, by rows of the yoke.

    Where the plateau at the underarm fits a repeat and the stitches that meet there do not, the row next to them
    carries the difference.
    """
    plateaus = counts.plateaus if up else counts.plateaus[::-1]
    at = shaping_at(counts.rows, counts.rounds, up=up, flat=flat)
    changes = {row: after - before for row, (before, after) in zip(at, pairwise(plateaus), strict=True)}
    met = counts.plateaus[0] - counts.meeting.yoke
    if met:
        changes[0 if up else counts.rows - 1 - flat] = met if up else -met
    return changes


def _spread(needle: Needle, change: int, *, flat: bool) -> Needle:
    """Work one row with its increases or decreases spread evenly over it; refused where they do not fit in."""
    if change < 0:
        spread_decreases(needle.now, -change, in_the_round=not flat)
    elif change > 0:
        spread_across(needle.now, change, in_the_round=not flat)
    kind = Kind.INCREASE if change > 0 else Kind.DECREASE
    return needle.row((kind, "evenly", abs(change)), places=max(abs(change), 1))


def round_yoke(brief: Brief, counts: RoundYokeCounts, raised: ShortRows, *, up: bool) -> Piece:
    """Give the yoke with its raised back neck; to and fro where it opens in front, else in the round."""
    flat = brief.options.opens_in_front
    changes = _changes(counts, up=up, flat=flat)
    needle = Needle(counts.meeting.yoke if up else counts.neck, in_the_round=not flat)
    for row in range(counts.rows):
        _spread(needle, changes.get(row, 0), flat=flat)
    fabric = (brief.fabric, brief.gauge)
    widths = raise_widths(raised, raised_over(counts), up=up)
    sections: tuple[Section, ...]
    if up:
        ends: Ends = "carried on" if widths else "cast off"
        yoke = needle.section("yoke", "yoke", *fabric, begins="carried on", ends=ends)
        sections = (yoke,)
        if widths:
            back = raised_back(brief, counts.neck, widths, begins="carried on", ends="cast off", after="yoke")
            sections = (yoke, back)
    elif widths:
        back = raised_back(brief, counts.neck, widths)
        sections = (back, needle.section("yoke", "yoke", *fabric, begins="carried on", after="back neck"))
    else:
        sections = (needle.section("yoke", "yoke", *fabric),)
    first, last = sections[0], sections[-1]
    ends_at = (first.key, 0), (last.key, last.rows)
    marks = zip(("underarm", "neck") if up else ("neck", "underarm"), ends_at, strict=True)
    return Piece(
        "yoke",
        "yoke",
        "bottom up" if up else "top down",
        sections,
        tuple(Landmark(name, *place) for name, place in marks),
    )


def neck_edge(counts: RoundYokeCounts, yoke: Piece, brief: Brief) -> Stretch:
    """Give the neck edge, all round."""
    up = yoke.direction == "bottom up"
    section = yoke.sections[-1 if up else 0]
    return Stretch(Edge("yoke", section.key, "end" if up else "begin", counts.neck), brief.gauge.width_cm(counts.neck))
