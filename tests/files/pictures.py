"""Small picture files, made for the tests."""

from __future__ import annotations

import io
import struct
import zlib

import numpy as np
from PIL import Image

__all__ = ["SVG", "bomb_png", "gradient", "png", "stored"]

SVG = b'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><script>alert(1)</script></svg>'


def gradient(width: int = 90, height: int = 60) -> Image.Image:
    """Red grows to the right, green downwards."""
    down, across = np.mgrid[0:height, 0:width]
    pixels = np.stack([across * 255 // (width - 1), down * 255 // (height - 1), np.full_like(down, 40)], axis=-1)
    return Image.fromarray(pixels.astype(np.uint8))


def stored(picture: Image.Image, kind: str, **options: object) -> bytes:
    """The bytes of a file."""
    out = io.BytesIO()
    picture.save(out, kind, **options)
    return out.getvalue()


def png(width: int, height: int, packed: bytes) -> bytes:
    """A PNG that says it has this size, whatever it holds (ISO/IEC 15948)."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", packed) + chunk(b"IEND", b"")


def bomb_png(width: int, height: int) -> bytes:
    """A small file that would unpack to width × height black pixels."""
    return png(width, height, zlib.compress(bytes(100_000)))
