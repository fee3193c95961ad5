"""A photo of yarn, read within bounds and written anew: what it says of place, time and camera does not survive."""

from __future__ import annotations

import io
from contextlib import suppress
from typing import Final

from PIL import Image, ImageCms, ImageOps, UnidentifiedImageError

from loopwright.store.photos import LotPhoto
from loopwright.units import BadInput

__all__ = ["MOST_BYTES", "MOST_PIXELS", "read_photo"]

MOST_BYTES: Final = 5_000_000
MOST_PIXELS: Final = 50_000_000
"""A picture of more points is not unpacked at all."""
LONGEST_SIDE: Final = 1280
SMALL_SIDE: Final = 192
_QUALITY: Final = 85
_FORMATS: Final = ("JPEG", "PNG", "WEBP")
_WANTED: Final = "a photo as JPEG, PNG or WebP"
_PAPER: Final = (251, 251, 250)


def read_photo(content: bytes) -> LotPhoto:
    """Read a photo and write it anew as JPEG in sRGB, upright, at most 1280 pixels on a side, with a small one beside.

    :raises BadInput: it is no photo that can be read, or too large.
    """
    if len(content) > MOST_BYTES:
        raise BadInput(f"a file of {len(content) / 1e6:.1f} MB", f"{_WANTED} of at most {MOST_BYTES // 1_000_000} MB")
    try:
        with Image.open(io.BytesIO(content), formats=_FORMATS) as opened:
            width, height = opened.size
            if width * height > MOST_PIXELS:
                raise BadInput(f"a picture of {width} × {height} pixels", "one of at most 50 million pixels")
            opened.draft("RGB", (LONGEST_SIDE * 2, LONGEST_SIDE * 2))  # a JPEG is unpacked no larger than is needed
            picture = _flat(ImageOps.exif_transpose(opened))
    except BadInput:
        raise
    except (UnidentifiedImageError, Image.DecompressionBombError, OSError, SyntaxError, ValueError, EOFError) as error:
        raise BadInput("a file that is no such picture", _WANTED, hint="some phones save HEIC: choose JPEG") from error
    picture.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    small = ImageOps.fit(picture, (SMALL_SIDE, SMALL_SIDE))
    return LotPhoto(_jpeg(picture), _jpeg(small), picture.width, picture.height)


def _flat(picture: Image.Image) -> Image.Image:
    """Give a picture in sRGB without transparency: a camera's own colours are turned into those of a screen."""
    profile = picture.info.get("icc_profile")
    if picture.mode in {"RGBA", "LA", "PA", "P"}:
        clear = picture.convert("RGBA")
        flat = Image.new("RGB", clear.size, _PAPER)
        flat.paste(clear, mask=clear.getchannel("A"))
        picture = flat
    else:
        picture = picture.convert("RGB")
    if profile:
        with suppress(ImageCms.PyCMSError, OSError):  # a profile that cannot be read is left aside
            source = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            turned = ImageCms.profileToProfile(picture, source, ImageCms.createProfile("sRGB"), outputMode="RGB")
            picture = turned or picture
    return picture


def _jpeg(picture: Image.Image) -> bytes:
    clean = Image.new("RGB", picture.size)
    clean.paste(picture)  # points alone: whatever else came with the file stays behind
    out = io.BytesIO()
    clean.save(out, "JPEG", quality=_QUALITY, optimize=True)
    return out.getvalue()
