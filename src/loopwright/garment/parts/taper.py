"""Shaping over rows: from one count to another in steps that lie as evenly as whole rows allow."""

from __future__ import annotations

from loopwright.garment.draft import Kind, Needle
from loopwright.garment.draft.section import Side
from loopwright.garment.shaping import nearest_count, spread_along, spread_mixed
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
    """Work so many rows while the count goes evenly to ``to``.

    A flat piece is shaped in right-side rows; in wrong-side rows as well only where those do not suffice.

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
    if times > rows:
        raise BadInput(
            found=f"{times} shapings in {rows} rows",
            wanted=f"at most {rows}: a smaller change, or more length",
            place=place,
        )
    if needle.in_the_round:
        at = spread_along(rows, times, quick_first=quick_first).shaping_rows()
        return needle.shape(rows, at, (kind, "lines", step), places=step // 2)
    if times <= rows // 2:
        at = tuple(row // 2 * 2 for row in spread_along(rows, times, step=2, quick_first=quick_first).shaping_rows())
    else:
        at = spread_mixed(rows, times).shaping_rows()
    return needle.shape(rows, at, *((kind, edge, 1) for edge in edges))
