"""Shapes, held to scipy.ndimage, a general-purpose library."""

import numpy as np
import pytest
from scipy import ndimage

from loopwright.colour.photo.shapes import Mask, box_mean, box_spread, closed, filled, grown, labelled, opened, shrunk

SEEDS = range(6)


def blobs(seed: int) -> Mask:
    dice = np.random.default_rng(seed).standard_normal((60, 83))
    return np.asarray(ndimage.gaussian_filter(dice, 2.5) > 0.05)


def disc(radius: int) -> Mask:
    down, across = np.mgrid[-radius : radius + 1, -radius : radius + 1]
    return np.asarray(down**2 + across**2 <= radius**2)


@pytest.mark.parametrize("seed", SEEDS)
def test_parts_are_told_apart(seed: int) -> None:
    mask = blobs(seed) if seed else np.random.default_rng(0).random((40, 50)) < 0.5
    labels, sizes = labelled(mask)
    expected, number = ndimage.label(mask)
    assert len(sizes) == number + 1
    pairs = set(zip(labels.ravel().tolist(), expected.ravel().tolist(), strict=True))
    assert len(pairs) == number + 1
    assert (0, 0) in pairs


@pytest.mark.parametrize("radius", [0, 1, 4, 6])
@pytest.mark.parametrize("seed", SEEDS)
def test_growing_and_shrinking(seed: int, radius: int) -> None:
    mask, around = blobs(seed), disc(radius)
    assert (grown(mask, radius) == ndimage.binary_dilation(mask, around)).all()
    assert (shrunk(mask, radius) == ndimage.binary_erosion(mask, around, border_value=1)).all()
    assert (opened(mask, radius) <= mask).all()
    assert (closed(mask, radius) >= mask).all()


@pytest.mark.parametrize("seed", SEEDS)
def test_holes_are_filled(seed: int) -> None:
    mask = blobs(seed)
    assert (filled(mask) == ndimage.binary_fill_holes(mask)).all()


def test_means_and_spreads_over_a_square() -> None:
    values = np.random.default_rng(3).random((30, 41)) * 100
    inside = (slice(3, -3), slice(3, -3))
    mean = ndimage.uniform_filter(values, 7)
    assert box_mean(values, 7)[inside] == pytest.approx(mean[inside])
    spread = np.sqrt(ndimage.uniform_filter((values - 50) ** 2, 7) - (mean - 50) ** 2)
    assert box_spread(values, 7)[inside] == pytest.approx(spread[inside])
    assert box_mean(np.ones((9, 9)), 7) == pytest.approx(1)


def test_nothing_and_everything() -> None:
    nothing = np.zeros((9, 7), dtype=np.bool_)
    assert labelled(nothing)[1].tolist() == [63]
    assert labelled(~nothing)[1].tolist() == [0, 63]
    assert not filled(nothing).any()
    assert filled(~nothing).all()
