"""Colours brought to the yarns of a palette: the nearest, two in a row, dithered, or a palette found in the picture."""

from __future__ import annotations

import itertools
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.chart.grid import Cells
from loopwright.colour import (
    Floats,
    delta_e_cie76,
    lab_from_xyz,
    oklab_from_linear,
    srgb_from_linear,
    xyz_from_linear,
)

__all__ = ["despeckled", "dithered", "lab_of", "nearest", "palette_in", "two_in_a_row"]

STEADY_DELTA_E: Final = 2.0
"""Another pair of colours than in the row below costs as much as being off by this in every cell: our judgement."""
SPECK_DELTA_E: Final = 12.0
"""A speck is repainted if that makes its cell worse by no more than this: our judgement."""
_PASSES: Final = 4
_MOST_SAMPLES: Final = 20_000
_ROUNDS: Final = 30
_WEIGHTS: Final = ((0, 1, 7 / 16), (1, -1, 3 / 16), (1, 0, 5 / 16), (1, 1, 1 / 16))


def lab_of(linear: Floats) -> Floats:
    """Give the CIELAB of linear light."""
    return lab_from_xyz(xyz_from_linear(linear))


def _distances(lab: Floats, palette_lab: Floats) -> Floats:
    """Give how far each cell is from each colour, ΔE*ab; shape (rows, columns, colours)."""
    return delta_e_cie76(lab[..., None, :], palette_lab)


def nearest(lab: Floats, palette_lab: Floats) -> Cells:
    """Give the palette's nearest colour for each cell by ΔE*ab.

    :param lab: CIELAB; shape (rows, columns, 3).
    :param palette_lab: shape (colours, 3).
    Source: CIE 1976; sRGB numbers would agree with ΔE00 in 58 of 100 cases, ΔE*ab in 77 (our count).
    """
    cells: Cells = _distances(lab, palette_lab).argmin(axis=-1).astype(np.uint8)
    return cells


def two_in_a_row(lab: Floats, palette_lab: Floats, steady: float = STEADY_DELTA_E) -> Cells:
    r"""Give the cells with at most two colours in a row, the pairs chosen for the whole chart at once.

    A row costs the sum of squared ΔE*ab to the nearer colour of its pair; a row with another pair than the row below
    costs ``steady``² for each of its cells more. The cheapest course of pairs is found exactly, row by row.

    :param lab: CIELAB; shape (rows, columns, 3).
    :param palette_lab: shape (colours, 3).
    Source: dynamic programming; that stranded knitting keeps to two colours in a row is common practice.
    """
    squared = _distances(lab, palette_lab) ** 2
    colours = palette_lab.shape[0]
    pairs = np.array([*itertools.combinations(range(colours), 2)] or [(0, 0)])
    cost = np.minimum(squared[..., pairs[:, 0]], squared[..., pairs[:, 1]]).sum(axis=1)
    change = steady**2 * lab.shape[1]
    best = cost[0].copy()
    came = np.zeros(cost.shape, dtype=np.int64)
    for row in range(1, cost.shape[0]):
        cheapest = int(best.argmin())
        stay = best <= best[cheapest] + change
        came[row] = np.where(stay, np.arange(best.size), cheapest)
        best = np.where(stay, best, best[cheapest] + change) + cost[row]
    chosen = np.empty(cost.shape[0], dtype=np.int64)
    chosen[-1] = best.argmin()
    for row in range(cost.shape[0] - 1, 0, -1):
        chosen[row - 1] = came[row, chosen[row]]
    first, second = pairs[chosen, 0][:, None], pairs[chosen, 1][:, None]
    one = np.take_along_axis(squared, first[..., None], axis=2)[..., 0]
    other = np.take_along_axis(squared, second[..., None], axis=2)[..., 0]
    cells: Cells = np.where(one <= other, first, second).astype(np.uint8)
    return cells


def dithered(linear: Floats, palette_linear: Floats) -> Cells:
    """Give the cells with every cell's error handed on to its neighbours, so that the look from afar is right.

    Errors stay in linear light; rows go to and fro. It makes specks, long floats and many changes.

    :param linear: linear light; shape (rows, columns, 3).
    :param palette_linear: shape (colours, 3).
    Source: Floyd and Steinberg 1976, weights 7, 3, 5 and 1 sixteenths (from memory).
    """
    rows, columns, _ = linear.shape
    left = np.zeros((rows + 1, columns + 2, 3))
    left[:rows, 1:-1] = linear
    cells = np.empty((rows, columns), dtype=np.uint8)
    for row in range(rows):
        way = 1 if row % 2 == 0 else -1
        for column in range(columns)[::way]:
            light = left[row, column + 1]
            off = palette_linear - light
            role = int(np.einsum("ij,ij->i", off, off).argmin())
            cells[row, column] = role
            for up, beside, share in _WEIGHTS:
                left[row + up, column + 1 + way * beside] -= share * off[role]
    return cells


