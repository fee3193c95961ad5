"""Propagation through a product and a sum, against Monte Carlo."""

import numpy as np
import pytest

from loopwright.uncertainty import Estimate, Origin


def given(mean: float, sd: float, unit: str = "m") -> Estimate:
    return Estimate.known("given", mean, unit, Origin.MEASURED, sd=sd)


def test_a_product_by_monte_carlo() -> None:
    """First order only: at 5 and 4 % the neglected term is 0.1 % of the sd; the draw itself errs by 0.2 %."""
    random = np.random.default_rng(3)
    drawn = random.normal(900, 45, 400_000) * random.normal(1.15, 0.046, 400_000)
    product = given(900, 45).times(given(1.15, 0.046, "×"), "product")
    assert product.mean == pytest.approx(drawn.mean(), rel=0.001)
    assert product.sd == pytest.approx(drawn.std(), rel=0.01)


def test_a_sum_of_independent_figures() -> None:
    assert given(3, 3).plus(given(4, 4), "sum").sd == 5


def test_working_grows_step_by_step() -> None:
    product = given(900, 45).times(given(2, 0, "×"), "twice", "900 m × 2")
    assert [step.says for step in product.steps] == ["given", "given", "twice"]
    assert product.origin is Origin.COMPUTED


def test_units_must_agree_to_add() -> None:
    with pytest.raises(ValueError, match="cannot add g to m"):
        given(1, 0).plus(given(1, 0, "g"), "sum")


@pytest.mark.parametrize("sd", [-1.0, float("inf"), float("nan")])
def test_a_deviation_that_cannot_be(sd: float) -> None:
    with pytest.raises(ValueError, match=r"standard deviation|finite"):
        given(1, sd)


def test_an_estimate_cannot_be_changed() -> None:
    with pytest.raises(ValueError, match="frozen"):
        given(1, 0).mean = 2  # type: ignore[misc]


def test_the_relative_doubt_of_nothing_is_nothing() -> None:
    assert given(0, 5).relative_sd == 0
