"""Photographs that ship inside scikit-image, a general-purpose library: real cameras, real light.

It is installed for the tests; the digests are those of its 0.26.0.
"""

import hashlib
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from scipy.cluster import vq
from skimage import data as skimage_data

from loopwright.colour import (
    delta_e_ciede2000,
    lab_from_srgb,
    lab_from_xyz,
    oklab_from_linear,
    read_hex,
    xyz_from_linear,
)
from loopwright.colour.photo import Bytes, Point, k_means, linear_light, measure_photo
from loopwright.units import BadInput

PICTURES = {
    "coffee.png": ("cc02f8ca188b167c", (52.20, 22.22, 27.97)),
    "chelsea.png": ("596aa1e7cb875eb7", (52.10, 10.67, 16.89)),
    "astronaut.png": ("88431cd9653ccd53", (58.96, 11.43, 8.01)),
}
"""SHA-256 of the file, as it begins, and CIELAB of the mean linear light, computed with that library's own reading."""


def picture(name: str) -> Bytes:
    path = Path(skimage_data.__file__).parent / name
    if hashlib.sha256(path.read_bytes()).hexdigest()[:16] != PICTURES[name][0]:
        pytest.skip(f"{name} is another picture in this release")
    return np.array(Image.open(path).convert("RGB"))


@pytest.mark.parametrize("name", PICTURES)
def test_mean_light(name: str) -> None:
    light = linear_light(picture(name), 10_000).mean(axis=(0, 1))
    assert lab_from_xyz(xyz_from_linear(light)) == pytest.approx(PICTURES[name][1], abs=0.03)


@pytest.mark.parametrize("name", PICTURES)
def test_groups_are_as_tight_as_the_best_of_ten_random_starts(name: str) -> None:
    """Within 5 % of the sum of squares that scipy's k-means reaches from ten seeded starts (k = 5, OKLab)."""
    points = oklab_from_linear(linear_light(picture(name), 10_000)[::5, ::5].reshape(-1, 3))

    def within(labels: np.ndarray) -> float:
        return float(sum(((points[labels == at] - points[labels == at].mean(axis=0)) ** 2).sum() for at in range(5)))

    starts = [vq.kmeans2(points, 5, minit="++", rng=np.random.default_rng(seed), iter=50)[1] for seed in range(10)]
    assert within(k_means(points, 5)[-1]) <= 1.05 * min(within(labels) for labels in starts)


def test_a_patterned_ground_is_not_taken_for_yarn_and_a_tap_measures_what_is_there() -> None:
    """A cup on grained wood. Its saucer is the largest of five groups of the picture, #9c3416, by the reference's
    k-means in OKLab; the bound of 10 is the doubt told without white paper.
    """
    with pytest.raises(BadInput, match="plain ground"):
        measure_photo(picture("coffee.png"))
    found = measure_photo(picture("coffee.png"), yarn=Point(0.2, 0.62))
    assert found.region.found_by == "a disc about the tap"
    saucer = lab_from_srgb(read_hex("#9c3416"))
    assert delta_e_ciede2000(lab_from_srgb(found.colours[0].srgb), saucer) < 10
