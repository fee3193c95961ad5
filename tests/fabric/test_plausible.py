"""What is hard to believe about a swatch, and the usual reasons."""

import pytest

from loopwright.fabric import Swatch, gauge_doubts


def swatch(**facts: object) -> Swatch:
    return Swatch.model_validate({"key": "s", "yarns": ["dk"], **facts})


@pytest.mark.parametrize("gauge", ["17 sts x 23 rows = 10 cm", "22 sts x 30 rows = 10 cm", "28 sts x 36 rows = 10 cm"])
def test_published_gauges_are_believed(gauge: str) -> None:
    """Usual gauges of the yarn weights, rows 1.29 to 1.36 to a stitch: trade tables, cross-read."""
    assert gauge_doubts(swatch(before=gauge, after=gauge)) == ()


@pytest.mark.parametrize(
    ("gauge", "reason"),
    [
        ("30 sts x 22 rows = 10 cm", "stitches and rows exchanged"),
        ("22 sts x 24 rows = 10 cm", "stretched in length when it was counted or pinned"),
        ("22 sts x 36 rows = 10 cm", "stretched in width when it was counted or pinned"),
    ],
)
def test_a_strange_ratio_has_its_likeliest_reason_first(gauge: str, reason: str) -> None:
    (doubt,) = gauge_doubts(swatch(after=gauge))
    assert (doubt.about, doubt.reasons[0]) == ("ratio", reason)


def test_other_fabrics_have_ratios_of_their_own() -> None:
    assert gauge_doubts(swatch(after="22 sts x 44 rows = 10 cm", fabric="garter stitch")) == ()


def test_the_odd_count_is_named_by_its_own_text() -> None:
    (doubt,) = gauge_doubts(swatch(after=["22 sts = 10 cm", "14 sts / 2 in", "22.5 sts = 10 cm", "21.8 sts = 10 cm"]))
    assert doubt.about == "count"
    assert '"14 sts / 2 in"' in doubt.says


def test_two_counts_far_apart_ask_for_a_third() -> None:
    (doubt,) = gauge_doubts(swatch(after=["22 sts = 10 cm", "26 sts = 10 cm"]))
    assert doubt.about == "counts"
    assert "a third count tells which" in doubt.reasons


def test_a_wash_that_halves_the_length_has_felted() -> None:
    """Felting takes 33 to 50 % of the length: shrinkage_growth.md, single reports."""
    doubts = gauge_doubts(swatch(before="20 sts x 26 rows = 10 cm", after="25 sts x 38 rows = 10 cm"))
    assert [doubt.reasons[0] for doubt in doubts if doubt.about == "wash"] == []
    felted = gauge_doubts(swatch(before="20 sts x 26 rows = 10 cm", after="28 sts x 43 rows = 10 cm"))
    assert [doubt.reasons[0] for doubt in felted if doubt.about == "wash"] == ["it has felted"]
