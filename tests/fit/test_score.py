"""The ranking rule where the worked examples of `tests/published` do not reach: ties, caps, stretch, verdicts."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.fit import SizeFit, rank_sizes, score_size
from loopwright.pattern import Construction

SIZES = {"86": 86.0, "94": 94.0, "102": 102.0, "110": 110.0, "118": 118.0}


def fit(body: float, garment: float, *, ease: float = 7.5, size: str = "one", stretch: float = 0.2) -> SizeFit:
    return score_size(
        size, {"bust_girth": body}, {"bust_girth": garment}, {"bust_girth": ease}, Construction.RAGLAN, stretch
    )


def ranked(body: float, *, ease: float = 7.5) -> list[str]:
    return [one.size for one in rank_sizes([fit(body, girth, ease=ease, size=s) for s, girth in SIZES.items()])]


def test_the_ease_that_is_wanted_costs_nothing() -> None:
    assert fit(90, 97.5).score == 0


def test_too_tight_costs_four_times_too_loose() -> None:
    """Tight 2.5 cm, loose 5 cm at the bust (fit.md, section 8): (5/2.5)² against (5/5)²."""
    assert fit(90, 92.5).score == pytest.approx(4)
    assert fit(90, 102.5).score == pytest.approx(1)


def test_a_penalty_is_never_more_than_nine() -> None:
    assert fit(90, 200).score == 9


def test_stretch_gives_room_where_negative_ease_is_wanted() -> None:
    """Tight grows by 0.05 × 0.5 × 100 = 2.5 cm, so 5 cm short of −5 cm costs (5/5)²."""
    assert fit(100, 90, ease=-5, stretch=0.5).score == pytest.approx(1)


def test_the_floor_is_half_the_stretch() -> None:
    """fit.md, section 4: a body of 100 at stretch 0.20 takes no less than 90.9."""
    assert fit(100, 90.8).too_small_at == ("bust_girth",)
    assert fit(100, 91.0).too_small_at == ()


def test_a_tie_goes_to_the_larger_size() -> None:
    """Ease wanted 7.5: 94 is 2.5 short of a body of 89 (penalty 1), and 101.5 is 5 over (penalty 1)."""
    smaller, larger = fit(89, 94, size="94"), fit(89, 101.5, size="102")
    assert smaller.score == pytest.approx(larger.score)
    assert rank_sizes([smaller, larger])[0].size == "102"


def test_a_body_below_every_size_gets_the_smallest() -> None:
    assert ranked(50)[0] == "86"


def test_a_body_above_every_size_gets_the_largest_which_is_too_small() -> None:
    assert ranked(180)[0] == "118"


def test_nothing_to_rank() -> None:
    assert rank_sizes([]) == ()


def test_points_that_are_not_known_on_both_do_not_count() -> None:
    one = score_size(
        "one",
        {"bust_girth": 90, "hip_girth": 120},
        {"bust_girth": 97.5, "upper_arm_girth": 10},
        {"bust_girth": 7.5, "hip_girth": 5, "upper_arm_girth": 4},
        Construction.SET_IN,
        0.2,
    )
    assert [point.point for point in one.points] == ["bust_girth"]


def test_no_point_in_common() -> None:
    with pytest.raises(ValueError, match="known on body and garment"):
        score_size("one", {"bust_girth": 90}, {"hip_girth": 90}, {"bust_girth": 5}, Construction.SET_IN, 0.2)


@given(st.floats(40, 200), st.floats(40, 200), st.floats(-10, 20))
def test_larger_body_never_smaller_size(one: float, other: float, ease: float) -> None:
    """Only the bust known, one construction, one intended ease."""
    smaller, larger = sorted((one, other))
    order = list(SIZES)
    assert order.index(ranked(smaller, ease=ease)[0]) <= order.index(ranked(larger, ease=ease)[0])


@given(st.floats(60, 140), st.permutations(list(SIZES.items())))
def test_a_clear_winner_wins_in_any_order(body: float, shuffled: list[tuple[str, float]]) -> None:
    """Order decides among near ties alone, since a size row stands from small to large."""
    fits = [fit(body, girth, size=size) for size, girth in SIZES.items()]
    first, second, *_ = sorted(one.score for one in fits)
    if second - first > 0.05:
        best = rank_sizes([fit(body, girth, size=size) for size, girth in shuffled])[0]
        assert best.size == rank_sizes(fits)[0].size
