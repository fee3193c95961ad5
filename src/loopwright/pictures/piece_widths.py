"""Widths across a piece and their stitches: its edges, landmarks, where it is widest or narrowest, shoulders and neck.

Coordinates are those of the piece: x in cm from its middle line, y in cm in knitting order.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Kind, Piece, Section
from loopwright.pictures.piece_runs import GRAIN_CM, Run, begin_end, face_runs
from loopwright.pictures.yoke_shares import is_folded

__all__ = ["Across", "widths_of"]

Where = Literal["begin", "inside", "end"]

LEAST_TURN, LEAST_STEP = 0.07, 0.1
"""A width is a narrowest or widest one, or a step from one section to the next, if it differs by more than this share;
our judgement."""
LEAST_SHOULDER_CM = 3.0
LEAST_APART_CM = 4.0
"""A step nearer than this to a width that is shown already is not shown."""


@dataclass(frozen=True, slots=True)
class Across:
    """A width at one height of the piece, and the stitches in it.

    :ivar where: at the first edge of the piece, at its last, or inside.
    :ivar slack: how far from there the width is the same, so that its line may stand there too, in cm: after it in
        knitting order where it is above 0, and else before it.
    :ivar is_folded: no tube, but drawn as one, folded in half.
    """

    at: float
    left: float
    right: float
    stitches: int
    in_the_round: bool
    where: Where
    is_folded: bool = False
    slack: float = 0.0

    @property
    def width_cm(self) -> float:
        """Give the width as drawn in cm; a tube's is half its girth."""
        return self.right - self.left


def widths_of(piece: Piece) -> list[Across]:
    """Give the widths of a piece: both its edges, where it is widest and narrowest, landmarks, shoulders and neck."""
    runs = face_runs(piece, "front")
    levels = [level for run in runs for one in run.sections for level in _levels(piece, one)]
    widths = list(_inside(piece, levels))
    for run, where in _ends_of(runs):
        if _is_open(piece, run, where):
            widths += _shoulders(piece, run, where)
        else:
            widths.append(_edge_width(piece, _edge_section(runs, where), where))
    return widths


def _ends_of(runs: Sequence[Run]) -> tuple[tuple[Run, Where], tuple[Run, Where]]:
    return (runs[0], "begin"), (runs[-1], "end")


def _edge_section(runs: Sequence[Run], where: Where) -> Section:
    """Give the section whose edge is the piece's; of a tube with short rows at its edge, the tube."""
    sections = [one for run in runs for one in run.sections]
    edge, inner = (sections[0], sections[1:2]) if where == "begin" else (sections[-1], sections[-2:-1])
    short_rows = not edge.in_the_round and bool(inner) and inner[0].in_the_round
    return inner[0] if short_rows else edge


def _is_open(piece: Piece, run: Run, where: Where) -> bool:
    """Say whether sections lie side by side at this end of a run."""
    return any(_reaches(piece, one, run, where) for one in run.beside)


def _reaches(piece: Piece, section: Section, run: Run, where: Where) -> bool:
    begin, end = begin_end(piece, section)
    return abs(begin - run.begin if where == "begin" else end - run.end) < GRAIN_CM


@dataclass(frozen=True, slots=True)
class _Level:
    section: Section
    row: int
    at: float
    width: float


def _levels(piece: Piece, section: Section) -> list[_Level]:
    base, row = piece.base_cm(section.key), section.row_height_cm
    widths = (section.flat_stitches * section.stitch_width_cm).tolist()
    return [_Level(section, place, base + (place + 0.5) * row, width) for place, width in enumerate(widths)]


def _across(level: _Level, where: Where = "inside") -> Across:
    section = level.section
    left = float(section.left_edge[level.row]) * section.stitch_width_cm
    stitches = int(section.stitches[level.row])
    return Across(level.at, left, left + level.width, stitches, section.in_the_round, where, is_folded(section))


def _edge_width(piece: Piece, section: Section, where: Where) -> Across:
    """Give the width of the first or of the last edge, short rows at it counted as they lie on the needle."""
    begin, end = begin_end(piece, section)
    stitch, round_ = section.stitch_width_cm, section.in_the_round
    if where == "begin" or not section.resting or round_:
        row = 0 if where == "begin" else -1
        left = float(section.left_edge[row])
        right, stitches = left + float(section.flat_stitches[row]), int(section.stitches[row])
    else:
        rests = [one for one in section.shapings if one.kind in (Kind.REST, Kind.TAKE_UP)]
        left = float(section.left_edge[-1]) + sum(one.change for one in rests if one.side == "left")
        right, stitches = left + section.live, section.live
    return Across(
        begin if where == "begin" else end, left * stitch, right * stitch, stitches, round_, where, is_folded(section)
    )


