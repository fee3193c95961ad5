"""Set-in sleeves: laws over many bodies, gauges and options; what cannot be made says what can."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import CAP_EASE_MOST, Draft, Kind, broken_laws, piece_outlines_cm
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.garment.wanted_measures import briefs

MEASURES = GarmentMeasures(
    bust_girth_cm=100,
    length_cm=60,
    armhole_depth_cm=21,
    upper_arm_girth_cm=34,
    wrist_girth_cm=22,
    sleeve_length_cm=45,
)


def jumper(measures: dict[str, float] | None = None, /, **options: object) -> Brief:
    """An adult's jumper of 100 cm, 22 stitches and 30 rows; the measures are ours."""
    wanted = MEASURES.model_copy(update=measures or {})
    gauge = Gauge(stitches_per_10cm=22, rows_per_10cm=30)
    return Brief(Construction.SET_IN, wanted, gauge, DraftOptions.model_validate(options), head_girth_cm=56)


def losses(made: Draft, piece: str, side: str) -> int:
    """Stitches that one edge of a piece's armhole or cap loses."""
    return sum(
        one.stitches
        for section in made.piece(piece).sections
        for one in section.shapings
        if section.key not in ("hem", "body", "cuff", "sleeve")
        and one.side == side
        and one.kind in (Kind.CAST_OFF, Kind.DECREASE)
    )


def test_it_is_worked_flat_unless_asked() -> None:
    made = draft(jumper())
    assert [piece.key for piece in made.pieces] == ["back", "front", "neckband", "sleeve"]
    assert not any(section.in_the_round for piece in made.pieces[:2] for section in piece.sections)


def test_in_the_round_body_and_sleeve_are_tubes_up_to_the_underarm() -> None:
    made = draft(jumper(worked="in the round"))
    tubes = {(piece.key, one.key) for piece, one in made.sections() if one.in_the_round}
    assert tubes == {("body", "hem"), ("body", "body"), ("sleeve", "cuff"), ("sleeve", "sleeve"), ("neckband", "band")}
    assert made.section("body", "back").first == made.section("body", "body").last // 2
    assert made.section("sleeve", "cap").first == made.section("sleeve", "sleeve").last


def test_the_cap_begins_as_its_armhole_does() -> None:
    made = draft(jumper())
    firsts = {made.section(*key).shapings[:2] for key in (("back", "back"), ("front", "front"), ("sleeve", "cap"))}
    assert len(firsts) == 1


def test_it_says_how_the_cap_fits_and_how_high_it_is() -> None:
    """A cap is as high as its rows, 30 to 10 cm; its edge and the armhole's, both halves, are those of the join."""
    made = draft(jumper())
    fit, height = made.notes[-2:]
    assert "longer than its armhole" in str(fit)
    (join,) = {one.length_cm for one in made.joins if one.kind == "set in"}
    assert join is not None
    assert fit.lengths_cm == pytest.approx((2 * join[1], 2 * join[0]))
    assert "about 0.67 is usual" in str(height)
    assert height.lengths_cm == pytest.approx((made.section("sleeve", "cap").rows / 3,))


def test_two_fronts_meet_the_back_at_the_shoulders_and_have_its_armhole() -> None:
    made = draft(jumper(opens_in_front=True))
    front = made.piece("front")
    assert (front.made, front.mirrored) == (2, True)
    assert front.section("front").live == made.section("back", "back left shoulder").live
    armhole = [one for one in made.section("back", "back").shapings if one.side == "right"]
    assert [one for one in front.section("front").shapings if one.side == "right" and one.kind != Kind.REST] == armhole


@pytest.mark.parametrize(
    ("options", "place"),
    [({"sleeves": "none"}, "sleeves"), ({"direction": "top down"}, "direction"), ({"bust_short_rows": "40 cm"}, None)],
)
def test_what_it_cannot_honour_is_refused(options: dict[str, object], place: str | None) -> None:
    with pytest.raises(BadInput) as fault:
        draft(jumper(**options))
    assert fault.value.place == (place or "bust_short_rows")


NARROW_NECK = {"neck_width_cm": 4.5, "front_neck_depth_cm": 11.0}
SHALLOW = {"armhole_depth_cm": 14.0, "shoulder_width_cm": 20.0, "upper_arm_girth_cm": 27.0, **NARROW_NECK}


