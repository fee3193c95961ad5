"""Strands held together: shares by grist, the mean of light, and the distance at which they melt."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.colour import Floats, blur_distance_m, linear_from_srgb, luminance, mix_strands, strand_shares
from loopwright.units import BadInput
from tests.colour.samples import srgbs

grists = st.floats(5, 2000)


@pytest.mark.parametrize(
    ("tex", "shares"),
    [([200, 200], (0.5, 0.5)), ([200, 100], (0.5858, 0.4142)), ([200, 50], (0.6667, 0.3333))],
)
def test_shares_go_with_the_root_of_the_grist(tex: list[float], shares: tuple[float, float]) -> None:
    """Geometry, computed by another hand."""
    assert strand_shares(tex) == pytest.approx(shares, abs=0.6e-4)


@given(srgbs, grists)
def test_strands_of_one_colour_keep_it(srgb: Floats, tex: float) -> None:
    assert mix_strands([srgb, srgb, srgb], [tex, 50, 400]) == pytest.approx(srgb, abs=1e-7)


@given(srgbs, srgbs, grists, grists)
def test_the_light_lies_between_and_the_order_is_nothing(one: Floats, other: Floats, a: float, b: float) -> None:
    mixed = mix_strands([one, other], [a, b])
    least, most = sorted([float(luminance(one)), float(luminance(other))])
    assert least - 1e-7 <= float(luminance(mixed)) <= most + 1e-7
    assert mix_strands([other, one], [b, a]) == pytest.approx(mixed, abs=1e-12)


def test_without_grists_all_are_alike() -> None:
    colours = [[1, 0, 0], [0, 1, 0], [0, 0, 1]]
    assert linear_from_srgb(mix_strands(colours)) == pytest.approx([1 / 3] * 3)
    np.testing.assert_allclose(mix_strands(colours), mix_strands(colours, [70, 70, 70]), atol=1e-15)


@pytest.mark.parametrize("tex", [[], [100, 0], [100, -5], [100, float("nan")]])
def test_a_grist_lies_above_nothing(tex: list[float]) -> None:
    with pytest.raises(BadInput):
        strand_shares(tex)


def test_a_grist_for_each_strand() -> None:
    with pytest.raises(BadInput, match="one for each of 2 strands"):
        mix_strands([[0, 0, 0], [1, 1, 1]], [100])


@pytest.mark.parametrize(
    ("period_mm", "cycles", "distance_m"), [(2, 11.5, 1.3), (2, 50, 5.7), (3, 11.5, 2.0), (3, 50, 8.6)]
)
def test_where_plies_melt(period_mm: float, cycles: float, distance_m: float) -> None:
    """11.5 cycles per degree: Mullen 1985; 50: from memory. Distances computed by another hand to one decimal."""
    assert blur_distance_m(period_mm, cycles) == pytest.approx(distance_m, abs=0.051)
