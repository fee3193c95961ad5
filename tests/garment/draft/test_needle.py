"""Knitting a section: counts follow from what is done, edges from where it is done."""

from __future__ import annotations

import numpy as np
import pytest

from loopwright.fabric import Gauge
from loopwright.garment.draft import Kind, Needle
from loopwright.units import BadInput

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)


def test_counts_follow_from_the_changes() -> None:
    needle = Needle(10).plain(2).row((Kind.INCREASE, "left", 1), (Kind.INCREASE, "right", 1)).plain(1)
    section = needle.section("s", "s", "stocking stitch", GAUGE)
    assert section.stitches.tolist() == [10, 10, 12, 12]
    assert section.left_edge.tolist() == [-5, -5, -6, -6]


def test_what_is_done_at_the_right_edge_leaves_the_left_where_it_is() -> None:
    section = Needle(10).row((Kind.CAST_OFF, "right", 4)).section("s", "s", "stocking stitch", GAUGE)
    assert (section.left_edge[0], section.last) == (-5, 6)


def test_what_is_spread_over_the_row_moves_both_edges_by_half() -> None:
    section = Needle(10).row((Kind.DECREASE, "evenly", 3)).section("s", "s", "stocking stitch", GAUGE)
    assert section.left_edge[0] == -3.5
    assert section.begin_left == -5


def test_a_tube_lies_flat_at_half_its_stitches() -> None:
    section = Needle(40, in_the_round=True).plain(3).section("s", "s", "stocking stitch", GAUGE)
    assert section.flat_stitches.tolist() == [20, 20, 20]
    assert section.left_edge.tolist() == [-10, -10, -10]


def test_rested_stitches_stay_on_the_needle() -> None:
    needle = Needle(20).row((Kind.REST, "left", 5)).row((Kind.REST, "right", 5)).row((Kind.TAKE_UP, "left", 5))
    section = needle.section("s", "s", "stocking stitch", GAUGE)
    assert (section.last, section.resting, section.live) == (15, 5, 20)


def test_no_row_takes_more_than_there_is() -> None:
    with pytest.raises(BadInput, match="cast off of 11 stitches where only 10 are left"):
        Needle(10).row((Kind.CAST_OFF, "right", 11))


def test_its_arrays_cannot_be_changed() -> None:
    section = Needle(10).plain(1).section("s", "s", "stocking stitch", GAUGE)
    with pytest.raises(ValueError, match="read-only"):
        section.stitches[0] = 3


def test_area_is_stitches_times_the_cell() -> None:
    section = Needle(20).plain(28).section("s", "s", "stocking stitch", GAUGE)
    assert section.area_cm2 == pytest.approx(100)
    assert isinstance(section.stitches, np.ndarray)
