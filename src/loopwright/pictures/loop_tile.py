"""One stitch of plain knitting as it is seen: which row's yarn lies in front, how light it is, which ply shows.

The yarn is a round tube about a parametric loop: ``(t + a·sin 2t, h·cos t, d·cos 2t)``, one stitch wide in 2π, rows
``h + ½`` apart. Only the legs of a loop are seen on the right side, a V that is open at the top, and they reach into
the cells of the rows above and below. Light comes from the upper left; where strands lie deep it is dark.
Source: K. Crane, A Simple Parametric Model of Plain-Knit Yarns (research note); light and tube width by eye.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["OWNERS", "LoopTile", "loop_tile"]

Floats = NDArray[np.float64]

LEAN: Final = 1.45
"""How far a loop leans out: a."""
HEIGHT: Final = 4.0
DEPTH: Final = 1.0
RADIUS: Final = 1.0
"""Of the yarn, where a stitch is 2π wide: as plump as hand-knitted wool. 0.85 leaves holes."""
ROW: Final = HEIGHT + 0.5
TURNS: Final = 2 * np.pi
TWIST_LENGTH: Final = 10.5
"""Length of yarn to one turn of its plies, in the same measure; by eye."""
LIGHT: Final = np.array([-0.35, 0.55, 0.76]) / np.linalg.norm([-0.35, 0.55, 0.76])
AMBIENT: Final = 0.36
POINTS: Final = 128
"""Spheres along one stitch of yarn; their hull is the tube to within a hundredth of its radius."""
OWNERS: Final = (-1, 0, 1)
"""Whose yarn shows in a cell: of the row below, its own, of the row above."""


@dataclass(frozen=True, slots=True, eq=False)
class LoopTile:
    """One cell of knitting, from its lower left corner up, in samples.

    :ivar light: how light each sample is; averages 1 over the cell; shape (high, wide).
    :ivar owner: −1, 0 or 1 as :data:`OWNERS`; 2 where nothing but a hole is seen.
    :ivar turn: where round its twist the yarn is at this sample, in turns from the begin of its stitch.
    """

    light: Floats
    owner: NDArray[np.int8]
    turn: Floats


@lru_cache(maxsize=32)
def loop_tile(wide: int, high: int, *, purl: bool = False) -> LoopTile:
    """Give one cell in so many samples across and up.

    :param purl: the wrong side, where the heads of the loops lie in front.
    """
    t, row, centre, across = _spheres(purl=purl)
    x = ((np.arange(wide) + 0.5) / wide + 0.5) * TURNS
    y = ((np.arange(high) + 0.5) / high - 0.5) * ROW
    shape = (high, wide)
    light, turn = np.zeros(shape), np.zeros(shape)
    owner = np.full(shape, 2, dtype=np.int8)
    for place, level in enumerate(y):
        near = np.abs(centre[:, 1] - level) < RADIUS
        c, side = centre[near], across[near]
        dx, dy = x[:, None] - c[:, 0], level - c[:, 1]
        inside = RADIUS**2 - dx**2 - dy**2
        z = np.where(inside > 0, c[:, 2] + np.sqrt(np.maximum(inside, 0)), -np.inf)
        first = z.argmax(axis=1)
        samples = np.arange(wide)
        top = z[samples, first]
        seen = np.isfinite(top)
        normal = np.stack((dx[samples, first], dy[first], np.where(seen, top, 0) - c[first, 2]), axis=1) / RADIUS
        angle = np.arctan2((normal * side[first]).sum(axis=1), np.maximum(normal[:, 2], 1e-6)) / TURNS
        along = t[near][first] * _LENGTH_OF_T
        turn[place] = along / TWIST_LENGTH + angle
        owner[place] = np.where(seen, row[near][first], 2)
        light[place] = np.where(seen, _light(normal, np.where(seen, top, 0), along, angle), 0.03)
    return LoopTile(light / light.mean(), owner, turn)


def _light(normal: Floats, depth: Floats, along: Floats, angle: Floats) -> Floats:
    lambert = np.clip(normal @ LIGHT, 0, None)
    deep = np.clip((depth + 1) / (DEPTH + RADIUS + 1), 0, 1) ** 1.2
    plies = 1 - 0.16 * (0.5 + 0.5 * np.cos(3 * TURNS * (angle + along / (5 * RADIUS * TURNS))))
    shaded: Floats = (AMBIENT + (1 - AMBIENT) * lambert) * (0.35 + 0.65 * deep) * plies
    return shaded


def _spheres(*, purl: bool) -> tuple[Floats, NDArray[np.int8], Floats, Floats]:
    """Give the spheres that can be seen in one cell: place along the stitch, row, centre, direction to the side.

    The middle of a cell is the middle of its row's legs.
    """
    t = np.arange(0, 2 * POINTS) / POINTS * TURNS
    curve = np.stack((t + LEAN * np.sin(2 * t), HEIGHT * np.cos(t), DEPTH * np.cos(2 * t)), axis=1)
    along = np.stack((1 + 2 * LEAN * np.cos(2 * t), -HEIGHT * np.sin(t), -2 * DEPTH * np.sin(2 * t)), axis=1)
    side = np.stack((along[:, 1], -along[:, 0], np.zeros_like(t)), axis=1)
    side /= np.maximum(np.linalg.norm(side, axis=1, keepdims=True), 1e-9)
    if not purl:
        curve[:, 2] *= -1
    rows = range(-2, 3)
    centres = np.concatenate([curve + np.array([0, ROW * row, 0]) for row in rows])
    owners = np.repeat(np.array([min(max(row, -1), 1) for row in rows], dtype=np.int8), len(t))
    return np.tile(t, len(rows)), owners, centres, np.tile(side, (len(rows), 1))


def _length_of_t() -> float:
    """Give the length of yarn in one stitch over 2π."""
    t = np.linspace(0, TURNS, 721)
    curve = np.stack((t + LEAN * np.sin(2 * t), HEIGHT * np.cos(t), DEPTH * np.cos(2 * t)), axis=1)
    return float(np.linalg.norm(np.diff(curve, axis=0), axis=1).sum() / TURNS)


_LENGTH_OF_T: Final = _length_of_t()
