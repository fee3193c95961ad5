"""A close view of a fabric: every stitch as it lies, in the proportion of its gauge, marls with their plies.

Each pixel adds up the light of the yarns that it sees: a stitch's own and what reaches into its cell from the rows
above and below. The plies of a marl are split by where round its twist the yarn is, which goes on from stitch to stitch
along a row. Light adds up to the colour of the yarn over the whole: colours are mixed as light, not as stored values.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.colour import linear_from_srgb, read_hexes
from loopwright.fabric import Gauge
from loopwright.pictures.loop_tile import OWNERS, loop_tile
from loopwright.pictures.png import direct_png
from loopwright.pictures.stitch_stamp import fabric_cells, relief_of
from loopwright.pictures.svg import NEUTRAL
from loopwright.units import BadInput

__all__ = ["FabricView", "cell_size_px", "fabric_png", "fabric_view"]

Floats = NDArray[np.float32]

SAMPLES: Final = 3
"""Of the stitch to a pixel, across and up."""
PHASES: Final = 16
TURN_PER_STITCH: Final = 0.33
"""Of the twist, beyond whole turns; by the model's loop and twist length."""
DRIFT: Final = 0.06
"""Standard deviation of that from stitch to stitch, in turns; by eye."""
HEATHER_STITCH, HEATHER_GRAIN = 0.07, 0.05
"""Relative spread of lightness from stitch to stitch, and from pixel to pixel, of a heather; by eye."""
MOST_STRANDS: Final = 4
MOST_PX: Final = 1600
KINDS: Final = "kpo"


@dataclass(frozen=True, slots=True, eq=False)
class FabricView:
    """A fabric seen from near.

    :ivar srgb: bytes of shape (height, width, 3).
    :ivar cell: width and height of a stitch in pixels.
    """

    srgb: NDArray[np.uint8]
    cell: tuple[int, int]


def cell_size_px(gauge: Gauge, about_px: float) -> tuple[int, int]:
    """Give whole pixels for a stitch about so wide, in the proportion nearest to the gauge's."""
    ratio = gauge.stitches_per_10cm / gauge.rows_or_usual_per_10cm
    low, high = max(round(about_px * 0.8), 4), max(round(about_px * 1.2), 5)
    wide = min(range(low, high + 1), key=lambda px: abs(round(px * ratio) / px / ratio - 1) + abs(px - about_px) / 1e4)
    return wide, max(round(wide * ratio), 2)


