"""Outlines against shapely, a general geometry library: the area within is the sum over the rows."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon

from loopwright.fabric import Gauge
from loopwright.garment.draft import Kind, Needle, Section, edge_length_cm, section_outline_cm
from loopwright.garment.draft.section import Side

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)
KINDS = st.sampled_from([Kind.INCREASE, Kind.DECREASE, Kind.CAST_ON, Kind.CAST_OFF])
SIDES: st.SearchStrategy[Side] = st.sampled_from(["left", "right", "evenly"])


@st.composite
def sections(draw: st.DrawFn) -> Section:
    needle = Needle(draw(st.integers(60, 120)), in_the_round=draw(st.booleans()))
    for _ in range(draw(st.integers(1, 40))):
        needle.row((draw(KINDS), draw(SIDES), draw(st.integers(0, 1))))
    return needle.section("s", "s", "stocking stitch", GAUGE)


@given(sections(), st.floats(0, 50))
def test_the_outline_holds_the_area_of_the_rows(section: Section, base_cm: float) -> None:
    outline = Polygon(section_outline_cm(section, base_cm))
    layers = 2 if section.in_the_round else 1
    assert outline.is_valid
    assert outline.area * layers == pytest.approx(section.area_cm2)
    assert outline.bounds[1] == pytest.approx(base_cm)
    assert outline.bounds[3] == pytest.approx(base_cm + section.height_cm)


def test_many_stitches_at_once_are_drawn_as_a_step() -> None:
    section = Needle(40).plain(2).row((Kind.CAST_OFF, "right", 10)).plain(1).section("s", "s", "stocking stitch", GAUGE)
    outline = section_outline_cm(section) / (section.stitch_width_cm, section.row_height_cm)
    assert [20, 2] in outline.round(6).tolist()
    assert [10, 2] in outline.round(6).tolist()
    assert Polygon(outline).area == pytest.approx(40 * 2 + 30 * 2)


def test_a_straight_edge_is_as_long_as_its_rows_are_high() -> None:
    section = Needle(40).plain(28).section("s", "s", "stocking stitch", GAUGE)
    assert edge_length_cm(section, "left") == pytest.approx(10)


def test_a_slanted_edge_is_longer_by_pythagoras() -> None:
    needle = Needle(40).shape(28, range(28), (Kind.DECREASE, "right", 1))
    section = needle.section("s", "s", "stocking stitch", GAUGE)
    assert edge_length_cm(section, "right") == pytest.approx(math.hypot(10, 28 * 0.5))
    assert edge_length_cm(section, "left") == pytest.approx(10)


def test_a_cast_off_counts_with_its_whole_width() -> None:
    section = Needle(40).row((Kind.CAST_OFF, "left", 6)).section("s", "s", "stocking stitch", GAUGE)
    assert edge_length_cm(section, "left") == pytest.approx(6 * 0.5 + 10 / 28)


def test_a_v_is_as_long_as_its_slant() -> None:
    # Source: Pythagoras on a V of 8 in with 3.6 in of run: 8.77 in, not 8 (a handbook warns that 3 of 4 is too few).
    gauge = Gauge(stitches_per_10cm=50 / 2.54, rows_per_10cm=70 / 2.54)
    at = [*range(3, 43, 4), *range(41, 57, 2)]
    needle = Needle(40).shape(56, sorted(set(at)), (Kind.DECREASE, "left", 1))
    section = needle.section("v", "v", "stocking stitch", gauge)
    run = (40 - section.last) / 5
    assert edge_length_cm(section, "left") / 2.54 == pytest.approx(math.hypot(8, run), rel=0.01)
