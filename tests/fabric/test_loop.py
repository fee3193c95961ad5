"""Loop length: limits that any loop keeps, and how it scales."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.fabric import STRUCTURES, Gauge, loop_length_mm
from loopwright.yarn import effective_diameter_mm

HAND_GAUGES = [
    (32, 42, 600),
    (28, 36, 400),
    (24, 32, 300),
    (22, 30, 230),
    (20, 28, 210),
    (18, 24, 200),
    (17, 23, 165),
    (14, 20, 120),
    (9, 13, 65),
]
"""Label gauges and metres to 100 g of the yarn classes (status memory)."""
PUBLISHED_MM = [12.14, 14.10, 16.16, 17.54, 18.97, 21.38, 22.57, 26.66, 40.77]
"""Our study of loop models, section 2, computed apart from this code; printed to 0.01 mm."""


def gauge(stitches: float, rows: float | None) -> Gauge:
    return Gauge(stitches_per_10cm=stitches, rows_per_10cm=rows)


@pytest.mark.parametrize(("facts", "printed"), list(zip(HAND_GAUGES, PUBLISHED_MM, strict=True)))
def test_nine_yarn_classes(facts: tuple[int, int, int], printed: float) -> None:
    stitches, rows, metres = facts
    assert loop_length_mm(gauge(stitches, rows), 100_000 / metres) == pytest.approx(printed, abs=0.006)


@pytest.mark.parametrize("facts", HAND_GAUGES)
def test_no_loop_is_shorter_than_the_jammed_one_by_much(facts: tuple[int, int, int]) -> None:
    """Chamberlain 1926: l/d = 16.67 jammed (read in a 2016 paper); hand gauges lie at 0.89 to 1.10 of it."""
    stitches, rows, metres = facts
    tex = 100_000 / metres
    ratio = loop_length_mm(gauge(stitches, rows), tex) / (16.67 * effective_diameter_mm(tex))
    assert 0.88 < ratio < 1.11


@given(st.floats(8, 40), st.floats(1.15, 1.55), st.floats(100, 1500), st.floats(0.5, 2))
def test_a_picture_twice_as_large_has_loops_twice_as_long(s: float, shape: float, tex: float, scale: float) -> None:
    """Every length scales: W, C and d by one factor, and d grows with √tex."""
    small = loop_length_mm(gauge(s, s * shape), tex)
    large = loop_length_mm(gauge(s / scale, s * shape / scale), tex * scale**2)
    assert large == pytest.approx(small * scale, rel=1e-9)


def test_thicker_yarn_at_one_gauge_takes_longer_loops() -> None:
    assert loop_length_mm(gauge(20, 28), 600) > loop_length_mm(gauge(20, 28), 400)


def test_missing_rows_are_taken_from_the_usual_shape() -> None:
    assert loop_length_mm(gauge(20, None), 400) == pytest.approx(loop_length_mm(gauge(20, 27.6), 400))


def test_an_unknown_state() -> None:
    with pytest.raises(KeyError):
        loop_length_mm(gauge(20, 28), state="damp")


def test_stocking_stitch_is_the_unit_of_yarn() -> None:
    assert STRUCTURES["stocking stitch"].yarn_per_stitch == 1
    assert all(0.5 < fabric.yarn_per_stitch < 1.5 for fabric in STRUCTURES.values())


def test_times_lie_in_their_range_and_say_where_from() -> None:
    wrong = [f.name for f in STRUCTURES.values() if not f.time_low <= f.time_typical <= f.time_high]
    assert wrong == []
    assert all(fabric.time_source for fabric in STRUCTURES.values())
