"""Shawls knitted from the middle of their top edge: how many rows make the size, and what both measures come to."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable
from typing import Final

from loopwright.garment.draft import Draft, Landmark, Piece, Section, lawful
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.suited import refuse_unsuited
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told

__all__ = ["SizeOf", "from_the_top", "refuse_for_a_shawl", "rows_for_size"]

SizeOf = Callable[[int], tuple[float, float]]
"""Width and depth in cm of the whole shawl after so many rows and its edge; both grow with the rows."""

MOST_ROWS: Final = 4000


def refuse_for_a_shawl(brief: Brief) -> None:
    """Refuse options that a shawl worked to and fro from the top has no use for; it takes ``hem``, its lower edge.

    :raises BadInput: a repeat too, as its count changes all the way.
    """
    refuse_unsuited(brief, worked=("flat",), direction=("top down",), hem=())


def rows_for_size(brief: Brief, size_of: SizeOf, *, least: int = 2) -> int:
    """Give the even number of rows that comes nearest to the wanted depth, or to the width where no depth is wanted.

    :param least: fewest rows that make the shape; even.
    :raises BadInput: neither is stated, or the edge alone makes it larger, or it would take too many rows.
    """
    by_width = brief.measures.depth_cm is None and brief.measures.width_cm is not None
    name, place = ("width", 0) if by_width else ("depth", 1)
    wanted = brief.measures.need(name)
    pairs = range(least // 2, MOST_ROWS // 2 + 1)
    found = bisect_left(pairs, wanted, key=lambda pair: size_of(2 * pair)[place])
    smallest, largest = size_of(2 * pairs[0])[place], size_of(2 * pairs[-1])[place]
    step = size_of(2 * pairs[1])[place] - smallest
    if found == len(pairs) or smallest - wanted > step:
        raise BadInput(
            found=told(f"{name} {{}} with an edge {{}} deep", wanted, brief.options.hem.depth_cm),
            wanted=told(f"{name} of {{}} to {{}}", smallest, largest),
            place=name,
        )
    near = pairs[max(found - 1, 0) : found + 1]
    return 2 * min(near, key=lambda pair: abs(size_of(2 * pair)[place] - wanted))


def from_the_top(
    brief: Brief, sections: tuple[Section, Section], size_of: SizeOf, shape: str, rim_cm: float, note: str
) -> Draft:
    """Give the draft of a shawl whose rows and edge are knitted, with its measures and how it lies.

    :param sections: the fabric and its lower edge.
    :param shape: why its width goes with its depth, in words.
    :param rim_cm: length of its lower edge as it lies.
    :param note: how its stitches are counted.
    """
    fabric, edge = sections
    measured = Measured(brief.measures, brief.gauge)
    width, depth = size_of(fabric.rows)
    more = tuple(after - now for after, now in zip(size_of(fabric.rows + 2), (width, depth), strict=True))
    pairs = "rows come in pairs, and one pair makes it {}"
    by_width = brief.measures.depth_cm is None
    measured.width(
        "width",
        brief.gauge.stitches_in(width),
        told(f"{pairs} wider", more[0]) if by_width else f"its depth decides the rows, and {shape}",
    )
    measured.length("depth", depth, told(f"{pairs} deeper", more[1]))
    row_cm = edge.last * edge.stitch_width_cm
    piece = Piece("shawl", brief.construction.value, "top down", sections, (Landmark("hem", edge.key, edge.rows),))
    return lawful(
        Draft(
            construction=brief.construction.value,
            direction="top down",
            gauge=brief.gauge,
            pieces=(piece,),
            checks=tuple(measured.checks),
            notes=(
                told(note),
                told(
                    f"Its size is that of the shape it is pinned out to, approximate: {shape}. The lower edge then "
                    "lies {} long; its last row, not stretched, is {}.",
                    round(rim_cm),
                    round(row_cm),
                ),
            ),
        )
    )
