"""Sleeveless: slipover and tank, with deep armholes, straps for shoulders and a band picked up round each armhole.

Half of what an armhole takes away is cast off, half decreased in right-side rows, as in a printed vest of five sizes,
where the shoulders hardly grow with the chest and the armholes reach further in instead. The order of preference is
ours: bust, armhole depth, length, shoulder width, neck width, neck depth. Measures are of the fabric: armbands lie
beyond the shoulders' width and within the armhole's depth.
"""

from __future__ import annotations

from loopwright.garment.draft import Draft, lawful
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.shaped import shaped_body
from loopwright.garment.parts.straight import neckband, shoulder_joins, side_seams
from loopwright.garment.parts.straight_sleeve import armbands
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput

__all__ = ["draft_sleeveless"]


def draft_sleeveless(brief: Brief) -> Draft:
    """Give the draft of a sleeveless garment.

    In the round, as is usual here: hem and body as a tube, front and back flat from the underarm. Flat, and always
    where it opens in front: pieces from the hem up. Armbands are picked up, in the neckband's fabric and depth.

    :param brief: every measure of a top stated (:func:`~loopwright.garment.wanted.usual_measures` fills in).
    :raises BadInput: measures that cannot make the garment, or an option that it cannot honour, such as sleeves.
    """
    if brief.options.sleeves not in (None, "none"):
        raise BadInput(
            found=f"{brief.options.sleeves} sleeves on a sleeveless garment",
            wanted='no sleeves ("none"), or a construction that has them',
            place="sleeves",
        )
    measured = Measured(brief.measures, brief.gauge)
    tube = brief.options.worked != "flat" and not brief.options.opens_in_front
    body = shaped_body(brief, measured, tube=tube, sleeveless=True)
    bands, band_joins = neckband(brief, body)
    arms, arm_joins = armbands(brief, body)
    return lawful(
        Draft(
            construction=brief.construction.value,
            direction="bottom up",
            gauge=brief.gauge,
            pieces=(*body.pieces, *bands, *arms),
            joins=(*shoulder_joins(body), *side_seams(body), *body.joins, *band_joins, *arm_joins),
            checks=tuple(measured.checks),
            notes=body.notes,
        )
    )
