"""Which put-ups of one lot to open."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from itertools import product

__all__ = ["least_put_ups"]

MOST_WAYS = 20_000
"""With more ways to choose, none is looked for here."""


def least_put_ups(put_ups: Sequence[float], used_m: float) -> tuple[float, ...] | None:
    """Give the put-ups that hold a length and together are the shortest; the fewest, where two choices are alike.

    Every number of each length is tried.

    :param put_ups: metres of each.
    :returns: None where they do not hold it, or there are too many ways to try.
    """
    counts = sorted(Counter(put_ups).items(), reverse=True)
    if math.prod(count + 1 for _, count in counts) > MOST_WAYS or sum(put_ups) < used_m - 1e-6:
        return None
    best: tuple[float, int, tuple[int, ...]] | None = None
    for chosen in product(*(range(count + 1) for _, count in counts)):
        held = math.fsum(number * metres for number, (metres, _) in zip(chosen, counts, strict=True))
        if held < used_m - 1e-6:
            continue
        one = (round(held, 6), sum(chosen), chosen)
        best = one if best is None else min(best, one)
    assert best is not None  # all of them hold it
    return tuple(metres for number, (metres, _) in zip(best[2], counts, strict=True) for _ in range(number))
