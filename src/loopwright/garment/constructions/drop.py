"""Drop shoulder, and the boxy top that is one without sleeves: straight sides, no armhole shaping.

The body is wide enough for its shoulders to hang over the arm; the top of the sleeve is as wide as the armhole is deep,
front and back together. Source of the counts: a handbook's worksheet (body = width × g + 2, sleeve top = 2 × armhole ×
g + 2, shoulder = (body − neck) ÷ 2). The order of preference is ours: bust, armhole, length, neck, sleeve.
"""

from __future__ import annotations

from loopwright.garment.draft import Draft, lawful
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.girth import SEAM, bust_flat, bust_round
from loopwright.garment.parts.neck import plan_faces
from loopwright.garment.parts.straight import (
    closed_body,
    neckband,
    open_body,
    rows_above_and_below,
    shoulder_joins,
    side_seams,
)
from loopwright.garment.parts.straight_sleeve import armbands, straight_sleeves
from loopwright.garment.wanted import Brief

__all__ = ["draft_drop"]


def draft_drop(brief: Brief) -> Draft:
    """Give the draft of a garment with dropped shoulders.

    In the round: hem and body as a tube, front and back flat from the underarm, sleeves picked up round the armhole and
    worked down. Flat, and always where it opens in front: pieces from the hem up, sleeves from the cuff up, sewn on.

    :param brief: every measure of a top stated (:func:`~loopwright.garment.wanted.usual_measures` fills in).
    :raises BadInput: measures that cannot make the garment.
    """
    measured = Measured(brief.measures, brief.gauge)
    tube = (brief.options.worked or "in the round") == "in the round" and not brief.options.opens_in_front
    seam = 0 if tube else SEAM
    bust = bust_round(brief, measured) if tube else 2 * bust_flat(brief, measured)
    rows, below = rows_above_and_below(brief, measured, flat=not tube)
    faces = plan_faces(brief, bust // 2, rows, (), measured, seam=seam)
    if brief.options.opens_in_front:
        body = open_body(brief, faces, below, measured)
    else:
        body = closed_body(brief, faces, below, measured, tube=tube)
    pieces, joins, notes = list(body.pieces), [*shoulder_joins(body), *side_seams(body)], list(body.notes)
    joins += body.joins
    for more_pieces, more_joins in (
        neckband(brief, body),
        armbands(brief, body)
        if brief.options.sleeves == "none"
        else straight_sleeves(brief, body, measured, tube=tube),
    ):
        pieces += more_pieces
        joins += more_joins
    return lawful(
        Draft(
            construction=brief.construction.value,
            direction="bottom up",
            gauge=brief.gauge,
            pieces=tuple(pieces),
            joins=tuple(joins),
            checks=tuple(measured.checks),
            notes=tuple(notes),
        )
    )
