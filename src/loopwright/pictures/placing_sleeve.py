"""How a sleeve hangs: it leaves the armhole as it is sewn or knitted on, and bends down towards the wrist."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Piece, Section
from loopwright.pictures.laid_rows import LaidRows, joined, rows_of
from loopwright.pictures.lie_bent import Bend
from loopwright.pictures.patch import LAYERS, Patch, both_sides

__all__ = ["HANG", "SetOn", "Share", "hanging", "sleeve_patches"]

HANG: Final = math.radians(33)
"""The angle of the lower sleeve from straight down."""
SET_IN: Final = math.radians(60)
"""Most that a sleeve set into an armhole leaves it at; what lies under the armhole's edge then is hidden."""
ARC_SHARE: Final = 0.7
"""Of the sleeve below the armhole, the part over which it bends, where that is not too sharp."""
SHARPEST: Final = 2.0
"""Least radius of the bend, in half widths of the sleeve."""
MOST_ARC: Final = 0.85
LAP_CM: Final = 0.4
"""A sleeve knitted in one with a yoke reaches this much further under the line between them; for looks."""
Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Share:
    """A sleeve's share of one section of a yoke, in knitting order.

    :ivar stitches: of the share in each row; shape (rows,).
    :ivar column: stitch of the row that lies at the line to front or back, on the right and on the left of the picture.
    :ivar forward: whether stitches are counted from there outwards, on the right and on the left.
    """

    piece: str
    section: Section
    stitches: Floats
    column: tuple[Floats, Floats]
    forward: tuple[bool, bool]


@dataclass(frozen=True, slots=True, eq=False)
class SetOn:
    """The edge of the trunk on the right that a sleeve is set onto, from the underarm to its upper end.

    :ivar points: shape (points, 2); the first is the underarm, the last the end of the shoulder or the neck.
    :ivar upto: the share of the sleeve's upper edge, from its fold, that is joined to it.
    """

    points: Floats
    upto: float = 1.0


def hanging(
    on: SetOn, own_edge: Floats, length: float, half: float, *, straight: float, most: float, upward: bool
) -> Bend:
    """Give how a sleeve hangs whose edge is set onto an edge of the trunk.

    :param own_edge: the sleeve's edge, from its lower to its upper end, as (u, distance from the sleeve's upper end);
        shape (points, 2).
    :param length: of the whole in cm; half: half its flat width at the armhole.
    :param straight: cm of it before it may bend; :param most: the angle that it leaves the trunk at, at most.
    """
    begin, end = on.points[0], on.points[-1]
    bottom, top = own_edge[0], own_edge[-1]
    own = complex(top[0] - bottom[0], -(top[1] - bottom[1]))
    worn = complex(end[0] - begin[0], -(end[1] - begin[1]))
    first = cmath.phase(worn / own)
    if first > most:  # it turns about the upper end, where the fold of the sleeve goes on from the shoulder
        first, at, held = most, end, top
        deep = 0.0
    else:
        at, held = (begin + end) / 2, ((top[0] + bottom[0]) / 2, (top[1] + bottom[1]) / 2)
        deep = _hole(on.points, own_edge, first) + LAP_CM
    along, out = (math.sin(first), math.cos(first)), (math.cos(first), -math.sin(first))
    x = float(at[0]) - held[0] * out[0] - (held[1] + deep) * along[0]
    y = float(at[1]) - held[0] * out[1] - (held[1] + deep) * along[1]
    straight += deep
    rest = max(length - straight, 0.1)
    turn = max(first - HANG, 1e-3)
    radius = max(SHARPEST * half, ARC_SHARE * rest / turn)
    arc = min(radius * turn, MOST_ARC * rest)
    return Bend(x, y, first, first - arc / radius, straight, arc, length if upward else 0.0)


def _hole(worn: Floats, own: Floats, angle: float) -> float:
    """Give how far a sleeve must reach under the trunk so that no hole is left between their edges, in cm."""
    chord = complex(*(worn[-1] - worn[0]))
    body = _beside(worn)
    sleeve = _beside(own)
    along = np.linspace(0, 1, 41)
    gaps = np.interp(along, *body) - np.interp(along, *sleeve)
    across = abs(
        math.sin(
            cmath.phase(complex(chord.real, -chord.imag)) - cmath.phase(complex(math.sin(angle), -math.cos(angle)))
        )
    )
    return float(max(gaps.max(), 0.0)) * abs(chord) / max(across, 0.3)


