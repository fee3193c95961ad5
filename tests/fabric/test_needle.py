"""Which needle next: direction by the trade's rule, size from the table."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.fabric import NEEDLES, Gauge, Swatch, needle_of, next_needle

TWENTY = Gauge(stitches_per_10cm=20)
WORSTED_TEX = 500.0


def swatch(stitches: float, **facts: object) -> Swatch:
    facts = {"needle": "4.5 mm", "places": 9, **facts}
    return Swatch.model_validate({"key": "s", "yarns": ["dk"], "after": f"{stitches} sts = 10 cm", **facts})


@pytest.mark.parametrize(("stitches", "direction"), [(22, "larger"), (18, "smaller")])
def test_too_many_stitches_want_a_larger_needle(stitches: float, direction: str) -> None:
    """gauge_and_care.md, two trade texts, cross-read."""
    advice = next_needle(swatch(stitches), TWENTY, WORSTED_TEX)
    assert advice.direction == direction
    assert advice.needle is not None
    assert (advice.needle.mm > 4.5) == (direction == "larger")


def test_within_counting_error_she_holds() -> None:
    """20.6 counted once is ± 0.4; half a stitch is no reason."""
    advice = next_needle(swatch(20.6, places=1), TWENTY, WORSTED_TEX)
    assert (advice.direction, advice.why, advice.needle) == ("hold", "counting", None)


def test_between_two_sizes_she_holds_and_is_told_so() -> None:
    """Half a stitch off for sure; the next size would be a whole one off the other way."""
    advice = next_needle(swatch(20.5, places=50), TWENTY, WORSTED_TEX)
    assert (advice.direction, advice.why) == ("hold", "between")


def test_one_stitch_is_about_one_size() -> None:
    """A stitch to 10 cm more at 20 is about one needle size: common practice, no source."""
    advice = next_needle(swatch(21.2), TWENTY, WORSTED_TEX)
    assert advice.needle == needle_of(5)


def test_the_yarn_on_the_needle_takes_part_of_the_change() -> None:
    """W ∝ D + 2d: by hand with d = 0.0564 √500 = 1.2611 mm, 7.0223 × 22/20 - 2.5223 = 5.2022 mm."""
    assert next_needle(swatch(22), TWENTY, WORSTED_TEX).model_mm == pytest.approx(5.2022, abs=1e-3)
    assert next_needle(swatch(22), TWENTY).model_mm == pytest.approx(4.5 * 1.1)


def test_without_her_needle_only_the_direction_is_told() -> None:
    advice = next_needle(swatch(23, needle=None), TWENTY)
    assert (advice.direction, advice.needle, advice.model_mm) == ("larger", None, None)


def test_far_off_is_said() -> None:
    assert next_needle(swatch(26), TWENTY, WORSTED_TEX).far
    assert not next_needle(swatch(22), TWENTY, WORSTED_TEX).far


@given(st.floats(12, 32), st.sampled_from([needle.mm for needle in NEEDLES]), st.floats(50, 1500))
def test_advice_never_makes_it_worse(stitches: float, mm: float, tex: float) -> None:
    advice = next_needle(swatch(stitches, needle=f"{mm} mm"), TWENTY, tex)
    assert abs(advice.expected_per_10cm / 20 - 1) <= abs(stitches / 20 - 1) * 1.3
    if advice.needle is not None:
        assert (advice.needle.mm > mm) == (stitches > 20)