@pytest.mark.parametrize(
    ("measures", "words"),
    [
        ({"upper_arm_girth_cm": 48.0}, r"an upper arm of at most ([\d.]+) cm"),
        ({"upper_arm_girth_cm": 200.0}, r"an upper arm of at most ([\d.]+) cm"),
        ({"upper_arm_girth_cm": 6.0, "wrist_girth_cm": 6.0}, r"an upper arm of at least ([\d.]+) cm"),
        ({"shoulder_width_cm": 52.0}, r"shoulders of at most ([\d.]+) cm"),
        ({"shoulder_width_cm": 9.0, "upper_arm_girth_cm": 40.0, **NARROW_NECK}, r"shoulders of at least ([\d.]+) cm"),
        (SHALLOW, r"shoulders of at least ([\d.]+) cm"),
        (SHALLOW, r"an armhole of at least ([\d.]+) cm"),
    ],
)
def test_the_nearest_value_that_works_does_work_and_the_next_does_not(measures: dict[str, float], words: str) -> None:
    with pytest.raises(BadInput) as fault:
        draft(replace(jumper(measures), head_girth_cm=None))
    found = re.search(words, fault.value.wanted)
    assert found is not None, fault.value.wanted
    name = "armhole_depth_cm" if "armhole of" in words else f"{fault.value.place}_cm"
    nearest, beyond = float(found[1]), 2.0 if "most" in words else -2.0
    draft(replace(jumper({**measures, name: nearest}), head_girth_cm=None))
    with pytest.raises(BadInput) as still:
        draft(replace(jumper({**measures, name: nearest + beyond}), head_girth_cm=None))
    assert still.value.place == fault.value.place


@pytest.mark.parametrize("worked", ["flat", "in the round"])
@pytest.mark.parametrize("opens", [False, True])
def test_bust_short_rows_lengthen_the_front_and_not_its_sides(worked: str, opens: bool) -> None:
    plain = draft(jumper(worked=worked, opens_in_front=opens))
    made = draft(jumper(worked=worked, opens_in_front=opens, bust_short_rows="4 cm"))
    piece = "body" if worked == "in the round" and not opens else "front"
    bust = made.section(piece, "bust")
    assert (bust.rows, bust.first, bust.live) == (12, made.section(piece, "front").first, bust.first)
    assert made.piece(piece).worked - plain.piece(piece).worked == bust.worked
    assert [join for join in made.joins if join.kind == "sewn"] == [join for join in plain.joins if join.kind == "sewn"]
    turns = [one.stitches for one in bust.shapings if one.side == "right"]
    assert len(turns) == 6
    assert max(turns[1:]) - min(turns[1:]) <= 1


OPTIONS: dict[str, st.SearchStrategy[object]] = {
    "worked": st.sampled_from(["flat", "in the round"]),
    "opens_in_front": st.booleans(),
    "neckline": st.sampled_from(["boat", "round", "V", "high"]),
    "bust_short_rows_cm": st.one_of(st.none(), st.floats(1, 5)),
}


def drafted(brief: Brief) -> Draft | None:
    """Draft it, unless its sleeve is wider than its armhole or too short for its taper, as free proportions allow."""
    try:
        return draft(brief)
    except BadInput as fault:
        wanted = brief.measures
        assert fault.place in ("upper_arm_girth", "sleeve_length")
        if fault.place == "upper_arm_girth":
            assert wanted.need("upper_arm_girth") > 1.4 * wanted.need("armhole_depth")
        return None


@settings(max_examples=80, deadline=None)
@given(briefs(Construction.SET_IN, **OPTIONS))
def test_every_draft_keeps_the_laws(brief: Brief) -> None:
    made = drafted(brief)
    if made is None:
        return
    assert broken_laws(made) == ()
    for check in made.checks:
        assert abs(check.off_cm) < 6 * check.grain_cm or check.name == "neck_width", check
    set_in = [join for join in made.joins if join.kind == "set in"]
    assert len(set_in) == 2
    assert all(join.mismatch is not None and -CAP_EASE_MOST <= join.mismatch <= CAP_EASE_MOST for join in set_in)
    assert losses(made, "sleeve", "left") == losses(made, "sleeve", "right")


@settings(max_examples=30, deadline=None)
@given(briefs(Construction.SET_IN, **OPTIONS))
def test_the_outlines_hold_the_area_of_the_rows(brief: Brief) -> None:
    made = drafted(brief)
    if made is None:
        return
    for piece in made.pieces:
        outlines = piece_outlines_cm(piece)
        for one in piece.sections:
            area = Polygon(outlines[one.key]).area * (2 if one.in_the_round else 1)
            assert area == pytest.approx(one.area_cm2)


@settings(max_examples=30, deadline=None)
@given(briefs(Construction.SET_IN, **OPTIONS), st.floats(0.5, 12), st.floats(0.5, 12))
def test_wider_is_never_fewer_stitches_and_longer_never_fewer_rows(brief: Brief, wider: float, longer: float) -> None:
    wanted = brief.measures
    more = wanted.model_copy(
        update={
            "bust_girth_cm": wanted.need("bust_girth") + wider,
            "length_cm": wanted.need("length") + longer,
            "shoulder_width_cm": wanted.need("shoulder_width"),
        }
    )
    one, other = drafted(brief), None
    try:
        other = draft(replace(brief, measures=more))
    except BadInput:
        return
    if one is None:
        return
    narrow, wide = one.pieces[0].section("body"), other.pieces[0].section("body")
    assert wide.last >= narrow.last
    assert wide.rows >= narrow.rows
