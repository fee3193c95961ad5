"""Photographs of invented skeins, drawn with every colour and share known.

A skein of strands with shade between them and towards its edge, with fibre noise, on a table with a cast shadow, white
paper beside it, coloured light, a camera's exposure and noise, stored as bytes of sRGB.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from loopwright.colour import Floats, linear_from_srgb, read_hexes, srgb_from_linear
from loopwright.colour.photo.light import Bytes
from loopwright.colour.photo.point import Point

__all__ = ["BROWN", "PAPER", "WARM", "WHITE_TABLE", "Scene", "draw"]

WARM = (1.25, 1.0, 0.62)
BROWN = "#8a6f54"
WHITE_TABLE = "#e9e6df"
PAPER = Point(0.13, 0.16)
PAPER_SHARE = 0.85


@dataclass(frozen=True, slots=True)
class Scene:
    """A picture, and what is true of it.

    :ivar yarn: where the skein is, shape (h, w).
    :ivar colour_at: for each pixel the place of its yarn colour.
    """

    pixels: Bytes
    yarn: np.ndarray
    colour_at: np.ndarray

    def shares(self, number: int) -> Floats:
        """The share of each colour in the skein."""
        return np.asarray(np.bincount(self.colour_at[self.yarn], minlength=number) / self.yarn.sum())


def draw(
    yarns: Sequence[str],
    *,
    table: str = BROWN,
    lamp: tuple[float, float, float] = WARM,
    exposure: float = 0.85,
    size: tuple[int, int] = (300, 400),
    cuts: Sequence[float] = (),
    seed: int = 0,
    shade_between: float = 0.55,
) -> Scene:
    """Draw a skein.

    :param yarns: its colours as ``#rrggbb``, one after the other along the skein.
    :param cuts: where each colour ends, as shares of the skein's length; left out, all are as long.
    :param shade_between: how much darker it is between two strands.
    """
    height, width = size
    dice = np.random.default_rng(seed)
    down, across = np.mgrid[0:height, 0:width]
    x = (across - 0.56 * width) / (0.33 * width)
    y = (down - 0.55 * height) / (0.30 * height)
    skein = x**2 + y**2 <= 1
    shadow = ((x - 0.10) ** 2 + (y - 0.22) ** 2 <= 1) & ~skein
    scene = np.broadcast_to(linear_from_srgb(read_hexes([table])[0]), (height, width, 3)).copy()
    scene *= 1 + 0.02 * dice.standard_normal((height, width, 1))
    scene[shadow] *= 0.35
    ends = np.array(cuts or [(at + 1) / len(yarns) for at in range(len(yarns))])
    colour_at = np.minimum(np.searchsorted(ends, (x + 1) / 2), len(yarns) - 1)
    strand = 0.5 + 0.5 * np.cos(2 * np.pi * (down + height / 100 * np.sin(across / width * 13)) / (height / 30))
    shade = (1 - shade_between * (1 - strand)) * np.sqrt(np.clip(1 - 0.75 * (x**2 + y**2), 0, 1))
    fibre = 1 + 0.07 * dice.standard_normal((height, width))
    wool = linear_from_srgb(read_hexes(yarns))[colour_at] * (shade * fibre)[..., None]
    scene[skein] = wool[skein]
    paper = (np.abs(across / width - PAPER.across) < 0.10) & (np.abs(down / height - PAPER.down) < 0.12)
    scene[paper] = PAPER_SHARE
    seen = scene * np.array(lamp) * exposure + 0.004 * dice.standard_normal(scene.shape)
    stored = np.clip(srgb_from_linear(np.clip(seen, 0, 1)), 0, 1)
    return Scene(np.floor(stored * 255 + 0.5).astype(np.uint8), skein, colour_at)
