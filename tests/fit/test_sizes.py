"""Sizes, places between two, finished measures at another gauge, and ease by style."""

from typing import Any

import pytest

from loopwright.fabric import Gauge
from loopwright.fit import finished_at_gauge, intended_ease_cm, size_between, size_named
from loopwright.pattern import PatternFacts


def pattern(**more: Any) -> PatternFacts:
    facts = {
        "key": "p",
        "name": "Plain",
        "construction": "raglan",
        "gauge": "20 sts x 28 rows = 10 cm",
        "sizes": "S (M, L)",
        "finished": {"bust_girth": "90 (100, 112) cm", "length": "56 (58, 60) cm", "hip_girth": "- (104, 114) cm"},
    }
    return PatternFacts.model_validate(facts | more)


PATTERN = pattern()
TIGHTER = Gauge(stitches_per_10cm=21, rows_per_10cm=30)


def test_a_tighter_gauge_makes_girths_narrower_and_leaves_lengths() -> None:
    """A quarter stitch to the inch costs 1.9 in of 40 in: numeric_checks N022, 40 × 5/5.25."""
    found = finished_at_gauge(PATTERN, size_named(PATTERN, "M"), TIGHTER)
    assert found["bust_girth"] == pytest.approx(100 * 20 / 21)
    assert found["length"] == 58


def test_the_width_of_a_rectangle_follows_the_gauge() -> None:
    """Cast on is by count, so a scarf of 60 stitches is 30 cm at 20 and 28.6 cm at 21 stitches to 10 cm."""
    scarf = pattern(construction="rectangle", sizes="one", finished={"width": "30 cm", "length": "180 cm"})
    found = finished_at_gauge(scarf, size_named(scarf, "one"), TIGHTER)
    assert found == {"width": pytest.approx(60 / 2.1), "length": 180}


def test_without_a_gauge_the_pattern_stands() -> None:
    assert finished_at_gauge(PATTERN, size_named(PATTERN, "S"), None) == {"bust_girth": 90, "length": 56}


def test_between_two_sizes_is_a_straight_line() -> None:
    choice = size_between(PATTERN, 109)
    assert (choice.name, choice.share) == ("between M and L", 0.75)
    assert choice.of((1, 2, 4)) == 3.5


def test_own_counts_do_not_follow_the_gauge() -> None:
    found = finished_at_gauge(PATTERN, size_between(PATTERN, 109), TIGHTER)
    assert found["bust_girth"] == pytest.approx(109)


def test_on_a_size_it_is_that_size_with_own_counts() -> None:
    choice = size_between(PATTERN, 100)
    assert (choice.name, choice.counts_kept) == ("M", False)


def test_between_figures_of_which_one_is_missing_there_is_none() -> None:
    assert size_between(PATTERN, 95).of((None, 104, 114)) is None


@pytest.mark.parametrize("girth", [89.9, 112.1])
def test_outside_the_sizes(girth: float) -> None:
    with pytest.raises(ValueError, match="from 90 to 112 cm"):
        size_between(PATTERN, girth)


def test_a_pattern_without_a_bust() -> None:
    with pytest.raises(ValueError, match="without finished bust"):
        size_between(pattern(finished={}), 100)


def test_an_unknown_size() -> None:
    with pytest.raises(ValueError, match="one of S, M, L"):
        size_named(PATTERN, "XL")


@pytest.mark.parametrize(
    ("point", "style", "ease"),
    [
        ("bust_girth", "close", 3.75),
        ("bust_girth", "standard", 7.5),
        ("bust_girth", "very close", -5),
        ("upper_arm_girth", "standard", 3.75),
        ("upper_arm_girth", "oversized", 9.75),
        ("waist_girth", "very close", 3.75),
        ("wrist_girth", "standard", None),
    ],
)
def test_ease_is_the_middle_of_its_range(point: str, style: str, ease: float | None) -> None:
    """Ranges of fit.md, sections 2 and 3: the bust rows are read, the others common practice."""
    assert intended_ease_cm(point, style) == ease


def test_a_child_has_room_to_grow() -> None:
    """Common practice, no source: 5 to 10 cm at the chest."""
    assert intended_ease_cm("bust_girth", "close", child=True) == 7.5
    assert intended_ease_cm("bust_girth", "loose", child=True) == 12.5


def test_a_hat_is_smaller_than_the_head() -> None:
    """Common practice, no source: 2.5 to 5 cm less."""
    assert intended_ease_cm("head_girth", "standard", hat=True) == -3.75
    assert intended_ease_cm("bust_girth", "standard", hat=True) is None
