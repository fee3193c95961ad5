"""Bust short rows in every straight body: the front gains their rows, its sides none."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import broken_laws
from loopwright.garment.parts.short_rows import bust_section, bust_turns
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures
from loopwright.pattern import Construction
from tests.garment.wanted_measures import briefs

IN = 2.54
STRAIGHT = [Construction.DROP, Construction.SET_IN, Construction.SLEEVELESS]


def short_rows(depth_cm: float) -> Brief:
    """Five stitches and seven rows to the inch."""
    return Brief(
        Construction.DROP,
        GarmentMeasures(bust_girth_cm=40 * IN),
        Gauge(stitches_per_10cm=50 / IN, rows_per_10cm=70 / IN),
        DraftOptions(bust_short_rows_cm=depth_cm),
    )


def test_the_worked_example_turns_where_printed() -> None:
    # Source: N169 (memory), N170 (a magazine's rule at second hand): 1.75 in at 7 rows are 6 pairs; half a front of 50,
    # 5 at the side, 25 to the point: 4 stitches apart.
    brief = short_rows(1.75 * IN)
    turns = bust_turns(brief, 100)
    assert turns is not None
    assert turns.turns == (5, 9, 13, 17, 21, 25)
    made = bust_section(brief, turns, 100)
    assert made.stitches.tolist() == [90, 90, 82, 82, 74, 74, 66, 66, 58, 58, 50, 50]
    assert made.live == 100


def test_half_a_front_turns_at_its_side_only() -> None:
    brief = short_rows(1.75 * IN)
    turns = bust_turns(brief, 100)
    assert turns is not None
    half = bust_section(brief, turns, 46, edges=("right",), left=-23)
    assert half.stitches.tolist() == [41, 41, 37, 37, 33, 33, 29, 29, 25, 25, 21, 21]
    assert set(half.left_edge.tolist()) == {-23.0}


def test_none_are_worked_where_none_are_wanted() -> None:
    brief = short_rows(1)
    assert bust_turns(Brief(brief.construction, brief.measures, brief.gauge), 100) is None


OPTIONS: dict[str, st.SearchStrategy[object]] = {
    "worked": st.sampled_from(["flat", "in the round"]),
    "opens_in_front": st.booleans(),
    "sleeves": st.just("none"),
    "bust_short_rows_cm": st.floats(1, 5),
}


@pytest.mark.parametrize("construction", [Construction.DROP, Construction.SLEEVELESS])
@settings(max_examples=30, deadline=None)
@given(st.data())
def test_the_front_gains_their_stitches_and_every_seam_stays(construction: Construction, data: st.DataObject) -> None:
    brief = data.draw(briefs(construction, **OPTIONS))
    without = brief.options.model_copy(update={"bust_short_rows_cm": None})
    made = draft(brief)
    plain = draft(Brief(construction, brief.measures, brief.gauge, without, head_girth_cm=brief.head_girth_cm))
    assert broken_laws(made) == ()
    key = "body" if any(piece.key == "body" for piece in made.pieces) else "front"
    bust = made.section(key, "bust")
    assert made.piece(key).worked == plain.piece(key).worked + bust.worked
    assert bust.last > 0
    assert [one for one in made.joins if one.kind == "sewn"] == [one for one in plain.joins if one.kind == "sewn"]
