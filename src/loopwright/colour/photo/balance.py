"""White balance by a piece of white paper that lies beside the yarn, in linear light.

A camera's picture is already rendered for a screen: the gains take away a cast and set the exposure right, they do not
undo the camera's own tone curve.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from loopwright.colour.photo.light import Bytes, linear_light
from loopwright.colour.photo.limits import PHOTO_LIMITS
from loopwright.colour.photo.point import Point
from loopwright.colour.spaces import Floats, lightness, srgb_from_linear
from loopwright.units import BadInput

__all__ = ["Paper", "balanced", "read_paper"]

_WANTED = "plain white paper"


@dataclass(frozen=True, slots=True)
class Paper:
    """What the paper says about light and camera.

    :ivar gains: what to multiply linear red, green and blue by.
    :ivar lightness_sd: spread of the patch in L*.
    """

    gains: tuple[float, float, float]
    lightness_sd: float


def read_paper(pixels: Bytes, at: Point) -> Paper:
    """Read the white paper about a tapped point: ``gain = 0.85 / median`` in each channel of linear light.

    That is the von Kries rule on the camera's own channels. The limits stand in ``data/colour/photo_limits.csv``.

    :param pixels: shape (h, w, 3).
    :raises BadInput: the patch is overexposed, uneven, or so dark or coloured that it is no paper.
    Source: J. von Kries, 1902, on independent gains; the reflectance of paper is from memory.
    """
    height, width, _ = pixels.shape
    row, column = at.place(height, width)
    reach = max(2, round(PHOTO_LIMITS["paper_radius"].value * max(height, width)))
    patch = pixels[max(0, row - reach) : row + reach + 1, max(0, column - reach) : column + reach + 1]
    clipped = (patch >= PHOTO_LIMITS["paper_clipped_from"].value).any(axis=2).mean()
    if clipped > PHOTO_LIMITS["paper_clipped_share"].value:
        raise BadInput("paper that is overexposed", f"{_WANTED} with some grey to it", hint="photograph it darker")
    light = linear_light(patch, max(patch.shape))
    spread = float(lightness(srgb_from_linear(light)).std())
    if spread > PHOTO_LIMITS["paper_spread"].value:
        raise BadInput(
            f"a patch that varies by {spread:.1f} L*",
            f"{_WANTED}, evenly lit",
            hint="tap farther from its edge, from print and from shadow",
        )
    median = np.median(light.reshape(-1, 3), axis=0)
    gains = PHOTO_LIMITS["paper_reflectance"].value / np.maximum(median, 1e-6)
    if gains.max() > PHOTO_LIMITS["gain_most"].value or gains.min() < PHOTO_LIMITS["gain_least"].value:
        raise BadInput(
            "something too dark or too coloured for paper",
            f"{_WANTED} in good light",
            hint="tap the paper, or photograph it by a window",
        )
    red, green, blue = gains.tolist()
    return Paper((red, green, blue), spread)


def balanced(light: Floats, paper: Paper | None) -> Floats:
    """Give the light as it would be under white light, the paper at its own reflectance; unchanged without paper.

    :param light: linear light, shape (..., 3).
    """
    return light if paper is None else np.asarray(light * np.array(paper.gains), dtype=np.float64)
