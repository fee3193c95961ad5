"""White balance by paper."""

import numpy as np
import pytest

from loopwright.colour import delta_e_ciede2000, lab_from_srgb, read_hex, read_hexes, srgb_from_linear
from loopwright.colour.photo import Point, balanced, linear_light, read_paper
from loopwright.colour.photo.light import Bytes
from loopwright.units import BadInput

MIDDLE = Point(0.5, 0.5)


def flat(digits: str) -> Bytes:
    return np.broadcast_to((read_hex(digits) * 255).round().astype(np.uint8), (100, 100, 3)).copy()


def test_a_cast_and_the_exposure_are_taken_away() -> None:
    """By arithmetic: yarn #a4502f under gains 1.25, 1, 0.62 times 0.85 is stored #a94a21, paper of 0.85 #f4ddb2.

    What is left is the rounding to bytes, ΔE00 under 0.2; uncorrected the yarn is 2.67 off (2.65 once stored as bytes).
    """
    paper = read_paper(flat("#f4ddb2"), MIDDLE)
    found = srgb_from_linear(balanced(linear_light(flat("#a94a21"), 100), paper)[0, 0])
    truth, seen = lab_from_srgb(read_hexes(["#a4502f", "#a94a21"]))
    assert delta_e_ciede2000(lab_from_srgb(found), truth) < 0.2
    assert delta_e_ciede2000(seen, truth) == pytest.approx(2.67, abs=0.03)


def test_without_paper_nothing_changes() -> None:
    light = linear_light(flat("#a94a21"), 100)
    assert balanced(light, None) is light


@pytest.mark.parametrize(
    ("digits", "says"),
    [("#ffffff", "overexposed"), ("#fffae0", "overexposed"), ("#404040", "too dark"), ("#8a6f54", "too dark")],
)
def test_what_is_no_paper_is_refused(digits: str, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        read_paper(flat(digits), MIDDLE)


def test_a_shadow_across_the_paper_is_refused() -> None:
    picture = flat("#f0f0f0")
    picture[:, 50:] = 150
    with pytest.raises(BadInput, match="evenly lit"):
        read_paper(picture, MIDDLE)
    read_paper(picture, Point(0.2, 0.5))


def test_a_tap_in_the_corner_is_read_from_what_is_there() -> None:
    assert read_paper(flat("#e0e0e0"), Point(0, 1)).lightness_sd == pytest.approx(0)
