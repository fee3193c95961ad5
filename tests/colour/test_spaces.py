"""Colour spaces: going back undoes going there, greys have no hue, arrays are as good as single colours."""

import numpy as np
import pytest
from hypothesis import given

from loopwright.colour import (
    Floats,
    lab_from_lch,
    lab_from_srgb,
    lab_from_xyz,
    lch_from_lab,
    lightness,
    linear_from_srgb,
    luminance,
    oklab_from_srgb,
    srgb_from_lab,
    srgb_from_linear,
    srgb_from_oklab,
    xyz_from_lab,
)
from tests.colour.samples import labs, srgbs, table_of


@given(srgbs)
def test_back_and_forth_through_every_space(srgb: Floats) -> None:
    assert srgb_from_linear(linear_from_srgb(srgb)) == pytest.approx(srgb, abs=1e-7)  # the standard's own jump
    assert srgb_from_lab(lab_from_srgb(srgb)) == pytest.approx(srgb, abs=1e-7)
    assert srgb_from_oklab(oklab_from_srgb(srgb)) == pytest.approx(srgb, abs=1e-7)


@given(labs)
def test_back_and_forth_from_lab(lab: Floats) -> None:
    assert lab_from_xyz(xyz_from_lab(lab)) == pytest.approx(lab, abs=1e-8)
    assert lab_from_lch(lch_from_lab(lab)) == pytest.approx(lab, abs=1e-9)


@pytest.mark.parametrize("value", [0, 0.02, 0.2, 0.5, 1])
def test_a_grey_has_no_chroma(value: float) -> None:
    assert lab_from_srgb([value] * 3)[1:] == pytest.approx([0, 0], abs=1e-10)
    assert oklab_from_srgb([value] * 3)[1:] == pytest.approx([0, 0], abs=1e-7)


@given(srgbs)
def test_hue_lies_within_a_turn_and_lightness_follows_luminance(srgb: Floats) -> None:
    light, chroma, hue = lch_from_lab(lab_from_srgb(srgb))
    assert 0 <= hue <= 360
    assert chroma >= 0
    y = float(luminance(srgb))
    wanted = 116 * y ** (1 / 3) - 16 if y > 216 / 24389 else y * 24389 / 27
    assert (light, float(lightness(srgb))) == pytest.approx((wanted, wanted), abs=1e-9)


@pytest.mark.parametrize("convert", [lab_from_srgb, oklab_from_srgb, srgb_from_lab, srgb_from_oklab, lch_from_lab])
def test_an_array_equals_its_colours(convert: object) -> None:
    assert callable(convert)
    many = table_of(24, 1).reshape(2, 3, 4, 3)
    whole = convert(many)
    assert whole.shape == many.shape
    for at in np.ndindex(2, 3, 4):
        np.testing.assert_allclose(whole[at], convert(many[at]), rtol=1e-13, atol=1e-15)


@pytest.mark.parametrize("wrong", [0.5, [0.1, 0.2], [[0.1, 0.2, 0.3, 0.4]]])
def test_three_are_wanted(wrong: object) -> None:
    with pytest.raises(ValueError, match=r"wanted \(\.\.\., 3\)"):
        lab_from_srgb(wrong)  # type: ignore[arg-type]


def test_no_colours_give_none() -> None:
    assert lab_from_srgb(np.empty((0, 3))).shape == (0, 3)
