"""What a section takes besides its stitches: its edges, seams and ends.

In loops (the yarn of one stitch of the fabric), per stitch of the edge:

* cast on: 2, one for the tail and one for the stitches themselves (read: 18 in for 11 stitches, both strands together);
  cast on within the work: 1;
* cast off: 1.5 (read twice: 6 × the width, or one and a half rows);
* picked up, grafted: 1, since each is a row; three-needle cast-off: 0.9 (3 to 4 × the width); drawn together: 0.25,
  the width of a stitch (common practice, no source).

A sewn seam takes 2.5 × its length, and a tail at each begin and end is 15 cm: common practice, no source. Where a ball
ends, two tails are woven in, and worked flat half a row is left over, because balls are joined at the edge.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Edge, Join, Kind, Piece, Section

__all__ = ["RoleLoops", "ball_ends_m", "join_loops", "role_loops", "seam_length_cm", "tails"]

CAST_ON_LOOPS: Final = 2.0
CAST_ON_WITHIN_LOOPS: Final = 1.0
CAST_OFF_LOOPS: Final = 1.5
ROW_LOOPS: Final = 1.0
THREE_NEEDLE_LOOPS: Final = 0.9
DRAWN_LOOPS: Final = 0.25
SEAM_TIMES: Final = 2.5
TAIL_M: Final = 0.15
USUAL_PUT_UP_M: Final = 100.0
"""Length of a put-up where none is known, for the ends it leaves; our judgement."""


@dataclass(frozen=True, slots=True)
class RoleLoops:
    """Loops that the yarn of one role takes in one section, in the order of knitting; 0 in rows of another.

    :ivar stitches: stitches alone, without what edges and shaping take besides.
    :ivar begin: its first edge, cast on or picked up.
    :ivar rows: each row with what is cast on or off in it; shape (rows,).
    :ivar end: its last edge: cast off, closed or drawn together.
    """

    stitches: int
    begin: float
    rows: NDArray[np.float64]
    end: float

    @property
    def total(self) -> float:
        """Give all its loops."""
        return self.begin + float(self.rows.sum()) + self.end


def role_loops(section: Section, main: str = "main") -> dict[str, RoleLoops]:
    """Give the loops of a section by role; joins are left to :func:`join_loops`.

    The first edge is worked in the first row's role, the last edge in the last row's, which stands last.

    :param main: the role that knits the section where nothing else is said.
    """
    rows = section.stitches.astype(np.float64)
    for one in section.shapings:
        if one.kind is Kind.CAST_OFF:
            rows[one.row] += CAST_OFF_LOOPS * one.stitches
        elif one.kind is Kind.CAST_ON:
            rows[one.row] += CAST_ON_WITHIN_LOOPS * one.stitches
    begin = {"cast on": CAST_ON_LOOPS, "picked up": ROW_LOOPS, "carried on": 0.0}[section.begins] * section.first
    end = CAST_OFF_LOOPS * section.closed
    if section.ends == "cast off":
        end = CAST_OFF_LOOPS * section.live
    elif section.ends == "drawn together":
        end = DRAWN_LOOPS * section.live
    runs = [(run.role, run.rows) for run in section.roles] or [(main, section.rows)]
    whose = np.repeat([role for role, _ in runs], [count for _, count in runs])
    first, last = runs[0][0], runs[-1][0]
    order = sorted(dict(runs), key=lambda role: role == last)
    return {
        role: RoleLoops(
            int(section.stitches[whose == role].sum()),
            begin if role == first else 0.0,
            np.where(whose == role, rows, 0.0),
            end if role == last else 0.0,
        )
        for role in order
    }


def _made(draft: Draft, join: Join) -> int:
    return max(draft.piece(join.one.piece).made, draft.piece(join.other.piece).made)


def join_loops(draft: Draft, piece: Piece, section: Section) -> float:
    """Give the loops that grafting or casting off two edges together takes, all pieces made counted.

    A join is counted with the first of its two edges.
    """
    loops = {"grafted": ROW_LOOPS, "three-needle cast-off": THREE_NEEDLE_LOOPS}
    return sum(
        loops.get(join.kind, 0.0) * join.one.amount * _made(draft, join) for join in _joins(draft, piece, section)
    )


def seam_length_cm(draft: Draft, piece: Piece, section: Section) -> float:
    """Give the length of the seams that are counted with this section, in cm, all pieces made counted."""
    sewn = ("sewn", "sewn row to stitch", "set in")
    return sum(
        _length_cm(draft, join.one, join) * _made(draft, join)
        for join in _joins(draft, piece, section)
        if join.kind in sewn
    )


def _joins(draft: Draft, piece: Piece, section: Section) -> Iterator[Join]:
    for join in draft.joins:
        if (join.one.piece, join.one.section) == (piece.key, section.key):
            yield join


def _length_cm(draft: Draft, edge: Edge, join: Join) -> float:
    if join.length_cm is not None:
        return join.length_cm[0]
    section = draft.section(edge.piece, edge.section)
    return edge.amount * (section.row_height_cm if edge.along_rows else section.stitch_width_cm)


def tails(piece: Piece, section: Section) -> int:
    """Give the tails that one such section leaves: where yarn is joined to it, where it ends, where a role changes."""
    siblings = [one.key for one in piece.sections if section.after is not None and one.after == section.after]
    joined = section.begins != "carried on" or section.key not in siblings[:1]
    ended = not any(one.after == section.key for one in piece.sections)
    return joined + ended + 2 * (len(section.role_runs) - 1)


def ball_ends_m(section: Section, length_m: float, stitch_mm: float, put_up_m: float | None) -> float:
    """Give what is lost where a ball ends: two tails, and worked flat half a row.

    :param length_m: of yarn in the section.
    :param put_up_m: metres in a put-up; None where it is not known.
    """
    row_m = 0.0 if section.in_the_round or not section.rows else section.worked / section.rows * stitch_mm / 1000
    return length_m / (put_up_m or USUAL_PUT_UP_M) * (2 * TAIL_M + row_m / 2)
