"""PNG files read back by Pillow, and the palette exchanged without encoding anew."""

from __future__ import annotations

import io

import numpy as np
from PIL import Image

from loopwright.pictures.png import direct_png, indexed_png, recoloured_png

CHANCE = np.random.default_rng(7)
INDEX = CHANCE.integers(0, 256, (40, 61), dtype=np.uint8)
ONE, OTHER = (CHANCE.integers(0, 256, (256, 3), dtype=np.uint8) for _ in range(2))


def read(png: bytes) -> Image.Image:
    return Image.open(io.BytesIO(png))


def test_numbers_and_colours_come_back() -> None:
    picture = read(indexed_png(INDEX, ONE))
    assert (picture.mode, picture.size) == ("P", (61, 40))
    assert np.array_equal(np.asarray(picture), INDEX)
    assert np.array_equal(np.asarray(picture.convert("RGB")), ONE[INDEX])


def test_another_palette_is_what_pillow_would_have_written() -> None:
    assert recoloured_png(indexed_png(INDEX, ONE), OTHER) == indexed_png(INDEX, OTHER)


def test_colours_without_a_palette_come_back() -> None:
    assert np.array_equal(np.asarray(read(direct_png(ONE[INDEX]))), ONE[INDEX])
