"""Where body and sleeves meet a yoke, raglan or round: the counts of that row."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.garment.parts.cardigan import band_stitches, half_front_stitches
from loopwright.garment.parts.checks import Measured
from loopwright.garment.parts.girth import bust_round
from loopwright.garment.shaping import nearest_count
from loopwright.garment.wanted import Brief

__all__ = ["UNDERARM_SHARE", "Meeting", "bust_of_yoke", "front_band"]

UNDERARM_SHARE = 0.08
"""Stitches set aside or cast on under each arm, of those round the bust. Source: the percentage system (*Knitting
Without Tears*, 1971; *Knitting Around*, 1989; in a comparison sheet)."""


@dataclass(frozen=True, slots=True)
class Meeting:
    """Stitches of the row in which body, sleeves and yoke meet.

    Source: the percentage system, yoke = bust + 2·upper arm − 4·underarm; 200, 66 and 16 make 268.

    :ivar bust: all round the body, front bands overlapped.
    :ivar band: of these, those whose width the front bands take up; 0 where the front is closed.
    :ivar underarm: set aside or cast on under each arm, on the body and on the sleeve.
    :ivar upper_arm: all round a sleeve.
    """

    bust: int
    band: int
    underarm: int
    upper_arm: int

    @property
    def back(self) -> int:
        """Give the stitches of the back between both sleeves."""
        return self.bust // 2 - self.underarm

    @property
    def front(self) -> int:
        """Give the stitches of the front between both sleeves, without those of the bands."""
        return self.back - self.band

    @property
    def sleeve(self) -> int:
        """Give the stitches of one sleeve that go into the yoke."""
        return self.upper_arm - self.underarm

    @property
    def body(self) -> int:
        """Give the stitches of the body below the underarm."""
        return self.bust - self.band

    @property
    def yoke(self) -> int:
        """Give the stitches of the yoke where it is widest."""
        return self.back + self.front + 2 * self.sleeve


def bust_of_yoke(brief: Brief, measured: Measured) -> tuple[int, int | None]:
    """Give the stitches round the bust, even, and a count that back and front must be odd or even like, if any.

    A repeat must go round a closed body, and fit the one piece of an open one between its bands; there it says whether
    the front is odd or even, as the bands must leave two equal halves.
    """
    repeat = brief.options.repeat
    if not brief.options.opens_in_front:
        return bust_round(brief, measured), None
    wanted = brief.gauge.stitches_in(brief.measures.need("bust_girth"))
    if repeat is None:
        bust, like = nearest_count(wanted, multiple=2, least=8), None
    else:
        multiple, plus = repeat.multiple, repeat.plus % repeat.multiple
        found = []
        for parity in (0, 1):
            band = band_stitches(brief, parity)
            if multiple % 2 or (plus - band) % 2 == 0:
                body = nearest_count(wanted - band, multiple=multiple, plus=plus, like=band, least=8)
                found.append((abs(body + band - wanted), body + band, parity))
        _, bust, like = min(found)
    measured.width("bust_girth", bust, "both halves of the front are alike" if repeat is None else _FITS)
    return bust, like


_FITS = "the repeat must fit the body between its front bands, and both halves of the front are alike"


def front_band(brief: Brief, front: int) -> int:
    """Give the stitches of a whole front whose width the bands take up; none where it is closed.

    :raises BadInput: they leave nothing of it.
    """
    return front - 2 * half_front_stitches(brief, front, seam=0) if brief.options.opens_in_front else 0
