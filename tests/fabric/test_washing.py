"""What washing does, and how long to knit for it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.fabric import Swatch, expected_wash, knit_to_cm, wash_change, washed_cm
from loopwright.yarn import Yarn


def swatch(**facts: object) -> Swatch:
    return Swatch.model_validate({"key": "s", "yarns": ["dk"], **facts})


def yarn(**fibres: float) -> Yarn:
    return Yarn.model_validate({"key": "dk", "name": "DK", "fibres": fibres, "length": "115 m", "mass": "50 g"})


BOTH = swatch(before="22 sts x 33 rows = 10 cm", after="20 sts x 30 rows = 10 cm")


def test_a_tenth_longer_is_knitted_a_tenth_shorter() -> None:
    """gauge_after = gauge_before / (1 + change): 33 rows before and 30 after grow by 10 %; 55 cm come from 50."""
    length = knit_to_cm(55, BOTH)
    assert length is not None
    assert length.cm == pytest.approx(50)


def test_felting_wants_half_as_much_again() -> None:
    """knit size = wanted size / (1 - 0.30), 1.43 times: shrinkage_growth.md, section 5."""
    length = knit_to_cm(100, swatch(before="20 sts x 21 rows = 10 cm", after="20 sts x 30 rows = 10 cm"))
    assert length is not None
    assert length.cm == pytest.approx(143, abs=0.5)


@given(st.floats(1, 300), st.sampled_from(["length", "width"]))
def test_washing_undoes_knitting_to(wanted_cm: float, side: str) -> None:
    knitted = knit_to_cm(wanted_cm, BOTH, side)  # type: ignore[arg-type]  # drawn from the two
    assert knitted is not None
    back = washed_cm(knitted.cm, BOTH, side)  # type: ignore[arg-type]  # likewise
    assert back is not None
    assert back.cm == pytest.approx(wanted_cm)


def test_the_doubt_of_a_ratio_joins_both_counts() -> None:
    """2 % before and 2 % after: 2 √2 %. JCGM 100:2008, 5.1.2."""
    change = wash_change(BOTH)
    assert change is not None
    assert change.width.sd / change.width.mean == pytest.approx(0.02 * math.sqrt(2))


@pytest.mark.parametrize("known", [{"before": "22 sts = 10 cm"}, {"after": "22 sts x 30 rows = 10 cm"}])
def test_one_gauge_tells_nothing_of_washing(known: dict[str, str]) -> None:
    assert wash_change(swatch(**known)) is None
    assert knit_to_cm(50, swatch(**known)) is None


def test_without_rows_length_is_not_known_but_width_is() -> None:
    narrow = swatch(before="22 sts = 10 cm", after="20 sts = 10 cm")
    assert knit_to_cm(50, narrow) is None
    assert knit_to_cm(55, narrow, "width") is not None


def test_superwash_grows_and_most_in_length() -> None:
    """Craft articles agree on the direction (cross-read); the range is common practice, no source."""
    usual = expected_wash([yarn(**{"superwash wool": 100})])
    assert usual is not None
    assert usual.length_pct == (4, 15)
    assert usual.length_pct[0] > usual.width_pct[0] > 0


def test_a_blend_lies_between_its_fibres() -> None:
    usual = expected_wash([yarn(**{"superwash wool": 75, "nylon": 25})])
    assert usual is not None
    assert usual.length_pct == pytest.approx((3, 0.75 * 15 + 0.25 * 2))


def test_what_is_not_known_of_a_blend_is_said() -> None:
    usual = expected_wash([yarn(wool=90, other=10)])
    assert usual is not None
    assert usual.known_percent == pytest.approx(90)
    assert expected_wash([yarn()]) is None
    assert expected_wash([yarn(other=100)]) is None
