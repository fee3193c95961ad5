"""What an opening in front changes: two fronts in place of one, and a band along each."""

from __future__ import annotations

from loopwright.garment.draft import Join, Piece
from loopwright.garment.parts.band import Stretch, picked_up_band
from loopwright.garment.shaping import buttonhole_plan, nearest_count
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, Told, told

__all__ = ["band_stitches", "front_bands", "half_front_stitches"]

BUTTONHOLE_CM = 1.2
"""Width of a buttonhole; common practice, no source: two or three stitches."""
BAND_END_CM = 1.5
"""From an end of the band to its first buttonhole; common practice, no source."""


def band_stitches(brief: Brief, front: int) -> int:
    """Give the stitches of width that the overlapping bands take up in the middle of a front of so many stitches.

    They leave an even number, so that both halves are alike.
    """
    return nearest_count(brief.gauge.stitches_in(brief.options.band.depth_cm), like=front, least=1)


def half_front_stitches(brief: Brief, front: int, *, seam: int) -> int:
    """Give the stitches of one half of a front that closes to ``front`` stitches with its bands overlapped.

    :param front: of the whole front without seam stitches.
    :param seam: seam stitches at the side of the half.
    :raises BadInput: the bands leave nothing of the front.
    """
    half = (front - band_stitches(brief, front)) // 2
    if half < 4:
        raise BadInput(
            found=told(f"bands of {{}} on a front of {front} stitches", brief.options.band.depth_cm),
            wanted="a narrower band",
            place="band",
        )
    return half + seam


def front_bands(brief: Brief, left: list[Stretch], right: list[Stretch]) -> tuple[list[Piece], list[Join], list[Told]]:
    """Give both front bands, their joins, and where the buttonholes lie in one of them."""
    pieces: list[Piece] = []
    joins: list[Join] = []
    for key, stretches in (("left band", left), ("right band", right)):
        piece, joined = picked_up_band(stretches, brief.options.band, brief.gauge, key, key, in_the_round=False)
        pieces.append(piece)
        joins += joined
    return pieces, joins, _buttonholes(brief, pieces[0].sections[0].first)


def _buttonholes(brief: Brief, band: int) -> list[Told]:
    holes = brief.options.buttons
    if holes == 0:
        return []
    width = max(round(brief.gauge.stitches_in(BUTTONHOLE_CM)), 2)
    end = max(round(brief.gauge.stitches_in(BAND_END_CM)), 2)
    plan = buttonhole_plan(band, holes=holes, width=width, first=end, last=end)
    starts = ", ".join(str(start + 1) for start in plan.starts)
    return [told(f"Buttonholes over {width} stitches each, beginning at stitches {starts} of the {band} of the band.")]
