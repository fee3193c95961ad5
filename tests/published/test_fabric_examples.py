"""The rows of `fabric_examples.csv` that the core can answer: loop length, yarn per area, substitution.

W rows come from published questions and articles, V rows were computed beside the equations (each row names source,
status and tolerance). Dalidovich and Munden are from memory there; what is checked is our arithmetic on them.
"""

import csv
from pathlib import Path

import pytest

from loopwright.fabric import Gauge, Swatch, loop_length_mm
from loopwright.garment import fabric_area_cm2, stitch_count
from loopwright.need import balls_to_buy
from loopwright.need.model import density_by_mass, modelled_need
from loopwright.need.stated import extra_length_m
from loopwright.pattern import Construction
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import read_gauge, read_length_cm
from loopwright.yarn import effective_diameter_mm, grist_held_together

with (Path(__file__).parent / "fabric_examples.csv").open(encoding="utf-8", newline="") as file:
    ROWS = {row["id"]: row for row in csv.DictReader(file)}

WORSTED = Gauge(stitches_per_10cm=18, rows_per_10cm=24)
IN2_CM2 = 2.54**2
YD_M = 0.9144


def known(value: float, unit: str) -> Estimate:
    return Estimate.known("given", value, unit, Origin.STATED)


def tolerance(number: str) -> float:
    return float(ROWS[number]["tolerance"])


def gauge(text: str) -> Gauge:
    count = read_gauge(text)
    return Gauge(stitches_per_10cm=count.stitches_per_10cm, rows_per_10cm=count.rows_per_10cm)


def balls(need_m: float, ball_m: float) -> int:
    return balls_to_buy(known(0, "m"), known(need_m, "m"), ball_m, 0.5, relative_sd=0)


def area(construction: Construction, **inches: float) -> float:
    """Area in square inches of a garment measured in inches."""
    found = fabric_area_cm2(construction, {name: inch * 2.54 for name, inch in inches.items()})
    assert found is not None
    return found.mean / IN2_CM2


def answer(number: str) -> float:
    return float(ROWS[number]["answer"])


def test_v01_effective_diameter() -> None:
    assert effective_diameter_mm(500) == pytest.approx(answer("V01"), abs=tolerance("V01"))


def test_v02_dalidovich_is_twice_the_combined_less_munden() -> None:
    dalidovich = 2 * loop_length_mm(WORSTED, 500) - loop_length_mm(WORSTED)
    assert dalidovich == pytest.approx(answer("V02"), abs=2 * tolerance("V02"))


@pytest.mark.parametrize(("state", "place"), [("unwashed", 0), ("unknown", 1), ("washed", 2)])
def test_v04_munden_by_state(state: str, place: int) -> None:
    printed = float(ROWS["V04"]["answer"].split("/")[place])
    assert loop_length_mm(WORSTED, state=state) == pytest.approx(printed, abs=tolerance("V04"))


def test_v05_combined() -> None:
    assert loop_length_mm(WORSTED, 500) == pytest.approx(answer("V05"), abs=tolerance("V05"))


def test_v06_metres_per_square_metre() -> None:
    stitches = stitch_count(known(10_000, "cm²"), WORSTED).mean
    assert stitches == pytest.approx(43_200)
    metres = stitches * loop_length_mm(WORSTED, 500) / 1000
    assert metres == pytest.approx(answer("V06"), abs=tolerance("V06"))


def test_v07_grams_per_square_metre() -> None:
    metres = stitch_count(known(10_000, "cm²"), WORSTED).mean * loop_length_mm(WORSTED, 500) / 1000
    assert metres * 500 / 1000 == pytest.approx(answer("V07"), abs=tolerance("V07"))


def test_v08_fingering() -> None:
    fine = Gauge(stitches_per_10cm=28, rows_per_10cm=36)
    assert loop_length_mm(fine, 250) == pytest.approx(answer("V08"), abs=tolerance("V08"))


def test_v09_two_strands() -> None:
    tex = grist_held_together([250, 250])
    assert tex == 500
    assert effective_diameter_mm(tex) == pytest.approx(1.261, abs=tolerance("V09"))


def test_v10_weighed_swatch_gives_the_loop() -> None:
    """6.2 g for 30 × 40 stitches: metres by the weighed swatch over its stitches are the loop length."""
    swatch = Swatch(key="s", yarns=("y",), after="30 sts x 40 rows = 10 cm", mass_g=6.2, width_cm=10, height_cm=10)
    dense = density_by_mass(swatch, 250)
    assert dense is not None
    metres = modelled_need(known(100, "cm²"), dense, known(1, "×")).mean
    assert metres * 1000 / (30 * 40) == pytest.approx(answer("V10"), abs=tolerance("V10"))


def test_w05_rows_and_stitches_to_yards() -> None:
    """200 × 126 stitches at 45 stitches to the yard; sleeves a third more. The tolerance is the page's."""
    area = known(200 / 18 * 10 * 126 / 24 * 10, "cm²")
    stitches = stitch_count(area, WORSTED).mean
    assert stitches == pytest.approx(25_200)
    assert stitches / 45 * 4 / 3 == pytest.approx(747, abs=tolerance("W05"))


def test_w07_yards_from_the_mass_of_a_swatch() -> None:
    """4 g for 6 × 6 in; 50 g = 87 yd; a blanket of 60 × 60 in takes 696 yd (the page rounds up to 720)."""
    side, tex = read_length_cm("6 in"), 50 / (87 * YD_M) * 1000
    swatch = Swatch(key="s", yarns=("y",), after="20 sts = 10 cm", mass_g=4, width_cm=side, height_cm=side)
    dense = density_by_mass(swatch, tex)
    assert dense is not None
    metres = modelled_need(known(3600 * IN2_CM2, "cm²"), dense, known(1, "×")).mean
    assert metres / YD_M == pytest.approx(696, abs=0.5)


def test_w08_stitches_of_a_longer_body() -> None:
    """8 in longer at 5 rows to the inch, 140 stitches round: 40 rounds, 5600 stitches."""
    own = gauge("7 sts x 5 rows = 1 in")
    longer = extra_length_m(read_length_cm("8 in"), own.width_cm(140), own, 250, 1, says="longer", washed=True)
    assert longer.mean * 1000 / loop_length_mm(own, 250, "washed") == pytest.approx(5600)


@pytest.mark.parametrize(
    ("number", "need_m", "ball_m", "printed"), [("W09", 550 / 50 * 100, 90, 13), ("W10", 1560, 230, 7)]
)
def test_substitution(number: str, need_m: float, ball_m: float, printed: int) -> None:
    assert f"{printed} balls" in ROWS[number]["answer"]
    assert balls(need_m, ball_m) == printed


def test_w18_body_and_sleeves_by_area() -> None:
    """Front and back of 20 × 28 in and two sleeves of 8 to 15 in by 18 in: 1534 square inches.

    Our sleeves have a cap besides; twice the length less once the length leaves the two trapeziums alone.
    """
    body = area(Construction.RECTANGLE, width=40, length=28)
    once = area(Construction.DROP, bust_girth=40, length=28, upper_arm_girth=15, wrist_girth=8, sleeve_length=18)
    twice = area(Construction.DROP, bust_girth=40, length=28, upper_arm_girth=15, wrist_girth=8, sleeve_length=36)
    assert body + twice - once == pytest.approx(1534)
