"""A good path through many points: greedy starts and an insertion, improved until no exchange helps."""

from __future__ import annotations

from typing import Final, TypeAlias

import numpy as np
import numpy.typing as npt

from loopwright.colour.spaces import Floats

__all__ = ["good_path", "greedy_path"]

_Order: TypeAlias = npt.NDArray[np.intp]
_STARTS: Final = 8
"""So many of the shortest greedy paths are improved, and the insertion."""
_GAIN: Final = 1e-12
"""A smaller gain, as a share of the largest entry of the table, is rounding."""
_LONGEST_MOVED: Final = 3
"""Points that are moved together, as in Or's exchange."""


def good_path(table: Floats, first: int | None, last: int | None) -> tuple[int, ...]:
    """Give a short open path through all points; never longer than the best greedy one with these ends.

    Turning a stretch round (2-opt; G. A. Croes, Operations Research 6, 1958) and moving one to three points elsewhere
    (I. Or, dissertation, Northwestern University, 1976; both from memory) are tried in full, the best of them done,
    until none helps.

    :param table: distances, shape (n, n), n ≥ 3.
    :param first, last: fixed ends.
    """
    number = len(table)
    ended = _with_ends(table, first, last)
    begin = range(number) if first is None else (first,)
    starts = [_between_ends(greedy_path(table, start, last), number) for start in begin]
    starts.sort(key=lambda path: _length(ended, path))
    improved = [_improved(ended, path) for path in (*starts[:_STARTS], _inserted(ended))]
    best = min(improved, key=lambda path: _length(ended, path))
    return tuple(best[1:-1].tolist())


def greedy_path(table: Floats, start: int, last: int | None = None) -> tuple[int, ...]:
    """Give the path that always goes on to the nearest point that is left; ``last`` is kept for the end."""
    left = np.ones(len(table), dtype=bool)
    path = [start]
    left[start] = False
    if last is not None:
        left[last] = False
    while left.any():
        path.append(int(np.where(left, table[path[-1]], np.inf).argmin()))
        left[path[-1]] = False
    return tuple(path) if last is None or last == start else (*path, last)


def _with_ends(table: Floats, first: int | None, last: int | None) -> Floats:
    """Add two points that stand for the ends: next to them nothing costs, but next to a fixed end only that one."""
    number = len(table)
    far = float(table.sum()) + 1
    ended = np.zeros((number + 2, number + 2))
    ended[:number, :number] = table
    for end, fixed in ((number, first), (number + 1, last)):
        if fixed is not None:
            ended[end, :number] = ended[:number, end] = far
            ended[end, fixed] = ended[fixed, end] = 0
    return ended


def _between_ends(path: tuple[int, ...], number: int) -> _Order:
    return np.array([number, *path, number + 1], dtype=np.intp)


def _length(ended: Floats, path: _Order) -> float:
    return float(ended[path[:-1], path[1:]].sum())


def _inserted(ended: Floats) -> _Order:
    """Build a path by putting in the point that is farthest from all that stand in it, where it costs least."""
    number = len(ended) - 2
    points = ended[:number, :number]
    chosen = [*np.unravel_index(int(points.argmax()), points.shape)]
    path = [number, *(int(one) for one in dict.fromkeys(chosen)), number + 1]
    while len(path) < number + 2:
        inside = np.array(path[1:-1], dtype=np.intp)
        distance = points[:, inside].min(axis=1)
        distance[inside] = -1
        far = int(distance.argmax())
        before, after = np.array(path[:-1], dtype=np.intp), np.array(path[1:], dtype=np.intp)
        cost = ended[before, far] + ended[far, after] - ended[before, after]
        path.insert(int(cost.argmin()) + 1, far)
    return np.array(path, dtype=np.intp)


def _improved(ended: Floats, path: _Order) -> _Order:
    """Do the best exchange until none helps."""
    least = _GAIN * float(ended.max())
    while True:
        gain, better = max((_turned(ended, path), *_moved(ended, path)), key=lambda found: found[0])
        if gain <= least:
            return path
        path = better


def _turned(ended: Floats, path: _Order) -> tuple[float, _Order]:
    """Give the best stretch to turn round, what is gained, and the path then."""
    before, inside, after = path[:-2], path[1:-1], path[2:]
    gain = (
        ended[before, inside][:, None]
        + ended[inside, after][None, :]
        - ended[np.ix_(before, inside)]
        - ended[np.ix_(inside, after)]
    )
    gain[np.tril_indices(len(inside))] = 0
    start, stop = divmod(int(gain.argmax()), len(inside))
    turned = path.copy()
    turned[start + 1 : stop + 2] = path[start + 1 : stop + 2][::-1]
    return float(gain[start, stop]), turned


def _moved(ended: Floats, path: _Order) -> list[tuple[float, _Order]]:
    """Give, for each number of points, the best move of that many, what is gained, and the path then."""
    return [_moved_together(ended, path, count) for count in range(1, min(_LONGEST_MOVED, len(path) - 3) + 1)]


def _moved_together(ended: Floats, path: _Order, count: int) -> tuple[float, _Order]:
    starts = np.arange(1, len(path) - count)
    heads, tails = path[starts], path[starts + count - 1]
    freed = ended[path[starts - 1], heads] + ended[tails, path[starts + count]]
    freed -= ended[path[starts - 1], path[starts + count]]
    before, after = path[:-1], path[1:]
    straight = ended[np.ix_(heads, before)] + ended[np.ix_(tails, after)]
    turned = ended[np.ix_(tails, before)] + ended[np.ix_(heads, after)]
    gain = freed[:, None] + ended[before, after][None, :] - np.minimum(straight, turned)
    gaps = np.arange(len(before))
    touching = (gaps[None, :] >= starts[:, None] - 1) & (gaps[None, :] <= starts[:, None] + count - 1)
    gain[touching] = 0
    row, gap = divmod(int(gain.argmax()), len(before))
    start = int(starts[row])
    piece = path[start : start + count]
    if turned[row, gap] < straight[row, gap]:
        piece = piece[::-1]
    rest = np.delete(path, slice(start, start + count))
    at = gap + 1 if gap < start else gap + 1 - count
    return float(gain[row, gap]), np.insert(rest, at, piece)
