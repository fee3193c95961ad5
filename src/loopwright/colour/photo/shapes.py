"""Shapes in a picture of yes and no: grown, shrunk, cleaned, told apart, filled; and means over squares."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from loopwright.colour.spaces import Floats

__all__ = ["Mask", "box_mean", "box_spread", "closed", "filled", "grown", "labelled", "opened", "shrunk"]

Mask: TypeAlias = npt.NDArray[np.bool_]
"""Shape (height, width): yes or no for each pixel."""
Labels: TypeAlias = npt.NDArray[np.intp]


def box_mean(values: Floats, side: int) -> Floats:
    """Give the mean over a square about each pixel; at the border only what is inside counts.

    :param values: shape (h, w).
    :param side: odd.
    """
    return _box_sum(values, side) / _box_sum(np.ones(values.shape), side)


def box_spread(values: Floats, side: int) -> Floats:
    """Give the standard deviation over a square about each pixel, as :func:`box_mean` counts."""
    centred = values - values.mean()
    mean = box_mean(centred, side)
    return np.sqrt(np.maximum(box_mean(centred**2, side) - mean**2, 0))


def _box_sum(values: Floats, side: int) -> Floats:
    reach = side // 2
    sums = values
    for axis in (0, 1):
        length = sums.shape[axis]
        zero = np.zeros_like(np.take(sums, [0], axis=axis))
        running = np.concatenate([zero, np.cumsum(sums, axis=axis)], axis=axis)
        places = np.arange(length)
        upper = np.take(running, np.minimum(places + reach + 1, length), axis=axis)
        sums = upper - np.take(running, np.maximum(places - reach, 0), axis=axis)
    return np.asarray(sums, dtype=np.float64)


def grown(mask: Mask, radius: int) -> Mask:
    """Give the mask grown by a disc of this radius (dilation)."""
    height = len(mask)
    result = np.zeros_like(mask)
    for down in range(-min(radius, height - 1), min(radius, height - 1) + 1):
        half = int((radius**2 - down**2) ** 0.5)
        reached = _row_sum(mask, half) > 0
        result[max(0, down) : height - max(0, -down)] |= reached[max(0, -down) : height - max(0, down)]
    return result


def _row_sum(mask: Mask, half: int) -> Floats:
    """Give how many pixels of the mask lie in the row within ``half`` of each pixel."""
    width = mask.shape[1]
    running = np.concatenate([np.zeros((mask.shape[0], 1)), np.cumsum(mask, axis=1)], axis=1)
    places = np.arange(width)
    counted: Floats = running[:, np.minimum(places + half + 1, width)] - running[:, np.maximum(places - half, 0)]
    return counted


def shrunk(mask: Mask, radius: int) -> Mask:
    """Give the mask shrunk by a disc of this radius (erosion); the border of the picture does not eat into it."""
    return ~grown(~mask, radius)


def opened(mask: Mask, radius: int) -> Mask:
    """Give the mask without what a disc of this radius does not fit into (opening)."""
    return grown(shrunk(mask, radius), radius)


def closed(mask: Mask, radius: int) -> Mask:
    """Give the mask with gaps closed that a disc of this radius does not fit into (closing)."""
    return shrunk(grown(mask, radius), radius)


def labelled(mask: Mask) -> tuple[Labels, npt.NDArray[np.intp]]:
    """Tell the connected parts of a mask apart: pixels that touch at a side belong together.

    :returns: for each pixel the number of its part, 0 outside; and the pixels of each number, the first those outside.
    """
    height, width = mask.shape
    padded = np.zeros((height, width + 2), dtype=np.int8)
    padded[:, 1:-1] = mask
    steps = np.diff(padded, axis=1)
    rows, begins = np.nonzero(steps == 1)
    _, ends = np.nonzero(steps == -1)
    parent = list(range(len(rows)))

    def root(run: int) -> int:
        while parent[run] != run:
            parent[run] = parent[parent[run]]
            run = parent[run]
        return run

    for one, other in _touching(rows, begins, ends):
        first, second = sorted((root(one), root(other)))
        parent[second] = first
    roots = np.array([root(run) for run in range(len(rows))], dtype=np.intp)
    _, numbers = np.unique(roots, return_inverse=True)
    labels = np.zeros((height, width), dtype=np.intp)
    for row, begin, end, number in zip(
        rows.tolist(), begins.tolist(), ends.tolist(), (numbers + 1).tolist(), strict=True
    ):
        labels[row, begin:end] = number
    return labels, np.bincount(labels.ravel())


def _touching(rows: Labels, begins: Labels, ends: Labels) -> list[tuple[int, int]]:
    """Give the pairs of runs, in rows one below the other, that share a column."""
    pairs = []
    first_of_row: dict[int, int] = {}
    for run, row in enumerate(rows.tolist()):
        first_of_row.setdefault(row, run)
    begin, end, line = begins.tolist(), ends.tolist(), rows.tolist()
    for row, run in first_of_row.items():
        above, below = first_of_row.get(row - 1), run
        if above is None:
            continue
        while above < run and below < len(line) and line[below] == row:
            if begin[above] < end[below] and begin[below] < end[above]:
                pairs.append((above, below))
            if end[above] < end[below]:
                above += 1
            else:
                below += 1
    return pairs


def filled(mask: Mask) -> Mask:
    """Give the mask with its holes filled: every part of the outside that does not reach the border."""
    labels, _ = labelled(~mask)
    border = np.unique(np.concatenate([labels[0], labels[-1], labels[:, 0], labels[:, -1]]))
    return mask | ~np.isin(labels, border)
