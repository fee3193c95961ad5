"""Shawls from the middle of the top edge: rows for a depth, and the shape that they are pinned out to."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon

from loopwright.fabric import Gauge
from loopwright.garment import fabric_area_cm2
from loopwright.garment.constructions import draft
from loopwright.garment.constructions.crescent import crescent_counts
from loopwright.garment.constructions.half_round import half_round_counts
from loopwright.garment.constructions.triangle import triangle_counts
from loopwright.garment.draft import Draft, broken_laws
from loopwright.garment.draft.lie import AREA_TOLERANCE, lying_outline_cm
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.garment.wanted_measures import gauges

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)
KINDS = [Construction.TRIANGLE_SHAWL, Construction.CRESCENT_SHAWL, Construction.HALF_ROUND_SHAWL]
COUNTS = {
    Construction.TRIANGLE_SHAWL: lambda rows: triangle_counts(5, rows),
    Construction.CRESCENT_SHAWL: lambda rows: crescent_counts(13, rows),
    Construction.HALF_ROUND_SHAWL: half_round_counts,
}
TRIMS: st.SearchStrategy[dict[str, Any]] = st.fixed_dictionaries(
    {
        "fabric": st.sampled_from(["1x1 rib", "2x2 rib", "garter stitch", "moss stitch", "stocking stitch"]),
        "depth_cm": st.floats(0.3, 6),
    }
)


def shawl(
    of: Construction, gauge: Gauge = GAUGE, depth: float | None = None, width: float | None = None, **options: object
) -> Draft:
    measures = GarmentMeasures(depth_cm=depth, width_cm=width)
    return draft(Brief(of, measures, gauge, DraftOptions.model_validate(options)))


def lying(made: Draft) -> Polygon:
    outline = lying_outline_cm(made)
    assert outline is not None
    return Polygon(outline)


@settings(max_examples=90, deadline=None)
@given(st.sampled_from(KINDS), gauges(), st.floats(15, 110), TRIMS)
def test_every_shawl_keeps_the_laws(of: Construction, gauge: Gauge, depth: float, hem: object) -> None:
    made = shawl(of, gauge, depth, hem=hem)
    body, edge = made.pieces[0].sections
    assert broken_laws(made) == ()
    assert body.stitches.tolist() == COUNTS[of](body.rows).tolist()
    assert (body.left_edge == -body.stitches / 2).all()
    assert (edge.left_edge == -edge.stitches / 2).all()
    assert body.rows % 2 == edge.rows % 2 == 0
    step = 1.5 if of is Construction.TRIANGLE_SHAWL else 1.0  # a triangle's point lies slantwise to its rows
    assert abs(made.check("depth").off_cm) <= step * body.row_height_cm + 1e-9


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(KINDS), gauges(), st.floats(15, 110))
def test_it_lies_as_large_as_its_rows_and_as_its_measures_say(of: Construction, gauge: Gauge, depth: float) -> None:
    made = shawl(of, gauge, depth, width=2 * depth)
    outline = lying(made)
    assert outline.is_valid
    assert outline.area == pytest.approx(made.area_cm2, rel=AREA_TOLERANCE)
    left, _, right, _ = outline.bounds
    assert right - left == pytest.approx(made.check("width").drafted_cm)
    down = LineString([(0, -1), (0, 500)]).intersection(outline)
    assert down.length == pytest.approx(made.check("depth").drafted_cm, rel=1e-9)
    assert down.bounds[1] == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("of", KINDS)
def test_the_estimate_by_measures_is_the_area_of_the_draft(of: Construction) -> None:
    made = shawl(of, depth=60, width=120)
    measures = {check.name: check.drafted_cm for check in made.checks}
    found = fabric_area_cm2(of, measures)
    assert found is not None
    assert found.mean == pytest.approx(made.area_cm2)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(KINDS), gauges(), st.floats(15, 100), st.floats(0, 9))
def test_a_deeper_shawl_never_has_fewer_rows(of: Construction, gauge: Gauge, depth: float, more: float) -> None:
    made = [shawl(of, gauge, depth + extra).pieces[0].sections[0].rows for extra in (0, more)]
    assert made[0] <= made[1]


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(KINDS), gauges(), st.floats(40, 220), st.floats(0, 30))
def test_without_a_depth_the_width_decides(of: Construction, gauge: Gauge, width: float, more: float) -> None:
    narrow, wide = shawl(of, gauge, width=width), shawl(of, gauge, width=width + more)
    doubles = of is Construction.HALF_ROUND_SHAWL  # the width leaps where its stitches double
    half_a_pair_cm = 5 * 10 / gauge.stitches_per_10cm  # two rows of a small crescent add up to ten stitches at once
    assert abs(narrow.check("width").off_cm) <= max((0.16 if doubles else 0.06) * width, half_a_pair_cm)
    assert narrow.pieces[0].sections[0].rows <= wide.pieces[0].sections[0].rows


def test_the_lower_edge_of_a_crescent_lies_as_long_as_its_last_row() -> None:
    made = shawl(Construction.CRESCENT_SHAWL, depth=45)
    outline = lying_outline_cm(made)
    assert outline is not None
    rim = LineString(outline[:97]).length
    edge = made.section("shawl", "edge")
    assert rim == pytest.approx(edge.last * edge.stitch_width_cm, rel=1e-3)


@settings(max_examples=60, deadline=None)
@given(st.floats(14, 36), st.floats(1.35, 1.42), st.floats(25, 100))
def test_in_stocking_stitch_a_half_round_is_nearly_half_a_disc(stitches: float, ratio: float, depth: float) -> None:
    # Geometry: a half disc of radius r has πr to its rim; 1.38 rows to a stitch is the mean of published gauges.
    made = shawl(
        Construction.HALF_ROUND_SHAWL, Gauge(stitches_per_10cm=stitches, rows_per_10cm=ratio * stitches), depth
    )
    disc = Point(0, 0).buffer(made.check("depth").drafted_cm, quad_segs=500).area / 2
    assert lying(made).area == pytest.approx(disc, rel=0.25)


def test_what_is_not_knitted_from_the_centre_has_no_such_outline() -> None:
    measures = GarmentMeasures(width_cm=30, length_cm=150)
    assert lying_outline_cm(draft(Brief(Construction.RECTANGLE, measures, GAUGE))) is None


def test_no_doubling_comes_right_before_the_edge() -> None:
    assert half_round_counts(127)[-1] == 197
    assert half_round_counts(128)[-5:].tolist() == [197, 389, 389, 389, 389]


def test_every_row_of_a_triangle_s_edge_keeps_its_rib() -> None:
    edge = shawl(Construction.TRIANGLE_SHAWL, depth=60).section("shawl", "edge")
    assert set((edge.stitches - 2) % 4) == {0}


def test_a_wanted_width_that_does_not_go_with_the_depth_is_explained() -> None:
    check = shawl(Construction.TRIANGLE_SHAWL, depth=80, width=200).check("width")
    assert check.drafted_cm == pytest.approx(160, abs=1)
    assert "twice as wide as deep" in str(check.reason)


@pytest.mark.parametrize("of", KINDS)
def test_no_size_and_a_size_below_the_edge_are_refused(of: Construction) -> None:
    with pytest.raises(BadInput, match="no depth"):
        shawl(of)
    with pytest.raises(BadInput, match="depth 2 cm with an edge 5 cm deep"):
        shawl(of, depth=2)


@pytest.mark.parametrize("of", KINDS)
@pytest.mark.parametrize(
    ("option", "value"), [("repeat", "8n"), ("direction", "bottom up"), ("worked", "in the round")]
)
def test_it_refuses_what_a_shawl_cannot_be(of: Construction, option: str, value: Any) -> None:
    with pytest.raises(BadInput) as caught:
        shawl(of, depth=60, **{option: value})
    assert caught.value.place == option
