"""Tightness in words."""

import pytest

from loopwright.fabric import Swatch, swatch_tightness
from loopwright.fabric.tightness import tightness_word


def swatch(gauge: str, fabric: str = "stocking stitch") -> Swatch:
    return Swatch.model_validate({"key": "s", "yarns": ["dk"], "after": gauge, "fabric": fabric})


@pytest.mark.parametrize(
    ("gauge", "tex"),
    [("18 sts x 24 rows = 10 cm", 500), ("22 sts x 30 rows = 10 cm", 400), ("28 sts x 36 rows = 10 cm", 250)],
)
def test_typical_gauges_are_soft_or_normal(gauge: str, tex: float) -> None:
    """Typical hand-knit gauges come to 0.96 to 1.19: yarn_geometry.md, section 4, derived; 6 % is the loop's error."""
    found = swatch_tightness(swatch(gauge), tex)
    assert found is not None
    assert 0.96 - 0.06 <= found.factor <= 1.19 + 0.06


def test_v07_by_hand() -> None:
    """18 x 24 to 10 cm and 500 tex have a loop of 21.38 mm (V07): √500 / 21.38 = 1.0459; washed, 3 % longer."""
    found = swatch_tightness(swatch("18 sts x 24 rows = 10 cm"), 500)
    assert found is not None
    assert found.factor == pytest.approx(1.0459, rel=0.03)


@pytest.mark.parametrize(
    ("factor", "word"),
    [
        (0.84, "open"),
        (0.85, "soft"),
        (0.999, "soft"),
        (1.0, "normal"),
        (1.2, "firm"),
        (1.35, "board-like"),
        (9, "board-like"),
    ],
)
def test_bands(factor: float, word: str) -> None:
    """The bands of yarn_geometry.md, section 4: judgement."""
    assert tightness_word(factor) == word


def test_a_value_near_an_edge_names_the_next_band() -> None:
    found = swatch_tightness(swatch("18 sts x 24 rows = 10 cm"), 500)
    assert found is not None
    assert (found.word, found.nearly) == ("normal", "soft")


def test_other_fabrics_have_no_bands() -> None:
    assert swatch_tightness(swatch("22 sts x 30 rows = 10 cm", "1x1 rib"), 400) is None
