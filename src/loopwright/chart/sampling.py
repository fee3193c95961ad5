"""A picture read and brought to the grid of a chart, in linear light."""

from __future__ import annotations

import io
import math
from typing import Final

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageCms, ImageOps, UnidentifiedImageError

from loopwright.colour import Floats, linear_from_srgb
from loopwright.fabric import Gauge
from loopwright.units import BadInput

__all__ = ["MOST_PIXELS", "Pixels", "area_means", "proportion_error", "read_picture", "rows_for"]

MOST_PIXELS: Final = 50_000_000
"""A picture of more points is not unpacked at all."""
_FORMATS: Final = ("JPEG", "PNG", "WEBP")
_PAPER: Final = (255, 255, 255)
_WANTED: Final = "a picture as JPEG, PNG or WebP"

Pixels = NDArray[np.uint8]
"""A picture in sRGB: shape (height, width, 3), its first row at the top."""


def read_picture(content: bytes) -> Pixels:
    """Read a picture: upright, in sRGB, what is transparent laid on white.

    :raises BadInput: it is no picture that can be read, or too large.
    """
    try:
        with Image.open(io.BytesIO(content), formats=_FORMATS) as opened:
            width, height = opened.size
            if width * height > MOST_PIXELS:
                raise BadInput(found=f"a picture of {width} × {height} points", wanted="one of at most 50 million")
            return np.asarray(_flat(ImageOps.exif_transpose(opened)), dtype=np.uint8)
    except BadInput:
        raise
    except (UnidentifiedImageError, Image.DecompressionBombError, OSError, SyntaxError, ValueError, EOFError) as error:
        raise BadInput(found="a file that is no such picture", wanted=_WANTED) from error


def _flat(picture: Image.Image) -> Image.Image:
    """Give a picture in sRGB without transparency."""
    profile = picture.info.get("icc_profile")
    if picture.mode in {"RGBA", "LA", "PA", "P"}:
        clear = picture.convert("RGBA")
        flat = Image.new("RGB", clear.size, _PAPER)
        flat.paste(clear, mask=clear.getchannel("A"))
        picture = flat
    else:
        picture = picture.convert("RGB")
    if not profile:
        return picture
    try:
        own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        turned = ImageCms.profileToProfile(picture, own, ImageCms.createProfile("sRGB"))
    except (ImageCms.PyCMSError, OSError):  # a profile that cannot be read: the colours stand as they are
        return picture
    return turned or picture


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
