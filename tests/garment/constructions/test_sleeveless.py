"""Sleeveless: deep armholes with bands, laws over many bodies and gauges, and what is refused."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import Draft, Kind, broken_laws, piece_outlines_cm
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures, usual_measures
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.garment.wanted_measures import briefs


def slipover(bust_cm: float = 100, /, **options: object) -> Brief:
    """A slipover at 22 stitches and 30 rows; the measures are ours, the rest is what is usual."""
    wanted = GarmentMeasures(bust_girth_cm=bust_cm, length_cm=30 + bust_cm / 4)
    gauge = Gauge(stitches_per_10cm=22, rows_per_10cm=30)
    return Brief(Construction.SLEEVELESS, wanted, gauge, DraftOptions.model_validate(options))


def test_half_of_each_armhole_is_cast_off_and_a_band_goes_round_it() -> None:
    made = draft(slipover())
    armhole = [one for one in made.section("body", "back").shapings if one.side == "right"]
    assert armhole[0].kind == Kind.CAST_OFF
    assert armhole[0].stitches - sum(one.stitches for one in armhole[1:] if one.kind == Kind.DECREASE) in (0, 1)
    assert made.piece("armband").made == 2
    assert not any(piece.key == "sleeve" for piece in made.pieces)


def test_flat_it_has_a_back_and_a_front_with_side_seams() -> None:
    made = draft(slipover(worked="flat"))
    assert [piece.key for piece in made.pieces] == ["back", "front", "neckband", "armband"]
    assert sum(join.kind == "sewn" for join in made.joins) == 4


def test_straps_are_usual_ones_for_children_and_for_the_largest() -> None:
    # Source: a printed vest table (read): shoulders of 3¾ to 4½ in for garments of 38 to 57 in; the child's is ours.
    for bust_cm, least_cm, most_cm in ((54, 4, 7), (96.5, 9, 10.5), (145, 11, 12.7)):
        wanted = usual_measures(slipover(bust_cm))
        strap_cm = (wanted.need("shoulder_width") - wanted.need("neck_width")) / 2
        assert least_cm < strap_cm < most_cm


@pytest.mark.parametrize(
    ("options", "place"), [({"sleeves": "short"}, "sleeves"), ({"direction": "top down"}, "direction")]
)
def test_what_it_cannot_honour_is_refused(options: dict[str, object], place: str) -> None:
    with pytest.raises(BadInput) as fault:
        draft(slipover(**options))
    assert fault.value.place == place


OPTIONS: dict[str, st.SearchStrategy[object]] = {
    "worked": st.sampled_from([None, "flat", "in the round"]),
    "opens_in_front": st.booleans(),
    "neckline": st.sampled_from([None, "boat", "round", "V", "high"]),
    "sleeves": st.sampled_from([None, "none"]),
}


@settings(max_examples=80, deadline=None)
@given(briefs(Construction.SLEEVELESS, **OPTIONS))
def test_every_draft_keeps_the_laws(brief: Brief) -> None:
    made = draft(brief)
    assert broken_laws(made) == ()
    for check in made.checks:
        assert abs(check.off_cm) < 6 * check.grain_cm or check.name == "neck_width", check
    for piece in made.pieces:
        outlines = piece_outlines_cm(piece)
        for one in piece.sections:
            area = Polygon(outlines[one.key]).area * (2 if one.in_the_round else 1)
            assert area == pytest.approx(one.area_cm2)


@settings(max_examples=40, deadline=None)
@given(briefs(Construction.SLEEVELESS, **OPTIONS), st.floats(0.5, 8))
def test_a_wider_bust_never_has_fewer_stitches_and_goes_further_in(brief: Brief, wider: float) -> None:
    wanted = brief.measures
    more = wanted.model_copy(update={"bust_girth_cm": wanted.need("bust_girth") + wider})
    one, other = draft(brief), draft(replace(brief, measures=more))
    assert other.pieces[0].section("body").last >= one.pieces[0].section("body").last
    assert armhole_stitches(other) >= armhole_stitches(one)


def armhole_stitches(made: Draft) -> int:
    """Stitches that the back's right armhole takes away."""
    sections = [one for one in made.pieces[0].sections if one.key in ("back", "back right shoulder")]
    return sum(
        one.stitches
        for section in sections
        for one in section.shapings
        if one.side == "right" and one.kind in (Kind.CAST_OFF, Kind.DECREASE)
    )
