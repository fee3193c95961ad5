"""How many balls: brute force beside the search, and the normal law of an independent library."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from loopwright.need import balls_to_buy, metres_in_balls
from loopwright.uncertainty import Estimate, Origin, p_at_least

HAVE = st.tuples(st.floats(0, 1500), st.just(0.0) | st.floats(0.01, 60))
NEED = st.tuples(st.floats(10, 3000), st.just(0.0) | st.floats(0.01, 300))
BALL_M = st.floats(40, 800)
SURENESS = st.floats(0.5, 0.995)


def metres(mean: float, sd: float = 0.0) -> Estimate:
    return Estimate.known("given", mean, "m", Origin.STATED, sd=sd)


def chance(have: tuple[float, float], need: tuple[float, float], balls: int, ball_m: float) -> float:
    """The chance by scipy: new balls of one lot err together by 3 % of their length."""
    sd = math.sqrt(have[1] ** 2 + (0.03 * balls * ball_m) ** 2 + need[1] ** 2)
    slack = have[0] + balls * ball_m - need[0]
    return float(slack >= 0) if sd == 0 else float(stats.norm.cdf(slack / sd))


@given(HAVE, NEED, BALL_M, SURENESS)
def test_by_counting_up_from_none(
    have: tuple[float, float], need: tuple[float, float], ball_m: float, sureness: float
) -> None:
    found = balls_to_buy(metres(*have), metres(*need), ball_m, sureness)
    first = next(n for n in itertools.count() if chance(have, need, n, ball_m) >= sureness - 1e-12)
    assert found == first or chance(have, need, first, ball_m) == pytest.approx(sureness, abs=1e-9)


@given(st.integers(1, 3000), st.integers(1, 400), st.integers(0, 2000))
def test_without_doubt_it_is_a_ceiling(need_m: int, ball_m: int, have_m: int) -> None:
    found = balls_to_buy(metres(have_m), metres(need_m), ball_m, 0.9, relative_sd=0)
    assert found == max(0, -(-(need_m - have_m) // ball_m))


@given(HAVE, NEED, BALL_M, SURENESS, SURENESS)
def test_surer_is_never_fewer(
    have: tuple[float, float], need: tuple[float, float], ball_m: float, one: float, other: float
) -> None:
    less, more = sorted((one, other))
    ask = metres(*have), metres(*need), ball_m
    assert balls_to_buy(*ask, less) <= balls_to_buy(*ask, more)


@given(HAVE, NEED, BALL_M, SURENESS, st.floats(0, 500))
def test_more_at_home_is_never_more_to_buy(
    have: tuple[float, float], need: tuple[float, float], ball_m: float, sureness: float, more: float
) -> None:
    now = balls_to_buy(metres(*have), metres(*need), ball_m, sureness)
    then = balls_to_buy(metres(have[0] + more, have[1]), metres(*need), ball_m, sureness)
    assert then <= now


@given(HAVE, NEED, BALL_M, SURENESS)
def test_what_is_bought_makes_it_that_sure(
    have: tuple[float, float], need: tuple[float, float], ball_m: float, sureness: float
) -> None:
    balls = balls_to_buy(metres(*have), metres(*need), ball_m, sureness)
    bought = metres_in_balls(balls, ball_m)
    both = metres(have[0] + bought.mean, math.hypot(have[1], bought.sd))
    assert p_at_least(both, metres(*need)) >= sureness
    assert both.mean >= need[0] * (1 - 1e-9)


def test_a_band_too_doubtful_for_any_number_of_balls() -> None:
    with pytest.raises(OverflowError, match="no number of balls"):
        balls_to_buy(metres(0), metres(1000, 50), 100, 0.999, relative_sd=0.5)
