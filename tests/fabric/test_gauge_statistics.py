"""Several counts: held to scipy's posterior, and to the sample's own standard error where there are many."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from loopwright.fabric.gauge_statistics import (
    COUNT_RELATIVE_SD,
    PRIOR_COUNTS,
    count_statistics,
    far_from_the_others,
)

counts = st.lists(st.floats(15, 30), min_size=1, max_size=12)


@given(counts)
def test_the_standard_error_is_the_posterior_deviation_of_the_mean(values: list[float]) -> None:
    """Normal-inverse-gamma with a flat mean: a t with 2 a degrees of freedom and scale √(b / (a n)); by scipy.stats.t.

    The prior is inverse gamma with a = (4 + 2)/2 and b = 4 s²/2, whose mean is s² = (2 % of the gauge)².
    """
    mean, n = float(np.mean(values)), len(values)
    prior = stats.invgamma((PRIOR_COUNTS + 2) / 2, scale=PRIOR_COUNTS / 2 * (COUNT_RELATIVE_SD * mean) ** 2)
    assert prior.mean() == pytest.approx((COUNT_RELATIVE_SD * mean) ** 2)
    a = (PRIOR_COUNTS + 2 + n - 1) / 2
    b = PRIOR_COUNTS / 2 * (COUNT_RELATIVE_SD * mean) ** 2 + np.sum((np.array(values) - mean) ** 2) / 2
    expected = stats.t(df=2 * a, loc=mean, scale=math.sqrt(b / (a * n))).std()
    assert count_statistics(values).se == pytest.approx(expected)


@given(counts.filter(lambda values: len(values) > 1))
def test_mean_and_deviation_are_the_sample_s(values: list[float]) -> None:
    found = count_statistics(values)
    assert found.mean == pytest.approx(np.mean(values))
    assert found.sd == pytest.approx(np.std(values, ddof=1), abs=1e-9)


def test_with_many_counts_it_is_scipy_s_standard_error() -> None:
    values = np.random.default_rng(7).normal(22, 1.1, 400)
    assert count_statistics(list(values)).se == pytest.approx(stats.sem(values), rel=0.01)


def test_weights_are_those_of_numpy_s_average() -> None:
    assert count_statistics([20, 22, 23], [1, 2, 0.5]).mean == pytest.approx(
        np.average([20, 22, 23], weights=[1, 2, 0.5])
    )


def test_one_count_is_two_percent_off_and_keeps_its_last_digit() -> None:
    one = count_statistics([21.7], [0.3])
    assert (one.mean, one.sd) == (21.7, None)
    assert count_statistics([21.7]).relative_se == pytest.approx(0.02)


def test_counts_that_agree_are_surer_than_counts_that_do_not() -> None:
    assert count_statistics([22, 22, 22]).se < count_statistics([22, 22.4, 21.6]).se < count_statistics([20, 22, 24]).se


def test_the_odd_count_is_named_and_the_others_are_not() -> None:
    assert far_from_the_others([22, 22.5, 26.5, 21.8]) == (2,)


def test_of_two_counts_neither_is_the_odd_one() -> None:
    assert far_from_the_others([20, 30]) == ()


def test_an_ordinary_spread_names_nobody() -> None:
    assert far_from_the_others([21.5, 22, 22.5, 22.2, 21.7]) == ()


@pytest.mark.parametrize("weights", [[1.0], [1.0, 1.0, 1.0]])
def test_each_count_has_a_weight(weights: list[float]) -> None:
    with pytest.raises(ValueError, match="one to each"):
        count_statistics([22, 23], weights)
