"""Between sizes: high bust and short rows, sleeves of another size, the least girth of a fabric, the tape's error."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.body import Body
from loopwright.fabric import Gauge
from loopwright.fit import FitWish, fits_of_sizes
from loopwright.fit.advice import (
    bust_shaping,
    least_garment_cm,
    other_size_for_sleeves,
    rivals_within_tape_error,
    sleeve_length_wanted_cm,
)
from loopwright.pattern import Construction, PatternFacts

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)


def pattern(**more: Any) -> PatternFacts:
    facts = {
        "key": "p",
        "name": "P",
        "construction": "set-in sleeve",
        "gauge": "20 sts x 28 rows = 10 cm",
        "sizes": "86 (94, 102, 110, 118)",
        "finished": {
            "bust_girth": "86 (94, 102, 110, 118) cm",
            "upper_arm_girth": "29 (31, 33, 35, 38) cm",
            "shoulder_width": "34 (35, 36, 37, 38) cm",
        },
    }
    return PatternFacts.model_validate(facts | more)


def wish(body_cm: dict[str, float], **more: Any) -> FitWish:
    facts = {
        "body_cm": body_cm,
        "intended_cm": {"bust_girth": 7.5, "upper_arm_girth": 4.0, "shoulder_width": 0.0},
        "plan_sd_cm": dict.fromkeys(body_cm, 1.5),
        "construction": Construction.SET_IN,
        "stretch": 0.2,
    }
    return FitWish.model_validate(facts | more)


def woman(**measures: Any) -> Body:
    return Body.model_validate({"key": "w", "name": "W", "wearer": "woman"} | measures)


@pytest.mark.parametrize(
    ("stretch", "body", "printed"),
    [(0.10, 90, 85.7), (0.20, 100, 90.9), (0.30, 110, 95.7), (0.50, 90, 72.0), (0.75, 100, 72.7), (1.00, 110, 73.3)],
)
def test_the_least_girth_as_our_table_prints_it(stretch: float, body: float, printed: float) -> None:
    """Half of the stretch used; geometry, the half is our proposal (not an outside source)."""
    assert least_garment_cm(body, stretch) == pytest.approx(printed, abs=0.05)


@pytest.mark.parametrize(("difference", "longer"), [(5.0, 1.5), (7.5, 3.0), (10.0, 4.5), (12.5, 6.0), (15.0, 7.5)])
def test_length_over_the_bust_as_our_table_prints_it(difference: float, longer: float) -> None:
    """0.6 (D − 2.5): our proposal between a hanging and a hugging front; 28 rows to 10 cm, rounded to even rows."""
    body = woman(bust_girth=f"{90 + difference} cm", high_bust_girth="90 cm")
    found = bust_shaping(wish({"bust_girth": 90 + difference}), body, pattern(), GAUGE)
    assert found is not None
    assert found.longer_cm == pytest.approx(longer)
    assert found.rows % 2 == 0
    assert abs(found.rows - longer * 2.8) <= 1


def test_the_size_goes_by_the_high_bust() -> None:
    """Full bust 104 asks for 110, high bust 94 for 102 (7.5 cm of ease)."""
    body = woman(bust_girth="104 cm", high_bust_girth="94 cm")
    by_full = wish({"bust_girth": 104})
    assert fits_of_sizes(by_full, pattern(), GAUGE)[0].size == "110"
    found = bust_shaping(by_full, body, pattern(), GAUGE)
    assert found is not None
    assert found.size == "102"


def test_no_short_rows_where_bust_and_high_bust_are_close_or_ease_is_wide() -> None:
    assert (
        bust_shaping(wish({"bust_girth": 94}), woman(bust_girth="94 cm", high_bust_girth="90 cm"), pattern(), GAUGE)
        is None
    )
    loose = wish({"bust_girth": 96}, intended_cm={"bust_girth": 20})
    found = bust_shaping(loose, woman(bust_girth="96 cm", high_bust_girth="90 cm"), pattern(), GAUGE)
    assert found is not None
    assert found.longer_cm == 0


def test_sleeves_of_another_size_for_a_strong_arm() -> None:
    """An arm of 34 + 4 cm of ease asks for 38, which only 118 has; the bust of 94 keeps the body smaller."""
    own = fits_of_sizes(wish({"bust_girth": 94, "upper_arm_girth": 34}), pattern(), GAUGE)[0]
    found = other_size_for_sleeves(wish({"bust_girth": 94, "upper_arm_girth": 34}), own, pattern(), GAUGE)
    assert found is not None
    assert own.size != "118"
    assert (found.size, found.upper_arm_cm) == ("118", 38)


def test_sleeves_stay_where_the_arm_suits() -> None:
    suits = wish({"bust_girth": 94, "upper_arm_girth": 29})
    own = fits_of_sizes(suits, pattern(), GAUGE)[0]
    assert other_size_for_sleeves(suits, own, pattern(), GAUGE) is None


def test_a_size_that_hangs_by_a_thread_is_named() -> None:
    """98.6 + 7.5 lies between 102 and 110; a centimetre and a half either way decides."""
    edge = wish({"bust_girth": 98.6})
    chosen = fits_of_sizes(edge, pattern(), GAUGE)[0].size
    assert rivals_within_tape_error(edge, pattern(), GAUGE, chosen) != ()
    middle = wish({"bust_girth": 94.5})
    assert rivals_within_tape_error(middle, pattern(), GAUGE, "102") == ()


@given(st.floats(70, 120), st.floats(0, 3))
def test_rivals_are_sizes_of_the_pattern_and_never_the_chosen_one(bust: float, error: float) -> None:
    one = wish({"bust_girth": bust}, plan_sd_cm={"bust_girth": error})
    chosen = fits_of_sizes(one, pattern(), GAUGE)[0].size
    rivals = rivals_within_tape_error(one, pattern(), GAUGE, chosen)
    assert chosen not in rivals
    assert set(rivals) <= set(pattern().sizes)
    assert error > 0 or rivals == ()


def test_sleeve_length_by_construction() -> None:
    """Dropped shoulder: centre back to wrist less half the garment's width (common practice)."""
    body = woman(underarm_to_wrist="44 cm", back_neck_to_wrist="78 cm")
    assert sleeve_length_wanted_cm(body, Construction.RAGLAN, {}) == 44
    assert sleeve_length_wanted_cm(body, Construction.DROP, {"bust_girth": 120}) == pytest.approx(78 - 30)
    assert sleeve_length_wanted_cm(body, Construction.SLEEVELESS, {}) is None
    assert sleeve_length_wanted_cm(woman(), Construction.RAGLAN, {}) is None


def test_an_estimated_measure_weighs_half_and_puts_no_size_out() -> None:
    body_cm = {"bust_girth": 94.0, "upper_arm_girth": 60.0}
    measured = fits_of_sizes(wish(body_cm), pattern(), GAUGE)[0]
    estimated = fits_of_sizes(wish(body_cm, estimated=frozenset({"upper_arm_girth"})), pattern(), GAUGE)[0]
    assert measured.too_small_at == ("upper_arm_girth",)
    assert estimated.too_small_at == ()
    arm = next(point for point in estimated.points if point.point == "upper_arm_girth")
    assert (arm.estimated, arm.weight) == (True, 1.0)
