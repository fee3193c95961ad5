"""One face of a garment from the underarm to the shoulders: armholes, neck and shoulder slopes, row by row.

Rows are counted from the underarm, from 0; even rows show the right side. What is done at the right edge in an even
row is done at the left edge in the same row (increases, decreases) or one row later or earlier, at the begin of the
row that starts there (casting off and on) or at the end of the row that is turned there (rests).
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from loopwright.fabric import Gauge, StructureName
from loopwright.garment.draft import Change, Kind, Needle, Section
from loopwright.garment.draft.outline import Move
from loopwright.garment.draft.section import Face, Side

__all__ = ["AtRow", "FacePlan", "face_sections", "half_face_sections", "moves_of", "work_both_edges"]

AtRow = tuple[int, Kind, int]
"""Row from the underarm, even but for decreases; what is done there at each of the two edges alike; stitches."""
_SIDES: tuple[tuple[Side, Side], ...] = (("right", "left"), ("left", "right"))


@dataclass(frozen=True, slots=True)
class FacePlan:
    """Counts and rows of one face.

    :ivar stitches: at the underarm, before any shaping.
    :ivar rows: from the underarm to the top of the shoulder.
    :ivar armhole: what is done at both armhole edges.
    :ivar neck_row: from this even row on, both sides of the neck are worked apart.
    :ivar centre: stitches cast off in the middle before it.
    :ivar neck: what is done at both neck edges from there on.
    :ivar shoulder: rests that slope both shoulders.
    """

    stitches: int
    rows: int
    armhole: tuple[AtRow, ...]
    neck_row: int
    centre: int
    neck: tuple[AtRow, ...]
    shoulder: tuple[AtRow, ...]

    @property
    def slope_row(self) -> int:
        """Give the row from which the shoulders slope; the armhole's edge ends there."""
        return min((row for row, _, _ in self.shoulder), default=self.rows)

    @property
    def shoulder_stitches(self) -> int:
        """Give the stitches of one shoulder, all its rests counted."""
        lost = sum(-kind.sign * stitches for _, kind, stitches in self.armhole)
        neck = sum(-kind.sign * stitches for _, kind, stitches in self.neck)
        return (self.stitches - 2 * lost - self.centre) // 2 - neck


def moves_of(steps: Iterable[AtRow]) -> Iterator[Move]:
    """Give the moves of an edge that is shaped so, as :func:`~loopwright.garment.draft.shaped_length_cm` takes them."""
    return ((row, stitches, kind in (Kind.CAST_OFF, Kind.CAST_ON)) for row, kind, stitches in steps)


def _at(edge: AtRow, side: Side) -> tuple[int, Change]:
    """Give the row in which something is done at one of the two edges, and the change there."""
    row, kind, stitches = edge
    late = (kind in (Kind.CAST_OFF, Kind.CAST_ON) and side == "left") or (kind is Kind.REST and side == "right")
    return row + late, (kind, side, stitches)


def _work(needle: Needle, rows: range, changes: Iterable[tuple[int, Change]]) -> Needle:
    by_row: dict[int, list[Change]] = {}
    for row, change in changes:
        by_row.setdefault(row, []).append(change)
    for row in rows:
        needle.row(*by_row.get(row, ()))
    return needle


def work_both_edges(needle: Needle, rows: int, edges: Iterable[AtRow]) -> Needle:
    """Work so many rows with the same shaping at both edges."""
    return _work(needle, range(rows), [_at(edge, side) for edge in edges for side in ("left", "right")])


def face_sections(
    plan: FacePlan, key: str, name: str, fabric: StructureName, gauge: Gauge, *, after: str, face: Face = "whole"
) -> tuple[Section, Section, Section]:
    """Give the sections of a face: up to the neck, then the right and the left shoulder as seen from the right side.

    :param after: the section whose stitches it carries on.
    """
    edges = (*plan.armhole, *plan.shoulder)
    both = [_at(edge, side) for edge in edges for side in ("left", "right")]
    needle = _work(Needle(plan.stitches), range(plan.neck_row), [one for one in both if one[0] < plan.neck_row])
    lower = needle.section(key, name, fabric, gauge, begins="carried on", after=after, face=face, closed=plan.centre)
    each = (needle.now - plan.centre) // 2
    rows = range(plan.neck_row, plan.rows)
    shoulders = []
    for outer, inner in _SIDES:
        left = needle.left if outer == "left" else needle.left + needle.now - each
        changes = [one for one in (_at(edge, outer) for edge in edges) if one[0] >= plan.neck_row]
        changes += [_at(edge, inner) for edge in plan.neck]
        shoulders.append(
            _work(Needle(each, left=left), rows, changes).section(
                f"{key} {outer} shoulder",
                f"{outer} shoulder of the {face if face != 'whole' else key}",
                fabric,
                gauge,
                begins="carried on",
                ends="three-needle cast-off",
                after=key,
                face=face,
            )
        )
    return lower, shoulders[0], shoulders[1]


def half_face_sections(
    plan: FacePlan, key: str, name: str, fabric: StructureName, gauge: Gauge, *, after: str | None, left: float
) -> Section:
    """Give the one section of a cardigan's front, its armhole to the right and its neck to the left.

    :param plan: of the whole front as if it were closed, but for ``stitches``, those of this half; half its centre is
        cast off at the neck edge.
    :param left: left end in stitches from the middle line of the piece.
    """
    edges = (*plan.armhole, *plan.shoulder)
    changes = [_at(edge, "right") for edge in edges]
    if plan.centre:
        changes.append(_at((plan.neck_row - 2, Kind.CAST_OFF, plan.centre // 2), "left"))
    changes += [_at(edge, "left") for edge in plan.neck]
    needle = _work(Needle(plan.stitches, left=left), range(plan.rows), changes)
    return needle.section(key, name, fabric, gauge, begins="carried on", ends="three-needle cast-off", after=after)
