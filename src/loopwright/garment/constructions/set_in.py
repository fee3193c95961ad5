"""Set-in sleeve: armholes shaped down to the shoulders' width, and sleeves with a cap sewn into them.

The order of preference is ours: bust, armhole depth, length, shoulder width, neck width, neck depth, upper arm, cap.
Sources of the shaping stand in `parts/armhole.py` and `parts/cap.py`.
"""

from __future__ import annotations

from loopwright.garment.draft import Draft, lawful
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.set_in_sleeve import set_in_sleeves
from loopwright.garment.parts.shaped import shaped_body
from loopwright.garment.parts.straight import neckband, shoulder_joins, side_seams
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput

__all__ = ["draft_set_in"]


def draft_set_in(brief: Brief) -> Draft:
    """Give the draft of a garment with set-in sleeves.

    Flat, as is usual, and always where it opens in front: pieces from the hem up, sleeves from the cuff up. In the
    round: the body a tube to the underarm, the sleeves tubes up to their caps; armholes and caps are worked flat in
    either case, and the caps sewn in.

    :param brief: every measure of a top stated (:func:`~loopwright.garment.wanted.usual_measures` fills in).
    :raises BadInput: measures that cannot make the garment, or an option that set-in sleeves cannot honour.
    """
    if brief.options.sleeves == "none":
        raise BadInput(found="set-in sleeves with no sleeves", wanted="a sleeveless garment", place="sleeves")
    measured = Measured(brief.measures, brief.gauge)
    tube = brief.options.worked == "in the round" and not brief.options.opens_in_front
    body = shaped_body(brief, measured, tube=tube, sleeveless=False)
    bands, band_joins = neckband(brief, body)
    sleeves, sleeve_joins, fit = set_in_sleeves(brief, body, measured, tube=tube)
    return lawful(
        Draft(
            construction=brief.construction.value,
            direction="bottom up",
            gauge=brief.gauge,
            pieces=(*body.pieces, *bands, *sleeves),
            joins=(*shoulder_joins(body), *side_seams(body), *body.joins, *band_joins, *sleeve_joins),
            checks=tuple(measured.checks),
            notes=(*body.notes, *fit),
        )
    )
