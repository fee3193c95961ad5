"""Buttonholes: all stitches of the band are accounted for."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.garment.shaping import buttonhole_plan, buttonholes
from loopwright.units import BadInput

few = st.integers(0, 12)


@given(st.integers(10, 200), st.integers(2, 12), st.integers(1, 6), few, few)
def test_a_band_is_its_holes_and_gaps(band: int, holes: int, width: int, first: int, last: int) -> None:
    try:
        plan = buttonhole_plan(band, holes=holes, width=width, first=first, last=last)
    except BadInput:
        assert band < first + last + holes * width + holes - 1
        return
    assert first + holes * width + sum(plan.gaps) + last == band
    assert (plan.holes, len(plan.gaps), plan.last) == (holes, holes - 1, last)
    assert min(plan.gaps) >= 1
    assert max(plan.gaps) - min(plan.gaps) <= 1


@given(st.integers(40, 200), st.integers(1, 7), st.integers(1, 3), few)
def test_holes_start_a_gap_after_the_one_before(band: int, holes: int, width: int, first: int) -> None:
    plan = buttonhole_plan(band, holes=holes, width=width, first=first, last=0)
    worked = ["."] * band
    for start in plan.starts:
        worked[start : start + width] = ["o"] * width
    gaps = "".join(worked).strip(".").replace("o" * width, "|").strip("|").split("|")
    assert plan.starts[0] == first
    assert tuple(len(gap) for gap in gaps if holes > 1) == plan.gaps


def test_one_hole_leaves_the_rest_after_it() -> None:
    plan = buttonhole_plan(20, holes=1, width=2, first=4, last=3)
    assert (plan.starts, plan.gaps, plan.last) == ((4,), (), 14)


def test_too_many_holes_are_refused_with_the_most_that_fit() -> None:
    """Five holes of 3 need 3 · 5 + 4 between, the 19 within the ends; six need 23."""
    with pytest.raises(BadInput, match="wanted at most 5, with 2 stitches before, 3 after"):
        buttonholes(24, holes=6, width=3, first=2, last=3)
    assert len(buttonholes(24, holes=5, width=3, first=2, last=3)) == 4
