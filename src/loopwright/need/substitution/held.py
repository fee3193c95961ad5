"""Which yarns of a cupboard, held together, come to a wanted strand. Their colours are left to the knitter."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.need.substitution.limits import LIMITS
from loopwright.need.substitution.original import Wish
from loopwright.need.substitution.score import Ranking, rank
from loopwright.need.substitution.strands import StrandColumns, held_together

__all__ = ["MOST_STRANDS", "held_near", "rank_held"]

MOST_STRANDS: Final = 3
MOST_YARNS_FOR_THREE: Final = 100
"""Up to this many yarns threes are tried too (171,700 of them); beyond it pairs alone."""


def held_near(wish: Wish, single: StrandColumns, strands: int) -> NDArray[np.intp]:
    """Give every way to hold so many of the yarns together whose thickness works, if with care.

    One yarn may be taken several times. Grists add (ASTM D861), diameters in square.

    :param strands: 2 or 3.
    :returns: m × ``strands`` places in ``single``, each row ascending.
    """
    number = len(single)
    if strands == 2:
        members = np.column_stack(np.triu_indices(number))
    else:
        first, second, third = np.indices((number, number, number)).reshape(3, -1)
        rising = (first <= second) & (second <= third)
        members = np.column_stack([first[rising], second[rising], third[rising]])
    squares = single.grist_tex * single.bulk_cm3_g
    wanted = float((wish.strand.grist_tex * wish.strand.bulk_cm3_g)[0])
    ratio = np.sqrt(squares[members].sum(axis=1) / wanted)
    near: NDArray[np.intp] = members[np.abs(ratio - 1) <= LIMITS["thickness"].end]
    return near


def rank_held(wish: Wish, single: StrandColumns, best: int) -> tuple[Ranking, list[NDArray[np.intp]]]:
    """Rank pairs, and threes of a cupboard that is not too large, held together as one strand.

    :returns: the ranking, and for each of its places the yarns in it, as places in ``single``.
    """
    sizes = range(2, MOST_STRANDS + 1) if len(single) <= MOST_YARNS_FOR_THREE else (2,)
    ways = [held_near(wish, single, strands) for strands in sizes if len(single)]
    ways = [members for members in ways if len(members)]
    if not ways:
        return rank(wish, single.rows(slice(0, 0)), best), []
    rows = [held_together(single, members) for members in ways]
    flat = [members for group in ways for members in group]
    ranking = rank(wish, joined(rows), best)
    return ranking, [flat[place] for place in ranking.places]


def joined(parts: list[StrandColumns]) -> StrandColumns:
    """Join rows of strands into one set of columns."""
    columns = zip(*(part.columns() for part in parts), strict=True)
    return StrandColumns(*(np.concatenate(column) for column in columns))
