"""What the page of a photo shows: the picture, what of it was taken for yarn, and the colours found."""

from __future__ import annotations

import base64
from dataclasses import dataclass
from typing import Final

import numpy as np

from loopwright.colour import Floats, srgb_from_linear, write_hex
from loopwright.colour.photo import Bytes, PhotoColours, Region, linear_light
from loopwright.colour.photo.region import LONGEST
from loopwright.colour.pixels import write_jpeg
from loopwright.pictures.chip import colour_chip
from loopwright.season.photo_words import balance_text, doubt_text, share_text
from loopwright.season.wording import Wording
from loopwright.units import write_share

__all__ = ["ColourRow", "FoundView", "found_view"]

POINT_OUT: Final = "If there is white paper in it, tap it in the picture below and find the colours again."
_VEIL: Final = 0.82
_VEIL_GREY: Final = 0.55
"""How far what is not yarn is dimmed, and towards which grey of linear light."""


@dataclass(frozen=True, slots=True)
class ColourRow:
    """One colour found, as the form offers it."""

    place: int
    written: str
    chip: str
    share: str
    about: str


@dataclass(frozen=True, slots=True)
class FoundView:
    """What a photo says.

    :ivar seen: the picture with all but the yarn dimmed, JPEG in base 64.
    """

    sentence: str
    rows: tuple[ColourRow, ...]
    reasons: tuple[str, ...]
    seen: str


def found_view(found: PhotoColours, pixels: Bytes) -> FoundView:
    """Lay out what was found."""
    rows = tuple(
        ColourRow(
            place=place,
            written=write_hex(one.srgb),
            chip=colour_chip(write_hex(one.srgb), f"colour {place}, {write_hex(one.srgb)}"),
            share=share_text(one),
            about=f"± {one.doubt:.0f} ΔE00",
        )
        for place, one in enumerate(found.colours, start=1)
    )
    named = Wording.counted(len(rows), "colour").capitalize()
    reasons = [
        *filter(None, (doubt_text(found), balance_text(found), "" if found.paper else POINT_OUT)),
        f"Yarn: {found.region.found_by}, {write_share(found.region.share)} of the picture.",
    ]
    if found.left_out > 0.005:
        reasons.append(f"{write_share(found.left_out)} of the yarn is in colours too small to tell.")
    if found.region.found_by == "a disc about the tap":
        reasons.append("No yarn was found apart from its ground there: only what lies about the tap was measured.")
    whole = "." if len(rows) == 1 else f": {Wording.listed([row.share for row in rows])} of the yarn."
    return FoundView(named + whole, rows, tuple(reasons), _seen(pixels, found.region))


def _seen(pixels: Bytes, region: Region) -> str:
    light: Floats = linear_light(pixels, LONGEST)
    light[~region.mask] = light[~region.mask] * (1 - _VEIL) + _VEIL_GREY * _VEIL
    small = np.floor(np.clip(srgb_from_linear(light), 0, 1) * 255 + 0.5).astype(np.uint8)
    return base64.b64encode(write_jpeg(small, LONGEST)).decode()
