"""A picture that somebody sends: read within bounds into plain pixels, and pixels written anew.

Only pixels survive the reading. What a file says of place, time and camera is dropped, what it says of which way is up
and of its colours is applied first. Pillow is imported when a picture is read, not before.
"""

from __future__ import annotations

import io
import struct
import zlib
from contextlib import suppress
from typing import TYPE_CHECKING, Final

import numpy as np
import numpy.typing as npt

from loopwright.units import BadInput

if TYPE_CHECKING:
    from PIL.Image import Image as PillowImage

__all__ = ["MOST_BYTES", "MOST_PIXELS", "PICTURE_WANTED", "Pixels", "read_picture", "write_jpeg"]

MOST_BYTES: Final = 20_000_000
MOST_PIXELS: Final = 50_000_000
"""A picture of more pixels is not unpacked at all, however small its file is."""
_WHITE: Final = (255, 255, 255)
_ENOUGH: Final = 2400
"""Pixels on the shorter side from which a JPEG may be unpacked at half its size, a quarter or an eighth."""
_FORMATS: Final = ("JPEG", "PNG", "WEBP")
PICTURE_WANTED: Final = "a photo as JPEG, PNG or WebP"
_QUALITY: Final = 92

Pixels = npt.NDArray[np.uint8]
"""sRGB, shape (height, width, 3), upright."""


def read_picture(content: bytes, *, most_bytes: int = MOST_BYTES, ground: tuple[int, int, int] = _WHITE) -> Pixels:
    """Read a picture: upright, in sRGB, opaque; of several frames the first.

    :param content: the bytes of a JPEG, PNG or WebP file; what it is called or said to be does not matter.
    :param ground: what it lies on where it is transparent, in sRGB.
    :raises BadInput: it is another kind of file, broken, or too large.
    """
    from PIL import Image, ImageOps  # noqa: PLC0415 -- costs time that most commands need not spend

    if len(content) > most_bytes:
        raise BadInput(f"a file of {len(content) / 1e6:.1f} MB", f"{PICTURE_WANTED} of at most {most_bytes / 1e6:g} MB")
    try:
        with Image.open(io.BytesIO(content), formats=_FORMATS) as opened:
            width, height = opened.size
            if width * height > MOST_PIXELS:
                most = f"one of at most {MOST_PIXELS // 1_000_000} million pixels"
                raise BadInput(f"a picture of {width} × {height} pixels", most)
            opened.draft("RGB", (_ENOUGH, _ENOUGH))
            return _pixels(ImageOps.exif_transpose(opened), ground)
    except BadInput:
        raise
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as error:
        raise BadInput("a picture of far too many pixels", f"{PICTURE_WANTED} as a camera takes it") from error
    except (OSError, SyntaxError, ValueError, TypeError, KeyError, EOFError, struct.error, zlib.error) as error:
        raise BadInput(
            "a file that is no such picture, or only part of one",
            PICTURE_WANTED,
            hint="some phones save HEIC: choose JPEG",
        ) from error


def _pixels(picture: PillowImage, ground: tuple[int, int, int]) -> Pixels:
    """Give the pixels of a picture in sRGB, laid on its ground where it is transparent."""
    from PIL import Image  # noqa: PLC0415

    if picture.mode.startswith("I"):  # grey of 16 bits
        picture = Image.fromarray((np.asarray(picture).clip(0, 65535) >> 8).astype(np.uint8))
    profile = picture.info.get("icc_profile")
    if picture.mode in {"RGBA", "LA", "PA", "P"}:
        clear = picture.convert("RGBA")
        flat = Image.new("RGB", clear.size, ground)
        flat.paste(clear, mask=clear.getchannel("A"))
        picture = flat
    elif picture.mode != "RGB":
        picture, profile = picture.convert("RGB"), None
    if profile:
        picture = _in_srgb(picture, profile)
    return np.array(picture, dtype=np.uint8)


def _in_srgb(picture: PillowImage, profile: bytes) -> PillowImage:
    """Turn a camera's own colours into those of sRGB; a profile that cannot be read is left aside."""
    from PIL import ImageCms  # noqa: PLC0415

    with suppress(ImageCms.PyCMSError, OSError):
        source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        turned = ImageCms.profileToProfile(picture, source, ImageCms.createProfile("sRGB"), outputMode="RGB")
        picture = turned or picture
    return picture


def write_jpeg(pixels: Pixels, longest: int) -> bytes:
    """Write pixels as JPEG, with at most so many on the longer side, colours unthinned and nothing said but pixels.

    :param pixels: shape (h, w, 3).
    """
    from PIL import Image  # noqa: PLC0415

    picture = Image.fromarray(pixels)
    picture.thumbnail((longest, longest))
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=_QUALITY, subsampling=0, optimize=True)
    return out.getvalue()
