"""A photo of yarn written anew, as it is kept: what it says of place, time and camera does not survive."""

from __future__ import annotations

import io
from typing import Final

from django.conf import settings
from PIL import Image, ImageOps

from loopwright.colour.pixels import read_picture
from loopwright.store.photos import LotPhoto

__all__ = ["LONGEST_SIDE", "SMALL_SIDE", "read_photo"]

LONGEST_SIDE: Final = 1280
SMALL_SIDE: Final = 192
_QUALITY: Final = 85
_PAPER: Final = (251, 251, 250)


def read_photo(content: bytes) -> LotPhoto:
    """Read a photo and write it anew as JPEG in sRGB, upright, at most 1280 pixels on a side, with a small one beside.

    :raises BadInput: it is no photo that can be read, or too large.
    """
    picture = Image.fromarray(read_picture(content, most_bytes=settings.UPLOAD_LIMIT_BYTES, ground=_PAPER))
    picture.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    small = ImageOps.fit(picture, (SMALL_SIDE, SMALL_SIDE))
    return LotPhoto(_jpeg(picture), _jpeg(small), picture.width, picture.height)


def _jpeg(picture: Image.Image) -> bytes:
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=_QUALITY, optimize=True)
    return out.getvalue()
