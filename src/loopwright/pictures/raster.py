"""From rows in their places to pixels: for every pixel the number of what is seen there.

Each pixel asks which stitch lies under its middle: that stitch's role and the shade of its stamp make the number. What
colour a number has is no concern of this module.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.pictures.index_layout import FIRST_ROLE, ROLE_ENTRIES
from loopwright.pictures.lie_flat import is_level
from loopwright.pictures.painting import Painting
from loopwright.pictures.patch import Patch
from loopwright.pictures.stitch_stamp import PHASES, SHADES, stamp_of

__all__ = ["Frame", "Levels", "draw_patch", "levels_of"]

Bytes = NDArray[np.uint8]
Floats = NDArray[np.float32]
Whole = NDArray[np.int32]

LEVELS_PER_ROW: Final = 16
MOST_LEVELS: Final = 1 << 16
BESIDE_PX: Final = 5
"""Width of the rim about a patch within which it is asked what is seen."""
PLY_RUNS: Final = 4
"""Places across a stitch, and up a row, at which either ply of a marl may lie in front."""
STAMP_GRAIN: Final = 4
"""Stamps are made for stitches of whole quarters of a pixel, so that few are needed."""


@dataclass(frozen=True, slots=True)
class Frame:
    """How a picture is cut out of the plane.

    :ivar left, top: cm of the plane at its upper left corner; :ivar scale: pixels to 1 cm.
    :ivar width, height: in pixels.
    """

    left: float
    top: float
    scale: float
    width: int
    height: int

    def window(self, box: tuple[float, float, float, float]) -> tuple[slice, slice]:
        """Give the rows and columns of pixels that a box of the plane may touch."""
        left, top, right, bottom = box
        columns = slice(
            max(int((left - self.left) * self.scale), 0),
            max(min(int((right - self.left) * self.scale) + 2, self.width), 0),
        )
        rows = slice(
            max(int((top - self.top) * self.scale), 0),
            max(min(int((bottom - self.top) * self.scale) + 2, self.height), 0),
        )
        return rows, columns

    def middles(self, window: tuple[slice, slice]) -> tuple[Floats, Floats]:
        """Give x of the middles of a window's pixels, as a row, and y, as a column."""
        rows, columns = window
        x = (np.arange(columns.start, columns.stop, dtype=np.float32) + 0.5) / self.scale + self.left
        y = (np.arange(rows.start, rows.stop, dtype=np.float32) + 0.5) / self.scale + self.top
        return x.astype(np.float32)[None, :], y.astype(np.float32)[:, None]


