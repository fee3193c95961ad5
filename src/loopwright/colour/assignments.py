"""Which owned colour plays which role: every assignment, ranked by its weakest lightness contrast."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, TypeAlias

import numpy as np
import numpy.typing as npt

from loopwright.colour.contrast import Grade, grade_of
from loopwright.colour.difference import difference_matrix
from loopwright.colour.limits import LIMITS
from loopwright.colour.spaces import Floats, lab_from_srgb
from loopwright.units import BadInput

__all__ = ["MOST_ASSIGNMENTS", "Assignment", "Assignments", "rank_assignments"]

MOST_ASSIGNMENTS: Final = 200_000
"""More are refused: nobody looks through them, and memory grows with them."""

_Places: TypeAlias = npt.NDArray[np.intp]


@dataclass(frozen=True, slots=True)
class Assignment:
    """One way to give colours to roles.

    :ivar colours: for each role, in the order given, the place of its colour.
    :ivar worst_delta_l: the least difference of L* between two roles that meet.
    :ivar worst_pair: those two roles.
    :ivar mean_delta_l: the mean over all that meet; it decides between equals.
    :ivar alike: how many other assignments look nearly the same and were folded into this one.
    """

    colours: tuple[int, ...]
    worst_delta_l: float
    worst_pair: tuple[str, str]
    mean_delta_l: float
    alike: int

    @property
    def grade(self) -> Grade:
        """The grade of the weakest pair."""
        return grade_of(self.worst_delta_l)


@dataclass(frozen=True, slots=True)
class Assignments:
    """The ranked assignments, best first, and how many there are in all.

    :ivar tried: every assignment, those folded and those left out at the end included.
    :ivar left_out: how many were neither kept nor folded into a kept one.
    """

    ranked: tuple[Assignment, ...]
    tried: int
    left_out: int


def rank_assignments(
    colours: npt.ArrayLike,
    roles: Sequence[str],
    meeting: Sequence[tuple[str, str]],
    *,
    most: int = 60,
    alike_below: float | None = None,
) -> Assignments:
    """Rank every way to give each role a colour of its own, by the weakest lightness contrast.

    Two assignments are folded when in every role their colours differ by less than ``alike_below``; the better one
    stays. Between equals the mean contrast decides, then the order of the colours.

    :param colours: sRGB of the colours owned, shape (m, 3), 0 to 1.
    :param roles: names of the k roles, k ≤ m.
    :param meeting: pairs of roles whose stitches lie side by side.
    :param most: how many to keep.
    :param alike_below: in ΔE00; left out, the limit ``different`` of ``data/colour/limits.csv``, 5: below it people
        hardly speak of two colours.
    :raises BadInput: a role is named twice or not at all, no roles meet, there are too few colours, or the assignments
        would be more than :data:`MOST_ASSIGNMENTS`.
    """
    labs = lab_from_srgb(np.asarray(colours, dtype=np.float64).reshape(-1, 3))
    pairs = _places(roles, meeting)
    _check_size(len(labs), len(roles))
    every = np.array(list(itertools.permutations(range(len(labs)), len(roles))), dtype=np.intp)
    apart = np.abs(labs[:, None, 0] - labs[None, :, 0])
    between: Floats = apart[every[:, pairs[:, 0]], every[:, pairs[:, 1]]]
    worst, mean = between.min(axis=1), between.mean(axis=1)
    order = np.lexsort((np.arange(len(every)), -mean.round(9), -worst.round(9)))
    limit = LIMITS["different"].value if alike_below is None else alike_below
    kept, alike = _fold(every[order], difference_matrix(labs) < limit, most)
    ranked = []
    for place, others in zip(order[kept], alike, strict=True):
        one, other = meeting[int(between[place].argmin())]
        colours_of = tuple(every[place].tolist())
        ranked.append(Assignment(colours_of, float(worst[place]), (one, other), float(mean[place]), others))
    return Assignments(tuple(ranked), len(every), len(every) - len(ranked) - sum(alike))


def _places(roles: Sequence[str], meeting: Sequence[tuple[str, str]]) -> _Places:
    """Give the pairs by the places of their roles, shape (p, 2)."""
    if len(set(roles)) < len(roles):
        raise BadInput(", ".join(roles), "each role once")
    if not meeting:
        raise BadInput("no roles that meet", "one pair of roles or more")
    for pair in meeting:
        for role in pair:
            if role not in roles:
                raise BadInput(f"the role '{role}'", f"one of {', '.join(roles)}")
        if pair[0] == pair[1]:
            raise BadInput(f"'{pair[0]}' meeting itself", "two different roles")
    return np.array([[roles.index(role) for role in pair] for pair in meeting], dtype=np.intp)


def _check_size(owned: int, wanted: int) -> None:
    if owned < wanted:
        raise BadInput(f"{owned} colours", f"one for each of {wanted} roles")
    number = math.perm(owned, wanted)
    if number > MOST_ASSIGNMENTS:
        raise BadInput(
            f"{owned} colours for {wanted} roles, {number} assignments",
            f"at most {MOST_ASSIGNMENTS} of them",
            hint="leave out colours that you would not use together",
        )


def _fold(ranked: _Places, near: npt.NDArray[np.bool_], most: int) -> tuple[list[int], list[int]]:
    """Give the places of those that stay, and how many were folded into each."""
    kept: list[int] = []
    alike: list[int] = []
    left = np.arange(len(ranked))
    while left.size and len(kept) < most:
        best = int(left[0])
        folded = near[ranked[best], ranked[left]].all(axis=1)
        folded[0] = True
        kept.append(best)
        alike.append(int(folded.sum()) - 1)
        left = left[~folded]
    return kept, alike
