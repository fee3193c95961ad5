"""The shaping of a section told in runs."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from loopwright.fabric import Gauge
from loopwright.garment.draft import Kind, Needle, Section, shaping_runs

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)


def section(needle: Needle) -> Section:
    return needle.section("s", "s", "stocking stitch", GAUGE)


def test_both_edges_are_told_together() -> None:
    # Source: Kristen TenDyke's rule as the reference gives it: 108 rows, 11 times: every 9th twice, every 10th 9 times.
    at = [8, 17, *range(27, 108, 10)]
    needle = Needle(38).shape(108, at, (Kind.INCREASE, "left", 1), (Kind.INCREASE, "right", 1))
    (run,) = shaping_runs(section(needle))
    assert (run.sides, run.stitches, run.first_row) == (("left", "right"), 1, 9)
    assert run.every == ((9, 2), (10, 9))
    assert run.times == 11


def test_cast_offs_at_the_begin_of_two_rows_are_one() -> None:
    needle = Needle(60).row((Kind.CAST_OFF, "right", 5)).row((Kind.CAST_OFF, "left", 5)).plain(2)
    (run,) = shaping_runs(section(needle))
    assert (run.sides, run.stitches, run.times, run.first_row) == (("left", "right"), 5, 1, 1)


def test_another_amount_begins_another_run() -> None:
    needle = Needle(60)
    for stitches in (3, 2, 2, 1, 1):
        needle.row((Kind.CAST_OFF, "right", stitches)).row((Kind.CAST_OFF, "left", stitches))
    assert [(run.stitches, run.times) for run in shaping_runs(section(needle))] == [(3, 1), (2, 2), (1, 2)]


@given(st.lists(st.integers(0, 60), unique=True, min_size=1, max_size=20))
def test_no_shaping_is_lost(at: list[int]) -> None:
    made = section(Needle(200).shape(61, at, (Kind.DECREASE, "left", 1), (Kind.DECREASE, "right", 1)))
    assert sum(run.times * run.stitches * len(run.sides) for run in shaping_runs(made)) == 2 * len(at)
