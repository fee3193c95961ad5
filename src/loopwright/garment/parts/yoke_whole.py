"""The whole garment round a yoke: body, sleeves, neckband and front bands, and how they join."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.garment.draft import Draft, Piece
from loopwright.garment.parts.band import Stretch, picked_up_band
from loopwright.garment.parts.cardigan import front_bands
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.torso import rows_below
from loopwright.garment.parts.yoke_body import meeting_joins, sleeves_of_yoke, straight_edge, yoke_body
from loopwright.garment.parts.yoke_counts import Meeting
from loopwright.garment.wanted import Brief
from loopwright.units import Told

__all__ = ["garment_of_yoke"]


def garment_of_yoke(
    brief: Brief,
    yoke: Piece,
    meeting: Meeting,
    depth_cm: float,
    neck: Sequence[Stretch],
    measured: Measured,
    notes: Sequence[Told],
) -> Draft:
    """Give the draft of a garment from its yoke, whose section ``yoke`` meets body and sleeves.

    :param depth_cm: from the neck end of the shoulder straight down to the underarm, as drafted.
    :param neck: the neck edge, in the order in which its band is picked up.
    :raises BadInput: a length, a hip, a waist, a sleeve or a wrist that cannot be reached.
    """
    up, is_open = yoke.direction == "bottom up", brief.options.opens_in_front
    rows = rows_below(brief, "a yoke", depth_cm, measured, flat=is_open)
    body = yoke_body(brief, meeting, rows, measured, up=up)
    sleeves = sleeves_of_yoke(brief, meeting, measured, up=up)
    neckband, neck_joins = picked_up_band(
        neck, brief.options.neckband, brief.gauge, "neckband", "neckband", in_the_round=not is_open
    )
    pieces = [body, *sleeves, yoke, neckband] if up else [yoke, body, *sleeves, neckband]
    joins, said = [*meeting_joins(brief, meeting, "yoke", up=up), *neck_joins], list(notes)
    if is_open:
        fronts = [("yoke", yoke.section("yoke")), *(("body", body.section(key)) for key in ("body", "hem"))]
        left, right = ([straight_edge(piece, one, side) for piece, one in fronts] for side in ("left", "right"))
        bands, band_joins, holes = front_bands(brief, left, right)
        pieces, joins, said = pieces + bands, joins + band_joins, said + holes
    return Draft(
        construction=brief.construction.value,
        direction=yoke.direction,
        gauge=brief.gauge,
        pieces=tuple(pieces),
        joins=tuple(joins),
        checks=tuple(measured.checks),
        notes=tuple(said),
    )
