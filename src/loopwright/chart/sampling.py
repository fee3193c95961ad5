"""A picture brought to the grid of a chart, in linear light."""

from __future__ import annotations

import math

import numpy as np

from loopwright.colour import Floats, linear_from_srgb
from loopwright.colour.pixels import Pixels
from loopwright.fabric import Gauge

__all__ = ["area_means", "proportion_error", "rows_for"]


def rows_for(stitches: int, width_px: int, height_px: int, gauge: Gauge) -> int:
    r"""Give the rows that keep a picture's proportions: :math:`s\,(p_y/p_x)(R/S)`, a half rounded up, at least one.

    :param stitches: stitches across.
    :param gauge: of the fabric; missing rows are the usual ones.
    Source: definition of gauge.
    """
    exact = stitches * height_px / width_px * gauge.rows_or_usual_per_10cm / gauge.stitches_per_10cm
    return max(1, math.floor(exact + 0.5))


def proportion_error(stitches: int, rows: int, width_px: int, height_px: int, gauge: Gauge) -> float:
    """Give how much too wide the knitted picture comes out, as a share; below 0, too narrow."""
    width, height = stitches / gauge.stitches_per_10cm, rows / gauge.rows_or_usual_per_10cm
    return width / height / (width_px / height_px) - 1


def area_means(pixels: Pixels, stitches: int, rows: int) -> Floats:
    """Give the mean linear light of the part of the picture that each cell covers, to the fraction of a point.

    Each cell covers width/stitches by height/rows points. Only a mean in linear light keeps the look from afar.

    :param pixels: shape (height, width, 3).
    :returns: linear light, 0 to 1; shape (rows, stitches, 3), row 0 at the bottom.
    Source: definition; light adds, sRGB numbers do not.
    """
    height, width, _ = pixels.shape
    light = linear_from_srgb(np.tile(np.arange(256)[:, None], 3) / 255)[:, 0]
    edges = np.linspace(0, width, stitches + 1)
    means = np.empty((rows, stitches, 3))
    for row in range(rows):
        top, bottom = row * height / rows, (row + 1) * height / rows
        first, last = math.floor(top), min(math.ceil(bottom), height)
        shares = np.minimum(np.arange(first, last) + 1, bottom) - np.maximum(np.arange(first, last), top)
        line = np.tensordot(shares, light[pixels[first:last]], axes=1) / (bottom - top)
        means[rows - 1 - row] = np.diff(_until(line, edges), axis=0) / (width / stitches)
    return means


def _until(line: Floats, edges: Floats) -> Floats:
    """Give the sum of a line of points up to each edge, a part of a point as its share."""
    sums = np.vstack([np.zeros((1, 3)), np.cumsum(line, axis=0)])
    whole = np.minimum(edges.astype(int), line.shape[0] - 1)
    sum_to_edge: Floats = sums[whole] + (edges - whole)[:, None] * line[whole]
    return sum_to_edge
