"""Colours of skeins in scenes with known truth. The bounds on ΔE00 are ours; each says what it rests on."""

import itertools

import numpy as np
import pytest

from loopwright.colour import Floats, delta_e_ciede2000, lab_from_srgb, read_hexes
from loopwright.colour.photo import PHOTO_LIMITS, PhotoColours, Point, measure_photo
from loopwright.units import BadInput
from tests.colour.photo.scenes import BROWN, PAPER, WHITE_TABLE, Scene, draw

YARNS = ["#efe6d2", "#3b3b3f", "#a4502f", "#6b7a3a", "#22304f", "#c9982e", "#c58a8f", "#2f6f73"]
TRICOLOUR = ["#a4502f", "#c9982e", "#2f6f73"]
DAYLIGHT = (1.0, 1.0, 1.0)
COOL = (0.85, 1.0, 1.2)


def off_by(found: PhotoColours, yarns: list[str]) -> Floats:
    """ΔE00 of each true colour to the nearest that was found."""
    labs = lab_from_srgb(np.stack([one.srgb for one in found.colours]))
    return np.asarray(delta_e_ciede2000(lab_from_srgb(read_hexes(yarns))[:, None], labs[None]).min(axis=1))


@pytest.mark.parametrize("table", [BROWN, WHITE_TABLE])
@pytest.mark.parametrize("yarn", YARNS)
def test_one_colour_is_one_colour_within_the_doubt_that_is_told(yarn: str, table: str) -> None:
    """5 ΔE00, the doubt told for a photograph with paper: most of it is shade, which makes all of them darker."""
    found = measure_photo(draw([yarn], table=table).pixels, white=PAPER)
    assert len(found.colours) == 1
    assert off_by(found, [yarn])[0] < PHOTO_LIMITS["doubt_with_paper"].value <= found.colours[0].doubt
    assert found.colours[0].told_share == 1


@pytest.mark.parametrize("lamp", [DAYLIGHT, COOL])
@pytest.mark.parametrize("exposure", [0.5, 0.9])
def test_neither_lamp_nor_exposure_matters_with_paper(lamp: tuple[float, float, float], exposure: float) -> None:
    found = measure_photo(draw(["#c58a8f"], lamp=lamp, exposure=exposure).pixels, white=PAPER)
    assert off_by(found, ["#c58a8f"])[0] < 5


@pytest.mark.parametrize("yarn", ["#c58a8f", "#2f6f73", "#efe6d2"])
def test_without_paper_warm_light_stays_in_the_colour(yarn: str) -> None:
    scene = draw([yarn])
    without, with_paper = measure_photo(scene.pixels), measure_photo(scene.pixels, white=PAPER)
    assert off_by(without, [yarn])[0] > off_by(with_paper, [yarn])[0] + 3
    assert without.colours[0].doubt >= PHOTO_LIMITS["doubt_without"].value


def test_three_colours_and_their_shares() -> None:
    """Shares within 0.03 of the truth; 7 ΔE00, since the last colour lies in the shade at the end of the skein."""
    scene = draw(TRICOLOUR, cuts=(0.5, 0.76, 1.0))
    found = measure_photo(scene.pixels, white=PAPER)
    assert [one.share for one in found.colours] == pytest.approx(sorted(scene.shares(3))[::-1], abs=0.03)
    assert off_by(found, TRICOLOUR).max() < 7
    assert sum(one.told_share for one in found.colours) == pytest.approx(1)


def test_six_colours() -> None:
    """10 ΔE00: each has a sixth of the skein, those at its ends in shade all over."""
    six = ["#efe6d2", "#a4502f", "#6b7a3a", "#22304f", "#c9982e", "#c58a8f"]
    found = measure_photo(draw(six).pixels, white=PAPER)
    assert len(found.colours) == 6
    assert off_by(found, six).max() < 10


def test_light_and_dark_grey_yarn_are_two_though_shade_lies_between() -> None:
    found = measure_photo(draw(["#e8e8e8", "#3b3b3f"]).pixels, white=PAPER)
    assert [one.share for one in found.colours] == pytest.approx([0.5, 0.5], abs=0.03)


def test_the_cast_shadow_and_the_table_are_no_colours_of_the_yarn() -> None:
    found = measure_photo(draw(["#c9982e"]).pixels, white=PAPER)
    shadow, table = lab_from_srgb(read_hexes(["#554533", BROWN]))
    for one, other in itertools.product(found.colours, (shadow, table)):
        assert delta_e_ciede2000(lab_from_srgb(one.srgb), other) > 15


def test_as_many_as_are_asked_for() -> None:
    scene = draw(TRICOLOUR)
    assert len(measure_photo(scene.pixels, white=PAPER, most=2).colours) == 2
    assert len(measure_photo(draw(["#a4502f"]).pixels, white=PAPER, exactly=4).colours) == 4


def test_the_same_picture_gives_the_same_colours() -> None:
    scene = draw(TRICOLOUR)
    one, other = (measure_photo(scene.pixels.copy(), white=PAPER) for _ in range(2))
    assert [(*at.srgb, at.share) for at in one.colours] == [(*at.srgb, at.share) for at in other.colours]


def test_a_crop_of_nothing_but_yarn_is_measured_where_it_is_tapped() -> None:
    scene: Scene = draw(["#2f6f73"])
    found = measure_photo(scene.pixels[140:205, 175:275], yarn=Point(0.5, 0.5))
    assert found.region.found_by in {"a disc about the tap", "the part that was tapped"}
    assert len(found.colours) == 1


@pytest.mark.parametrize(("most", "exactly"), [(0, None), (7, None), (6, 0), (6, 7)])
def test_a_number_out_of_range_is_refused(most: int, exactly: int | None) -> None:
    with pytest.raises(BadInput, match="1 to 6"):
        measure_photo(draw(["#2f6f73"]).pixels, most=most, exactly=exactly)


def test_a_tiny_picture_is_refused() -> None:
    with pytest.raises(BadInput, match="at least 64"):
        measure_photo(np.zeros((63, 500, 3), dtype=np.uint8))
