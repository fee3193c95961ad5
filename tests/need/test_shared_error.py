"""Sums of sections, and sections brought to a better known total."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.need import SectionNeed, together
from loopwright.need.shared_error import adjusted
from loopwright.uncertainty import Estimate, Origin, Step


def need(length_m: float, own_sd_m: float, shared_sd_m: float) -> SectionNeed:
    step = Step(says="s", working="1", value=length_m, unit="m", origin=Origin.COMPUTED)
    return SectionNeed(
        piece="p",
        section="s",
        name="s",
        made=1,
        role="main",
        length_m=length_m,
        own_sd_m=own_sd_m,
        shared_sd_m=shared_sd_m,
        mass_g=length_m / 2,
        working=(step,),
    )


def known(mean: float, sd: float) -> Estimate:
    return Estimate.known("known", mean, "m", Origin.STATED, sd=sd)


needs = st.lists(st.builds(need, st.floats(1, 500), st.floats(0.01, 10), st.floats(0.01, 40)), min_size=1, max_size=12)


def test_own_errors_add_in_square_and_shared_ones_in_full() -> None:
    both = together([need(300, 3, 18), need(200, 4, 12)])
    assert both.mean == 500
    assert both.sd == pytest.approx((3**2 + 4**2 + 30**2) ** 0.5)


def test_nothing_together_is_nothing() -> None:
    assert (together([]).mean, together([]).sd) == (0, 0)


@given(needs, st.floats(10, 5000), st.floats(0.1, 300))
def test_what_is_brought_to_a_total_adds_up_to_it(sections: list[SectionNeed], mean: float, sd: float) -> None:
    """Mean and standard deviation, whatever they were before: the sections of a role are the role."""
    whole = together(adjusted(sections, known(mean, sd), "brought to it"))
    assert whole.mean == pytest.approx(mean)
    assert whole.sd == pytest.approx(sd)


@given(needs, st.floats(10, 5000))
def test_shares_stay(sections: list[SectionNeed], mean: float) -> None:
    before, after = sections[0].length_m / together(sections).mean, adjusted(sections, known(mean, 5), "x")
    assert after[0].length_m / mean == pytest.approx(before)
    assert after[0].mass_g == pytest.approx(after[0].length_m / 2)


def test_a_better_known_sum_leaves_each_its_own_error() -> None:
    """What is learnt of the sum is learnt of the shared error: 10 m of 1000 cannot say how two halves differ."""
    halves = adjusted([need(500, 6, 30), need(500, 6, 30)], known(1000, 10), "weighed")
    assert halves[0].own_sd_m == pytest.approx(6)
    assert halves[0].shared_sd_m < 30
