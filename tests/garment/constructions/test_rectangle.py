"""Scarves and cowls: counts by gauge and repeat, edges at both ends."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from loopwright.fabric import Gauge
from loopwright.fit.ways_out import Repeat
from loopwright.garment.constructions import draft
from loopwright.garment.draft import broken_laws, piece_outlines_cm
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.garment.wanted_measures import gauges

GAUGE = Gauge(stitches_per_10cm=22, rows_per_10cm=30)
BOTH = st.sampled_from([Construction.RECTANGLE, Construction.COWL])
TRIMS: st.SearchStrategy[dict[str, Any]] = st.fixed_dictionaries(
    {
        "fabric": st.sampled_from(["1x1 rib", "2x2 rib", "garter stitch", "moss stitch", "stocking stitch"]),
        "depth_cm": st.floats(0.3, 8),
    }
)
REPEATS = st.one_of(st.none(), st.builds(Repeat, multiple=st.integers(1, 30), plus=st.integers(-3, 9)))


def rectangle(
    width: float, length: float, gauge: Gauge = GAUGE, of: Construction = Construction.RECTANGLE, **options: object
) -> Brief:
    measures = GarmentMeasures(width_cm=width, length_cm=length)
    return Brief(of, measures, gauge, DraftOptions.model_validate(options))


@settings(max_examples=120, deadline=None)
@given(BOTH, st.floats(15, 130), st.floats(18, 200), gauges(), TRIMS, REPEATS)
def test_every_rectangle_keeps_the_laws(
    of: Construction, width: float, length: float, gauge: Gauge, hem: object, repeat: Repeat | None
) -> None:
    made = draft(rectangle(width, length, gauge, of, hem=hem, repeat=repeat))
    (piece,), stitches = made.pieces, made.section(of.value, "body").first
    assert broken_laws(made) == ()
    assert abs(made.check("length").off_cm) <= 10 / gauge.rows_or_usual_per_10cm + 1e-9
    assert made.check("length").is_exact or of is Construction.RECTANGLE
    if repeat is None:
        assert made.check("width").is_exact
    else:
        assert (stitches - repeat.plus) % repeat.multiple == 0
        assert stitches >= repeat.multiple
    lying = sum(Polygon(outline).area for outline in piece_outlines_cm(piece).values())
    assert lying * (2 if of is Construction.COWL else 1) == pytest.approx(made.area_cm2)


@settings(max_examples=60, deadline=None)
@given(BOTH, st.floats(15, 90), st.floats(0, 9), st.floats(18, 90), st.floats(0, 9), gauges())
def test_more_centimetres_never_give_fewer_stitches_or_rows(
    of: Construction, width: float, wider: float, length: float, longer: float, gauge: Gauge
) -> None:
    one = draft(rectangle(width, length, gauge, of)).section(of.value, "body")
    other = draft(rectangle(width + wider, length + longer, gauge, of)).section(of.value, "body")
    assert one.first <= other.first
    assert one.rows <= other.rows


def test_both_ends_of_a_scarf_have_the_edge() -> None:
    sections = draft(rectangle(31, 150)).pieces[0].sections
    assert [one.fabric for one in sections] == ["2x2 rib", "stocking stitch", "2x2 rib"]
    assert sections[0].first == sections[2].last == 70  # 4n + 2, nearest to the 68 stitches of the scarf
    assert sections[0].rows == sections[2].rows


def test_the_edge_stitches_of_a_repeat_are_on_it_when_flat() -> None:
    check = draft(rectangle(30, 150, repeat="12n + 7")).check("width")
    assert check.drafted_cm == pytest.approx(67 / 2.2)
    assert "12n + 7" in str(check.reason)


def test_a_cowl_is_a_tube_whose_width_is_its_girth() -> None:
    body = draft(rectangle(60, 30, of=Construction.COWL)).section("cowl", "body")
    assert body.in_the_round
    assert body.first == 132


def test_edges_that_take_the_whole_length_are_refused() -> None:
    with pytest.raises(BadInput, match=r"edges that take 10.67 cm.*at least 11\.33 cm"):
        draft(rectangle(30, 8))


@pytest.mark.parametrize(
    ("of", "option", "value"),
    [
        (Construction.RECTANGLE, "worked", "in the round"),
        (Construction.COWL, "worked", "flat"),
        (Construction.RECTANGLE, "opens_in_front", True),
        (Construction.COWL, "waist_above_hem", 10.0),
        (Construction.COWL, "cuff", {"fabric": "garter stitch", "depth": 3.0}),
    ],
)
def test_it_refuses_what_it_cannot_be(of: Construction, option: str, value: Any) -> None:
    with pytest.raises(BadInput) as caught:
        draft(rectangle(60, 30, of=of, **{option: value}))
    assert caught.value.place == option
