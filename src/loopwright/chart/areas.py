"""Areas of one colour: what is knitted from a length of yarn of its own where colours do not run behind each other."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from loopwright.chart.grid import Chart

__all__ = ["areas_per_role"]


def areas_per_role(chart: Chart) -> dict[str, int]:
    """Count the areas of cells that touch side by side or above each other, by role; each has two ends to weave in.

    In the round an area goes on across the start of the round. Boxes without a stitch belong to none.

    Source: definition (4-connected components); two ends each, common practice.
    """
    label = np.arange(chart.cells.size).reshape(chart.cells.shape)
    worked = chart.worked
    ups = (chart.cells[1:] == chart.cells[:-1]) & worked[1:] & worked[:-1]
    sides = (chart.cells[:, 1:] == chart.cells[:, :-1]) & worked[:, 1:] & worked[:, :-1]
    pairs = [(label[1:][ups], label[:-1][ups]), (label[:, 1:][sides], label[:, :-1][sides])]
    if chart.in_the_round:
        around = (chart.cells[:, 0] == chart.cells[:, -1]) & worked[:, 0] & worked[:, -1]
        pairs.append((label[:, 0][around], label[:, -1][around]))
    one = np.concatenate([pair[0] for pair in pairs])
    other = np.concatenate([pair[1] for pair in pairs])
    root = _joined(chart.cells.size, one, other)
    is_root = (root == np.arange(root.size)).reshape(chart.cells.shape) & worked
    return {role.name: int((is_root & (chart.cells == at)).sum()) for at, role in enumerate(chart.roles)}


def _joined(size: int, one: NDArray[np.int64], other: NDArray[np.int64]) -> NDArray[np.int64]:
    """Give for each cell the smallest one that it is joined to: every root takes the smaller, then paths are halved."""
    root = np.arange(size)
    while True:
        left, right = root[one], root[other]
        differ = left != right
        if not differ.any():
            return root
        low, high = np.minimum(left, right)[differ], np.maximum(left, right)[differ]
        np.minimum.at(root, high, low)
        while True:
            nearer = root[root]
            if np.array_equal(nearer, root):
                break
            root = nearer
