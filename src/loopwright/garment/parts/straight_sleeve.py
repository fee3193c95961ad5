"""Sleeves on a straight armhole, and bands in their place: as wide as the armhole is deep, front and back together."""

from __future__ import annotations

import math

from loopwright.garment.draft import Direction, Edge, Join, Needle, Piece
from loopwright.garment.draft.piece import JoinKind
from loopwright.garment.parts.band import picked_up_band, shared_out
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.girth import SEAM
from loopwright.garment.parts.sleeve import sleeve_down, sleeve_plan, sleeve_up
from loopwright.garment.parts.straight import StraightBody, armhole_stretches
from loopwright.garment.wanted import Brief

__all__ = ["armbands", "straight_sleeves"]


def straight_sleeves(
    brief: Brief, body: StraightBody, measured: Measured, *, tube: bool
) -> tuple[list[Piece], list[Join]]:
    """Give the sleeves: picked up and worked down in the round, or worked up flat and sewn to the armhole.

    Source of the count: a handbook's worksheet, sleeve top = 2 × armhole × g, and 2 stitches for the seam.
    """
    stretches = armhole_stretches(body)
    length = math.fsum(one.length_cm for one in stretches)
    across = round(brief.gauge.stitches_in(length))
    seam = 0 if tube else SEAM
    plan = sleeve_plan(
        brief,
        across + seam,
        measured,
        in_the_round=tube,
        seam=seam,
        reason="the sleeve is as wide as the armhole is deep, front and back together",
    )
    kind: JoinKind
    if tube:
        sections = sleeve_down(plan, brief, Needle(plan.top, in_the_round=True), begins="picked up")
        kind, place = "picked up", Edge("sleeve", "sleeve", "begin", across)
    else:
        sections = sleeve_up(plan, brief, ends="cast off")
        kind, place = "sewn row to stitch", Edge("sleeve", "sleeve", "end", across)
    shares = shared_out(across, [one.length_cm for one in stretches])
    joins = [
        Join(
            kind,
            one.edge,
            Edge(place.piece, place.section, place.name, share),
            (one.length_cm, brief.gauge.width_cm(share)),
        )
        for one, share in zip(stretches, shares, strict=True)
        if share
    ]
    if not tube:
        joins += [
            Join("sewn", Edge("sleeve", one.key, "left", one.rows), Edge("sleeve", one.key, "right", one.rows))
            for one in sections
        ]
    direction: Direction = "top down" if tube else "bottom up"
    return [Piece("sleeve", "sleeve", direction, sections, made=2, mirrored=True)], joins


def armbands(brief: Brief, body: StraightBody) -> tuple[list[Piece], list[Join]]:
    """Give a band round each armhole of a garment without sleeves, in the neckband's fabric and depth."""
    piece, joins = picked_up_band(
        armhole_stretches(body), brief.options.neckband, brief.gauge, "armband", "armband", in_the_round=True, made=2
    )
    return [piece], list(joins)
