"""Need from the pattern's amounts: metres, grams, whole balls; her gauge; a longer body."""

from typing import Any

import pytest
from scipy import stats

from loopwright.fabric import Gauge, loop_length_mm
from loopwright.fit import size_between, size_named
from loopwright.need.stated import amount_m, extra_length_m, gauge_factor, stated_need
from loopwright.pattern import PatternFacts
from loopwright.uncertainty import Origin

PATTERN_GAUGE, TEX = Gauge(stitches_per_10cm=22, rows_per_10cm=30), 50 / 0.12


def pattern(**amount: str) -> PatternFacts:
    facts: dict[str, Any] = {
        "key": "p",
        "name": "Plain",
        "construction": "raglan",
        "gauge": "22 sts x 30 rows = 10 cm",
        "sizes": "S (M, L)",
        "finished": {"bust_girth": "90 (100, 110) cm"},
        "ball_length": "120 m",
        "ball_mass": "50 g",
        "yarn": {"main": amount},
    }
    return PatternFacts.model_validate(facts)


def amount(facts: PatternFacts, size: str = "M") -> tuple[float, float]:
    found = amount_m(facts, facts.yarn[0], size_named(facts, size))
    assert found is not None
    assert found.origin is Origin.STATED
    return found.mean, found.sd


def test_metres_stand_as_they_are() -> None:
    assert amount(pattern(length="900 (980, 1060) m")) == pytest.approx((980, 0.05 * 980))


def test_grams_go_through_the_patterns_own_yarn() -> None:
    """400 g at 120 m to 50 g."""
    assert amount(pattern(mass="350 (400, 450) g"))[0] == pytest.approx(960)


def test_whole_balls_are_an_interval() -> None:
    """9 balls of 120 m, rounded up: between 960 and 1080 m, evenly, and the 5 % between knitters besides."""
    uniform = stats.uniform(960, 120)
    spread = (uniform.var() + (0.05 * 1020) ** 2) ** 0.5
    assert amount(pattern(balls="8 (9, 10)")) == pytest.approx((uniform.mean(), spread))


def test_a_size_without_an_amount() -> None:
    facts = pattern(length="900 (-, 1060) m")
    assert amount_m(facts, facts.yarn[0], size_named(facts, "M")) is None


def test_between_two_sizes_it_is_between_their_amounts() -> None:
    facts = pattern(length="900 (980, 1060) m")
    found = amount_m(facts, facts.yarn[0], size_between(facts, 95))
    assert found is not None
    assert found.mean == pytest.approx(940)


def factor(gauge: Gauge, *, own_counts: bool = False) -> float:
    facts = pattern(length="900 (980, 1060) m")
    choice = size_between(facts, 100) if own_counts else size_named(facts, "M")
    return gauge_factor(facts, choice, gauge, TEX, density_sd=0.03, washed=True).mean


def test_her_gauge_the_same_takes_the_same() -> None:
    assert factor(PATTERN_GAUGE) == pytest.approx(1)


def test_kept_counts_take_more_rows_for_the_length() -> None:
    """33 rows instead of 30 for the same length, in loops shorter by less: by hand 1.1 × l/l_p."""
    tighter = Gauge(stitches_per_10cm=22, rows_per_10cm=33)
    loops = loop_length_mm(tighter, TEX, "washed") / loop_length_mm(PATTERN_GAUGE, TEX, "washed")
    assert factor(tighter) == pytest.approx(1.1 * loops)
    assert 1 < factor(tighter) < 1.1


def test_own_counts_take_more_stitches_for_the_width_too() -> None:
    finer = Gauge(stitches_per_10cm=24.2, rows_per_10cm=33)
    assert factor(finer, own_counts=True) == pytest.approx(1.1 * factor(finer))


def test_own_counts_at_a_finer_gauge_take_more_yarn_for_one_area() -> None:
    """Metres to the square metre grow with the gauge: our study, section 2, from 923 at 18 × 24 to 1421 at 28 × 36."""
    facts = pattern(length="900 (980, 1060) m")
    fine, coarse = Gauge(stitches_per_10cm=28, rows_per_10cm=36), Gauge(stitches_per_10cm=18, rows_per_10cm=24)
    choice = size_between(facts, 100)
    finer, coarser = (
        gauge_factor(facts, choice, gauge, tex, density_sd=0.03, washed=True).mean
        for gauge, tex in ((fine, 250), (coarse, 500))
    )
    assert finer / coarser == pytest.approx(1421 / 923, rel=0.01)


def test_without_a_swatch_the_stated_amount_stands() -> None:
    facts = pattern(length="900 (980, 1060) m")
    found = stated_need(facts, facts.yarn[0], size_named(facts, "M"), None, TEX)
    assert found is not None
    assert found.mean == 980


def extra(longer_cm: float) -> float:
    return extra_length_m(longer_cm, 100, PATTERN_GAUGE, TEX, 1, says="longer", washed=True).mean


def test_a_longer_body_is_rows_times_stitches_times_loop() -> None:
    """5 cm at 30 rows, 100 cm at 22 stitches: 15 × 220 loops."""
    assert extra(5) == pytest.approx(15 * 220 * loop_length_mm(PATTERN_GAUGE, TEX, "washed") / 1000)


def test_a_shorter_body_gives_back_as_much() -> None:
    assert extra(-5) == -extra(5)
