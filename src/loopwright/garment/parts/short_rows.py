"""Bust short rows: length that the front has and the sides have not."""

from __future__ import annotations

from itertools import pairwise

from loopwright.garment.draft import Kind, Needle, Section
from loopwright.garment.draft.section import Face, Side
from loopwright.garment.shaping import ShortRows, bust_short_rows, nearest_count
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, Told, told

__all__ = ["BUST_KEY", "bust_notes", "bust_section", "bust_turns"]

BUST_KEY = "bust"
"""Key of the section of short rows between body and front."""
SIDE_GAP_CM = 2.54
"""The first turn lies about an inch from the side seam. Source: a magazine's rule, at second hand."""
POINT_SHARE = 0.5
"""The last turn lies half-way from the side to the middle, a little outside the bust point. Source: the same rule's
worked example, 25 of 50 stitches."""


def bust_turns(brief: Brief, front: int) -> ShortRows | None:
    """Give the turns of the bust short rows over a whole front of so many stitches, or None where none are wanted.

    :raises BadInput: more turns than there are stitches between the side and the bust point.
    """
    depth = brief.options.bust_short_rows_cm
    if depth is None:
        return None
    half = front // 2
    point = nearest_count(POINT_SHARE * half)
    side = min(max(round(brief.gauge.stitches_in(SIDE_GAP_CM)), 1), half - point)
    rows = brief.gauge.rows_or_usual_per_10cm
    most = half - point - side + 1
    if nearest_count(depth * rows / 20, least=0) > most:
        raise BadInput(
            found=told(f"bust short rows of {{}} on a front of {front} stitches", depth),
            wanted=told("at most {}: no more turns have room between the side and the bust point", most * 20 / rows),
            place="bust_short_rows",
        )
    turns = bust_short_rows(depth, half, side, point, rows)
    return turns if turns.pairs else None


def bust_section(
    brief: Brief,
    turns: ShortRows,
    stitches: int,
    *,
    edges: tuple[Side, ...] = ("right", "left"),
    face: Face = "whole",
    left: float | None = None,
) -> Section:
    """Give the short rows over the stitches of a front, carried on from its body.

    They lie within the first row above them, which is worked up to the first turn, and on from the last: what belongs
    to it is counted there. So each pair of rows is as long as what lies between its turns, the section begins and ends
    with all stitches of the front on the needle, and its outer edges are no longer for it.

    :param edges: at which the rows turn: both of a front, the side of half a front.
    """
    needle = Needle(stitches, left=left)
    for before, turn in pairwise((0, *turns.turns)):
        needle.row(*((Kind.REST, edge, turn - before) for edge in edges)).plain(1)
    return needle.section(
        BUST_KEY, "bust short rows", brief.fabric, brief.gauge, begins="carried on", after="body", face=face
    )


def bust_notes(turns: ShortRows | None) -> tuple[Told, ...]:
    """Say where the short rows turn."""
    if turns is None:
        return ()
    places = ", ".join(str(turn) for turn in turns.turns)
    pairs = f"{turns.pairs} pairs" if turns.pairs > 1 else "a pair"
    return (
        told(
            f"Bust short rows, in the front only, below its armholes: {pairs}, turning {places} stitches from each "
            "side seam."
        ),
    )
