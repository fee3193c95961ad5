"""The yarn in a stitch: unravelled, weighed, modelled; other fabrics and other grists."""

from typing import Any

import pytest

from loopwright.fabric import Gauge, Swatch, loop_length_mm
from loopwright.need import loop_by_gauge, loop_on_swatch
from loopwright.need.loops import UNRAVELLED_RELATIVE_SD
from loopwright.uncertainty import Origin

GAUGE = Gauge(stitches_per_10cm=22, rows_per_10cm=30)


def swatch(**more: Any) -> Swatch:
    return Swatch.model_validate({"key": "s", "yarns": ["y"], "after": "22 sts x 30 rows = 10 cm"} | more)


def test_from_the_gauge_it_is_the_recommended_equation() -> None:
    loop = loop_by_gauge(GAUGE, "stocking stitch", 435, state="washed").stitch_mm
    assert loop.mean == pytest.approx(loop_length_mm(GAUGE, 435, "washed"))
    assert 0.06 < loop.relative_sd < 0.07


def test_an_unravelled_loop_beats_the_model() -> None:
    loop = loop_on_swatch(swatch(unravelled="40 sts = 76 cm"), 435, 435).stitch_mm
    assert loop.mean == pytest.approx(19)
    assert loop.relative_sd == pytest.approx(UNRAVELLED_RELATIVE_SD)
    assert loop.origin is Origin.MEASURED


def test_a_weighed_swatch_is_joined_by_precision() -> None:
    """40 g of 435 tex are 92.0 m in 28 × 28 cm, 5174 stitches: 17.8 mm; a scale and a grist know it to about 5 %."""
    both = loop_on_swatch(swatch(unravelled="40 sts = 76 cm", mass="40 g", width="28 cm", height="28 cm"), 435, 435)
    assert 17.8 < both.stitch_mm.mean < 19
    assert both.stitch_mm.sd < UNRAVELLED_RELATIVE_SD * 19 * 1.3


def test_a_thicker_strand_at_one_gauge_has_a_longer_loop() -> None:
    """Carried by the model's ratio: what was measured stays measured."""
    own, thicker = (loop_on_swatch(swatch(unravelled="40 sts = 76 cm"), tex, 435).stitch_mm.mean for tex in (435, 600))
    model = loop_length_mm(GAUGE, 600, "washed") / loop_length_mm(GAUGE, 435, "washed")
    assert thicker / own == pytest.approx(model)


def test_a_garter_swatch_has_the_loop_of_its_needle_in_stocking_stitch() -> None:
    """Same yarn and needle, so one loop: garter at 17.9 × 34.3 is stocking stitch at 18.8 × 24 (structures)."""
    garter = Gauge(stitches_per_10cm=18.8 / 1.05, rows_per_10cm=24 / 0.70)
    plain = Gauge(stitches_per_10cm=18.8, rows_per_10cm=24)
    loop = loop_by_gauge(garter, "garter stitch", 500)
    assert loop.stitch_mm.mean == pytest.approx(loop_length_mm(plain, 500))
    assert loop.of("stocking stitch") == pytest.approx(loop.stitch_mm.mean)


@pytest.mark.parametrize(
    ("fabric", "width", "length", "printed"),
    [("garter stitch", 1.05, 0.70, 1.35), ("1x1 rib", 0.74, 1.00, 1.36), ("2x2 rib", 0.66, 1.00, 1.50)],
)
def test_metres_to_an_area_are_those_of_the_table_of_structures(
    fabric: str, width: float, length: float, printed: float
) -> None:
    """Yarn to an area against stocking stitch, at the same yarn and needle, relaxed (read and derived: structures)."""
    gauge = Gauge(stitches_per_10cm=20 / width, rows_per_10cm=28 / length)
    stitches = gauge.stitches_per_10cm * gauge.rows_or_usual_per_10cm
    there = stitches * loop_by_gauge(gauge, fabric, 450).stitch_mm.mean
    plain = Gauge(stitches_per_10cm=20, rows_per_10cm=28)
    assert there / (20 * 28 * loop_by_gauge(plain, "stocking stitch", 450).stitch_mm.mean) == pytest.approx(
        printed, rel=0.02
    )


def test_a_fabric_that_was_not_swatched_is_less_sure() -> None:
    loop = loop_by_gauge(GAUGE, "stocking stitch", 435)
    assert loop.relative_sd("2x2 rib") > loop.relative_sd("stocking stitch in the round")
    assert loop.relative_sd("stocking stitch in the round") == loop.stitch_mm.relative_sd
