"""Raglan: laws over many bodies, gauges and options. Published counts are in tests/published/test_raglan_yoke.py."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Kind, Section, broken_laws, section_outline_cm
from loopwright.garment.parts.raglan_counts import RaglanCounts, RaglanTargets, raglan_counts
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.garment.wanted_measures import briefs

OPTIONS = {
    "direction": st.sampled_from([None, "top down", "bottom up"]),
    "opens_in_front": st.booleans(),
    "neckline": st.sampled_from([None, "round", "V", "high"]),
    "repeat": st.sampled_from([None, None, None, "5n", "6n"]),
}


def jumper(**options: object) -> Brief:
    return Brief(
        Construction.RAGLAN,
        GarmentMeasures(
            bust_girth_cm=100.0,
            length_cm=62.0,
            armhole_depth_cm=21.0,
            upper_arm_girth_cm=36.0,
            wrist_girth_cm=24.0,
            sleeve_length_cm=44.0,
        ),
        Gauge(stitches_per_10cm=22, rows_per_10cm=30),
        DraftOptions.model_validate(options),
        head_girth_cm=57.0,
    )


@settings(max_examples=150, deadline=None)
@given(briefs(Construction.RAGLAN, **OPTIONS))
def test_every_draft_keeps_the_laws(brief: Brief) -> None:
    made = draft(brief)
    assert broken_laws(made) == ()
    for check in made.checks:
        by_repeat = brief.options.repeat and check.name in ("bust_girth", "hip_girth")
        assert abs(check.off_cm) < 3 * check.grain_cm or check.name == "neck_width" or by_repeat, check
    names = {check.name for check in made.checks}
    assert names >= {"bust_girth", "upper_arm_girth", "armhole_depth", "neck_width", "front_neck_depth", "length"}


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.RAGLAN, **OPTIONS))
def test_the_yoke_meets_what_lies_below_it(brief: Brief) -> None:
    made = draft(brief)
    up = made.direction == "bottom up"
    yoke, body = made.section("yoke", "yoke"), made.section("body", "body")
    sleeve = made.section("left sleeve", "sleeve")
    underarm = next(join.one.amount for join in made.joins if join.kind == ("grafted" if up else "picked up"))
    body_stitches, arm = (body.live, sleeve.live) if up else (body.first + 2 * underarm, sleeve.first + underarm)
    met = yoke.first if up else yoke.live
    assert met == body_stitches + 2 * arm - 4 * underarm


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.RAGLAN, **OPTIONS))
def test_both_directions_have_the_same_counts(brief: Brief) -> None:
    down, up = (
        draft(replace(brief, options=brief.options.model_copy(update={"direction": way})))
        for way in ("top down", "bottom up")
    )
    assert up.piece("yoke").sections[-1].live == down.piece("yoke").sections[0].first
    assert up.section("yoke", "yoke").first == down.section("yoke", "yoke").live
    assert {one.key for one in up.piece("yoke").sections} == {one.key for one in down.piece("yoke").sections}
    assert [check.drafted_cm for check in up.checks] == [check.drafted_cm for check in down.checks]


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.RAGLAN, **OPTIONS))
def test_lines_take_stitches_on_both_sides_alike(brief: Brief) -> None:
    made = draft(brief)
    for section in made.piece("yoke").sections:
        parts = {part.name: part.stitches for part in section.parts}
        assert np.array_equal(parts["left sleeve"], parts["right sleeve"])
        if section.key != "back neck":
            assert set(np.abs(np.diff(parts["back"])).tolist()) <= {0, 2}
            assert set(np.abs(np.diff(parts["left sleeve"])).tolist()) <= {0, 2}


@settings(max_examples=40, deadline=None)
@given(briefs(Construction.RAGLAN, **OPTIONS), st.floats(0.5, 12.0))
def test_wider_has_no_fewer_stitches_and_longer_no_fewer_rows(brief: Brief, more_cm: float) -> None:
    made = draft(brief)
    wanted = brief.measures
    assert wanted.bust_girth_cm is not None
    assert wanted.length_cm is not None
    assert wanted.front_neck_depth_cm is None
    longer = replace(brief, measures=wanted.model_copy(update={"length_cm": wanted.length_cm + more_cm}))
    assert draft(longer).section("body", "body").rows >= made.section("body", "body").rows
    no_hip = wanted.model_copy(update={"hip_girth_cm": None})
    wider = no_hip.model_copy(update={"bust_girth_cm": wanted.bust_girth_cm + more_cm})
    narrow, wide = (draft(replace(brief, measures=one)).section("body", "body") for one in (no_hip, wider))
    # The bands of a cardigan take up a stitch more or less, so that both halves of its front are alike.
    assert wide.stitches.max() >= narrow.stitches.max() - brief.options.opens_in_front


@settings(max_examples=40, deadline=None)
@given(briefs(Construction.RAGLAN, **OPTIONS))
def test_outlines_hold_the_area_of_the_rows(brief: Brief) -> None:
    for _, section in draft(brief).sections():
        layers = 2 if section.in_the_round else 1
        assert layers * Polygon(section_outline_cm(section)).area == pytest.approx(section.area_cm2)


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.RAGLAN, **OPTIONS))
def test_to_and_fro_single_lines_and_the_neck_lie_in_whole_pairs_of_rows(brief: Brief) -> None:
    made = draft(brief)
    for section in made.piece("yoke").sections:
        if section.key == "upper yoke" or brief.options.opens_in_front:
            assert section.rows % 2 == 0
    assert made.section("body", "body").rows % 2 == 0 or not brief.options.opens_in_front


def plain_best(
    bust: int, upper: int, depth_cm: float, neck: float, top: float, gauge: Gauge
) -> tuple[float, RaglanCounts]:
    """Give the least cost and its counts by trying every underarm and sleeve's top, in plain loops."""
    usual, found = max(round(0.08 * bust), 1), []
    for under in range(-(-usual // 2), min(2 * usual, bust // 2 - 2) + 1):
        for tops in range(2, round(neck) + 1):
            exact = (depth_cm - gauge.width_cm(tops) / 2) * gauge.rows_or_usual_per_10cm / 10
            rows, twice = max(round(exact), 4), upper - under - tops
            if twice % 2 or not 0 <= twice <= 2 * rows:
                continue
            back = bust // 2 - under
            necks = [back - 2 * times for times in range(min(rows, (back - 1) // 2) + 1)]
            best = min(necks, key=lambda one: (abs(one - neck), -one))
            off, short = abs(best - neck), abs(rows - exact)
            cost = 8 * short * (short > 0.5 + 1e-9) + 4 * off * (off > 0.5 + 1e-9) + abs(under - usual)
            cost += 2 * abs(tops - round(top)) + abs(back - best - rows) + abs(twice - rows)
            found.append((cost, RaglanCounts(under, upper, best, tops, rows, (back - best) // 2, twice // 2)))
    return min(found, key=lambda one: one[0])


@settings(max_examples=60, deadline=None)
@given(st.floats(54, 110), st.floats(0.30, 0.40), st.floats(12, 24), st.integers(14, 24))
def test_the_counts_are_the_best_of_all(bust_cm: float, share: float, depth_cm: float, stitches: int) -> None:
    gauge = Gauge(stitches_per_10cm=stitches, rows_per_10cm=1.375 * stitches)
    bust, upper = 2 * round(gauge.stitches_in(bust_cm) / 2), round(gauge.stitches_in(share * bust_cm))
    neck = gauge.stitches_in(0.14 * bust_cm)
    found = raglan_counts(RaglanTargets(bust, None, upper, depth_cm, neck, neck / 3, gauge, flat=False))
    assert found == plain_best(bust, upper, depth_cm, neck, neck / 3, gauge)[1]


def lines_of(section: Section) -> list[int]:
    return [one.row for one in section.shapings if one.side == "lines"]


def test_every_second_row_lies_on_the_right_side() -> None:
    roomy = jumper(opens_in_front=True)
    roomy = replace(roomy, measures=roomy.measures.model_copy(update={"armhole_depth_cm": 27.0}))
    for way in ("top down", "bottom up"):
        made = draft(replace(roomy, options=roomy.options.model_copy(update={"direction": way})))
        for section in made.piece("yoke").sections:
            assert all(row % 2 == 0 for row in lines_of(section))


@pytest.mark.parametrize("direction", ["top down", "bottom up"])
def test_the_waist_of_a_cardigan_is_shaped_in_right_side_rows(direction: str) -> None:
    brief = jumper(opens_in_front=True, direction=direction, waist_above_hem_cm=14.3)
    fitted = replace(brief, measures=brief.measures.model_copy(update={"waist_girth_cm": 90.0}))
    body = draft(fitted).section("body", "body")
    assert body.stitches.max() - body.stitches.min() == pytest.approx(22, abs=2)
    assert all(row % 2 == 0 for row in lines_of(body))
    assert {one.places for one in body.shapings} == {2}


def test_short_rows_raise_the_back_only_and_rest_nothing_for_good() -> None:
    wedge = draft(jumper()).section("yoke", "back neck")
    assert wedge.live == wedge.first
    assert wedge.rows == 8
    assert {part.name: int(part.stitches.max()) for part in wedge.parts}["front"] == 0


def test_no_raise_leaves_the_short_rows_out() -> None:
    made = draft(jumper(back_neck_raise_cm=0.01))
    assert [section.key for section in made.piece("yoke").sections] == ["upper yoke", "yoke"]


def test_a_back_neck_depth_asks_for_fewer_short_rows() -> None:
    brief = jumper()
    deep = replace(brief, measures=brief.measures.model_copy(update={"back_neck_depth_cm": 1.5}))
    assert draft(deep).check("back_neck_depth").off_cm == pytest.approx(0, abs=10 / 30)


def test_a_cardigan_has_two_bands_and_a_body_in_one_piece() -> None:
    made = draft(jumper(opens_in_front=True))
    assert {"left band", "right band", "neckband"} <= {piece.key for piece in made.pieces}
    body, closed = made.section("body", "body"), draft(jumper()).section("body", "body")
    assert not body.in_the_round
    assert closed.stitches.max() - body.stitches.max() in (6, 7)
    assert made.section("left sleeve", "sleeve").in_the_round


def test_the_band_of_a_cardigan_closes_it_to_the_bust() -> None:
    for repeat in (None, "8n + 1", "6n + 2"):
        made = draft(jumper(opens_in_front=True, repeat=repeat))
        body, yoke = made.section("body", "body"), made.section("yoke", "yoke")
        front, back = (int(next(p for p in yoke.parts if p.name == name).stitches[-1]) for name in ("front", "back"))
        bust = 22 * made.check("bust_girth").drafted_cm / 10
        assert bust - body.stitches.max() == pytest.approx(back - front)
        assert front % 2 == 0
        if repeat:
            multiple, plus = (int(one) for one in repeat.split("n + "))
            assert body.stitches.max() % multiple == plus


def test_underarms_are_cast_on_once_and_grafted_once() -> None:
    down, up = draft(jumper()), draft(jumper(direction="bottom up"))
    cast_on = [one for one in down.section("body", "body").shapings if one.kind is Kind.CAST_ON]
    assert [(one.row, one.places) for one in cast_on] == [(0, 2)]
    grafted = [join for join in up.joins if join.kind == "grafted"]
    assert [join.one.amount for join in grafted] == [cast_on[0].stitches // 2] * 2


@pytest.mark.parametrize("construction", [Construction.RAGLAN, Construction.YOKE])
def test_bust_length_and_sleeve_are_enough(construction: Construction) -> None:
    measures = GarmentMeasures(bust_girth_cm=100.0, length_cm=62.0, sleeve_length_cm=44.0)
    made = draft(Brief(construction, measures, Gauge(stitches_per_10cm=22, rows_per_10cm=30)))
    # The percentage system: an upper arm of 33 %.
    assert made.check("upper_arm_girth").drafted_cm == pytest.approx(33, abs=0.3)


def test_the_shoulder_width_does_not_matter() -> None:
    brief = jumper()
    narrow = replace(brief, measures=brief.measures.model_copy(update={"shoulder_width_cm": 10.0}))
    assert draft(narrow).stitches == draft(brief).stitches


@pytest.mark.parametrize(
    ("options", "place"),
    [
        ({"neckline": "boat"}, "neckline"),
        ({"worked": "flat"}, "worked"),
        ({"sleeves": "none"}, "sleeves"),
        ({"bust_short_rows_cm": 3.0}, "bust_short_rows"),
        ({"back_neck_raise_cm": 20.0}, "back_neck_raise"),
    ],
)
def test_what_it_cannot_honour_is_refused(options: dict[str, object], place: str) -> None:
    with pytest.raises(BadInput) as fault:
        draft(jumper(**options))
    assert fault.value.place == place


@pytest.mark.parametrize(
    ("measure", "value", "place"),
    [
        ("front_neck_depth_cm", 24.0, "front_neck_depth"),
        ("upper_arm_girth_cm", 95.0, "upper_arm_girth"),
        ("length_cm", 26.0, "length"),
    ],
)
def test_measures_that_cannot_stand_together_are_refused(measure: str, value: float, place: str) -> None:
    brief = jumper()
    with pytest.raises(BadInput) as fault:
        draft(replace(brief, measures=brief.measures.model_copy(update={measure: value})))
    assert fault.value.place == place
