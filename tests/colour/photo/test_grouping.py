"""Pixels grouped: shade left aside, always the same groups, and one heap told from two."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.cluster import vq

from loopwright.colour import linear_from_srgb, read_hexes
from loopwright.colour.photo import features, k_means, lit_colour, merged, valley

LIGHT = st.tuples(*[st.floats(0.1, 1)] * 3).map(np.array)


@given(LIGHT, st.floats(0.3, 1))
def test_shade_leaves_all_but_lightness_alone(light: np.ndarray, shade: float) -> None:
    """OKLab is homogeneous of degree one third in light (Ottosson 2020): a/L and b/L do not know how bright it is.

    Down to an L of 0.3, which is L* 19; below, noise would grow."""
    full, shaded = features(np.stack([light, light * shade]))
    assert shaded[1:] == pytest.approx(full[1:], abs=1e-9)
    assert shaded[0] == pytest.approx(full[0] * shade ** (1 / 3))


def heaps(number: int, seed: int, spread: float = 0.02) -> np.ndarray:
    dice = np.random.default_rng(seed)
    centres = dice.random((number, 3)) + np.arange(number)[:, None]
    return np.concatenate([centre + spread * dice.standard_normal((200, 3)) for centre in centres])


@pytest.mark.parametrize("seed", range(5))
def test_heaps_that_stand_apart_are_found(seed: int) -> None:
    labels = k_means(heaps(4, seed), 4)[-1]
    assert sorted(np.unique(labels[at * 200 : (at + 1) * 200]).size for at in range(4)) == [1, 1, 1, 1]
    assert np.unique(labels).size == 4


@pytest.mark.parametrize("seed", range(4))
def test_scipy_finds_nothing_left_to_move(seed: int) -> None:
    """The means are a fixed point of Lloyd's rounds, as scipy.cluster.vq runs them."""
    points = np.random.default_rng(seed).random((500, 3))
    labels = k_means(points, 5)[-1]
    means = np.stack([points[labels == at].mean(axis=0) for at in range(5)])
    again, theirs = vq.kmeans2(points, means, iter=1, minit="matrix")
    assert (theirs == labels).all()
    assert again == pytest.approx(means, abs=1e-9)


def test_groups_grow_from_each_other_and_stop_where_points_coincide() -> None:
    assert [np.unique(labels).size for labels in k_means(heaps(6, 1), 6)] == [1, 2, 3, 4, 5, 6]
    assert len(k_means(np.zeros((50, 3)), 6)) == 1
    assert len(k_means(np.repeat(np.eye(3), 9, axis=0), 6)) == 3


def test_the_same_points_give_the_same_groups() -> None:
    points = np.random.default_rng(8).random((400, 3))
    assert (k_means(points, 6)[-1] == k_means(points.copy(), 6)[-1]).all()


def test_a_heap_cut_in_two_has_no_valley_and_two_heaps_have() -> None:
    one = np.random.default_rng(2).standard_normal((2000, 3))
    assert valley(one[one[:, 0] < 0], one[one[:, 0] >= 0]) > 0.8
    assert valley(one, one + np.array([8, 0, 0])) < 0.05
    assert valley(one, one) == 1


def speckled(digits: list[str], shade: tuple[float, float]) -> tuple[np.ndarray, np.ndarray]:
    """Pixels of these colours under any shade from the one to the other, and which colour each has."""
    dice = np.random.default_rng(5)
    which = np.repeat(np.arange(len(digits)), 900)
    return linear_from_srgb(read_hexes(digits))[which] * dice.uniform(*shade, (len(which), 1)), which


def test_light_and_shade_of_one_yarn_are_one_colour() -> None:
    light, _ = speckled(["#a4502f"], (0.4, 1))
    assert merged(light, k_means(features(light), 6)[-1]).max() == 0


@pytest.mark.parametrize("digits", [["#efe6d2", "#3b3b3f"], ["#a4502f", "#c9982e", "#2f6f73"], ["#22304f", "#6b7a3a"]])
def test_yarns_that_differ_stay_apart(digits: list[str]) -> None:
    light, which = speckled(digits, (0.5, 1))
    labels = merged(light, k_means(features(light), 6)[-1])
    assert labels.max() == len(digits) - 1
    assert all(np.unique(labels[which == at]).size == 1 for at in range(len(digits)))


def test_a_colour_is_that_of_its_lit_pixels() -> None:
    light = np.linspace(0, 1, 1001)[:, None] * np.ones(3)
    mean, lit = lit_colour(light)
    assert (lit.min(), lit.max()) == (pytest.approx(0.75), pytest.approx(0.98))
    assert mean == pytest.approx(0.865)
