"""One garment in several colourways side by side, as one picture."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from importlib.resources import files
from typing import Any, Final

import numpy as np

from loopwright.pictures.colourway import Colourway
from loopwright.pictures.front_back import GarmentPicture
from loopwright.pictures.index_layout import colours_of_index
from loopwright.pictures.png import direct_png
from loopwright.pictures.svg import INK, NEUTRAL, PAPER
from loopwright.units import BadInput

__all__ = ["MOST_COLOURWAYS", "colourway_card"]

MOST_COLOURWAYS: Final = 24
WORDS: Final = 0.034
"""Height of the words, of a picture's width."""
GAP: Final = 0.03
CHIP: Final = 1.15
"""Side of a chip, of the height of the words."""


def colourway_card(garment: GarmentPicture, colourways: Sequence[Colourway]) -> bytes:
    """Give a PNG with a garment in every colourway, its name and its colours below it.

    :raises BadInput: no colourway, or too many.
    """
    from PIL import Image, ImageDraw  # noqa: PLC0415

    if not 0 < len(colourways) <= MOST_COLOURWAYS:
        raise BadInput(found=f"{len(colourways)} colourways", wanted=f"from 1 to {MOST_COLOURWAYS}")
    high, wide = garment.index.shape
    words = max(round(WORDS * max(wide, 480)), 11)
    gap = max(round(GAP * wide), 8)
    foot = round(words * 2.1)
    columns = _columns(len(colourways), wide + gap, high + foot + gap)
    rows = -(-len(colourways) // columns)
    card = Image.new("RGB", (columns * (wide + gap) + gap, rows * (high + foot + gap) + gap), PAPER)
    pen = ImageDraw.Draw(card)
    for place, one in enumerate(colourways):
        x = gap + place % columns * (wide + gap)
        y = gap + place // columns * (high + foot + gap)
        palette = colours_of_index(garment.roles, one.colours)
        card.paste(Image.fromarray(palette[garment.index], "RGB"), (x, y))
        _caption(pen, one, garment.roles, (x + gap // 2, y + high + words // 3), words)
    return direct_png(np.asarray(card))


def _columns(count: int, wide: float, high: float) -> int:
    """Give the columns that bring a card nearest to three wide by two high."""
    return min(range(1, count + 1), key=lambda n: (abs(math.log(n * wide / (-(-count // n) * high) / 1.5)), n))


def _caption(pen: Any, one: Colourway, roles: Sequence[str], at: tuple[float, float], size: int) -> None:
    x, y = at
    side = round(size * CHIP)
    for role in roles:
        strands = one.colours.get(role) or (NEUTRAL,)
        for place, strand in enumerate(strands):
            part = side / len(strands)
            pen.rectangle((x + place * part, y, x + (place + 1) * part - 1, y + side), fill=strand)
        x += side + size // 3
    pen.text((x + size // 3, y + side / 2), one.name, fill=INK, font=_letters(size), anchor="lm")


@lru_cache(maxsize=8)
def _letters(size: int) -> Any:
    from PIL import ImageFont  # noqa: PLC0415

    folder = files("fontpkg_inter") / "files"
    upright = next(one for one in folder.iterdir() if one.name.endswith(".ttf") and "Italic" not in one.name)
    return ImageFont.truetype(str(upright), size)
