"""Shaping within one row: where increases or decreases go so that they lie evenly.

Flat, n shapings leave n + 1 plain stretches; in the round they leave n. The order of preference:

1. no two stretches differ by more than one stitch;
2. every shaping lies at the whole stitch nearest to its ideal place, i ÷ (number of stretches) of the way along;
3. of two equally near places, flat: the one towards the nearer end of the row, so that the row is a mirror image
   wherever it can be (always, but for an even number of stretches over an odd number of stitches); in the round: the
   earlier one, so that longer and shorter stretches alternate all the way round.

Sources: worked examples of handbooks and technique pages, flat 60 + 5 in six tens, in the round 51 + 4 in 13, 13, 13,
12, decreases 56 − 16 by k1 and k2 in turn.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from itertools import groupby, pairwise

from loopwright.garment.shaping.bounds import at_least
from loopwright.units import BadInput

__all__ = ["even_sections", "runs", "spread_across", "spread_decreases", "tally"]


def even_sections(stitches: int, sections: int, *, mirrored: bool = True) -> tuple[int, ...]:
    """Cut ``stitches`` into ``sections`` lengths that differ by one at most, by the module's order of preference.

    :param sections: one or more; where they outnumber the stitches some are empty.
    :param mirrored: as in a flat row; else as in the round.
    Source: the quotient and remainder of handbooks, stretched evenly.
    """
    at_least(stitches, 0, "stitches")
    at_least(sections, 1, "sections")
    cuts = [_cut(stitches, sections, place, mirrored) for place in range(sections + 1)]
    return tuple(right - left for left, right in pairwise(cuts))


def _cut(stitches: int, sections: int, place: int, mirrored: bool) -> int:
    """Give place · stitches ÷ sections to the nearest whole, halves downwards or towards the nearer end."""
    if mirrored and 2 * place > sections:
        return stitches - _cut(stitches, sections, sections - place, mirrored)
    return -((sections - 2 * place * stitches) // (2 * sections))


def spread_across(stitches: int, times: int, *, in_the_round: bool) -> tuple[int, ...]:
    """Give the plain stretches between increases worked between two stitches.

    Flat: ``times`` + 1 stretches, an increase between each and the next. In the round: ``times`` stretches, an increase
    after each. Their sum is ``stitches``. As many increases as stitches in a flat row go after each stitch, so that the
    last stretch is 0. None at all leave the row as one stretch.

    :raises BadInput: when two increases would have no stitch between them.
    """
    at_least(stitches, 1, "stitches")
    at_least(times, 0, "increases")
    if times > stitches:
        raise BadInput(
            found=f"{times} increases in {stitches} stitches",
            wanted=f"at most {stitches}, so that each has a stitch before it",
            hint="spread them over two rows",
        )
    if in_the_round:
        return even_sections(stitches, max(1, times), mirrored=False)
    if times == stitches:
        return (*even_sections(stitches, times), 0)
    return even_sections(stitches, times + 1)


def spread_decreases(stitches: int, times: int, *, in_the_round: bool) -> tuple[int, ...]:
    """Give the plain stitches before each k2tog and, flat, those after the last one.

    Their sum is ``stitches`` − 2 · ``times``; ``stitches`` − ``times`` are left on the needle. None at all leave the
    row as one stretch.

    :raises BadInput: when there are more decreases than pairs of stitches.
    """
    at_least(stitches, 1, "stitches")
    at_least(times, 0, "decreases")
    plain = stitches - 2 * times
    if plain < 0:
        raise BadInput(
            found=f"{times} decreases in {stitches} stitches",
            wanted=f"at most {stitches // 2}, as each takes two stitches together",
            hint="spread them over two rows",
        )
    if in_the_round:
        return even_sections(plain, max(1, times), mirrored=False)
    return even_sections(plain, times + 1)


def tally(values: Iterable[int]) -> tuple[tuple[int, int], ...]:
    """Give (value, how often) for each value, in the order in which they first come.

    >>> tally((13, 12, 13, 13))
    ((13, 3), (12, 1))
    """
    return tuple(Counter(values).items())


def runs(values: Iterable[int]) -> tuple[tuple[int, int], ...]:
    """Give (value, how often in a row) for each run of equal values; nothing of the order is lost.

    >>> runs((13, 12, 13, 13))
    ((13, 1), (12, 1), (13, 2))
    """
    return tuple((value, len(list(run))) for value, run in groupby(values))
