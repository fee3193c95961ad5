"""Sleeves set into shaped armholes: worked from the cuff up, flat or in the round, with a flat cap sewn in."""

from __future__ import annotations

from typing import Final, Literal

from loopwright.garment.draft import Edge, Join, Landmark, Needle, Piece, Section, shaped_length_cm
from loopwright.garment.parts.cap import USUAL_CAP_SHARE, Cap, fitted_cap
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.face import FacePlan, moves_of, work_both_edges
from loopwright.garment.parts.girth import SEAM
from loopwright.garment.parts.sleeve import sleeve_plan, sleeve_up
from loopwright.garment.parts.straight import StraightBody, armhole_stretches
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, Told, told

__all__ = ["set_in_sleeves"]

_CAP_EDGES: Final[dict[str, Literal["left", "right"]]] = {"back": "right", "front": "left"}
"""The edge of the cap that meets the back's left edge and the front's right one, all seen from the right side."""


def set_in_sleeves(
    brief: Brief, body: StraightBody, measured: Measured, *, tube: bool
) -> tuple[list[Piece], list[Join], list[Told]]:
    """Give the sleeve, its joins and how its cap fits.

    :param tube: cuff and sleeve in the round; the cap is worked flat all the same.
    :raises BadInput: an upper arm whose cap no number of rows fits to the armhole.
    """
    seam = 0 if tube else SEAM
    armhole = body.faces.back
    half_cm = shaped_length_cm(moves_of(armhole.armhole), armhole.slope_row, brief.gauge)
    top = max(round(brief.gauge.stitches_in(brief.measures.need("upper_arm_girth"))), 4) + seam
    cap = _cap(brief, armhole, half_cm, top, seam)
    plan = sleeve_plan(brief, top, measured, in_the_round=tube, seam=seam)
    lower = sleeve_up(plan, brief)
    upper = work_both_edges(Needle(top), cap.rows, cap.steps).section(
        "cap", "sleeve cap", brief.fabric, brief.gauge, begins="carried on", ends="cast off", after="sleeve"
    )
    joins = [] if tube else [_seam(one) for one in lower]
    begins = {one.edge.section: one.edge for one in reversed(armhole_stretches(body))}
    for face, name in _CAP_EDGES.items():
        onto = Edge("sleeve", upper.key, name, upper.rows)
        joins.append(Join("set in", begins[face], onto, (half_cm, cap.half_cm)))
    landmarks = (Landmark("underarm", upper.key, 0), Landmark("shoulder", upper.key, upper.rows))
    piece = Piece("sleeve", "sleeve", "bottom up", (*lower, upper), landmarks, made=2, mirrored=True)
    return [piece], joins, _notes(brief, cap, armhole, half_cm)


def _cap(brief: Brief, armhole: FacePlan, half_cm: float, top: int, seam: int) -> Cap:
    first, rows = armhole.armhole[0][2], armhole.slope_row
    cap = fitted_cap(top, first, half_cm, rows, brief.gauge)
    if cap is not None:
        return cap
    measures = brief.measures
    into = told("an armhole {} deep, whose edge is {}", measures.need("armhole_depth"), 2 * half_cm)
    for off in range(1, top):
        for near, words, other in ((top - off, "at most", "deeper"), (top + off, "at least", "shallower")):
            if fitted_cap(near, first, half_cm, rows, brief.gauge) is not None:
                width = brief.gauge.width_cm
                raise BadInput(
                    found=told("an upper arm of {} with ", measures.need("upper_arm_girth")) + into,
                    wanted=told(f"an upper arm of {words} {{}}, or a {other} armhole", width(near - seam)),
                    place="upper_arm_girth",
                )
    raise BadInput(
        found=into + told(", into which no sleeve fits at this gauge"),
        wanted="a deeper armhole",
        place="armhole_depth",
    )


def _seam(section: Section) -> Join:
    rows = section.rows
    return Join("sewn", Edge("sleeve", section.key, "left", rows), Edge("sleeve", section.key, "right", rows))


def _notes(brief: Brief, cap: Cap, armhole: FacePlan, half_cm: float) -> list[Told]:
    ease = cap.ease(half_cm)
    how = f"{abs(ease) * 100:.1f} % {'longer' if ease > 0 else 'shorter'} than"
    height_cm = cap.rows * 10 / brief.gauge.rows_or_usual_per_10cm
    return [
        told(
            f"The cap is {how if abs(ease) >= 0.0005 else 'as long as'} its armhole: {{}} along its edge, its level "
            "top included, into {}.",
            2 * cap.half_cm,
            2 * half_cm,
        ),
        told(
            f"The cap is {{}} high, {cap.rows / armhole.slope_row:.2f} of its armhole up to the end of the shoulder; "
            f"about {USUAL_CAP_SHARE:.2f} is usual, and a lower one makes a sleeve that stands further out.",
            height_cm,
        ),
    ]
