"""The counts of a round yoke: plateaus between three or four shaping rounds, and where these lie.

Sources: the percentage system (*Knitting Without Tears*, 1971; *Knitting Around*, 1989; in a comparison sheet): yoke =
bust + 2·upper arm − 4·underarm, neck 40 % of the bust, three decrease rounds at ½, ¾ and all of the depth: 268, 179,
120, 80 on 200. Worked down, 84 rounds increase in rounds 22 and 43 after the one at the neck (a weblog on that system).
Four rounds at 40, 60, 80 and 100 %: common practice, no source. When to take four is our judgement.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from loopwright.garment.parts.yoke_counts import UNDERARM_SHARE, Meeting, front_band
from loopwright.garment.shaping import even_counts, even_ratio, fits_repeat, nearest_count, rows_at
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told

__all__ = ["RoundYokeCounts", "decrease_rounds", "neck_target", "round_yoke_counts", "shaping_at"]

NECK_SHARE = 0.40
"""Neck over bust. Source: the percentage system."""
SHARPEST = Fraction(2, 3)
"""k1, k2tog leaves so much; where three rounds would have to take more, there are four."""
DEEP_CM = 26.0
"""A yoke deeper than this has four shaping rounds, so that none is far from the next: 10 in, of the percentage system's
worked yoke with three, and a little. Our judgement."""
DEPTHS = {
    3: (Fraction(1, 2), Fraction(3, 4), Fraction(1)),
    4: (Fraction(2, 5), Fraction(3, 5), Fraction(4, 5), Fraction(1)),
}
LEAST_ROWS = 8
"""Fewest rows of a yoke: two for every shaping round; our judgement."""
UNDERARM_RANGE = (0.06, 0.10)
"""Share of the bust within which the underarm gives way to a repeat of the yoke; our judgement."""


@dataclass(frozen=True, slots=True)
class RoundYokeCounts:
    """Counts of a round yoke, from the underarm to the neck, without the width of front bands.

    :ivar plateaus: stitches before the first shaping round and after each; the last is the neck.
    :ivar rows: of the yoke.
    """

    meeting: Meeting
    plateaus: tuple[int, ...]
    rows: int

    @property
    def rounds(self) -> int:
        """Give how many shaping rounds there are."""
        return len(self.plateaus) - 1

    @property
    def neck(self) -> int:
        """Give the stitches of the neck."""
        return self.plateaus[-1]


def decrease_rounds(base: int, neck: int, depth_cm: float) -> int:
    """Give how many shaping rounds lead from base to neck: three, or four where they would be sharp or far apart.

    Source: see the head of the module; 268 to 80 over 10 in takes three.
    """
    sharp = even_ratio(base, neck, 3) < float(SHARPEST) - 0.005
    return 4 if sharp or depth_cm > DEEP_CM else 3


def shaping_at(rows: int, rounds: int, *, up: bool, flat: bool) -> tuple[int, ...]:
    """Give the rows that are shaped, from 0 in working order; right-side rows where the yoke is worked to and fro."""
    if up:
        at = tuple(worked - 1 for worked in rows_at(rows, DEPTHS[rounds]))
    else:
        at = rows_at(rows, [1 - share for share in reversed(DEPTHS[rounds])])
    return tuple(min(row + row % 2, rows - 2) for row in at) if flat else at


def neck_target(brief: Brief, bust: int) -> tuple[float, int]:
    """Give the stitches of the neck that are wanted, not rounded, and the fewest that let the head pass.

    A neck width that is stated is the width of a ring: the girth is π times that, our judgement (40 % of a bust of 102
    cm is a ring 13 cm wide, much as handbooks would have it). Else 40 % of the bust, but no wider than the head, which
    would slip off the shoulders, nor narrower than lets it pass.
    """
    gauge, head = brief.gauge, brief.head_girth_cm
    width = brief.measures.neck_width_cm
    closed = not brief.options.opens_in_front
    least = math.ceil(gauge.stitches_in(head / (1 + brief.stretch)) - 1e-9) if head and closed else 4
    if width is not None:
        return gauge.stitches_in(math.pi * width), least
    most = gauge.stitches_in(head) if head else math.inf
    return min(NECK_SHARE * bust, most), least


def round_yoke_counts(brief: Brief, bust: int, like: int | None) -> RoundYokeCounts:
    """Give all counts of a round yoke.

    Order of preference: bust, upper arm, depth, neck, underarm (8 % of the bust, within 6 and 10 % where a repeat asks
    for it), plateaus by even ratio.

    :param like: what back and front must be odd or even like, if anything.
    :raises BadInput: a yoke with no room for its shaping, a neck as wide as the yoke, or a repeat that fits nowhere.
    """
    upper = nearest_count(brief.gauge.stitches_in(brief.measures.need("upper_arm_girth")), least=4)
    rows = _rows(brief)
    target, least = neck_target(brief, bust)
    closed_neck = nearest_count(target, multiple=2, least=least)
    meeting = _meeting(brief, bust, like, upper)
    base, neck = _fitting(brief, meeting.yoke), closed_neck - meeting.band
    if not 4 <= neck < base:
        raise BadInput(
            found=f"a neck of {closed_neck} stitches, {neck} without the front bands, on a yoke of {base}",
            wanted=f"between {4 + meeting.band} and {base + meeting.band - 1} stitches",
            place="neck_width",
        )
    rounds = decrease_rounds(base, neck, brief.measures.need("armhole_depth"))
    repeat = brief.options.repeat
    multiple, plus = (1, 0) if repeat is None else (repeat.multiple, repeat.plus % repeat.multiple)
    try:
        after = even_counts(base, neck, rounds, multiple=multiple, plus=plus)
    except BadInput as fault:
        place = "repeat" if repeat else "neck_width"
        raise BadInput(f"{fault.found} in a yoke from {base} to {neck}", fault.wanted, place=place) from fault
    return RoundYokeCounts(meeting, (base, *after), rows)


def _rows(brief: Brief) -> int:
    wanted = brief.measures.need("armhole_depth") * brief.gauge.rows_or_usual_per_10cm / 10
    rows = 2 * round(wanted / 2) if brief.options.opens_in_front else round(wanted)
    if rows < LEAST_ROWS:
        raise BadInput(
            found=f"a yoke of {rows} rows",
            wanted=told("at least {}", LEAST_ROWS * 10 / brief.gauge.rows_or_usual_per_10cm),
            place="armhole_depth",
        )
    return rows


def _meeting(brief: Brief, bust: int, like: int | None, upper: int) -> Meeting:
    """Choose the underarm: the nearest to its share that makes the yoke fit the repeat, else simply the nearest."""
    usual = UNDERARM_SHARE * bust
    most = min(upper // 2, bust // 4)
    low, high = (share * bust for share in UNDERARM_RANGE)
    found = []
    for underarm in range(1, most + 1):
        front = bust // 2 - underarm
        if like is not None and (front - like) % 2:
            continue
        meeting = Meeting(bust, front_band(brief, front), underarm, upper)
        in_range = low <= underarm <= high
        fits = in_range and _fitting(brief, meeting.yoke) == meeting.yoke
        found.append((not fits, abs(underarm - usual), underarm, meeting))
    if not found:
        raise BadInput(
            found=f"an upper arm of {upper} stitches on a bust of {bust}",
            wanted="more of both",
            place="upper_arm_girth",
        )
    return min(found, key=lambda one: one[:3])[3]


def _fitting(brief: Brief, stitches: int) -> int:
    """Give the count nearest to ``stitches`` that holds the repeat, or itself where there is none."""
    repeat = brief.options.repeat
    if repeat is None or fits_repeat(stitches, repeat.multiple, repeat.plus % repeat.multiple):
        return stitches
    return nearest_count(stitches, multiple=repeat.multiple, plus=repeat.plus % repeat.multiple)