@dataclass(frozen=True, slots=True, eq=False)
class Levels:
    """The rows of a patch cut into levels of equal v; all arrays of shape (levels,).

    :ivar per_v: levels to one unit of v; :ivar begin: v of the first.
    :ivar left, right: ends of the fabric at this level.
    :ivar column, per_u: 16ths of a stitch at u = 0, and to one unit of u.
    :ivar last: the last 16th of the row.
    :ivar stamp, repeat: where the row of the stamp begins in ``shades``, and its length.
    :ivar cell, wide: where the row's roles begin in ``paints``, and whether each stitch has its own.
    :ivar twist: where in the turns of a marl's plies the row begins.
    """

    per_v: float
    begin: float
    left: Floats
    right: Floats
    column: Floats
    per_u: Floats
    last: Whole
    stamp: Whole
    repeat: Whole
    cell: Whole
    wide: NDArray[np.bool_]
    twist: Whole
    shades: Bytes
    paints: Bytes
    wraps: bool

    def inside(self, u: Floats, v: Floats) -> tuple[NDArray[np.bool_], Whole]:
        """Give whether points lie in the fabric, and their levels."""
        level = np.floor((v - self.begin) * self.per_v)
        within = (level >= 0) & (level < len(self.left))
        place = np.where(within, level, 0).astype(np.int32)
        return within & (u >= self.left[place]) & (u < self.right[place]), place

    def index(self, u: Floats, place: Whole) -> Bytes:
        """Give the numbers of points that lie in the fabric."""
        fine = (self.column[place] + u * self.per_u[place]).astype(np.int32)
        last = self.last[place]
        fine = fine % (last + 1) if self.wraps else np.clip(fine, 0, last)
        shade = self.shades[self.stamp[place] + fine % self.repeat[place]]
        if self.wide.any():
            paint = self.paints[self.cell[place] + np.where(self.wide[place], fine // PHASES, 0)]
        else:
            paint = self.paints[self.cell[place]]
        ply = _TWIST[(fine // (PHASES // PLY_RUNS) + self.twist[place]) % len(_TWIST)]
        return np.asarray(shade + paint + ply, dtype=np.uint8)


def _twist() -> Bytes:
    """Give which ply lies in front from one place to the next: in turn, but not always, as twisted strands do."""
    chance = np.random.default_rng(1907)
    turned = np.cumsum(chance.random(1021) < 0.72) % 2
    return (turned * SHADES).astype(np.uint8)


_TWIST: Final = _twist()


def levels_of(patch: Patch, painting: Painting, scale: float) -> Levels:
    """Give the levels of a patch.

    :param scale: pixels to 1 cm of the plane, which decides on the stamps.
    """
    rows = patch.rows
    begin, end = float(rows.ends[0]), float(rows.ends[-1])
    least = float(np.diff(rows.ends).min())
    count = int(min(max(np.ceil((end - begin) / least * LEVELS_PER_ROW), LEVELS_PER_ROW), MOST_LEVELS))
    v = begin + (np.arange(count) + 0.5) * (end - begin) / count
    row = np.clip(np.searchsorted(rows.ends, v, side="right") - 1, 0, rows.rows - 1)
    phase = ((v - rows.ends[row]) / np.diff(rows.ends)[row] * PHASES).astype(np.int32).clip(0, PHASES - 1)
    left, right = (np.interp(v, edge[:, 1], edge[:, 0]) for edge in rows.edges)
    stamp, repeat, shades = _stamps(patch, row, phase, scale)
    cell, wide, paints = _paints(patch, painting, row)
    column = (rows.column - rows.left * rows.per_u) * PHASES
    return Levels(
        per_v=count / (end - begin),
        begin=begin,
        left=left.astype(np.float32),
        right=right.astype(np.float32),
        column=column[row].astype(np.float32),
        per_u=(rows.per_u * PHASES)[row].astype(np.float32),
        last=np.maximum(rows.stitches[row] * PHASES - 1, 0).astype(np.int32),
        stamp=stamp,
        repeat=repeat,
        cell=cell,
        wide=wide,
        twist=((row * PLY_RUNS + phase // (PHASES // PLY_RUNS)) * 379 % len(_TWIST)).astype(np.int32),
        shades=shades,
        paints=paints,
        wraps=rows.wraps,
    )


def _stamps(patch: Patch, row: NDArray[np.intp], phase: Whole, scale: float) -> tuple[Whole, Whole, Bytes]:
    """Give where in the shades each level's row of the stamp begins, how long it is, and the shades of all stamps."""
    begins = np.zeros(patch.rows.rows, dtype=np.int64)
    numbers, rows, widths = begins.copy(), np.ones_like(begins), np.ones_like(begins)
    flat: list[Bytes] = []
    used = first = 0
    for one in patch.rows.stretches:
        size = (one.section.stitch_width_cm * scale, one.section.row_height_cm * scale)
        stitch_px, row_px = (max(round(px * STAMP_GRAIN), 1) / STAMP_GRAIN for px in size)
        stamp = stamp_of(one.section.fabric, stitch_px, row_px, inside=patch.inside)
        taken = slice(first, first + one.rows)
        begins[taken], rows[taken], widths[taken] = used, stamp.rows, stamp.shades.shape[1]
        numbers[taken] = one.first + np.arange(one.rows)
        flat.append(stamp.shades.ravel())
        used, first = used + stamp.shades.size, first + one.rows
    at = begins[row] + ((numbers[row] % rows[row]) * PHASES + phase) * widths[row]
    return at.astype(np.int32), widths[row].astype(np.int32), np.concatenate(flat)


def _paints(patch: Patch, painting: Painting, row: NDArray[np.intp]) -> tuple[Whole, NDArray[np.bool_], Bytes]:
    """Give where in the paints each level's row begins, whether its stitches differ, and the paints of all rows."""
    begins = np.zeros(patch.rows.rows, dtype=np.int64)
    wide = np.zeros(patch.rows.rows, dtype=np.bool_)
    flat: list[Bytes] = []
    used = first = 0
    for one in patch.rows.stretches:
        roles = painting.of(one.piece, one.section)[one.first : one.first + one.rows]
        taken = slice(first, first + one.rows)
        begins[taken] = used + np.arange(one.rows) * roles.shape[1]
        wide[taken] = roles.shape[1] > 1
        flat.append((FIRST_ROLE + roles.ravel() * ROLE_ENTRIES).astype(np.uint8))
        used, first = used + roles.size, first + one.rows
    return begins[row].astype(np.int32), wide[row], np.concatenate(flat)


def draw_patch(canvas: Bytes, layers: Bytes, patch: Patch, levels: Levels, frame: Frame) -> None:
    """Draw a patch over what lies behind it.

    :param canvas, layers: numbers of pixels and the layer that each shows, of the frame's size; both are changed.
    """
    window = frame.window(patch.box)
    if window[0].start >= window[0].stop or window[1].start >= window[1].stop:
        return
    x, y = frame.middles(window)
    if is_level(patch.lie):
        u, v = patch.lie.from_picture(x, y)
        inside, place = levels.inside(u, v)
        np.copyto(canvas[window], levels.index(u, place), where=inside)
        layers[window][inside] = patch.layer
        return
    down, across = np.nonzero(_near(patch, window, frame))
    u, v = patch.lie.from_picture(x[0, across], y[down, 0])
    inside, place = levels.inside(u.astype(np.float32), v)
    shown = (down[inside], across[inside])
    canvas[window][shown] = levels.index(u[inside].astype(np.float32), place[inside])
    layers[window][shown] = patch.layer


def _near(patch: Patch, window: tuple[slice, slice], frame: Frame) -> Bytes:
    """Give the pixels of a window that a patch covers, and some beside them; only these need a closer look."""
    from PIL import Image, ImageDraw  # noqa: PLC0415

    rows, columns = window
    origin = np.array([columns.start, rows.start])
    points = (patch.outline() - (frame.left, frame.top)) * frame.scale - origin - 0.5
    line = [(float(x), float(y)) for x, y in points]
    found = Image.new("L", (columns.stop - columns.start, rows.stop - rows.start))
    pen = ImageDraw.Draw(found)
    pen.polygon(line, fill=1)
    pen.line([*line, line[0]], fill=1, width=BESIDE_PX)
    return np.asarray(found)
