"""Yarn told from table, shadow and paper, in scenes whose every pixel is known."""

import itertools

import numpy as np
import pytest

from loopwright.colour.photo import Point, Region, balanced, block_mean, linear_light, read_paper, yarn_region
from loopwright.units import BadInput
from tests.colour.photo.scenes import BROWN, PAPER, WHITE_TABLE, Scene, draw

YARNS = ["#efe6d2", "#3b3b3f", "#a4502f", "#22304f", "#c58a8f", "#2f6f73"]
GREY_BLUE = "#6c7f8c"
DARK = "#3a3a3a"


def region(scene: Scene, *, yarn: Point | None = None) -> Region:
    light = balanced(linear_light(scene.pixels, 400), read_paper(scene.pixels, PAPER))
    return yarn_region(light, paper=PAPER, yarn=yarn)


def precision(found: Region, scene: Scene) -> float:
    return float(truth(scene)[found.mask].mean())


def overlap(found: Region, scene: Scene) -> float:
    """The share of either that is in both."""
    both, either = found.mask & truth(scene), found.mask | truth(scene)
    return float(both.sum() / either.sum())


def truth(scene: Scene) -> np.ndarray:
    side = -(-max(scene.yarn.shape) // 400)
    share = block_mean(np.repeat(scene.yarn[..., None], 3, axis=2).astype(float), side)[..., 0]
    return np.asarray(share > 0.5)


@pytest.mark.parametrize(
    ("yarn", "table"),
    [pair for pair in itertools.product(YARNS, [BROWN, WHITE_TABLE, GREY_BLUE, DARK]) if pair != ("#3b3b3f", DARK)],
)
def test_yarn_is_found_without_its_shadow(yarn: str, table: str) -> None:
    """Of what is found 97 % is yarn, and of both together 80 % overlaps: our bounds; the rim is left off on purpose."""
    scene = draw([yarn], table=table)
    found = region(scene)
    assert found.found_by == "the largest textured part"
    assert precision(found, scene) > 0.97
    assert overlap(found, scene) > 0.80


@pytest.mark.parametrize("size", [(600, 800), (330, 440), (525, 700), (800, 600)])
def test_the_size_of_the_picture_hardly_matters(size: tuple[int, int]) -> None:
    scene = draw(["#a4502f"], size=size)
    found = region(scene)
    assert precision(found, scene) > 0.95
    assert overlap(found, scene) > 0.75


def test_yarn_of_the_colour_of_its_ground_is_not_guessed() -> None:
    with pytest.raises(BadInput, match="a plain ground of another colour"):
        region(draw(["#3b3b3f"], table=DARK))


def test_an_empty_table_is_no_yarn() -> None:
    scene = draw(["#a4502f"])
    scene.pixels[scene.yarn] = scene.pixels[5, -5]
    with pytest.raises(BadInput, match="no yarn"):
        yarn_region(linear_light(scene.pixels, 400)[90:, :])


def test_a_tap_names_the_part() -> None:
    scene = draw(["#a4502f"])
    tapped = region(scene, yarn=Point(0.5, 0.5))
    assert tapped.found_by == "the part that was tapped"
    assert (tapped.mask == region(scene).mask).all()


def test_a_tap_beside_it_takes_a_disc() -> None:
    found = region(draw(["#a4502f"]), yarn=Point(0.9, 0.05))
    assert found.found_by == "a disc about the tap"
    assert found.mask[15, 360]
    assert found.share < 0.03