def _beside(points: Floats) -> tuple[Floats, Floats]:
    """Give, of each point of an edge, its share of the way from end to end and how far it lies to the left of it."""
    places = points[:, 0] - 1j * points[:, 1]
    shares = (places - places[0]) / (places[-1] - places[0])
    order = np.argsort(shares.real, kind="stable")
    return shares.real[order], shares.imag[order]


def sleeve_patches(
    piece: Piece, set_on: SetOn, *, cap: str = "cap", shares: Sequence[Share] = (), yoked: bool = False
) -> tuple[list[Patch], Bend]:
    """Give both sleeves of a garment, folded in half along the top of the arm, and how the right one hangs.

    :param cap: key of the section that is set into an armhole.
    :param shares: of a yoke, as it is knitted; :param yoked: it is knitted in one with a yoke.
    """
    upward = piece.direction == "bottom up"
    tube = [one for one in piece.sections if one.rows and one.key != cap]
    top_row = tube[-1] if upward else tube[0]
    widest = int(top_row.last if upward else max(top_row.first, int(top_row.stitches[0])))
    half = widest / 4 * top_row.stitch_width_cm
    upper = _upper(piece, cap, shares)
    runs = [_folded(piece.key, one) for one in tube]
    more = [_to_the_fold(one, half) for one in upper]
    order = runs + more if upward else more + runs
    right, left = (joined([run[side] for run in order]) for side in (0, 1))
    if not upward:
        right, left = left, right
    rise = float(sum(one.section.height_cm for one in upper))
    edge = _edge(upper, half, rise, set_on, upward=upward, yoked=bool(shares))
    bend = hanging(
        set_on, edge, float(right.ends[-1]), half, straight=rise, most=math.pi if yoked else SET_IN, upward=upward
    )
    return both_sides(right, left, bend, LAYERS["sleeve"]), bend


_Run = tuple[LaidRows, LaidRows]
"""The rows of a section as the right and as the left sleeve of the picture shows them, if it is knitted upwards."""


def _upper(piece: Piece, cap: str, shares: Sequence[Share]) -> list[Share]:
    if shares:
        return [one for one in shares if one.section.rows]
    return [
        Share(
            piece.key, one, one.stitches.astype(float), (np.zeros(one.rows), one.stitches.astype(float)), (True, False)
        )
        for one in piece.sections
        if one.key == cap
    ]


def _folded(piece: str, section: Section) -> _Run:
    end = section.stitches / 4 * section.stitch_width_cm
    per = 1 / section.stitch_width_cm
    whole = section.stitches.astype(float)
    return (
        rows_of(piece, section, (-end, end), per_u=per),
        rows_of(piece, section, (-end, end), column=whole, per_u=-per),
    )


def _to_the_fold(share: Share, half: float) -> _Run:
    inner = half - share.stitches / 2 * share.section.stitch_width_cm
    ends = (inner, np.full(share.section.rows, half))
    per = 1 / share.section.stitch_width_cm
    right, left = (
        rows_of(share.piece, share.section, ends, column=column, per_u=per if forward else -per)
        for column, forward in zip(share.column, share.forward, strict=True)
    )
    return right, left


def _edge(upper: Sequence[Share], half: float, rise: float, set_on: SetOn, *, upward: bool, yoked: bool) -> Floats:
    """Give the edge that is set on, from its lower to its upper end, as (u, distance from the sleeve's upper end)."""
    if not upper:
        return np.array([(half - 2 * half * set_on.upto, 0.0), (half, 0.0)])
    if not yoked:
        return np.array([(-half, rise), (half, 0.0)])
    u = np.concatenate([half - one.stitches / 2 * one.section.stitch_width_cm for one in upper])
    heights = np.concatenate([np.full(one.section.rows, one.section.row_height_cm) for one in upper])
    middles = np.cumsum(heights) - heights / 2
    return np.column_stack((u, rise - middles)) if upward else np.column_stack((u, middles))[::-1]
