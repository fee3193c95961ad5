"""Finished measures wanted: what cannot stand together, what is usual, and what a body asks for."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.body import size_table
from loopwright.fabric import Gauge
from loopwright.garment.wanted import (
    Brief,
    DraftOptions,
    GarmentMeasures,
    measures_for_body,
    refuse_conflicts,
    usual_measures,
    with_sleeves,
)
from loopwright.pattern import Construction
from loopwright.records import FROM_FILE
from loopwright.units import BadInput

INCH = 2.54


@pytest.mark.parametrize(
    ("measures", "said"),
    [
        ({"neck_width": 40, "shoulder_width": 38}, "neck width 40 cm with shoulder width 38 cm.*at most 34 cm"),
        ({"armhole_depth": 30, "length": 28}, "armhole depth 30 cm with length 28 cm.*at least 33 cm"),
        ({"front_neck_depth": 60, "length": 58}, "front neck depth 60 cm with length 58 cm"),
        ({"shoulder_slope": 20, "armhole_depth": 21}, "shoulder slope 20 cm"),
    ],
)
def test_a_pair_that_cannot_be_is_named_with_a_value_that_works(measures: dict[str, float], said: str) -> None:
    with pytest.raises(BadInput, match=f"(?s){said}"):
        refuse_conflicts(GarmentMeasures.model_validate(measures))


def test_the_value_that_is_named_works() -> None:
    refuse_conflicts(GarmentMeasures(neck_width_cm=34, shoulder_width_cm=38))


def test_a_file_writes_lengths_with_their_unit() -> None:
    measures = GarmentMeasures.model_validate({"neck_width": "7 in"}, context=FROM_FILE)
    assert measures.neck_width_cm == pytest.approx(7 * INCH)


def brief(options: DraftOptions | None = None, **measures: float) -> Brief:
    gauge = Gauge(stitches_per_10cm=20, rows_per_10cm=28)
    return Brief(Construction.SET_IN, GarmentMeasures.model_validate(measures), gauge, options or DraftOptions())


def test_a_neck_is_a_third_of_the_shoulders_and_an_inch_deep_behind() -> None:
    # Sources, read: a handbook page (width about a third); a knitter's weblog of 2014 (back neck drop and slope 1 in).
    usual = usual_measures(brief(bust_girth=100, shoulder_width=39, armhole_depth=22))
    assert usual.neck_width_cm == pytest.approx(13)
    assert (usual.back_neck_depth_cm, usual.shoulder_slope_cm) == (INCH, INCH)


def test_a_crew_is_three_inches_or_a_little_more() -> None:
    # Source: a designer's article on necklines, 2014 (read): crew 3 to 3½ in.
    usual = usual_measures(brief(bust_girth=100, armhole_depth=22))
    assert usual.front_neck_depth_cm is not None
    assert 3 * INCH <= usual.front_neck_depth_cm <= 3.5 * INCH


def test_a_v_begins_an_inch_above_the_armhole() -> None:
    # The same article: from 1 in above to 2 in below the armhole's begin.
    usual = usual_measures(brief(DraftOptions(neckline="V"), bust_girth=100, armhole_depth=22))
    assert usual.front_neck_depth_cm == pytest.approx(22 - 2.5, abs=0.1)


def test_what_she_states_stands() -> None:
    assert usual_measures(brief(bust_girth=100, neck_width=20)).neck_width_cm == 20


def test_a_standard_length_is_five_inches_below_the_waist() -> None:
    # Source: a knitter's weblog quoting the usual figures (read): standard length 5 in below the waist.
    body = {"bust_girth": 92.0, "back_neck_to_waist": 41.0}
    assert measures_for_body(body, {}, Construction.RAGLAN).length_cm == pytest.approx(41 + 5 * INCH)


def test_a_dropped_sleeve_is_centre_back_to_wrist_less_half_the_garment() -> None:
    # Source: common practice, as the reference on fit gives it.
    body = {"bust_girth": 90.0, "back_neck_to_wrist": 72.0}
    measures = measures_for_body(body, {"bust_girth": 20.0}, Construction.DROP)
    assert measures.sleeve_length_cm == pytest.approx(72 - 110 / 4)


@pytest.mark.parametrize("construction", [Construction.SET_IN, Construction.RAGLAN, Construction.DROP])
def test_a_larger_body_never_asks_for_less(construction: Construction) -> None:
    sizes = [measures_for_body(body, {}, construction) for body in size_table("women").values()]
    for name in ("bust_girth", "length", "armhole_depth", "upper_arm_girth"):
        values = [dict(measures.known())[name] for measures in sizes]
        assert values == sorted(values), name


def test_a_hat_is_a_little_smaller_than_the_head() -> None:
    hat = measures_for_body({"head_girth": 56.0}, {"head_girth": -3.75}, Construction.HAT)
    assert hat.head_girth_cm == pytest.approx(52.25)


LONG = GarmentMeasures(upper_arm_girth_cm=36, wrist_girth_cm=22, sleeve_length_cm=45)


def test_a_shorter_sleeve_ends_as_wide_as_the_long_one_is_there() -> None:
    short = with_sleeves(LONG, "three-quarter", GarmentMeasures())
    assert short.sleeve_length_cm == pytest.approx(0.72 * 45)
    assert short.wrist_girth_cm == pytest.approx(36 - 0.72 * 14)


def test_her_own_sleeve_stands() -> None:
    own = GarmentMeasures(sleeve_length_cm=20)
    assert with_sleeves(own.filled(LONG), "short", own).sleeve_length_cm == 20


def test_no_sleeves_leaves_no_measure_of_one() -> None:
    assert dict(with_sleeves(LONG, "none", GarmentMeasures()).known()) == {}


@given(st.sampled_from(["short", "three-quarter", "long"]))
def test_a_sleeve_is_never_wider_than_the_arm_nor_longer(length: str) -> None:
    made = with_sleeves(LONG, length, GarmentMeasures())  # type: ignore[arg-type]
    assert LONG.wrist_girth_cm is not None
    assert made.wrist_girth_cm is not None
    assert LONG.wrist_girth_cm <= made.wrist_girth_cm <= 36
