"""Shaped armholes: cast off under the arm, a curve of decreases, then straight up to the shoulder.

Sources. Set-in: take away (half the chest − shoulder width) ÷ 2 on each side, about an inch or half of it at once, the
rest by decreases, then straight; 62 cm with 38 cm of shoulders is 12 cm a side, and 26 decreases take 64 rows of 104 (a
knitter's weblog, 2007). Sleeveless: half of the indentation cast off and half decreased in right-side rows (a printed
vest in five sizes). Fewer decreases towards the top and two stitches at a time in a wide armhole: common practice, no
source.
"""

from __future__ import annotations

import math

from loopwright.garment.draft import Kind
from loopwright.garment.parts.face import AtRow
from loopwright.garment.parts.neck import slope_rows
from loopwright.garment.shaping import nearest_count
from loopwright.garment.wanted import Brief
from loopwright.units import BadInput, told

__all__ = ["armhole_steps", "cast_off_first", "shaped_armhole"]

FIRST_CM = 2.54
"""Cast off at once under a set-in sleeve: about an inch. Source: see the head of the module."""
SLOW_PART = 4
"""One in so many decreases of a set-in armhole, the last ones, come every 4th row. Ours; it gives the weblog's 64."""
SHAPED_SHARE = 2 / 3
"""Most of the rows up to the shoulder's slope that the shaping may take; our judgement: the weblog's takes 0.62."""
LEAST_EACH = 2
"""Fewest stitches a side that make an armhole: one cast off and one decreased."""


def shaped_armhole(brief: Brief, stitches: int, rows: int, *, seam: int, sleeveless: bool) -> tuple[AtRow, ...]:
    """Give what is done at each armhole edge so that a face of so many stitches ends as wide as the shoulders.

    Preference: bust before shoulder width, so the shoulders come out odd or even as the face is.

    :param stitches: of the face at the underarm.
    :param rows: from the underarm to the top of the shoulder.
    :param seam: seam stitches in the width across the shoulders.
    :param sleeveless: half of the indentation is cast off, the rest decreased in right-side rows.
    :raises BadInput: shoulders as wide as half the bust, or more stitches to take away than the armhole has rows for.
    """
    gauge, measures = brief.gauge, brief.measures
    shoulders_cm = measures.need("shoulder_width")
    each = (stitches - nearest_count(gauge.stitches_in(shoulders_cm) + seam, like=stitches)) // 2
    pair = told("shoulders of {} with a bust of {}", shoulders_cm, measures.need("bust_girth"))
    if each < LEAST_EACH:
        widest = stitches - 2 * LEAST_EACH - seam
        raise BadInput(
            found=pair,
            wanted=told("shoulders of at most {}, or a wider bust", gauge.width_cm(widest)),
            place="shoulder_width",
        )
    slope = slope_rows(brief)
    room = _room(rows - slope)
    first = cast_off_first(brief, each, sleeveless=sleeveless)
    if each - first > room:
        most = 2 * room + 1 if sleeveless else first + room
        narrowest = stitches - 2 * most - seam
        deepest = math.ceil((each - first + 3) / SHAPED_SHARE) + slope
        raise BadInput(
            found=pair + told(" and an armhole {} deep", measures.need("armhole_depth")),
            wanted=told(
                "shoulders of at least {}, or an armhole of at least {}",
                gauge.width_cm(narrowest),
                deepest * 10 / gauge.rows_or_usual_per_10cm,
            ),
            place="shoulder_width",
        )
    return armhole_steps(each, first, room, slow_part=0 if sleeveless else SLOW_PART)


def _room(straight_rows: int) -> int:
    """Give the rows for the curve after the two in which the first stitches are cast off; even."""
    return max((int(SHAPED_SHARE * straight_rows) - 2) // 2 * 2, 0)


def cast_off_first(brief: Brief, each: int, *, sleeveless: bool) -> int:
    """Give the stitches cast off at once: half of those to take away, for a set-in sleeve at most about an inch."""
    half = (each + 1) // 2
    return half if sleeveless else max(min(round(brief.gauge.stitches_in(FIRST_CM)), half), 1)


def armhole_steps(each: int, first: int, room: int, *, slow_part: int) -> tuple[AtRow, ...]:
    """Take ``each`` stitches away at an edge: ``first`` at once, the rest within ``room`` rows.

    Preferred: single decreases in right-side rows, the last one in ``slow_part`` of them every 4th row; as many of
    these in right-side rows as ``room`` asks for; only then two stitches cast off at a time, as few times as can be and
    before the decreases. The curve is thus never steeper below than above.

    :param room: rows after the first two; at least as many as stitches are left to take away.
    """
    rest = each - first
    twos = max(rest - room // 2, 0)
    slow = max(min(rest // slow_part, (room - 2 * rest) // 2), 0) if slow_part else 0
    steps: list[AtRow] = [(0, Kind.CAST_OFF, first)]
    steps += [(2 + 2 * place, Kind.CAST_OFF, 2) for place in range(twos)]
    quick = rest - 2 * twos - slow
    steps += [(2 + 2 * place, Kind.DECREASE, 1) for place in range(twos, twos + quick)]
    last = 2 * (twos + quick)
    steps += [(last + 4 * place, Kind.DECREASE, 1) for place in range(1, slow + 1)]
    return tuple(steps)
