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
CARRIED_ROWS: Final = 6
"""Rows of other roles over which a yarn is carried rather than cut; common practice, no source."""
USUAL_PUT_UP_M: Final = 100.0
"""Length of a put-up where none is known, for the ends it leaves; our judgement."""


@dataclass(frozen=True, slots=True)
class RoleLoops:
    """Loops that the yarn of one role takes in one section, in the order of knitting; 0 in rows of another.

    :ivar stitches: stitches alone, without what edges and shaping take besides.
    :ivar floated: stitches that the yarn passes behind, row by row; shape (rows,).
    :ivar begin: its first edge, cast on or picked up.
    :ivar rows: each row with what is cast on or off in it; shape (rows,).
    :ivar end: its last edge: cast off, closed or drawn together.
    """

    stitches: int
    floated: NDArray[np.int64]
    begin: float
    rows: NDArray[np.float64]
    end: float

    @property
    def total(self) -> float:
        """Give all its loops, without what is floated."""
        return self.begin + float(self.rows.sum()) + self.end


def role_loops(section: Section, main: str = "main") -> dict[str, RoleLoops]:
    """Give the loops of a section by role; joins are left to :func:`join_loops`.

    What is cast on or off in a row is worked in the role that has most stitches in it: the first edge in the first
    row's, the last edge in the last row's, which stands last.

    :param main: the role that knits the section where nothing else is said.
    """
    edges = np.zeros(section.rows)
    for one in section.shapings:
        if one.kind is Kind.CAST_OFF:
            edges[one.row] += CAST_OFF_LOOPS * one.stitches
        elif one.kind is Kind.CAST_ON:
            edges[one.row] += CAST_ON_WITHIN_LOOPS * one.stitches
    begin = {"cast on": CAST_ON_LOOPS, "picked up": ROW_LOOPS, "carried on": 0.0}[section.begins] * section.first
    end = CAST_OFF_LOOPS * section.closed
    if section.ends == "cast off":
        end = CAST_OFF_LOOPS * section.live
    elif section.ends == "drawn together":
        end = DRAWN_LOOPS * section.live
    knitted, floated = section.stitches_by_role(main), section.floated_by_role()
    roles = [role for role, stitches in knitted.items() if stitches.any()] or [main]
    most = np.argmax([knitted[role] for role in roles], axis=0) if section.rows else np.zeros(1, dtype=np.int64)
    first, last = roles[int(most[0])], roles[int(most[-1])]
    none = np.zeros(section.rows, dtype=np.int64)
    return {
        role: RoleLoops(
            int(knitted[role].sum()),
            floated.get(role, none),
            begin if role == first else 0.0,
            knitted[role].astype(np.float64) + np.where(most == roles.index(role), edges, 0.0),
            end if role == last else 0.0,
        )
        for role in sorted(roles, key=lambda role: role == last)
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


def tails(piece: Piece, section: Section, main: str = "main") -> dict[str, int]:
    """Give the tails that one such section leaves, by role: where yarn is joined to it, and where it ends.

    A yarn that is used again after at most six rows is carried along the edge, so narrow stripes leave none; common
    practice, no source.
    """
    siblings = [one.key for one in piece.sections if section.after is not None and one.after == section.after]
    joined = section.begins != "carried on" or section.key not in siblings[:1]
    ended = not any(one.after == section.key for one in piece.sections)
    used = {role: np.flatnonzero(rows) for role, rows in section.stitches_by_role(main).items() if rows.any()}
    left = {role: 2 + 2 * int((np.diff(rows) > CARRIED_ROWS + 1).sum()) for role, rows in used.items()}
    if not left:
        return {main: joined + ended}
    left[min(used, key=lambda role: int(used[role][0]))] -= not joined
    left[max(used, key=lambda role: int(used[role][-1]))] -= not ended
    return left


def ball_ends_m(section: Section, length_m: float, stitch_mm: float, put_up_m: float | None) -> float:
    """Give what is lost where a ball ends: two tails, and worked flat half a row.

    :param length_m: of yarn in the section.
    :param put_up_m: metres in a put-up; None where it is not known.
    """
    row_m = 0.0 if section.in_the_round or not section.rows else section.worked / section.rows * stitch_mm / 1000
    return length_m / (put_up_m or USUAL_PUT_UP_M) * (2 * TAIL_M + row_m / 2)
