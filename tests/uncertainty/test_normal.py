"""Chances and quantiles against scipy.stats, an independent library."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from loopwright.uncertainty import Estimate, Origin, interval_moments, p_at_least, quantile

MEANS = st.floats(-5000, 5000)
SDS = st.floats(0.01, 500)


def metres(mean: float, sd: float = 0.0) -> Estimate:
    return Estimate.known("given", mean, "m", Origin.STATED, sd=sd)


@given(MEANS, SDS, MEANS, SDS)
def test_p_at_least_is_the_chance_of_a_positive_difference(have: float, s: float, need: float, t: float) -> None:
    expected = stats.norm.sf(0, loc=have - need, scale=math.hypot(s, t))
    assert p_at_least(metres(have, s), metres(need, t)) == pytest.approx(expected, rel=1e-6, abs=1e-12)


@given(MEANS, SDS, st.floats(0.001, 0.999))
def test_quantile(mean: float, sd: float, share: float) -> None:
    assert quantile(metres(mean, sd), share) == pytest.approx(stats.norm.ppf(share, mean, sd), rel=1e-9, abs=1e-6)


@given(MEANS, SDS)
def test_an_interval_has_the_moments_of_the_uniform_distribution(low: float, width: float) -> None:
    uniform = stats.uniform(low, width)
    found = interval_moments(low, low + width)
    assert found == pytest.approx((uniform.mean(), uniform.std()), rel=1e-9, abs=1e-9)


def test_an_interval_the_wrong_way_round() -> None:
    with pytest.raises(ValueError, match="low ≤ high"):
        interval_moments(2, 1)


def test_without_doubt_it_is_one_or_nothing() -> None:
    assert p_at_least(metres(100), metres(100)) == 1
    assert p_at_least(metres(99.9), metres(100)) == 0


def test_a_hair_of_binary_rounding_is_not_a_shortage() -> None:
    assert p_at_least(metres(0.3), metres(0.1 + 0.2)) == 1


def test_with_doubt_it_is_never_certain() -> None:
    assert 0 < p_at_least(metres(0, 1), metres(1e6, 1)) < p_at_least(metres(1e6, 1), metres(0, 1)) < 1


def test_metres_are_not_compared_with_grams() -> None:
    with pytest.raises(ValueError, match="cannot compare"):
        p_at_least(metres(1), Estimate.known("given", 1, "g", Origin.STATED))


def test_the_quantile_of_a_known_figure_is_itself() -> None:
    assert quantile(metres(42), 0.95) == 42
