"""Lightness contrast of yarns: grades at their limits, remarks, sets, and which colour comes forward."""

import pytest
from hypothesis import given

from loopwright.colour import (
    GRADES,
    REMARKS,
    Floats,
    grade_of,
    held_forward,
    judge_pair,
    judge_pairs,
    read_hex,
    separation,
    srgb_from_lab,
    wcag_ratio,
)
from loopwright.units import BadInput
from tests.colour.samples import srgbs, table_of


@pytest.mark.parametrize(
    ("delta_l", "name"),
    [(100, "good"), (30, "good"), (29.99, "fair"), (20, "fair"), (19.99, "poor"), (0, "poor"), (-5, "poor")],
)
def test_grades_begin_at_30_and_20(delta_l: float, name: str) -> None:
    assert grade_of(delta_l).name == name


def test_the_two_limits_were_read_and_the_rest_is_ours() -> None:
    assert [grade.status for grade in GRADES] == ["read", "read", "proposal"]


@given(srgbs, srgbs)
def test_a_pair_is_the_same_either_way_round(one: Floats, other: Floats) -> None:
    pair, turned = judge_pair(one, other), judge_pair(other, one)
    assert pair.delta_l == pytest.approx(turned.delta_l)
    assert pair.delta_e == pytest.approx(turned.delta_e, abs=1e-9)
    assert set(pair.remarks) <= set(REMARKS)


def test_all_pairs_are_those_taken_singly() -> None:
    colours = table_of(6, 1)
    judged = judge_pairs(colours)
    assert len(judged) == 15
    for (one, other), pair in judged.items():
        single = judge_pair(colours[one], colours[other])
        assert (pair.grade, pair.remarks) == (single.grade, single.remarks)
        assert dict(pair.delta_e_seen) == pytest.approx(dict(single.delta_e_seen))
    assert judge_pairs(colours[:1]) == {}


def test_nearly_the_same_colour() -> None:
    pair = judge_pair(read_hex("#a43c2b"), read_hex("#a63f2c"))
    assert pair.remarks == ("near match", "same colour?")


def test_a_photograph_makes_a_limit_uncertain() -> None:
    light, dark = srgb_from_lab([70, 0, 0]), srgb_from_lab([46, 0, 0])
    assert judge_pair(light, dark).remarks == ()
    assert judge_pair(light, dark, from_photograph=True).remarks == ("borderline",)
    assert judge_pair(srgb_from_lab([95, 0, 0]), dark, from_photograph=True).remarks == ()


def test_red_beside_green_falls_to_poor_for_protan_eyes() -> None:
    """Mustard with teal and dusty rose with teal: fair, but 17.95 and 15.87 L* in protan sight (reference table)."""
    for digits, delta_l in (("#c9982e", 17.95), ("#c58a8f", 15.87)):
        pair = judge_pair(read_hex(digits), read_hex("#2f6f73"))
        assert pair.grade.name == "fair"
        assert pair.delta_l_seen["protan"] == pytest.approx(delta_l, abs=0.01)
        assert "protan" in pair.weaker_for


def test_sets_that_overlap_stand_apart_by_less_than_nothing() -> None:
    assert separation(srgb_from_lab([[60, 0, 0], [80, 0, 0]]), srgb_from_lab([[20, 0, 0], [70, 0, 0]])) == (
        pytest.approx(-10)
    )


def test_the_colour_with_fewer_stitches_is_held_forward() -> None:
    assert held_forward({"oat": 110, "navy": 34}) == ("navy",)
    assert held_forward({"oat": 50, "navy": 50}) == ("oat", "navy")
    with pytest.raises(BadInput, match="two colours or more"):
        held_forward({"oat": 10})


def test_ratios_of_the_standard() -> None:
    """WCAG 2: 1 to 21; at Y = sqrt(1.05 × 0.05) − 0.05 black and white reach the same 4.58."""
    black, white = [0, 0, 0], [1, 1, 1]
    assert float(wcag_ratio(black, white)) == pytest.approx(21)
    assert float(wcag_ratio(white, white)) == 1
    grey = [0.4605] * 3
    assert float(wcag_ratio(grey, black)) == pytest.approx(4.58, abs=0.02)
    assert float(wcag_ratio(grey, white)) == pytest.approx(4.58, abs=0.02)


@given(srgbs)
def test_black_or_white_always_reads_on_a_colour(srgb: Floats) -> None:
    assert float(wcag_ratio(srgb, [[0, 0, 0], [1, 1, 1]]).max()) >= 4.58
