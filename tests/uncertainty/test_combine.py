"""Joining and adding estimates, against numpy least squares and Monte Carlo."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.uncertainty import Estimate, Origin, combine_by_precision, total

FIGURES = st.lists(st.tuples(st.floats(1, 2000), st.floats(0.5, 200)), min_size=2, max_size=6)


def metres(mean: float, sd: float = 0.0) -> Estimate:
    return Estimate.known("given", mean, "m", Origin.STATED, sd=sd)


@given(FIGURES)
def test_the_combined_mean_is_weighted_least_squares(figures: list[tuple[float, float]]) -> None:
    means, sds = np.array(figures).T
    fitted = np.linalg.lstsq((1 / sds)[:, None], means / sds, rcond=None)[0][0]
    joined = combine_by_precision([metres(*figure) for figure in figures], "joined")
    assert joined.mean == pytest.approx(fitted, rel=1e-9)


def test_the_combined_doubt_by_monte_carlo() -> None:
    """Two instruments of sd 30 and 60 that agree: the sd of the weighted mean of 400,000 drawn pairs."""
    joined = combine_by_precision([metres(1000, 30), metres(1010, 60)], "joined")
    random = np.random.default_rng(7)
    weights = np.array([1 / 30**2, 1 / 60**2])
    drawn = random.normal([0, 0], [30, 60], size=(400_000, 2)) @ (weights / weights.sum())
    assert joined.sd == pytest.approx(drawn.std(), rel=0.01)


def test_disagreement_widens_by_the_birge_ratio() -> None:
    """Two figures ten deviations apart, sd 10 each: √χ² = √50, so 10/√2 · √50 = 50 = half their distance."""
    joined = combine_by_precision([metres(900, 10), metres(1000, 10)], "joined")
    assert (joined.mean, joined.sd) == pytest.approx((950, 50))
    assert "disagree" in joined.steps[-1].working


def test_agreement_is_not_narrowed_by_it() -> None:
    joined = combine_by_precision([metres(1000, 10), metres(1000, 10)], "joined")
    assert joined.sd == pytest.approx(10 / math.sqrt(2))


@given(FIGURES)
def test_the_combined_mean_lies_between_and_has_all_the_steps(figures: list[tuple[float, float]]) -> None:
    joined = combine_by_precision([metres(*figure) for figure in figures], "joined")
    assert min(figures)[0] * (1 - 1e-9) <= joined.mean <= max(figures)[0] * (1 + 1e-9)
    assert len(joined.steps) == len(figures) + 1


def test_an_exact_one_is_taken_alone() -> None:
    assert combine_by_precision([metres(900, 10), metres(1000)], "joined").mean == 1000


def test_one_alone_stands_as_it_is() -> None:
    assert combine_by_precision([metres(900, 10)], "joined") == metres(900, 10)


def test_nothing_to_combine() -> None:
    with pytest.raises(ValueError, match="at least one"):
        combine_by_precision([], "joined")


def test_one_unit_only() -> None:
    with pytest.raises(ValueError, match="one unit"):
        combine_by_precision([metres(1, 1), Estimate.known("given", 1, "g", Origin.STATED, sd=1)], "joined")


@pytest.mark.parametrize("correlation", [0.0, 0.3, 0.7, 1.0])
def test_a_correlated_sum_by_monte_carlo(correlation: float) -> None:
    """The sum of 400,000 draws of a multivariate normal with one correlation between each pair; 1 % on its sd."""
    means, sds = np.array([40.0, 12.0, 25.0]), np.array([6.0, 3.0, 4.0])
    matrix = np.full((3, 3), correlation) + (1 - correlation) * np.eye(3)
    random = np.random.default_rng(11)
    drawn = random.multivariate_normal(means, matrix * np.outer(sds, sds), size=400_000).sum(axis=1)
    found = total([metres(m, s) for m, s in zip(means, sds, strict=True)], unit="m", correlation=correlation)
    assert found.mean == pytest.approx(drawn.mean(), rel=0.002)
    assert found.sd == pytest.approx(drawn.std(), rel=0.01)


@given(FIGURES, st.floats(0, 1))
def test_the_sum_is_the_quadratic_form(figures: list[tuple[float, float]], correlation: float) -> None:
    sds = np.array(figures)[:, 1]
    matrix = np.full((len(sds),) * 2, correlation)
    np.fill_diagonal(matrix, 1)
    found = total([metres(*figure) for figure in figures], unit="m", correlation=correlation)
    assert found.sd**2 == pytest.approx(float(sds @ matrix @ sds), rel=1e-9)


def test_an_empty_sum_is_nothing_in_its_unit() -> None:
    nothing = total([], unit="h")
    assert (nothing.mean, nothing.sd, nothing.unit) == (0, 0, "h")


@pytest.mark.parametrize("correlation", [-0.1, 1.1])
def test_a_correlation_outside_its_range(correlation: float) -> None:
    with pytest.raises(ValueError, match="0 to 1"):
        total([metres(1)], unit="m", correlation=correlation)


def test_metres_and_grams_are_not_added() -> None:
    with pytest.raises(ValueError, match="wanted g"):
        total([metres(1)], unit="g")
