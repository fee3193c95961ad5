"""From measures to the counts of a face: shoulder slope and neckline as exact steps in rows."""

from __future__ import annotations

from typing import Literal

from loopwright.garment.draft import Kind
from loopwright.garment.parts.face import AtRow, FacePlan
from loopwright.garment.shaping import NeckCurve, boat_neck, round_neck, shoulder_steps, v_neck
from loopwright.garment.wanted import Neckline
from loopwright.units import BadInput

__all__ = ["face_neck", "face_plan", "neck_curve", "neck_row", "neck_steps", "shoulder_rests"]


def neck_row(rows: int, neck_rows: int) -> int:
    """Give the right-side row from which both sides of a neck are worked apart, for a neck so many rows deep.

    The nearest even row, the earlier of two; never the first two rows, nor the last two.
    """
    nearest = (rows - neck_rows) // 2 * 2
    return max(min(nearest, (rows - 2) // 2 * 2), 2)


BACK_CENTRE_SHARE = 0.7
"""Middle of a back neck, which is shallow, over its width; common practice, no source."""


def neck_curve(style: Neckline | Literal["back"], stitches: int, rows: int) -> NeckCurve:
    """Give the curve of a neckline over so many rows.

    A V is decreased evenly, a boat neck nearly straight; a front is rounded from a middle of 45 %, a back from 70 %.
    """
    if style == "V":
        return v_neck(stitches, rows)
    if style == "boat":
        return boat_neck(stitches, rows)
    if style == "back":
        return round_neck(stitches, rows, centre_share=BACK_CENTRE_SHARE)
    return round_neck(stitches, rows)


def face_neck(style: Neckline | Literal["back"], stitches: int, rows: int, from_row: int) -> NeckCurve:
    """Give the curve of a face's neck that is worked apart from a row on.

    One edge is cast off a row later than the other, and the last cast-off must still have its row.
    """
    left = rows - from_row - 1
    curve = neck_curve(style, stitches, left)
    if curve.sides and curve.sides[-1] > 1 and curve.at[-1] >= left - 1:
        return neck_curve(style, stitches, left - 1)
    return curve


def neck_steps(curve: NeckCurve, from_row: int) -> tuple[AtRow, ...]:
    """Give what is done at each neck edge; single stitches are decreased.

    :param from_row: the row after the one in which the centre is cast off, counted from the underarm.
    """
    return tuple(
        (from_row + at, Kind.DECREASE if stitches == 1 else Kind.CAST_OFF, stitches)
        for at, stitches in zip(curve.at, curve.sides, strict=True)
        if stitches
    )


def shoulder_rests(stitches: int, rows: int, slope_rows: int) -> tuple[AtRow, ...]:
    """Give the turns that slope a shoulder up to the last row: all steps but the last one rest.

    :param rows: from the underarm to the top of the shoulder.
    """
    steps = shoulder_steps(stitches, slope_rows)
    start = (rows - 2 * len(steps)) // 2 * 2
    return tuple((start + 2 * place, Kind.REST, step) for place, step in enumerate(steps[:-1]))


def face_plan(
    stitches: int,
    rows: int,
    armhole: tuple[AtRow, ...],
    *,
    neck: Neckline | Literal["back"],
    neck_stitches: int,
    from_row: int,
    slope_rows: int,
) -> FacePlan:
    """Give the plan of one face.

    :param stitches: at the underarm.
    :param rows: from the underarm to the top of the shoulder.
    :param from_row: the even row from which both sides of the neck are worked apart.
    :raises BadInput: the neck leaves no stitch for the shoulders.
    """
    across = stitches - 2 * sum(-kind.sign * count for _, kind, count in armhole)
    if across - neck_stitches < 2:
        raise BadInput(
            found=f"a neck of {neck_stitches} stitches where {across} are left across the shoulders",
            wanted="a narrower neck, or wider shoulders",
            place="neck_width",
        )
    curve = face_neck(neck, neck_stitches, rows, from_row)
    return FacePlan(
        stitches=stitches,
        rows=rows,
        armhole=armhole,
        neck_row=from_row,
        centre=curve.centre,
        neck=neck_steps(curve, from_row + 1),
        shoulder=shoulder_rests((across - neck_stitches) // 2, rows, slope_rows),
    )
