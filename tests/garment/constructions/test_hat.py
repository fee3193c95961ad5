"""Hats: a crown that closes exactly, over many heads and gauges."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from loopwright.fabric import Gauge
from loopwright.fit.ways_out import Repeat
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Kind, broken_laws, piece_outlines_cm
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures, Trim
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.garment.wanted_measures import gauges

GAUGE = Gauge(stitches_per_10cm=22, rows_per_10cm=30)
HEADS = st.floats(34, 64)
REPEATS = st.one_of(st.none(), st.builds(Repeat, multiple=st.integers(1, 16), plus=st.integers(0, 1)))


def hat(girth: float, length: float, gauge: Gauge = GAUGE, **options: object) -> Brief:
    measures = GarmentMeasures(head_girth_cm=girth, length_cm=length)
    return Brief(Construction.HAT, measures, gauge, DraftOptions.model_validate(options))


@settings(max_examples=120, deadline=None)
@given(HEADS, st.floats(0.36, 0.55), gauges(), REPEATS)
def test_every_hat_keeps_the_laws_and_closes(girth: float, share: float, gauge: Gauge, repeat: Repeat | None) -> None:
    made = draft(hat(girth, share * girth, gauge, repeat=repeat, hem=Trim(depth_cm=3.0)))
    body, crown = made.section("hat", "body"), made.section("hat", "crown")
    assert broken_laws(made) == ()
    assert made.check("length").is_exact
    assert 6 <= crown.last <= 10
    assert crown.last < crown.stitches[-2] == 2 * crown.last
    assert all(one.stitches == crown.last for one in crown.shapings if one.side == "lines")
    if repeat is None:
        assert abs(made.check("head_girth").off_cm) <= gauge.width_cm(1) + 1e-9
    else:
        assert (body.first - repeat.plus) % repeat.multiple == 0
        assert abs(made.check("head_girth").off_cm) <= gauge.width_cm(repeat.multiple / 2) + 1e-9


@settings(max_examples=60, deadline=None)
@given(HEADS, st.floats(0, 6), st.floats(20, 24), st.floats(0, 6), gauges())
def test_a_larger_hat_is_never_smaller(girth: float, wider: float, length: float, longer: float, gauge: Gauge) -> None:
    one, other = draft(hat(girth, length, gauge)), draft(hat(girth + wider, length, gauge))
    assert one.section("hat", "body").first <= other.section("hat", "body").first
    rows = [
        sum(one.rows for one in draft(hat(girth, cm, gauge)).pieces[0].sections) for cm in (length, length + longer)
    ]
    assert rows[0] <= rows[1]


@settings(max_examples=30, deadline=None)
@given(HEADS, gauges())
def test_its_area_is_that_of_its_outlines_lying_double(girth: float, gauge: Gauge) -> None:
    made = draft(hat(girth, 22, gauge))
    outlines = piece_outlines_cm(made.pieces[0]).values()
    assert 2 * sum(Polygon(outline).area for outline in outlines) == pytest.approx(made.area_cm2)


def test_a_shallow_hat_is_shaped_in_every_round_at_the_end() -> None:
    tall, shallow = (draft(hat(51, length)).section("hat", "crown") for length in (22, 13))
    rounds = [[one.row for one in crown.shapings if one.side == "lines"] for crown in (tall, shallow)]
    assert rounds[0] == list(range(1, 26, 2))
    gaps = [later - row for row, later in zip(rounds[1], rounds[1][1:], strict=False)]
    assert gaps == sorted(gaps, reverse=True)
    assert set(gaps) == {1, 2}
    assert len(rounds[1]) == len(rounds[0])


def test_the_crown_takes_up_what_the_spokes_do_not_divide() -> None:
    # 52 cm are 114.4 stitches: 8 spokes divide 112, 2 fewer; 6 would divide 114, but a crown of 6 is pointed.
    made = draft(hat(52, 22))
    first = made.section("hat", "crown").shapings[0]
    assert (made.section("hat", "body").first, first.kind, first.stitches) == (114, Kind.DECREASE, 2)
    assert made.section("hat", "crown").last == 8


def test_a_repeat_goes_round_in_whole_and_says_what_it_does_to_the_girth() -> None:
    check = draft(hat(52, 22, repeat="16n")).check("head_girth")
    assert check.drafted_cm == pytest.approx(112 / 2.2)
    assert "16n" in str(check.reason)


def test_a_hat_too_low_for_its_crown_says_how_high_it_must_be() -> None:
    with pytest.raises(BadInput, match=r"length 9 cm.*at least \d") as caught:
        draft(hat(52, 9))
    least = float(caught.value.wanted.split("at least ")[1].split(" cm")[0])
    assert broken_laws(draft(hat(52, least + 0.1))) == ()


@pytest.mark.parametrize(
    ("option", "value"),
    [("worked", "flat"), ("direction", "top down"), ("opens_in_front", True), ("neckline", "V"), ("sleeves", "long")],
)
def test_it_refuses_what_a_hat_cannot_be(option: str, value: Any) -> None:
    with pytest.raises(BadInput) as caught:
        draft(hat(52, 22, **{option: value}))
    assert caught.value.place == option
