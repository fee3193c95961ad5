"""Whole counts: the nearest that fits a repeat and a parity, and how often a shaping is due between two counts.

A repeat of m stitches with p more asks for counts m·n + p. Mirrored shaping keeps a count even or odd for ever, so a
count may also have to be even or odd like another one. Both are congruences and are joined exactly.
"""

from __future__ import annotations

import math
from fractions import Fraction

from loopwright.garment.shaping.bounds import at_least
from loopwright.units import BadInput

__all__ = ["fits_repeat", "nearest_count", "shaping_times"]

_TIE = Fraction(1, 10**9)
"""Distances that differ by less, as a share of the count, are a tie: 45½ in at 7 to the inch is 318½, although it comes
out of floats a hair below."""


def fits_repeat(count: int, multiple: int, plus: int = 0) -> bool:
    """Say whether ``count`` = ``multiple``·n + ``plus`` for a whole n of nothing or more.

    Source: definition of a stitch repeat. A page of 1918 gives 57 for a repeat of 10 with 7 more.
    """
    at_least(multiple, 1, "stitches in a repeat")
    return count >= plus and (count - plus) % multiple == 0


def nearest_count(
    wanted: float | Fraction,
    *,
    multiple: int = 1,
    plus: int = 0,
    like: int | None = None,
    least: int = 1,
    most: int | None = None,
) -> int:
    """Give the whole count nearest to ``wanted`` that fits.

    Counts that fit are ``multiple``·n + ``plus`` (n whole, nothing or more), even or odd as ``like`` is, from ``least``
    to ``most``. Of these the nearest; of two equally near, the larger.

    :param wanted: stitches or rows, not rounded.
    :param like: any count whose parity is to be kept.
    :raises BadInput: when the repeat and the parity never meet, or no count that fits lies in the range.
    Source: handbooks round a width times gauge to the repeat; the tie upwards as in 318½ → 319 (a magazine article on
    waist shaping).
    """
    if not math.isfinite(wanted):
        raise BadInput(found=str(wanted), wanted="a number of stitches or rows")
    at_least(multiple, 1, "stitches in a repeat")
    step, rest = _joined(multiple, plus, like)
    low = max(least, plus)
    first = low + (rest - low) % step
    last = None if most is None else most - (most - rest) % step
    if last is not None and last < first:
        raise BadInput(
            found=f"no count from {low} to {most}",
            wanted=_words(multiple, plus, like),
            hint="widen the range or choose another repeat",
        )
    exact = Fraction(wanted)
    below = max(first, math.floor((exact - rest) / step) * step + rest)
    above = below + step
    tie = _TIE * max(Fraction(1), abs(exact))
    count = above if above - exact <= exact - below + tie else below
    return count if last is None else min(count, last)


def _joined(multiple: int, plus: int, like: int | None) -> tuple[int, int]:
    """Give (step, rest) of the counts that fit both the repeat and the parity."""
    rest = plus % multiple
    if like is None or (multiple % 2 == 0 and (rest - like) % 2 == 0):
        return multiple, rest
    if multiple % 2 == 0:
        wanted, found = ("odd", "even") if like % 2 else ("even", "odd")
        raise BadInput(
            found=f"a repeat of {_repeat(multiple, plus)}, whose counts are all {found}",
            wanted=f"{wanted} counts, like {like}",
            hint="add or leave out one edge stitch",
        )
    return 2 * multiple, rest if (rest - like) % 2 == 0 else rest + multiple


def _repeat(multiple: int, plus: int) -> str:
    more = f" {'+' if plus > 0 else '−'} {abs(plus)}" if plus else ""
    return f"{multiple}n{more}"


def _words(multiple: int, plus: int, like: int | None) -> str:
    parity = "" if like is None else f", {'odd' if like % 2 else 'even'} like {like}"
    return f"a count of {_repeat(multiple, plus)}{parity}"


def shaping_times(start: int, end: int, *, per_row: int = 2) -> int:
    """Give how many shaping rows lead from ``start`` to ``end`` stitches: |end − start| ÷ ``per_row``.

    :param per_row: stitches that each shaping row adds or takes: 2 for a mirrored pair, 4 at the sides of a round.
    :raises BadInput: when that is not whole: paired shaping cannot join an even count to an odd one.
    Source: arithmetic; 54 and 97 stitches cannot be joined by pairs.
    """
    at_least(start, 0, "stitches")
    at_least(end, 0, "stitches")
    at_least(per_row, 1, "stitches to a shaping row")
    times, rest = divmod(abs(end - start), per_row)
    if rest:
        raise BadInput(
            found=f"{start} and {end} stitches, {abs(end - start)} apart",
            wanted=f"two counts a multiple of {per_row} apart",
            hint=f"change one of them by {min(rest, per_row - rest)}",
        )
    return times
