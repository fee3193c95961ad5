"""PNG files of numbered colours, and the same picture in other colours without encoding it anew.

Source: W3C, Portable Network Graphics: a PLTE chunk holds 3 bytes to an entry; each chunk ends in the CRC of its type
and content.
"""

from __future__ import annotations

import io
import struct
import zlib
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["direct_png", "indexed_png", "recoloured_png"]

_PALETTE: Final = b"PLTE"
COMPRESSION: Final = 4
"""Of zlib: smaller files by a tenth at 9 would take four times as long."""


def indexed_png(index: NDArray[np.uint8], palette: NDArray[np.uint8]) -> bytes:
    """Give a PNG of numbers and their colours.

    :param index: shape (height, width); :param palette: sRGB bytes, shape (256, 3).
    """
    from PIL import Image  # noqa: PLC0415

    made = Image.frombytes("P", (index.shape[1], index.shape[0]), index.tobytes())
    made.putpalette(palette.tobytes())
    return _saved(made)


def direct_png(srgb: NDArray[np.uint8]) -> bytes:
    """Give a PNG of sRGB bytes, shape (height, width, 3)."""
    from PIL import Image  # noqa: PLC0415

    return _saved(Image.fromarray(srgb, "RGB"))


def _saved(image: object) -> bytes:
    file = io.BytesIO()
    image.save(file, "PNG", compress_level=COMPRESSION)  # type: ignore[attr-defined]
    return file.getvalue()


def recoloured_png(png: bytes, palette: NDArray[np.uint8]) -> bytes:
    """Give an indexed PNG with another palette of 256 entries; nothing else in it changes."""
    at = png.index(_PALETTE)
    (length,) = struct.unpack(">I", png[at - 4 : at])
    content = palette.tobytes()
    assert length == len(content)
    chunk = _PALETTE + content
    return png[:at] + chunk + struct.pack(">I", zlib.crc32(chunk)) + png[at + 4 + length + 4 :]
