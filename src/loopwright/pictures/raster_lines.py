"""Fine lines of an index picture: the outline of every part, its soft edge on the paper, the body behind."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.pictures.index_layout import (
    BODY,
    COVERAGES,
    EDGE,
    FIRST_ROLE,
    LINE_ON_BODY,
    LINE_ON_PAPER,
    ROLE_ENTRIES,
    THROUGH,
)
from loopwright.pictures.patch import LAYERS, Patch
from loopwright.pictures.raster import Frame, Levels

__all__ = ["draw_body", "draw_body_line", "draw_outlines"]

Bytes = NDArray[np.uint8]
Bools = NDArray[np.bool_]
Points = NDArray[np.float64]

SAMPLES: Final = 3
"""Of a pixel at an edge, across and down."""
DASH: Final = 4
"""Of the line of the body, in pixels."""

_WHOLE, _LOW, _HIGH = slice(None), slice(None, -1), slice(1, None)
_BESIDE: Final = (
    ((_WHOLE, _LOW), (_WHOLE, _HIGH)),
    ((_WHOLE, _HIGH), (_WHOLE, _LOW)),
    ((_LOW, _WHOLE), (_HIGH, _WHOLE)),
    ((_HIGH, _WHOLE), (_LOW, _WHOLE)),
)
"""The four pairs of windows in which each pixel lies on one of its neighbours."""


def draw_body(canvas: Bytes, outlines: Sequence[Points], frame: Frame) -> Bytes:
    """Fill the outlines of a body with soft edges; give how far each pixel is covered, 0 to :data:`COVERAGES`."""
    from PIL import Image, ImageDraw  # noqa: PLC0415

    fine = Image.new("L", (frame.width * 2, frame.height * 2))
    pen = ImageDraw.Draw(fine)
    for outline in outlines:
        places = (outline - (frame.left, frame.top)) * (2 * frame.scale) - 0.5
        pen.polygon([(float(x), float(y)) for x, y in places], fill=COVERAGES)
    four = np.asarray(fine)
    covered: Bytes = (
        (four[::2, ::2].astype(np.uint16) + four[1::2, ::2] + four[::2, 1::2] + four[1::2, 1::2] + 2) // 4
    ).astype(np.uint8)
    canvas[covered > 0] = (BODY - 1 + covered)[covered > 0]
    return covered


def draw_outlines(canvas: Bytes, layers: Bytes, patches: Sequence[tuple[Patch, Levels]], frame: Frame) -> None:
    """Darken the rim of every part where something lies behind it, and soften it against the ground."""
    canvas_edge = _rims(layers)
    roles = (canvas[canvas_edge].astype(np.int16) - FIRST_ROLE) // ROLE_ENTRIES
    canvas[canvas_edge] = (FIRST_ROLE + roles * ROLE_ENTRIES + EDGE).astype(np.uint8)
    ground = layers == 0
    beside = ground & _any_neighbour(~ground)
    y, x = np.nonzero(beside)
    if not len(y):
        return
    covered = _coverage(x, y, patches, frame)
    step = np.ceil(covered * COVERAGES).astype(np.uint8)
    seen = step > 0
    y, x, step = y[seen], x[seen], step[seen]
    on_body = canvas[y, x] >= BODY + COVERAGES // 2
    on_body &= canvas[y, x] < LINE_ON_PAPER
    canvas[y, x] = np.where(on_body, LINE_ON_BODY, LINE_ON_PAPER) - 1 + step


def _any_neighbour(values: Bools) -> Bools:
    found = np.zeros_like(values)
    for here, there in _BESIDE:
        found[here] |= values[there]
    return found


def _rims(layers: Bytes) -> Bools:
    """Give the pixels of parts that have a part further back, or the ground, beside them.

    A round yoke has no line against the body and the sleeves that it is knitted in one with.
    """
    rims = np.zeros(layers.shape, dtype=np.bool_)
    yoke, seamless = LAYERS["yoke"], (LAYERS["sleeve"], LAYERS["body"])
    for here, there in _BESIDE:
        own, other = layers[here], layers[there]
        line = other < own
        if (own == yoke).any():
            line &= ~((own == yoke) & (other >= min(seamless)))
        rims[here] |= line
    return rims


def _coverage(
    x: NDArray[np.intp], y: NDArray[np.intp], patches: Sequence[tuple[Patch, Levels]], frame: Frame
) -> NDArray[np.float64]:
    """Give how much of each pixel is fabric, from a grid of samples in it."""
    offsets = (np.arange(SAMPLES) + 0.5) / SAMPLES
    across, down = (grid.ravel() for grid in np.meshgrid(offsets, offsets))
    px = ((x[:, None] + across) / frame.scale + frame.left).ravel().astype(np.float32)
    py = ((y[:, None] + down) / frame.scale + frame.top).ravel().astype(np.float32)
    hit = np.zeros(len(px), dtype=np.bool_)
    for patch, levels in patches:
        left, top, right, bottom = patch.box
        near = np.flatnonzero(~hit & (px >= left) & (px <= right) & (py >= top) & (py <= bottom))
        if len(near):
            u, v = patch.lie.from_picture(px[near], py[near])
            hit[near] |= levels.inside(u.astype(np.float32), v)[0]
    covered: NDArray[np.float64] = hit.reshape(len(x), -1).mean(axis=1)
    return covered


def draw_body_line(canvas: Bytes, layers: Bytes, covered: Bytes) -> None:
    """Draw the outline of the body in dashes on the fabric that covers it, so that the ease is seen.

    :param covered: how far the body covers each pixel, as :func:`draw_body` gives it.
    """
    body = covered >= COVERAGES // 2
    line = body & _any_neighbour(~body) & (layers > LAYERS["inside band"])
    y, x = np.nonzero(line)
    shown = (x // DASH + y // DASH) % 2 == 0
    y, x = y[shown], x[shown]
    roles = (canvas[y, x].astype(np.int16) - FIRST_ROLE) // ROLE_ENTRIES
    canvas[y, x] = (FIRST_ROLE + roles * ROLE_ENTRIES + THROUGH).astype(np.uint8)