def fabric_view(
    gauge: Gauge,
    cells: Sequence[Sequence[str]],
    colours: Mapping[str, Sequence[str]],
    *,
    fabric: str = "stocking stitch",
    heather: Sequence[str] = (),
    width_px: int = 640,
    height_px: int = 480,
    about_px: float = 26.0,
) -> FabricView:
    """Draw a fabric from near.

    :param cells: roles of the stitches, the lowest row first, from left to right; repeated as far as the picture goes.
    :param colours: the strands of each role as ``#rrggbb``, held together; a role left out is neutral grey.
    :param fabric: by its British name.
    :param heather: roles whose yarn is mottled.
    :param about_px: width of a stitch.
    :raises BadInput: more strands than can be told apart, or no stitch.
    """
    if not cells or not cells[0]:
        raise BadInput(found="a fabric without stitches", wanted="one stitch or more")
    width_px, height_px = min(width_px, MOST_PX), min(height_px, MOST_PX)
    wide, high = cell_size_px(gauge, about_px)
    rows, columns = -(-height_px // high) + 2, -(-width_px // wide)
    roles = list(dict.fromkeys(role for row in cells for role in row))
    strands = [linear_from_srgb(read_hexes(colours.get(role) or (NEUTRAL,))) for role in roles]
    plies = max(len(one) for one in strands)
    if plies > MOST_STRANDS:
        raise BadInput(found=f"{plies} strands", wanted=f"at most {MOST_STRANDS} held together")
    place = {role: at for at, role in enumerate(roles)}
    grid = np.array(
        [[place[cells[r % len(cells)][c % len(cells[r % len(cells)])]] for c in range(columns)] for r in range(rows)]
    )
    chance = np.random.default_rng(1907)
    light = _light(strands, plies)[grid] * _mottle(grid, roles, heather, chance)
    letters = fabric_cells(fabric)
    kind = np.array([[_kind(letters, r - 1, c) for c in range(columns)] for r in range(rows)])
    relief = np.array([[relief_of(_letter(letters, r - 1, c))[0] for c in range(columns)] for r in range(rows)])
    turns = np.cumsum(chance.normal(TURN_PER_STITCH, DRIFT, grid.shape), axis=1) + chance.random((rows, 1))
    phases = (turns % 1 * PHASES).astype(np.intp) if plies > 1 else np.zeros_like(grid)
    weights = _weights(wide, high, plies)
    inner = slice(1, rows - 1)
    picture = np.zeros((rows - 2, columns, high, wide, 3), dtype=np.float32)
    for at, owner in enumerate(OWNERS):
        theirs = slice(1 + owner, rows - 1 + owner)
        shown = weights[kind[inner], phases[theirs], at] * relief[inner, :, None, None, None].astype(np.float32)
        picture += np.einsum("rcpyx,rcpk->rcyxk", shown, light[theirs], optimize=True)
    flat = picture.transpose(0, 2, 1, 3, 4).reshape((rows - 2) * high, columns * wide, 3)[::-1]
    flat = flat[-height_px:, :width_px]
    if any(role in heather for role in roles):
        flat = flat * (1 + chance.normal(0, HEATHER_GRAIN, (*flat.shape[:2], 1))).astype(np.float32)
    return FabricView(_encoded(flat), (wide, high))


def fabric_png(
    gauge: Gauge, cells: Sequence[Sequence[str]], colours: Mapping[str, Sequence[str]], *, fabric: str, width_px: int
) -> bytes:
    """Give a close view as a PNG, three quarters as high as wide; see :func:`fabric_view`."""
    view = fabric_view(
        gauge, cells, colours, fabric=fabric, width_px=width_px, height_px=width_px * 3 // 4, about_px=width_px / 24
    )
    return direct_png(view.srgb)


def _letter(letters: Sequence[str], row: int, column: int) -> str:
    line = letters[row % len(letters)]
    return line[column % len(line)]


def _kind(letters: Sequence[str], row: int, column: int) -> int:
    letter = _letter(letters, row, column)
    return KINDS.index("o") if letter == "o" else int(relief_of(letter)[1])


def _light(strands: Sequence[NDArray[np.float64]], plies: int) -> Floats:
    """Give linear light by role and ply: of one strand alone, all plies are it."""
    return np.array([[one[ply * len(one) // plies] for ply in range(plies)] for one in strands], dtype=np.float32)


def _mottle(
    grid: NDArray[np.intp], roles: Sequence[str], heather: Sequence[str], chance: np.random.Generator
) -> Floats:
    is_mottled = np.array([role in heather for role in roles])[grid]
    spread = chance.normal(0, HEATHER_STITCH, grid.shape) * is_mottled
    return np.asarray((1 + spread)[..., None, None], dtype=np.float32)


@lru_cache(maxsize=8)
def _weights(wide: int, high: int, plies: int) -> Floats:
    """Give how much of each ply of each owner is seen in each pixel of a cell.

    Shape (kinds, phases, owners, plies, high, wide); over owners and plies they average 1.
    """
    phases = PHASES if plies > 1 else 1
    made = np.zeros((len(KINDS), phases, len(OWNERS), plies, high, wide), dtype=np.float32)
    for kind, name in enumerate(KINDS):
        tile = loop_tile(wide * SAMPLES, high * SAMPLES, purl=name == "p")
        light = tile.light * _hole(tile.light.shape) if name == "o" else tile.light
        owner = np.where(tile.owner == 2, 0, tile.owner)
        for phase in range(phases):
            ply = ((tile.turn + phase / phases) % 1 * plies).astype(np.intp)
            for at, whose in enumerate(OWNERS):
                for one in range(plies):
                    seen = light * ((owner == whose) & (ply == one))
                    made[kind, phase, at, one] = seen.reshape(high, SAMPLES, wide, SAMPLES).mean(axis=(1, 3))
    return made


def _hole(shape: tuple[int, ...]) -> NDArray[np.float64]:
    y, x = ((np.arange(size) + 0.5) / size - 0.5 for size in shape)
    return np.where(np.hypot(x, y[:, None]) < 0.36, 0.12, 1.0)


_CURVE: Final = np.rint(
    255
    * np.where(
        (steps := np.arange(4097) / 4096) <= 0.0031308,
        12.92 * steps,
        1.055 * np.maximum(steps, 0.0031308) ** (1 / 2.4) - 0.055,
    )
).astype(np.uint8)
"""sRGB bytes of linear light in 4096 steps, as :func:`~loopwright.colour.srgb_from_linear` encodes it."""


def _encoded(light: Floats) -> NDArray[np.uint8]:
    return np.asarray(_CURVE[np.rint(np.clip(light, 0, 1) * 4096).astype(np.intp)], dtype=np.uint8)
