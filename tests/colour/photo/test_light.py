"""Bytes to linear light, made smaller by true means."""

import numpy as np
import pytest

from loopwright.colour import srgb_from_linear
from loopwright.colour.photo import block_mean, linear_light


def test_black_and_white_side_by_side_are_half_the_light() -> None:
    """Half the light is stored as 188: the value that IEC 61966-2-1 gives for 0.5, 0.7354 of 255."""
    board = np.zeros((40, 40, 3), dtype=np.uint8)
    board[::2, ::2] = board[1::2, 1::2] = 255
    small = srgb_from_linear(linear_light(board, 20)) * 255
    assert small.shape == (20, 20, 3)
    assert small.round().astype(int) == pytest.approx(188)


def test_the_longer_side_is_no_longer_than_wanted() -> None:
    for size in ((1, 1), (7, 300), (401, 400), (800, 1201)):
        light = linear_light(np.full((*size, 3), 128, dtype=np.uint8), 400)
        assert max(light.shape) <= 400
        assert light == pytest.approx(0.215860500, abs=1e-9)  # decode(128/255) by the same standard


def test_strips_make_no_difference() -> None:
    picture = np.random.default_rng(1).integers(0, 256, (700, 90, 3), dtype=np.uint8)
    assert np.allclose(linear_light(picture, 350), block_mean(linear_light(picture, 700), 2))
