"""Front and back above the underarm: shoulders that meet, and a neck that the head passes."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from loopwright.fabric import Gauge
from loopwright.garment.draft import shaped_length_cm
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.face import AtRow, FacePlan, moves_of
from loopwright.garment.parts.girth import head_passes, narrow_neck
from loopwright.garment.parts.plan import face_neck, face_plan, neck_row, neck_steps
from loopwright.garment.shaping import nearest_count
from loopwright.garment.wanted import Brief, Neckline
from loopwright.units import BadInput

__all__ = ["Faces", "half_front", "neck_edge_cm", "plan_faces", "slope_rows"]

LEAST_SHOULDER = 2
"""Fewest stitches of one shoulder."""


@dataclass(frozen=True, slots=True)
class Faces:
    """Front and back, with shoulders of equal stitches."""

    front: FacePlan
    back: FacePlan

    @property
    def shoulder(self) -> int:
        """Give the stitches of one shoulder."""
        return self.back.shoulder_stitches


def neck_edge_cm(plan: FacePlan, gauge: Gauge) -> float:
    """Give the length of one face's neck edge in cm: its middle, and both sides as they are picked up."""
    moves = ((row - plan.neck_row, stitches, at_once) for row, stitches, at_once in moves_of(plan.neck))
    return gauge.width_cm(plan.centre) + 2 * shaped_length_cm(moves, plan.rows - plan.neck_row, gauge)


def slope_rows(brief: Brief) -> int:
    """Give the rows by which the neck end of a shoulder lies higher: the nearest even number, at least 2.

    Source: every step of a slope takes two rows; an inch at 7 rows to the inch is 8 rows, four steps.
    """
    rows = brief.measures.need("shoulder_slope") * brief.gauge.rows_or_usual_per_10cm / 10
    return nearest_count(rows, multiple=2, least=2)


def plan_faces(
    brief: Brief, stitches: int, rows: int, armhole: tuple[AtRow, ...], measured: Measured, *, seam: int = 0
) -> Faces:
    """Give the plans of front and back that begin with the same stitches under the arm.

    Preference: shoulder width before neck width before neck depth. The neck is odd or even as the shoulders are across;
    it is made wider, two stitches at a time, until the head passes.

    :param seam: stitches that seams take from the shoulders' whole width.
    :raises BadInput: no neck between the shoulders lets the head pass.
    """
    gauge, measures, options = brief.gauge, brief.measures, brief.options
    style = options.neckline or "round"
    across = stitches - 2 * sum(-kind.sign * count for _, kind, count in armhole)
    row_cm = 10 / gauge.rows_or_usual_per_10cm
    wanted = nearest_count(gauge.stitches_in(measures.need("neck_width")), like=across, least=1)
    from_rows = {
        name: neck_row(rows, round(measures.need(name) / row_cm)) for name in ("front_neck_depth", "back_neck_depth")
    }
    slope = min(slope_rows(brief), rows - max(from_rows.values()))
    shapes: tuple[Neckline | Literal["back"], ...] = (style, "back")
    for neck in range(wanted, max(across - 2 * LEAST_SHOULDER, wanted) + 1, 2):
        front, back = (
            face_plan(stitches, rows, armhole, neck=shape, neck_stitches=neck, from_row=row, slope_rows=slope)
            for shape, row in zip(shapes, from_rows.values(), strict=True)
        )
        opening = neck_edge_cm(front, gauge) + neck_edge_cm(back, gauge)
        if head_passes(opening, brief):
            break
    else:
        raise narrow_neck(opening, brief, "a deeper neck, wider shoulders, or an opening in front")
    why = "the head must pass" if neck > wanted else "both shoulders are alike, so the neck is odd or even as they are"
    measured.width("shoulder_width", across - seam, "it is what the body leaves, both armholes being shaped alike")
    measured.width("neck_width", neck, why)
    for name, plan in (("front_neck_depth", front), ("back_neck_depth", back)):
        measured.rows(name, rows - plan.neck_row, "the neck begins on a right-side row")
    return Faces(front, back)


def half_front(plan: Faces, stitches: int, style: Neckline) -> FacePlan:
    """Give the plan of one half of a cardigan's front, whose shoulder meets the back's.

    :param stitches: of the half at the underarm.
    :raises BadInput: the half is too narrow for its shoulder.
    """
    lost = sum(-kind.sign * count for _, kind, count in plan.front.armhole)
    neck = stitches - lost - plan.shoulder
    if neck < 1:
        raise BadInput(
            found=f"half a front of {stitches} stitches for a shoulder of {plan.shoulder}",
            wanted="a narrower front band, or more width at the bust",
            place="band",
        )
    curve = face_neck(style, 2 * neck, plan.front.rows, plan.front.neck_row)
    return replace(
        plan.front,
        stitches=stitches,
        centre=curve.centre,
        neck=neck_steps(curve, plan.front.neck_row + 1),
    )
