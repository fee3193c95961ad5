"""Shaping whole rounds at once: round yokes and crowns.

Between a base B and a neck N, k shaping rounds of the same ratio leave (N ÷ B)^(1/k) of the stitches each.

Sources: the percentage system for round yokes (*Knitting Without Tears*, 1971; *Knitting Around*, 1989; in a comparison
sheet): 268 by k1, k2tog three times is 179, 120, 80, with remainders worked plain, at ½, ¾ and all of the depth.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from loopwright.garment.shaping.bounds import at_least
from loopwright.garment.shaping.counts import nearest_count
from loopwright.units import BadInput

__all__ = ["even_counts", "even_ratio", "rows_at", "worked_across"]


def worked_across(stitches: int, repeat: Sequence[tuple[int, int]]) -> int:
    """Give the stitches after a row in which ``repeat`` is worked over and over.

    From the first operation for which too few stitches are left, the rest is worked plain.

    :param repeat: (stitches that it takes, stitches that it leaves) of each operation: knit is (1, 1), k2tog (2, 1),
        make one (0, 1).
    :raises BadInput: for a repeat that takes no stitch.
    Source: the reading of period patterns and of the percentage system: 119 by "narrow, knit 4" is 99, 69 by "knit 4,
    increase 1" is 86.
    """
    at_least(stitches, 0, "stitches")
    if min((n for operation in repeat for n in operation), default=-1) < 0 or not any(takes for takes, _ in repeat):
        raise BadInput(found=f"a repeat of {list(repeat)}", wanted="operations of which one takes a stitch or more")
    takes = sum(took for took, _ in repeat)
    leaves = sum(gave for _, gave in repeat)
    times, left = divmod(stitches, takes)
    made = times * leaves
    for took, gave in repeat:
        if took > left or left == 0:
            break
        left -= took
        made += gave
    return made + left


def even_ratio(base: int, neck: int, rounds: int) -> float:
    """Give the share of the stitches that each of ``rounds`` equal shaping rounds leaves: (neck ÷ base)^(1 ÷ rounds).

    Source: geometry; 268 to 80 in three rounds is 0.668, near k1, k2tog; in four 0.739, near k2, k2tog.
    """
    at_least(base, 1, "stitches")
    at_least(neck, 1, "stitches")
    at_least(rounds, 1, "shaping rounds")
    return float((neck / base) ** (1 / rounds))


def even_counts(base: int, neck: int, rounds: int, *, multiple: int = 1, plus: int = 0) -> tuple[int, ...]:
    """Give the count after each of ``rounds`` shaping rounds, by equal ratios; the last is ``neck`` exactly.

    Each is the count nearest to base · ratio^i that fits ``multiple``·n + ``plus`` and lies between ``base`` and
    ``neck``.

    :raises BadInput: when no count that fits lies between them, or a round would more than halve its stitches.
    Source: :func:`even_ratio`.
    """
    ratio = even_ratio(base, neck, rounds)
    low, high = sorted((base, neck))
    within = {"multiple": multiple, "plus": plus, "least": low, "most": high}
    counts = [nearest_count(base * ratio**i, **within) for i in range(1, rounds)] + [neck]
    for before, after in pairwise((base, *counts)):
        if 2 * after < before or 2 * before < after:
            raise BadInput(
                found=f"a round from {before} to {after} stitches",
                wanted="at most half taken away, at most as many added",
                hint="shape in more rounds",
            )
    return tuple(counts)


def rows_at(rows: int, shares: Sequence[Fraction | float]) -> tuple[int, ...]:
    """Give how many rows have been worked when each share of the depth is reached, to the nearest whole.

    A yoke worked upwards decreases in these rounds, counted from 1; one worked downwards increases in the round after.

    :param shares: of the depth, 0 to 1.
    :raises BadInput: for a share outside.
    Source: 70 rounds, at ½, ¾ and the end: 35, 52 or 53, 70; downwards 84 rounds, a quarter and a half: in rounds 22
    and 43.
    """
    at_least(rows, 0, "rows")
    for share in shares:
        if not 0 <= share <= 1:
            raise BadInput(found=f"{float(share) * 100:g} % of the depth", wanted="0 % to 100 %")
    return tuple(nearest_count(rows * Fraction(share), least=0) for share in shares)
