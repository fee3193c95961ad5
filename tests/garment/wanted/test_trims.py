"""Edges: their repeats, and how their rows go with the fabric that they belong to."""

from __future__ import annotations

import pytest

from loopwright.fabric import Gauge
from loopwright.garment.wanted import DraftOptions, Trim
from loopwright.records import FROM_FILE

GAUGE = Gauge(stitches_per_10cm=20, rows_per_10cm=28)


def test_garter_is_shorter_by_the_row() -> None:
    """Row height half of the stitch's width against three quarters and more in stocking stitch: 0.70 in the table."""
    assert Trim(fabric="garter stitch").gauge(GAUGE).rows_per_10cm == pytest.approx(28 / 0.7)


def test_an_edge_of_the_main_fabric_has_its_gauge() -> None:
    assert Trim(fabric="garter stitch").over("garter stitch").gauge(GAUGE).rows_per_10cm == pytest.approx(28)
    assert Trim(fabric="1x1 rib").over("garter stitch").gauge(GAUGE).rows_per_10cm == pytest.approx(28 * 0.7)


def test_flat_rib_ends_as_it_begins() -> None:
    rib = Trim(fabric="2x2 rib")
    assert (rib.multiple, rib.plus(in_the_round=False), rib.plus(in_the_round=True)) == (4, 2, 0)


def test_rows_are_whole_and_even_where_both_sides_are_worked() -> None:
    trim = Trim(depth_cm=5.0)
    assert (trim.rows(GAUGE), trim.rows(GAUGE, even=True)) == (14, 14)
    assert Trim(depth_cm=0.01).rows(GAUGE) == 1


@pytest.mark.parametrize(
    ("written", "fabric", "depth_cm"),
    [
        ({"neckband": {"depth": "4 cm"}}, "1x1 rib", 4.0),
        ({"neckband": {"fabric": "garter stitch"}}, "garter stitch", 2.5),
        ({"neckband": {}}, "1x1 rib", 2.5),
    ],
)
def test_what_is_left_out_of_an_edge_is_its_usual(written: dict[str, object], fabric: str, depth_cm: float) -> None:
    options = DraftOptions.model_validate(written, context=FROM_FILE)
    assert (options.neckband.fabric, options.neckband.depth_cm) == (fabric, depth_cm)


def test_options_are_equal_when_they_say_the_same() -> None:
    assert DraftOptions() == DraftOptions.model_validate({"hem": {"depth": "5 cm"}})
    assert hash(DraftOptions()) == hash(DraftOptions.model_validate({"hem": {"depth": "5 cm"}}))
