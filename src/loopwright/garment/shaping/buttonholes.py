"""Buttonholes along a band: equal gaps, and the stitch at which each hole begins.

Gap = (band − first − last − holes · width) ÷ (holes − 1), the remainder spread.

Source: (110 − 6 − 21) ÷ 6 makes five gaps of 14 and one of 13 (a knitter's page of 2012); a cardigan of 1918 has
2 + 8 · 4 + 7 · 13 = 125.
"""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.garment.shaping.bounds import at_least
from loopwright.garment.shaping.steps import even_steps
from loopwright.units import BadInput

__all__ = ["ButtonholePlan", "buttonhole_plan", "buttonholes"]


@dataclass(frozen=True, slots=True)
class ButtonholePlan:
    """Holes along a band; stitches (or rows) are counted from 0 at the end where ``first`` lies.

    :ivar band: stitches of the band.
    :ivar width: stitches of a hole.
    :ivar starts: first stitch of each hole.
    :ivar gaps: stitches between each hole and the next.
    :ivar last: stitches after the last hole.
    """

    band: int
    width: int
    starts: tuple[int, ...]
    gaps: tuple[int, ...]
    last: int

    @property
    def holes(self) -> int:
        """Give the number of holes."""
        return len(self.starts)


def buttonholes(band: int, *, holes: int, width: int, first: int, last: int) -> tuple[int, ...]:
    """Give the stitches between each hole and the next; they differ by one at most, the larger first.

    One hole has no gap and leaves what is over after it.

    :param band: stitches (or rows) of the band.
    :param holes: how many, 1 or more.
    :param width: of a hole, 1 or more; a yarn over with k2tog is 2.
    :param first, last: stitches before the first hole and after the last one.
    :raises BadInput: when two holes would touch, or one does not fit; says how many fit.
    Source: see the head of the module.
    """
    at_least(holes, 1, "buttonholes")
    at_least(width, 1, "stitches to a buttonhole")
    at_least(first, 0, "stitches before the first buttonhole")
    at_least(last, 0, "stitches after the last buttonhole")
    between = band - first - last - holes * width
    if between < holes - 1:
        fitting = max(0, (band - first - last + 1) // (width + 1))
        raise BadInput(
            found=f"{holes} buttonholes of {width} stitches in a band of {band}",
            wanted=f"at most {fitting}, with {first} stitches before, {last} after and one between",
        )
    return even_steps(between, holes - 1) if holes > 1 else ()


def buttonhole_plan(band: int, *, holes: int, width: int, first: int, last: int) -> ButtonholePlan:
    """Give the gaps of :func:`buttonholes` with the stitch at which each hole begins."""
    gaps = buttonholes(band, holes=holes, width=width, first=first, last=last)
    starts = [first]
    for gap in gaps:
        starts.append(starts[-1] + width + gap)
    return ButtonholePlan(band, width, tuple(starts), gaps, band - starts[-1] - width)
