"""A picture as light: stored bytes decoded to linear light, made smaller by true means."""

from __future__ import annotations

from typing import Final, TypeAlias

import numpy as np
import numpy.typing as npt

from loopwright.colour.spaces import Floats, linear_from_srgb

__all__ = ["Bytes", "block_mean", "linear_light"]

Bytes: TypeAlias = npt.NDArray[np.uint8]
"""A picture as stored: shape (height, width, 3), sRGB, a byte for each channel."""

_LIGHT_OF_BYTE: Final = linear_from_srgb(np.repeat(np.arange(256)[:, None] / 255, 3, axis=1))[:, 0]
_ROWS_AT_ONCE: Final = 64


def linear_light(pixels: Bytes, longest: int) -> Floats:
    """Give a picture as linear light with at most ``longest`` pixels on its longer side.

    Blocks of n × n pixels become their mean in linear light, as a coarser camera would have seen them; what is left
    over at the right and at the lower edge falls away. Only a strip is worked on at a time.

    :param pixels: shape (h, w, 3), neither side empty.
    :returns: shape (h // n, w // n, 3), 0 to 1, n the least whole number that will do.
    """
    height, width, _ = pixels.shape
    side = min(-(-max(height, width) // longest), height, width)
    rows, columns = height // side, width // side
    light = np.empty((rows, columns, 3))
    for first in range(0, rows, _ROWS_AT_ONCE):
        strip = pixels[first * side : min(first + _ROWS_AT_ONCE, rows) * side, : columns * side]
        light[first : first + _ROWS_AT_ONCE] = block_mean(_LIGHT_OF_BYTE[strip], side)
    return light


def block_mean(light: Floats, side: int) -> Floats:
    """Give the means of blocks of side × side; what is left over at the right and at the lower edge falls away.

    :param light: shape (h, w, 3), both at least ``side``.
    :returns: shape (h // side, w // side, 3).
    """
    rows, columns = light.shape[0] // side, light.shape[1] // side
    cut = light[: rows * side, : columns * side].reshape(rows, side, columns, side, 3)
    return np.asarray(cut.mean(axis=(1, 3)), dtype=np.float64)
