"""The count that everything else follows: stitches round the bust, or across one flat piece of it."""

from __future__ import annotations

from loopwright.garment.parts.checks import Measured
from loopwright.garment.shaping import nearest_count
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told, write_percent

__all__ = ["SEAM", "bust_flat", "bust_round", "head_passes", "narrow_neck"]

SEAM = 2
"""Stitches that a flat piece has beyond its width, one at each edge for the seam. Source: a handbook's worksheet for a
drop-shoulder jumper, and common practice."""


def bust_round(brief: Brief, measured: Measured) -> int:
    """Give the stitches of a tube round the bust: even, so that front and back are alike, and fitting the repeat."""
    wanted = brief.gauge.stitches_in(brief.measures.need("bust_girth"))
    repeat = brief.options.repeat
    reason = "front and back are alike, so the count is even"
    if repeat is None:
        count = nearest_count(wanted, multiple=2, least=8)
    else:
        count = nearest_count(wanted, multiple=repeat.multiple, plus=repeat.plus % repeat.multiple, like=0, least=8)
        reason = f"the repeat {repeat} must go round in whole, on an even count"
    measured.width("bust_girth", count, reason)
    return count


def bust_flat(brief: Brief, measured: Measured) -> int:
    """Give the stitches of one of two flat pieces that go round the bust, seam stitches included."""
    wanted = brief.gauge.stitches_in(brief.measures.need("bust_girth")) / 2
    repeat = brief.options.repeat
    reason = "front and back are alike, so a stitch more counts twice"
    if repeat is None:
        count = nearest_count(wanted, least=4)
    else:
        count = nearest_count(wanted, multiple=repeat.multiple, plus=repeat.plus % repeat.multiple, least=4)
        reason = f"the repeat {repeat} must fit each piece between its seam stitches"
    measured.width("bust_girth", 2 * count, reason)
    return count + SEAM


def head_passes(opening_cm: float, brief: Brief) -> bool:
    """Say whether the head passes an opening of this girth once it is stretched; always where no head is known."""
    if brief.head_girth_cm is None or brief.options.opens_in_front:
        return True
    return opening_cm * (1 + brief.stretch) >= brief.head_girth_cm


def narrow_neck(opening_cm: float, brief: Brief, wanted: str) -> BadInput:
    """Give the fault of an opening that the head does not pass."""
    assert brief.head_girth_cm is not None  # else it passes
    return BadInput(
        found=told(
            f"a neck whose edge is {{}}, stretching {write_percent(brief.stretch)}, for a head of {{}}",
            opening_cm,
            brief.head_girth_cm,
        ),
        wanted=wanted,
        place="neck_width",
    )