def palette_in(linear: Floats, colours: int) -> Floats:
    """Find so many colours in a picture: the means of clusters in OKLab, the most frequent first.

    :param linear: linear light; shape (..., 3).
    :returns: sRGB, 0 to 1; shape (colours or fewer, 3).
    Source: Lloyd's algorithm, begun with colours far apart, so that the same picture gives the same palette.
    """
    light = linear.reshape(-1, 3)
    light = light[:: max(1, light.shape[0] // _MOST_SAMPLES)]
    points = oklab_from_linear(light)
    centres = _far_apart(points, colours)
    kind = np.zeros(points.shape[0], dtype=np.int64)
    for _ in range(_ROUNDS):
        kind = np.linalg.norm(points[:, None] - centres, axis=-1).argmin(axis=1)
        moved = np.array([points[kind == one].mean(axis=0) for one in range(centres.shape[0]) if (kind == one).any()])
        if moved.shape == centres.shape and np.allclose(moved, centres, atol=1e-6):
            break
        centres = moved
    kind = np.linalg.norm(points[:, None] - centres, axis=-1).argmin(axis=1)
    order = np.argsort(-np.bincount(kind, minlength=centres.shape[0]), kind="stable")
    means = np.array([light[kind == one].mean(axis=0) for one in order if (kind == one).any()])
    return np.clip(srgb_from_linear(means), 0, 1)


def _far_apart(points: Floats, number: int) -> Floats:
    """Choose points that lie far from each other: the one nearest to the mean, then always the farthest."""
    first = np.linalg.norm(points - points.mean(axis=0), axis=1).argmin()
    chosen = [points[first]]
    away = np.linalg.norm(points - chosen[0], axis=1)
    while len(chosen) < number and away.max() > 1e-9:
        chosen.append(points[away.argmax()])
        away = np.minimum(away, np.linalg.norm(points - chosen[-1], axis=1))
    return np.array(chosen)


def despeckled(
    cells: Cells, lab: Floats, palette_lab: Floats, most: float = SPECK_DELTA_E, *, corners: bool = False
) -> Cells:
    """Repaint every cell that has no neighbour of its own colour, where that makes it little worse.

    It becomes the colour that most of its neighbours have. All specks of one pass are repainted at once, so that what
    is its own mirror stays so.

    :param lab: what each cell ought to be, CIELAB; shape (rows, columns, 3).
    :param palette_lab: shape (colours, 3).
    :param most: ΔE*ab by which a cell may become worse.
    :param corners: count the four at the corners as neighbours too.
    """
    off = _distances(lab, palette_lab)
    for _ in range(_PASSES):
        around = _neighbours(cells, palette_lab.shape[0], corners=corners)
        own = np.take_along_axis(around, cells[..., None].astype(np.int64), axis=2)[..., 0]
        # Neighbours first; among equals the colour that is nearer.
        wanted = (around - off / (off.max() + 1)).argmax(axis=-1)
        before = np.take_along_axis(off, cells[..., None].astype(np.int64), axis=2)[..., 0]
        after = np.take_along_axis(off, wanted[..., None], axis=2)[..., 0]
        repaint = (own == 0) & (after - before <= most) & (wanted != cells)
        if not repaint.any():
            break
        cells = np.where(repaint, wanted, cells).astype(np.uint8)
    return cells


def _neighbours(cells: Cells, colours: int, *, corners: bool) -> NDArray[np.int64]:
    """Count the neighbours of each colour; shape (rows, columns, colours)."""
    same = (cells[..., None] == np.arange(colours)).astype(np.int64)
    padded = np.pad(same, ((1, 1), (1, 1), (0, 0)))
    rows, columns = cells.shape
    steps = [(0, 1), (2, 1), (1, 0), (1, 2)] + ([(0, 0), (0, 2), (2, 0), (2, 2)] if corners else [])
    parts = [padded[up : up + rows, right : right + columns] for up, right in steps]
    counted: NDArray[np.int64] = np.sum(parts, axis=0, dtype=np.int64)
    return counted
