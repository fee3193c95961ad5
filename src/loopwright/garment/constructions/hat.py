"""Hat worked from the brim up, in the round: brim edge, body, and a crown that closes along spokes.

The crown loses one stitch at each spoke in every 2nd round until one stitch a spoke is left, and these are drawn
together. Source of the counts: a child's hat of 2006 (19 in × 5 = 95, made 96; −8 every 2nd round 11 times leaves 8).
The order of preference is ours: girth to one stitch, length, spokes, slow crown.
"""

from __future__ import annotations

from typing import Final

from loopwright.garment.draft import Draft, Kind, Landmark, Needle, Piece, Section, lawful
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.edge import edge_before
from loopwright.garment.parts.suited import refuse_unsuited
from loopwright.garment.shaping import nearest_count, spread_mixed
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told

__all__ = ["SPOKES", "draft_hat", "work_crown"]

SPOKES: Final = (8, 9, 7, 10, 6)
"""Spokes of a crown, the preferred first: 8, and another number only where it saves more than (spokes − 8)² stitches of
change. In stocking stitch a flat top asks for about 9 stitches in 2 rounds (2π × row height over stitch width); fewer
make it pointed. Our judgement."""


def draft_hat(brief: Brief) -> Draft:
    """Give the draft of a hat.

    Without a repeat the body takes the count that the spokes divide where it is one stitch off the girth at most, else
    the count nearest to the girth; with a repeat, the nearest that holds it. Where the spokes do not divide the body's
    count, the first round of the crown brings it to the nearest that they do. The crown is shaped in every 2nd round;
    where the length does not suffice, its last rounds are each shaped, as many as needed.

    :param brief: ``head_girth`` is the finished girth, ease included; ``length`` runs from brim to crown. Of the
        options it takes ``hem``, which is the brim, and ``repeat``.
    :raises BadInput: a length too short for brim and crown, or an option that a hat has no use for.
    """
    refuse_unsuited(brief, worked=("in the round",), direction=("bottom up",), hem=(), repeat=())
    measured = Measured(brief.measures, brief.gauge)
    body, spokes, times = _counts(brief, measured)
    brim = edge_before(brief.options.hem, body, brief.gauge, "brim", in_the_round=True)
    body_rounds, crown_rounds = _rounds(brief, brim, times)
    straight = (
        Needle(body, in_the_round=True)
        .plain(body_rounds)
        .section("body", "body", brief.fabric, brief.gauge, begins="carried on", after="brim")
    )
    crown = work_crown(Needle(body, in_the_round=True), spokes, times, crown_rounds).section(
        "crown", "crown", brief.fabric, brief.gauge, begins="carried on", after="body", ends="drawn together"
    )
    piece = Piece(
        "hat", "hat", "bottom up", (brim, straight, crown), (Landmark("hem", "brim", 0), Landmark("crown", "crown", 0))
    )
    measured.length("length", piece.height_cm)
    return lawful(
        Draft(
            construction=brief.construction.value,
            direction="bottom up",
            gauge=brief.gauge,
            pieces=(piece,),
            checks=tuple(measured.checks),
            notes=(told(f"The crown closes along {spokes} spokes; the last {spokes} stitches are drawn together."),),
        )
    )


def _counts(brief: Brief, measured: Measured) -> tuple[int, int, int]:
    """Give the stitches of the body, the spokes of its crown, and how often they take a stitch away."""
    wanted = brief.gauge.stitches_in(brief.measures.need("head_girth"))
    repeat = brief.options.repeat
    if repeat is None:
        crown, spokes = _crown_near(wanted)
        body = crown if abs(crown - wanted) <= 1 + 1e-9 else nearest_count(wanted, least=2 * spokes)
        reason = f"one stitch off the nearest count, {spokes} spokes of the crown take equal shares"
    else:
        plus = repeat.plus % repeat.multiple
        body = nearest_count(wanted, multiple=repeat.multiple, plus=plus, least=2 * max(SPOKES))
        crown, spokes = _crown_near(body)
        reason = f"the repeat {repeat} must go round in whole"
    measured.width("head_girth", body, reason)
    return body, spokes, crown // spokes - 1


def _crown_near(stitches: float) -> tuple[int, int]:
    """Give the count that spokes divide, by least change and preference, and the spokes."""
    fitting = [(nearest_count(stitches, multiple=spokes, least=2 * spokes), spokes) for spokes in SPOKES]
    return min(fitting, key=lambda one: abs(one[0] - stitches) + (one[1] - SPOKES[0]) ** 2)


def _rounds(brief: Brief, brim: Section, times: int) -> tuple[int, int]:
    """Give the rounds of body and crown that make up the length with a brim.

    :param times: shaping rounds of the crown.
    """
    row_cm = 10 / brief.gauge.rows_or_usual_per_10cm
    length = brief.measures.need("length")
    rounds = round((length - brim.height_cm) / row_cm)
    crown = min(2 * times, rounds - 1)
    if crown <= times:
        least = brim.height_cm + (times + 2) * row_cm
        raise BadInput(
            found=told(f"length {{}} with a brim of {{}} and a crown shaped {times} times", length, brim.height_cm),
            wanted=told("length of at least {}, or a brim lower by {}", least, least - length),
            place="length",
        )
    return rounds - crown, crown


def work_crown(needle: Needle, spokes: int, times: int, rounds: int) -> Needle:
    """Work a crown of so many rounds in which each spoke takes a stitch away so many times.

    The first round brings the count to what the shaping leaves at one stitch a spoke. Shaping falls in every 2nd round;
    where they are too few, in every round at the end (:func:`~loopwright.garment.shaping.spread_mixed`).

    :param rounds: more than ``times``.
    """
    change = spokes * (times + 1) - needle.now
    fitted = Kind.INCREASE if change > 0 else Kind.DECREASE
    at = set(spread_mixed(rounds, times).shaping_rows())
    for this in range(rounds):
        if this == 0:
            needle.row((fitted, "evenly", abs(change)), places=max(abs(change), 1))
        elif this in at:
            needle.row((Kind.DECREASE, "lines", spokes), places=spokes)
        else:
            needle.plain(1)
    return needle