def _inside(piece: Piece, levels: Sequence[_Level]) -> Iterator[Across]:
    """Give landmarks first, then other places where the width turns or jumps and that no landmark already shows."""
    widths = np.array([one.width for one in levels])
    taken = [
        place
        for mark in piece.landmarks
        if mark.name in ("waist", "hip", "underarm")
        and (place := _place(piece, levels, mark.section, mark.row)) is not None
        and 0 < place < len(levels) - 1
    ]
    jumps = set(_jumps(levels))
    for place in (*_turns(widths), *sorted(jumps)):
        known = (*taken, 0, len(levels) - 1)
        near = any(abs(levels[place].at - levels[one].at) < LEAST_APART_CM for one in known)
        if not (near and place in jumps) and all(
            _differ(widths[min(place, one) : max(place, one) + 1]) for one in known
        ):
            taken.append(place)
    for place in taken:
        yield replace(_across(levels[place]), slack=_slack(levels, widths, place))


def _slack(levels: Sequence[_Level], widths: NDArray[np.float64], place: int) -> float:
    """Give how far before or after a row, whichever is more, the width stays the same."""
    other = np.flatnonzero(widths != widths[place])
    first = int(other[other < place].max(initial=-1)) + 1
    last = int(other[other > place].min(initial=len(levels))) - 1
    before, after = (levels[end].at - levels[place].at for end in (first, last))
    return after if after > -before else before


def _differ(widths: NDArray[np.float64]) -> bool:
    return float(np.ptp(widths)) > LEAST_TURN * float(widths.max())


def _place(piece: Piece, levels: Sequence[_Level], section: str, row: int) -> int | None:
    """Give the row of a landmark; one that lies before a section's first row is shown on the row before it."""
    key: str | None = section
    if row == 0:
        key, row = piece.section(section).after, -1
    rows = [place for place, one in enumerate(levels) if one.section.key == key]
    return rows[min(row, len(rows) - 1)] if rows else None


def _turns(widths: NDArray[np.float64]) -> list[int]:
    """Give the places of widest and narrowest rows between the ends, each turn larger than the least that counts."""
    turns: list[int] = []
    low = high = 0
    rising: bool | None = None
    for place, width in enumerate(widths.tolist()):
        if width >= widths[high]:
            high = place
        if width < widths[low]:
            low = place
        least = LEAST_TURN * widths[high]
        if rising is not False and widths[high] - width > least:
            if rising:
                turns.append(high)
            rising, low = False, place
            high = place
        elif rising is not True and width - widths[low] > least:
            if rising is False:
                turns.append(low)
            rising, high = True, place
            low = place
    return turns


def _jumps(levels: Sequence[_Level]) -> list[int]:
    """Give the rows after a section whose width the next one leaves at once."""
    return [
        place + 1
        for place, (one, other) in enumerate(pairwise(levels))
        if one.section is not other.section and abs(one.width - other.width) > LEAST_STEP * one.width
    ]


def _shoulders(piece: Piece, run: Run, where: Where) -> Iterator[Across]:
    """Give one shoulder, the neck between both, and all three where the armhole has narrowed them."""
    row = 0 if where == "begin" else -1
    pair = [one for one in run.beside if _reaches(piece, one, run, where)]
    if len(pair) != 2:
        return
    left, right = sorted(pair, key=lambda one: float(one.left_edge[row]))
    live = [int(one.stitches[0]) if where == "begin" else one.live for one in (left, right)]
    stitch, at = left.stitch_width_cm, run.begin if where == "begin" else run.end
    inner = (float(left.left_edge[row] + left.flat_stitches[row]), float(right.left_edge[row]))
    outer = (inner[0] - live[0], inner[1] + live[1])
    neck = round(inner[1] - inner[0])
    yield Across(at, inner[0] * stitch, inner[1] * stitch, neck, False, where)
    if live[0] * stitch < LEAST_SHOULDER_CM:
        return
    yield Across(at, outer[0] * stitch, inner[0] * stitch, live[0], False, where)
    whole = sum(live) + neck
    below = run.sections[0].first if run.sections else whole
    if abs(below - whole) > LEAST_TURN * below:
        yield Across(at, outer[0] * stitch, outer[1] * stitch, whole, False, where)
