"""Rows of knitting as they are laid on a picture: where each begins and ends, and which stitches it shows."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Section
from loopwright.garment.draft.outline import CURVE_WITHIN_ROWS, STEP_FROM_STITCHES

__all__ = ["LaidRows", "Stretch", "flat_rows", "joined", "rows_of"]

Floats = NDArray[np.float64]

LINKED_ROWS: Final = 24
"""Steps of up to two stitches that lie within so many rows make one slope; our judgement."""
LAST_GROUP: Final = 1.4
"""Most that the last group of a shoulder has over the one before."""
SHOULDER_ROWS: Final = 2
"""From one group of a shoulder to the next."""
ALONE_ROWS: Final = 10
"""Above and below a small step that stands alone, the rows over which it comes to lie as a slope; likewise."""


@dataclass(frozen=True, slots=True, eq=False)
class Stretch:
    """Rows of one section: the first of them, from 0, and how many."""

    piece: str
    section: Section
    first: int
    rows: int


@dataclass(frozen=True, eq=False)
class LaidRows:
    """Rows on top of one another, each a straight run of stitches; u runs along a row, v from row to row.

    :ivar ends: v at the begin of each row and at the end of the last; shape (rows + 1,).
    :ivar left, right: u of both ends of each row; shape (rows,).
    :ivar column: which stitch of its row lies at the left end, counted in stitches from the row's own left as seen
        from the right side; shape (rows,). Of a tube the front comes first.
    :ivar per_u: stitches to one unit of u, below nothing where they run from right to left; shape (rows,).
    :ivar stitches: worked in the whole row, whether or not all are shown; shape (rows,).
    :ivar stretches: what the rows belong to.
    :ivar wraps: whether what lies beyond the last stitch of a round is its first again.
    :ivar begins: both ends before the shaping of the first row, where they are known.
    """

    ends: Floats
    left: Floats
    right: Floats
    column: Floats
    per_u: Floats
    stitches: NDArray[np.int64]
    stretches: tuple[Stretch, ...]
    begins: tuple[float, float] | None = None
    wraps: bool = False

    @property
    def rows(self) -> int:
        """Give the number of rows."""
        return len(self.left)

    @property
    def shown(self) -> Floats:
        """Give how many stitches of each row are shown; shape (rows,)."""
        return np.abs(self.per_u) * (self.right - self.left)

    @cached_property
    def edges(self) -> tuple[Floats, Floats]:
        """Give the left and the right edge, from the first row's begin to the last row's end, as (u, v).

        An edge runs straight from the middle of one step to the middle of the next, as it comes to lie once it is
        sewn or washed; a step of more than two stitches that stands alone stays one.
        """
        most = STEP_FROM_STITCHES / np.abs(self.per_u)
        first = self.begins or (float(self.left[0]), float(self.right[0]))
        left = _edge(self.left, self.ends, most, first[0], float(self.right[-1]))
        return left, _edge(self.right, self.ends, most, first[1], float(self.left[-1]))

    def outline(self) -> Floats:
        """Give the outline as (u, v), with points all along its long stretches, as these may lie on a curve.

        :returns: shape (points, 2).
        """
        left, right = self.edges
        return _close_together(np.concatenate((left, right[::-1])))

    def moved(self, by: float) -> LaidRows:
        """Give the same rows further along v."""
        return replace(self, ends=self.ends + by)

    def sliced(self, first: int, last: int) -> LaidRows:
        """Give the rows from one to before another."""
        stretches, row = [], 0
        for one in self.stretches:
            kept = range(max(first, row), min(last, row + one.rows))
            if kept:
                stretches.append(replace(one, first=one.first + kept.start - row, rows=len(kept)))
            row += one.rows
        taken = slice(first, last)
        return LaidRows(
            self.ends[first : last + 1],
            self.left[taken],
            self.right[taken],
            self.column[taken],
            self.per_u[taken],
            self.stitches[taken],
            tuple(stretches),
            self.begins if first == 0 else None,
            self.wraps,
        )


def _edge(edge: Floats, ends: Floats, most: Floats, first: float, other: float) -> Floats:
    """Give an edge from steps: knots in the middle of each, where the next is not far, else where its slope ends.

    :param first: where it lies before the first row; the slope of a shoulder begins there.
    :param other: where the other edge ends; such a slope goes on to there, straight.
    """
    steps = np.flatnonzero(np.abs(np.diff(edge)) > 1e-9)
    if not len(steps):
        return np.array([(edge[0], ends[0]), (edge[-1], ends[-1])])
    at, below, above = ends[steps + 1], edge[steps], edge[steps + 1]
    row = float(np.diff(ends).max())
    small = np.abs(above - below) <= np.maximum(most[steps], most[steps + 1]) * (1 + 1e-9)
    gaps = np.diff(at, prepend=ends[0], append=ends[-1])
    both = np.concatenate(([False], small)) & np.concatenate((small, [False]))
    linked = gaps <= np.where(both, LINKED_ROWS, CURVE_WITHIN_ROWS) * row * (1 + 1e-9)
    linked[[0, -1]] = False
    knots = [(float(edge[0]), float(ends[0]))]
    is_shoulder = not small[-1] and _is_last_group(
        float(above[-1] - below[-1]), abs(other - float(edge[-1])), float(gaps[-1]) / row
    )
    slope = int(np.flatnonzero(small)[-1]) + 1 if is_shoulder and small.any() else 0 if is_shoulder else len(steps)
    for k, (v, foot, head) in enumerate(zip(at[:slope].tolist(), below.tolist(), above.tolist(), strict=False)):
        if not (small[k] or linked[k] or linked[k + 1]):
            knots += [(foot, v), (head, v)]
            continue
        reach = [float(gaps[side]) / 2 for side in (k, k + 1) if linked[side]] or [ALONE_ROWS * row]
        if not linked[k]:
            knots.append((foot, v - min(reach[0], float(gaps[k]) / (1 if k == 0 else 2))))
        knots.append(((foot + head) / 2, v))
        if not linked[k + 1] and (k + 1 < len(steps) or small[k]):
            knots.append((head, v + min(reach[-1], float(gaps[k + 1]) / (1 if k + 1 == len(steps) else 2))))
    if not is_shoulder:
        return np.array([*knots, (float(edge[-1]), float(ends[-1]))])
    if slope == 0 and abs(first - edge[0]) > most[0]:
        knots[0] = (first, float(ends[0]))
    else:
        knots.append((float(below[slope]), float(at[slope]) - min(float(gaps[slope]), SHOULDER_ROWS * row)))
    return np.array([*knots, *_straight_down(edge, ends, knots[-1], other)])


def _straight_down(edge: Floats, ends: Floats, begin: tuple[float, float], other: float) -> list[tuple[float, float]]:
    """Give the further knots of a shoulder: straight to the other edge, with the area that its steps have."""
    u, v = begin
    steps = ends[1:] > v + 1e-9
    area = float((np.abs(edge - other) * np.diff(ends))[steps].sum())
    last = float(ends[-1])
    foot = min(v + 2 * area / abs(u - other), last)
    return [(other, foot), (other, last)]


def _is_last_group(change: float, left: float, rows: float) -> bool:
    """Say whether the stitches left at the end are the last of equal groups, as at a shoulder."""
    return rows <= 2 * CURVE_WITHIN_ROWS and 0 < left <= LAST_GROUP * abs(change)


def _close_together(points: Floats, parts: int = 64) -> Floats:
    steps = np.diff(points, axis=0, append=points[:1])
    long = (np.abs(steps) > np.abs(steps).max(axis=0) / 4).any(axis=1)
    counts = np.where(long, parts, 1)
    begin = np.repeat(np.arange(len(points)), counts)
    share = (np.arange(len(begin)) - np.repeat(np.cumsum(counts) - counts, counts)) / np.repeat(counts, counts)
    close: Floats = points[begin] + share[:, None] * steps[begin]
    return close


def rows_of(
    piece: str,
    section: Section,
    shown: tuple[Floats, Floats],
    *,
    column: Floats | float = 0.0,
    per_u: Floats | float,
    base: float = 0.0,
) -> LaidRows:
    """Give the rows of one section, its row height in cm along v.

    :param shown: u of the left and right end of each row.
    """
    rows = section.rows
    return LaidRows(
        ends=np.asarray(base + np.arange(rows + 1) * section.row_height_cm, dtype=np.float64),
        left=np.asarray(shown[0], dtype=np.float64),
        right=np.asarray(shown[1], dtype=np.float64),
        column=np.broadcast_to(np.asarray(column, dtype=np.float64), rows),
        per_u=np.broadcast_to(np.asarray(per_u, dtype=np.float64), rows),
        stitches=section.stitches,
        stretches=(Stretch(piece, section, 0, rows),),
    )


def flat_rows(piece: str, section: Section, *, back: bool = False) -> LaidRows:
    """Give the rows of a section as it lies, u in cm from the middle line: of a tube its front or its back."""
    left = section.left_edge * section.stitch_width_cm
    right = left + section.flat_stitches * section.stitch_width_cm
    column = section.stitches / 2 if back and section.in_the_round else 0.0
    begin = section.begin_left * section.stitch_width_cm
    wide = section.first / (2 if section.in_the_round else 1) * section.stitch_width_cm
    rows = rows_of(piece, section, (left, right), column=column, per_u=1 / section.stitch_width_cm)
    return replace(rows, begins=(begin, begin + wide))


def joined(parts: Iterable[LaidRows]) -> LaidRows:
    """Give several runs of rows as one, each standing on the one before."""
    stacked: list[LaidRows] = []
    for one in parts:
        stacked.append(one.moved(stacked[-1].ends[-1] - one.ends[0]) if stacked else one)
    counts = np.concatenate([one.stitches for one in stacked])
    left, right, column, per_u = (
        np.concatenate([getattr(one, name) for one in stacked]) for name in ("left", "right", "column", "per_u")
    )
    return LaidRows(
        ends=np.concatenate([stacked[0].ends, *(one.ends[1:] for one in stacked[1:])]),
        left=left,
        right=right,
        column=column,
        per_u=per_u,
        stitches=counts,
        stretches=tuple(stretch for one in stacked for stretch in one.stretches),
        begins=stacked[0].begins,
        wraps=stacked[0].wraps,
    )
