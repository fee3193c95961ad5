"""Published pullover amounts against the need by area and loop length: a sanity band, not a calibration.

Patterns D (22 × 31, 140 m to 50 g, stated to the metre) and F (20 × 27, 212 m to 100 g, whole skeins) of
`garment_yardage.csv`, both read. The pages give the chest only; the other measures are assumed, by lines of our study
(section 5, judgement) that were themselves looked at beside these patterns. So this can only show that unit, constant
or allowance is not grossly wrong: D must agree within 12 %, and F's need must lie within 12 % of its skeins, of which
the last may be nearly whole.
"""

import csv
from pathlib import Path

import pytest

from loopwright.fabric import Swatch
from loopwright.garment import fabric_area_cm2
from loopwright.need.model import allowance, modelled_need, yarn_density
from loopwright.pattern import Construction, PatternFacts

with (Path(__file__).parent / "garment_yardage.csv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))

BAND = 0.12
GRIST_TEX = {"D": 50 / 140 * 1000, "F": 100 / 212 * 1000}
SKEIN_M = 212


def assumed_measures(chest_cm: float) -> dict[str, float]:
    """Assumed: length, upper arm and wrist as straight lines of the chest, sleeves of 45 cm."""
    return {
        "bust_girth": chest_cm,
        "length": 59 + 0.06 * (chest_cm - 90),
        "upper_arm_girth": 0.28 * chest_cm + 6,
        "wrist_girth": 0.07 * chest_cm + 14.5,
        "sleeve_length": 45,
    }


def need_m(row: dict[str, str]) -> float:
    area = fabric_area_cm2(Construction.YOKE, assumed_measures(float(row["chest_cm"])))
    assert area is not None
    gauge = f"{row['stitches_per_10cm']} sts x {row['rows_per_10cm']} rows = 10 cm"
    swatch = Swatch(key="s", yarns=("y",), after=gauge)
    extra = allowance(PatternFacts(key="p", name="Yoke", construction=Construction.YOKE, gauge=gauge, sizes="one"))
    return modelled_need(area, yarn_density(swatch, GRIST_TEX[row["source_id"]]), extra).mean


@pytest.mark.parametrize("row", [row for row in ROWS if row["source_id"] == "D"], ids=lambda row: row["chest_cm"])
def test_stated_to_the_metre(row: dict[str, str]) -> None:
    assert need_m(row) == pytest.approx(float(row["metres"]), rel=BAND)


@pytest.mark.parametrize("row", [row for row in ROWS if row["source_id"] == "F"], ids=lambda row: row["chest_cm"])
def test_stated_in_whole_skeins(row: dict[str, str]) -> None:
    most = float(row["metres"])
    assert (most - SKEIN_M) * (1 - BAND) < need_m(row) < most * (1 + BAND)
