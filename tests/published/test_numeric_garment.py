"""The rows of `numeric_checks.csv` and `numeric_garment.csv` that rooms above units answer.

Covered: N016-N022 (gauge to width, counts, rows; error of gauge), N032-N033 (ease), N037-N044 (resizing by gauge),
N051-N055 (area and yarn). Each at its own tolerance, source and status in the row; 0 means equal to the digits shown.
Not answered by the core: N034-N036 (socks), N023-N031 (repeats), which belong to rooms that are not built yet.
"""

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

from loopwright.fabric import Gauge, Swatch
from loopwright.fit import finished_at_gauge, size_named
from loopwright.fit.score import PointFit
from loopwright.garment import fabric_area_cm2, stitch_count
from loopwright.need.model import density_by_mass, modelled_need
from loopwright.pattern import Construction, FinishedMeasures, PatternFacts
from loopwright.uncertainty import Estimate, Origin
from loopwright.units import read_gauge, read_length_cm

FOLDER = Path(__file__).parent
ROWS: dict[str, dict[str, str]] = {}
for name in ("numeric_checks.csv", "numeric_garment.csv"):
    with (FOLDER / name).open(encoding="utf-8", newline="") as file:
        ROWS |= {row["id"]: row for row in csv.DictReader(file)}

IN, YD_M = 2.54, 0.9144


def gauge(text: str) -> Gauge:
    count = read_gauge(text)
    return Gauge(stitches_per_10cm=count.stitches_per_10cm, rows_per_10cm=count.rows_per_10cm)


def known(value: float, unit: str) -> Estimate:
    return Estimate.known("given", value, unit, Origin.STATED)


def rows(length_cm: float, per_10cm: float) -> float:
    """Rows of a strip one stitch wide: its stitches are its rows."""
    own = Gauge(stitches_per_10cm=10, rows_per_10cm=per_10cm)
    return stitch_count(known(length_cm, "cm²"), own).mean


def girth_at_gauge(stated_cm: float, pattern: str, own: str) -> float:
    facts = PatternFacts(
        key="p",
        name="p",
        construction=Construction.SET_IN,
        gauge=pattern,
        sizes=("one",),
        finished=FinishedMeasures(bust_girth=(stated_cm,)),
    )
    return finished_at_gauge(facts, size_named(facts, "one"), gauge(own))["bust_girth"]


def ease(body_cm: float, garment_cm: float) -> PointFit:
    return PointFit(point="bust_girth", body_cm=body_cm, garment_cm=garment_cm, intended_cm=0, penalty=0, weight=1)


def area_in2(construction: Construction, **inches: float) -> float:
    area = fabric_area_cm2(construction, {name: inch * IN for name, inch in inches.items()})
    assert area is not None
    return area.mean / IN**2


def sleeves_in2(top: float, cuff: float, length: float) -> float:
    """Two sleeves without caps: a garment with sleeves twice as long, less one with its own."""
    body = {"bust_girth": 40.0, "length": 28.0, "upper_arm_girth": top, "wrist_girth": cuff}
    longer = area_in2(Construction.DROP, **body, sleeve_length=2 * length)
    return longer - area_in2(Construction.DROP, **body, sleeve_length=length)


def yarn_by_area(swatch_m: float, swatch_cm2: float, area_cm2: float) -> float:
    """Metres for an area from a swatch that took so many metres, through its mass and a grist of 1000 tex."""
    side = swatch_cm2**0.5
    swatch = Swatch(key="s", yarns=("y",), after="20 sts = 10 cm", mass_g=swatch_m, width_cm=side, height_cm=side)
    dense = density_by_mass(swatch, 1000)
    assert dense is not None
    return modelled_need(known(area_cm2, "cm²"), dense, known(1, "×")).mean


ANSWERS: dict[str, Callable[[], float | tuple[float, float]]] = {
    "N016": lambda: gauge("5.5 sts = 1 in").width_cm(80) / IN,
    "N017": lambda: gauge("4.9583 sts = 1 in").stitches_in(read_length_cm("24 in")),
    "N018": lambda: gauge("28 sts = 10 cm").stitches_in(62),
    "N019": lambda: rows(38, 40),
    "N020": lambda: gauge("7 sts = 1 in").stitches_in(read_length_cm("45.5 in")),
    "N021": lambda: gauge("4.5 sts = 1 in").stitches_in(read_length_cm("22.5 in")),
    "N022": lambda: (
        gauge("5 sts = 1 in").width_cm(200) / IN,
        girth_at_gauge(40 * IN, "5 sts = 1 in", "5.25 sts = 1 in") / IN,
    ),
    "N032": lambda: ease(36 * IN, 40 * IN).ease_cm / IN,
    "N033": lambda: ease(87, 93).ease_cm / 87 * 100,
    "N037": lambda: gauge("4 sts = 1 in").stitches_in(gauge("3.5 sts = 1 in").width_cm(100)),
    "N038": lambda: gauge("19 sts = 4 in").stitches_in(gauge("30 sts = 4 in").width_cm(114)),
    "N039": lambda: gauge("4 sts = 1 in").stitches_in(43 * IN),
    "N040": lambda: girth_at_gauge(43 * IN, "4 sts = 1 in", "4.5 sts = 1 in") / IN,
    "N041": lambda: gauge("26 sts = 4 in").width_cm(286) / IN,
    "N042": lambda: girth_at_gauge(44 * IN, "26 sts = 4 in", "20 sts = 4 in") / IN,
    "N043": lambda: gauge("7 sts = 2 in").stitches_in(gauge("6 sts = 4 in").width_cm(36)),
    "N044": lambda: gauge("3.5 sts = 1 in").stitches_in(gauge("1.5 sts = 1 in").width_cm(2)),
    "N051": lambda: area_in2(Construction.RECTANGLE, width=40, length=28),
    "N052": lambda: sleeves_in2(15, 8, 18),
    "N053": lambda: yarn_by_area(18 * YD_M, 36 * IN**2, 1534 * IN**2) / YD_M,
    "N054": lambda: yarn_by_area(800, 10_000, 12_100),
    "N055": lambda: yarn_by_area(400, 300 * 22, 340 * 24),
}


@pytest.mark.parametrize("number", ANSWERS)
def test_published_value(number: str) -> None:
    row, answer = ROWS[number], ANSWERS[number]()
    expected = [float(part) for part in row["expected"].split("|")]
    digits = max(len(part.partition(".")[2]) for part in row["expected"].split("|"))
    found = answer if isinstance(answer, tuple) else (answer,)
    tolerance = float(row["tolerance"]) or (1e-9 if digits < 3 else 0.5 * 10**-digits)
    assert found == pytest.approx(expected, rel=0, abs=tolerance)
