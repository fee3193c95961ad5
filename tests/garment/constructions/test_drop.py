"""Drop shoulder: a handbook's worksheet, and laws over many bodies and gauges."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.fabric import Gauge
from loopwright.garment.constructions import draft
from loopwright.garment.draft import broken_laws
from loopwright.garment.wanted import Brief, DraftOptions, GarmentMeasures, Trim
from loopwright.pattern import Construction
from loopwright.units import BadInput
from tests.garment.wanted_measures import briefs

INCH = 2.54
FIVE_TO_THE_INCH = Gauge(stitches_per_10cm=5 / INCH * 10, rows_per_10cm=7 / INCH * 10)


def worksheet(**options: object) -> Brief:
    """A drop-shoulder worksheet, read: 5 st/in, body 21 in wide, armhole 9 in, neck 7 in wide and 3.5 in deep."""
    return Brief(
        Construction.DROP,
        GarmentMeasures(
            bust_girth_cm=42 * INCH,
            length_cm=25 * INCH,
            armhole_depth_cm=9 * INCH,
            shoulder_slope_cm=0.1,
            neck_width_cm=7 * INCH,
            front_neck_depth_cm=3.5 * INCH,
            upper_arm_girth_cm=18 * INCH,
            wrist_girth_cm=9 * INCH,
            sleeve_length_cm=17 * INCH,
        ),
        FIVE_TO_THE_INCH,
        DraftOptions.model_validate({"worked": "flat", **options}),
    )


def test_the_worksheets_body_and_shoulders() -> None:
    # Source: drop-shoulder worksheet (read): body 21 × 5 + 2 = 107, printed 108; neck 35, printed 36; shoulder 36.
    made = draft(worksheet())
    assert made.section("back", "back").first == 107
    assert made.section("back", "back left shoulder").first + made.section("back", "back").closed // 2 == pytest.approx(
        (107 - 1) / 2, abs=1
    )
    assert made.section("front", "front left shoulder").live == 36


def test_the_worksheets_sleeve_top() -> None:
    # The same: sleeve top = 2 × 9 × 5 + 2 = 92; ours follows the drafted armhole, less what the slope takes.
    assert draft(worksheet()).section("sleeve", "sleeve").last == pytest.approx(92, abs=4)


def test_it_names_the_pair_that_conflicts() -> None:
    brief = worksheet()
    wide = brief.measures.model_copy(update={"neck_width_cm": 60.0, "shoulder_width_cm": None})
    with pytest.raises(BadInput, match=r"neck.*wanted.*neck"):
        draft(Brief(brief.construction, wide, brief.gauge, brief.options))


def test_a_length_that_armhole_and_hem_use_up_is_refused() -> None:
    with pytest.raises(BadInput, match="length of at least"):
        draft(worksheet(hem=Trim(depth_cm=60.0)))


OPTIONS = {
    "worked": st.sampled_from(["flat", "in the round"]),
    "opens_in_front": st.booleans(),
    "neckline": st.sampled_from(["boat", "round", "V", "high"]),
    "sleeves": st.sampled_from(["none", "long"]),
}


@settings(max_examples=120, deadline=None)
@given(briefs(Construction.DROP, **OPTIONS))
def test_every_draft_keeps_the_laws(brief: Brief) -> None:
    made = draft(brief)
    assert broken_laws(made) == ()
    for check in made.checks:
        assert abs(check.off_cm) < 6 * check.grain_cm or check.name in ("neck_width", "upper_arm_girth"), check
