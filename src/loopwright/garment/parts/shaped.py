"""The body of a garment with shaped armholes, whether sleeves are set into them or not."""

from __future__ import annotations

from loopwright.garment.parts.armhole import shaped_armhole
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.girth import SEAM, bust_flat, bust_round
from loopwright.garment.parts.neck import plan_faces
from loopwright.garment.parts.straight import StraightBody, closed_body, open_body, rows_above_and_below
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput

__all__ = ["shaped_body"]


def shaped_body(brief: Brief, measured: Measured, *, tube: bool, sleeveless: bool) -> StraightBody:
    """Give the body from the hem up, its front and back narrowed to the shoulders by shaped armholes.

    Where sleeves are set in, their seams take a stitch of each armhole's edge; where a band is picked up, only flat
    pieces have a stitch to spare for it.

    :param tube: one tube to the underarm; otherwise flat pieces, two fronts where it opens.
    :raises BadInput: measures that cannot make it, or the wish to work it from the neck down.
    """
    if brief.options.direction == "top down":
        raise BadInput(
            found=f"a {brief.construction.value} worked top down",
            wanted="bottom up: its armholes are shaped on the way to the shoulders",
            place="direction",
        )
    stitches = bust_round(brief, measured) // 2 if tube else bust_flat(brief, measured)
    rows, below = rows_above_and_below(brief, measured, flat=not tube)
    seam = 0 if tube and sleeveless else SEAM
    armhole = shaped_armhole(brief, stitches, rows, seam=seam, sleeveless=sleeveless)
    faces = plan_faces(brief, stitches, rows, armhole, measured, seam=seam)
    if brief.options.opens_in_front:
        return open_body(brief, faces, below, measured)
    return closed_body(brief, faces, below, measured, tube=tube)
