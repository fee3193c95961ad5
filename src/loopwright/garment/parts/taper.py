"""Shaping over rows: from one count to another in steps that lie as evenly as whole rows allow."""

from __future__ import annotations

from loopwright.garment.draft import Kind, Needle
from loopwright.garment.draft.section import Side
from loopwright.garment.shaping import nearest_count, spread_along
from loopwright.units import BadInput

__all__ = ["BOTH_EDGES", "like_count", "taper"]

BOTH_EDGES: tuple[Side, ...] = ("left", "right")


def like_count(wanted: float, other: int, step: int) -> int:
    """Give the count nearest to ``wanted`` that differs from ``other`` by whole shapings of ``step`` stitches."""
    return nearest_count(wanted, multiple=step, plus=other % step, least=2)


def taper(
    needle: Needle,
    to: int,
    rows: int,
    *,
    step: int,
    edges: tuple[Side, ...] = BOTH_EDGES,
    quick_first: bool = True,
    place: str = "",
) -> Needle:
    """Work so many rows while the count goes evenly to ``to``; in right-side rows only where the piece is flat.

    :param step: stitches per shaping row: one at each of the edges of a flat piece; of a tube 2 along the one line of a
        sleeve, 4 at the two sides of a body.
    :param edges: of a flat piece that are shaped.
    :raises BadInput: more shapings than the rows can hold.
    """
    if rows <= 0:
        return needle
    times, left_over = divmod(abs(to - needle.now), step)
    if left_over:
        raise BadInput(
            found=f"{needle.now} stitches to become {to} by {step} at a time", wanted=f"a difference of {step}n"
        )
    kind = Kind.INCREASE if to > needle.now else Kind.DECREASE
    flat = not needle.in_the_round
    most = rows // 2 if flat else rows
    if times > most:
        raise BadInput(
            found=f"{times} shapings in {rows} rows",
            wanted=f"at most {most}: a smaller change, or more length",
            place=place,
        )
    rhythm = spread_along(rows, times, step=2 if flat else 1, quick_first=quick_first)
    at = [row // 2 * 2 if flat else row for row in rhythm.shaping_rows()]
    if flat:
        return needle.shape(rows, at, *((kind, edge, 1) for edge in edges))
    return needle.shape(rows, at, (kind, "lines", step), places=step // 2)
