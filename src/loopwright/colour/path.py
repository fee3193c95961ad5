"""The shortest path that visits every point once, from a table of distances."""

from __future__ import annotations

from typing import Final

import numpy as np
import numpy.typing as npt

from loopwright.colour.path_search import good_path
from loopwright.colour.spaces import Floats
from loopwright.units import BadInput

__all__ = ["EXACT_UP_TO", "MOST_POINTS", "path_length", "shortest_path"]

EXACT_UP_TO: Final = 12
"""So many points are solved with proof; beyond, the path is good but not proven."""
MOST_POINTS: Final = 100
"""More are refused: the search grows with the cube of the number."""


def path_length(distances: npt.ArrayLike, path: npt.ArrayLike) -> float:
    """Give the length of a path: the sum of its steps."""
    order = np.asarray(path, dtype=np.intp)
    return float(np.asarray(distances, dtype=np.float64)[order[:-1], order[1:]].sum())


def shortest_path(distances: npt.ArrayLike, first: int | None = None, last: int | None = None) -> tuple[int, ...]:
    """Give the order of the points with the least sum of steps (an open Hamiltonian path).

    Up to :data:`EXACT_UP_TO` points by the dynamic programme over subsets, which proves it: with ``C(S, j)`` the
    shortest path over the set S that ends at j, ``C(S, j) = min over i of C(S − j, i) + d(i, j)``. Beyond, the best of
    several starts improved by exchanges. The same table gives the same path.

    :param distances: shape (n, n), symmetric, not negative, n from 1 to :data:`MOST_POINTS`.
    :param first, last: places that have to stand at the ends; None leaves an end free.
    :raises BadInput: there are no points or too many, or one point shall stand at both ends.
    :raises ValueError: the table is no square or is not symmetric, or there is no such place.
    Source: M. Held, R. M. Karp, Journal of the Society for Industrial and Applied Mathematics 10(1), 1962, 196-210.
    """
    table = np.asarray(distances, dtype=np.float64)
    _check(table, first, last)
    if len(table) <= 2:
        backwards = first == 1 or last == 0
        return tuple(reversed(range(len(table)))) if backwards else tuple(range(len(table)))
    if len(table) <= EXACT_UP_TO:
        return _exact_path(table, first, last)
    return good_path(table, first, last)


def _check(table: Floats, first: int | None, last: int | None) -> None:
    number = len(table)
    if not 1 <= number <= MOST_POINTS:
        raise BadInput(f"{number} of them", f"1 to {MOST_POINTS}")
    if table.shape != (number, number) or not np.allclose(table, table.T):
        raise ValueError("wanted a symmetric square of distances")
    for place in (first, last):
        if place is not None and not 0 <= place < number:
            raise ValueError(f"found the place {place}; wanted 0 to {number - 1}")
    if number > 1 and first is not None and first == last:
        raise BadInput("the same one first and last", "two different ones")


def _exact_path(table: Floats, first: int | None, last: int | None) -> tuple[int, ...]:
    number = len(table)
    everything = 2**number - 1
    length = np.full((everything + 1, number), np.inf)
    came_from = np.zeros((everything + 1, number), dtype=np.intp)
    starts = np.arange(number) if first is None else np.array([first])
    length[1 << starts, starts] = 0
    sets = np.arange(everything + 1)
    sizes = np.bitwise_count(sets)
    for size in range(2, number + 1):
        of_size = sets[sizes == size]
        for end in range(number):
            having = of_size[of_size >> end & 1 == 1]
            by_way_of = length[having ^ (1 << end)] + table[:, end]
            came_from[having, end] = by_way_of.argmin(axis=1)
            length[having, end] = by_way_of.min(axis=1)
    path = [int(length[everything].argmin()) if last is None else last]
    left = everything
    while len(path) < number:
        end = path[-1]
        path.append(int(came_from[left, end]))
        left ^= 1 << end
    return tuple(reversed(path))
