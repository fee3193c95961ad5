"""Round yoke: laws over many bodies, gauges and options. Published counts: tests/published/test_raglan_yoke.py."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft, broken_laws, section_outline_cm
from loopwright.garment.parts.girth import head_passes
from loopwright.garment.parts.round_yoke_counts import decrease_rounds
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.garment.wanted_measures import briefs

OPTIONS = {
    "direction": st.sampled_from([None, "top down", "bottom up"]),
    "opens_in_front": st.booleans(),
    "repeat": st.sampled_from([None, None, "6n", "8n", "12n"]),
}


def jumper(**options: object) -> Brief:
    return Brief(
        Construction.YOKE,
        GarmentMeasures(
            bust_girth_cm=100.0,
            length_cm=62.0,
            armhole_depth_cm=23.0,
            upper_arm_girth_cm=34.0,
            wrist_girth_cm=22.0,
            sleeve_length_cm=44.0,
        ),
        Gauge(stitches_per_10cm=22, rows_per_10cm=30),
        DraftOptions.model_validate(options),
        head_girth_cm=57.0,
    )


def plateaus(made: Draft) -> list[int]:
    """Give the counts of the yoke's rows from the underarm to the neck, each as often as it changes."""
    counts = made.section("yoke", "yoke").stitches.tolist()
    if made.direction == "top down":
        counts = [made.section("yoke", "yoke").first, *counts][::-1]
    else:
        counts = [made.section("yoke", "yoke").first, *counts]
    return [counts[0], *(after for before, after in pairwise(counts) if after != before)]


@settings(max_examples=150, deadline=None)
@given(briefs(Construction.YOKE, **OPTIONS))
def test_every_draft_keeps_the_laws(brief: Brief) -> None:
    made = draft(brief)
    assert broken_laws(made) == ()
    assert {check.name for check in made.checks} >= {"bust_girth", "upper_arm_girth", "armhole_depth", "length"}
    if brief.options.repeat is None:
        assert all(abs(check.off_cm) < 3 * check.grain_cm for check in made.checks)


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.YOKE, **OPTIONS))
def test_the_yoke_is_body_and_sleeves_less_the_underarms(brief: Brief) -> None:
    made = draft(brief)
    up = made.direction == "bottom up"
    yoke, body = made.section("yoke", "yoke"), made.section("body", "body")
    sleeve = made.section("left sleeve", "sleeve")
    underarm = next(join.one.amount for join in made.joins if join.kind == ("grafted" if up else "picked up"))
    if up:
        assert yoke.first == body.live + 2 * sleeve.live - 4 * underarm
    else:
        assert yoke.live == body.first + 2 * sleeve.first
        assert body.stitches[0] == body.first + 2 * underarm
        assert sleeve.stitches[0] == sleeve.first + underarm


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.YOKE, **OPTIONS))
def test_both_directions_have_the_same_plateaus(brief: Brief) -> None:
    down, up = (
        draft(replace(brief, options=brief.options.model_copy(update={"direction": way})))
        for way in ("top down", "bottom up")
    )
    assert plateaus(down) == plateaus(up)
    assert [check.drafted_cm for check in up.checks] == [check.drafted_cm for check in down.checks]


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.YOKE, **OPTIONS))
def test_no_round_is_sharper_than_every_second_stitch_and_none_lies_low(brief: Brief) -> None:
    made = draft(replace(brief, options=brief.options.model_copy(update={"direction": "bottom up"})))
    yoke = made.section("yoke", "yoke")
    for before, after in pairwise(plateaus(made)):
        assert 2 * after >= before
    shaped = [one.row for one in yoke.shapings if one.row > 0]
    assert len(shaped) in (3, 4)
    assert shaped[0] >= yoke.rows / 3  # none in the lowest third: common practice, no source
    assert shaped[-1] >= yoke.rows - 2


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.YOKE, **OPTIONS))
def test_a_repeat_fits_every_plateau_but_the_neck(brief: Brief) -> None:
    if brief.options.repeat is None:
        return
    yoke = draft(replace(brief, options=brief.options.model_copy(update={"direction": "bottom up"}))).section(
        "yoke", "yoke"
    )
    held = set(yoke.stitches.tolist()) - {yoke.last}
    assert held
    assert all(count % brief.options.repeat.multiple == 0 for count in held)


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.YOKE, **OPTIONS))
def test_the_head_passes(brief: Brief) -> None:
    neck = plateaus(draft(brief))[-1]
    assert head_passes(brief.gauge.width_cm(neck), brief)


