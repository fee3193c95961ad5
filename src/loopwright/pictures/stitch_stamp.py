"""Small likenesses of fabrics: how light each point of a stitch is where it is only a few pixels wide.

A stamp is what a camera with pixels of this size would see of the fabric, sampled finely over one repeat of stitches
and rows; so no false pattern arises where stitches and pixels do not agree. Its mean lightness is 1.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.pictures.loop_tile import loop_tile

__all__ = ["FACTORS", "PHASES", "SHADES", "Stamp", "fabric_cells", "relief_of", "stamp_of"]

PHASES: Final = 16
"""Samples across one stitch, and up one row."""
SHADES: Final = 9
FACTORS: Final = tuple(round(0.6 + 0.1 * shade, 1) for shade in range(SHADES))
"""Light of each shade over the yarn's own; the middle one is the yarn's."""
STRENGTH: Final = 0.62
"""How much of its light and dark a fabric keeps where it is drawn small; by eye, so that colours stay quiet."""
PIXEL: Final = 0.45
"""Standard deviation of a pixel's view, in pixels."""
INSIDE: Final = 0.84
"""Light on the inside of a garment over that on its outside."""

_CELLS: Final[dict[str, tuple[str, ...]]] = {
    "garter stitch": ("r", "d"),
    "1x1 rib": ("kP",),
    "2x2 rib": ("kkPP",),
    "brioche": ("kP",),
    "moss stitch": ("kp", "pk"),
    "rib and moss stitch": ("kkkpkp", "kkkkpk"),
    "slipped stitch": ("kk", "kd"),
    "lace": ("kkkkkk", "kkokkk", "kkkkkk", "kkkkko"),
    "lace on both sides": ("kkko", "okkk"),
    "sparse cables": (*["Pkkkkkkp" + "k" * 8] * 7, "Pddkkddp" + "k" * 8),
    "dense cables": (*["Pkkkkp"] * 5, "Pdkkdp"),
}
"""What is not here looks like plain knitting."""

_RELIEF: Final = {"k": (1.0, False), "p": (0.9, True), "P": (0.74, True), "r": (1.1, True), "d": (0.74, False)}
"""Light of a knit and of a purl stitch, of a purl that lies back, a ridge and a furrow; and whether it is purled."""
_HOLE: Final = 0.25


def fabric_cells(fabric: str) -> tuple[str, ...]:
    """Give one repeat of a fabric, the first row first.

    k is a knit stitch, p a purl stitch, P one that lies back, r a stitch of a ridge, d one of a furrow, o a hole.
    """
    return _CELLS.get(fabric, ("k",))


def relief_of(letter: str) -> tuple[float, bool]:
    """Give the light of a stitch over that of plain knitting, and whether it is purled."""
    return _RELIEF["k" if letter == "o" else letter]


@dataclass(frozen=True, slots=True, eq=False)
class Stamp:
    """One repeat of a fabric in shades; shape (rows × phases, stitches × phases), the first row first."""

    shades: NDArray[np.uint8]

    @property
    def rows(self) -> int:
        """Give the rows of one repeat."""
        return int(self.shades.shape[0]) // PHASES

    @property
    def stitches(self) -> int:
        """Give the stitches of one repeat."""
        return int(self.shades.shape[1]) // PHASES


@lru_cache(maxsize=256)
def stamp_of(fabric: str, stitch_px: float, row_px: float, *, inside: bool = False) -> Stamp:
    """Give the stamp of a fabric.

    :param fabric: by its British name.
    :param stitch_px, row_px: pixels to the width of a stitch and to the height of a row.
    :param inside: seen from the wrong side, and in the shadow of the garment.
    """
    cells = fabric_cells(fabric)
    if inside:
        cells = tuple(row[::-1].translate(str.maketrans("kpPd", "pkkp")) for row in cells)
    light = np.block([[_cell(letter) for letter in row] for row in cells])
    seen = 1 + STRENGTH * (_blurred(light, PIXEL / stitch_px, PIXEL / row_px) / light.mean() - 1)
    if inside:
        seen *= INSIDE
    shades = np.rint((seen - FACTORS[0]) / (FACTORS[1] - FACTORS[0]))
    return Stamp(np.clip(shades, 0, SHADES - 1).astype(np.uint8))


@lru_cache(maxsize=8)
def _cell(letter: str) -> NDArray[np.float64]:
    if letter == "o":
        x = (np.arange(PHASES) + 0.5) / PHASES - 0.5
        hole = np.hypot(x, x[:, None]) < 0.42
        return np.where(hole, _HOLE, _cell("k"))
    relief, purl = _RELIEF[letter]
    fine = loop_tile(3 * PHASES, 3 * PHASES, purl=purl).light
    light: NDArray[np.float64] = relief * fine.reshape(PHASES, 3, PHASES, 3).mean(axis=(1, 3))
    return light


def _blurred(light: NDArray[np.float64], across: float, up: float) -> NDArray[np.float64]:
    """Give a repeating picture as seen by pixels of this standard deviation, in stitches and rows."""
    waves_up = np.fft.fftfreq(light.shape[0], 1 / PHASES)[:, None]
    waves_across = np.fft.rfftfreq(light.shape[1], 1 / PHASES)
    weight = np.exp(-2 * np.pi**2 * ((waves_up * up) ** 2 + (waves_across * across) ** 2))
    return np.fft.irfft2(np.fft.rfft2(light) * weight, light.shape)