@settings(max_examples=60, deadline=None)
@given(briefs(Construction.YOKE, **OPTIONS), st.floats(0.5, 12.0))
def test_wider_has_no_fewer_stitches_and_longer_no_fewer_rows(brief: Brief, more_cm: float) -> None:
    made = draft(brief)
    wanted = brief.measures.model_copy(update={"hip_girth_cm": None})
    assert wanted.bust_girth_cm is not None
    assert wanted.length_cm is not None
    longer = replace(brief, measures=brief.measures.model_copy(update={"length_cm": wanted.length_cm + more_cm}))
    assert draft(longer).section("body", "body").rows >= made.section("body", "body").rows
    wider = wanted.model_copy(update={"bust_girth_cm": wanted.bust_girth_cm + more_cm})
    narrow, wide = (draft(replace(brief, measures=one)) for one in (wanted, wider))
    assert wide.check("bust_girth").drafted_cm >= narrow.check("bust_girth").drafted_cm


@settings(max_examples=40, deadline=None)
@given(briefs(Construction.YOKE, **OPTIONS))
def test_outlines_hold_the_area_of_the_rows(brief: Brief) -> None:
    for _, section in draft(brief).sections():
        layers = 2 if section.in_the_round else 1
        assert layers * Polygon(section_outline_cm(section)).area == pytest.approx(section.area_cm2)


def test_to_and_fro_it_is_shaped_in_right_side_rows() -> None:
    for way in ("top down", "bottom up"):
        yoke = draft(jumper(opens_in_front=True, direction=way)).section("yoke", "yoke")
        assert yoke.rows % 2 == 0
        assert all(one.row % 2 == 0 for one in yoke.shapings)


def test_four_rounds_where_three_would_be_sharp_or_far_apart() -> None:
    assert decrease_rounds(268, 80, 25.4) == 3
    assert decrease_rounds(268, 70, 25.4) == 4
    assert decrease_rounds(268, 80, 30.0) == 4


def test_a_repeat_says_what_it_does_to_the_width() -> None:
    made = draft(jumper(repeat="12n"))
    assert any("12n" in str(note) for note in made.notes)
    assert all(count % 12 == 0 for count in plateaus(made)[:-1][-3:])


def test_a_stated_neck_width_is_a_ring() -> None:
    brief = jumper()
    wide = replace(brief, measures=brief.measures.model_copy(update={"neck_width_cm": 16.0}))
    made = draft(wide)
    assert made.check("neck_width").is_exact
    assert plateaus(made)[-1] == pytest.approx(math.pi * 16 * 2.2, abs=1)


def test_a_depth_in_front_is_the_raise_and_says_so() -> None:
    brief = jumper(back_neck_raise_cm=4.0)
    made = draft(replace(brief, measures=brief.measures.model_copy(update={"front_neck_depth_cm": 8.0})))
    assert made.check("front_neck_depth").drafted_cm == pytest.approx(12 * 10 / 30)
    assert made.check("front_neck_depth").reason
    assert made.section("yoke", "back neck").rows == 12


def test_a_deep_yoke_is_honoured() -> None:
    brief = jumper()
    deep = replace(brief, measures=brief.measures.model_copy(update={"armhole_depth_cm": 32.0}))
    assert draft(deep).section("yoke", "yoke").rows == 96


def test_the_shoulder_width_does_not_matter() -> None:
    brief = jumper()
    narrow = replace(brief, measures=brief.measures.model_copy(update={"shoulder_width_cm": 10.0}))
    assert draft(narrow).stitches == draft(brief).stitches


@pytest.mark.parametrize(
    ("options", "place"),
    [
        ({"neckline": "V"}, "neckline"),
        ({"neckline": "boat"}, "neckline"),
        ({"worked": "flat"}, "worked"),
        ({"sleeves": "none"}, "sleeves"),
        ({"back_neck_raise_cm": 25.0}, "back_neck_raise"),
        ({"repeat": "200n"}, "repeat"),
    ],
)
def test_what_it_cannot_honour_is_refused(options: dict[str, object], place: str) -> None:
    with pytest.raises(BadInput) as fault:
        draft(jumper(**options))
    assert fault.value.place == place


@pytest.mark.parametrize(
    ("measure", "value", "place"),
    [("neck_width_cm", 60.0, "neck_width"), ("armhole_depth_cm", 2.0, "armhole_depth"), ("length_cm", 28.0, "length")],
)
def test_measures_that_cannot_stand_together_are_refused(measure: str, value: float, place: str) -> None:
    brief = jumper()
    with pytest.raises(BadInput) as fault:
        draft(replace(brief, measures=brief.measures.model_copy(update={measure: value})))
    assert fault.value.place == place
