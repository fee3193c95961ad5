"""Hours from area and gauge, and dates from hours: `hours_examples.csv`, computed in our study of time.

The multipliers are common practice, speeds and shapes illustrative (status in the file); hours are printed to two
decimals. Her pace in the fabric is the plain pace over the multiplier, so that the arithmetic is checked and not our
table of multipliers. The last column compared is the knitting alone: fixed hours are our own table.
"""

import csv
import datetime as dt
from pathlib import Path

import pytest

from loopwright.calendar import Calendar, DaysOff, Pace, hours_for
from loopwright.calendar.hours import fixed_hours
from loopwright.fabric import Gauge
from loopwright.garment import stitch_count
from loopwright.uncertainty import Estimate, Origin

with (Path(__file__).parent / "hours_examples.csv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))

FABRIC = "stocking stitch"
PRINTED_H = 0.005
START = dt.date(2026, 9, 7)


def stitches(row: dict[str, str]) -> Estimate:
    gauge = Gauge(stitches_per_10cm=float(row["st_per_10cm"]), rows_per_10cm=float(row["rows_per_10cm"]))
    area = Estimate.known("area", float(row["area_cm2"]), "cm²", Origin.STATED)
    return stitch_count(area, gauge)


@pytest.fixture(params=ROWS, ids=lambda row: row["id"])
def row(request: pytest.FixtureRequest) -> dict[str, str]:
    chosen: dict[str, str] = request.param
    return chosen


def test_stitches(row: dict[str, str]) -> None:
    assert stitches(row).mean == pytest.approx(float(row["stitches"]), abs=0.05)


def test_knitting_hours_with_overhead(row: dict[str, str]) -> None:
    speed = float(row["st_per_min"]) / float(row["multiplier"])
    pace = Pace.model_validate({"fabrics": {FABRIC: speed}, "overhead": float(row["overhead"])})
    hours = hours_for(stitches(row), FABRIC, "hat", pace)
    knitting = hours.mean - fixed_hours("hat", child=False).mean
    assert knitting == pytest.approx(float(row["total_h"]) - float(row["fixed_h"]), abs=PRINTED_H * 1.01)


@pytest.mark.parametrize(
    ("number", "construction", "child"),
    [
        ("H01", "rectangle", False),
        ("H02", "hat", False),
        ("H05", "set-in sleeve", False),
        ("H06", "set-in sleeve", False),
        ("H08", "set-in sleeve", True),
        ("H09", "set-in sleeve", False),
        ("H10", "triangle shawl", False),
    ],
)
def test_fixed_hours_agree_where_the_piece_is_in_our_table(number: str, construction: str, child: bool) -> None:
    row = next(row for row in ROWS if row["id"] == number)
    assert fixed_hours(construction, child=child).mean == float(row["fixed_h"])


def calendar(*days_off: DaysOff) -> Calendar:
    return Calendar(today=START, hours_a_week=6, hours_a_week_sd=0, days_off=days_off)


def test_the_last_day_of_knitting() -> None:
    assert calendar().day_after(41.4374) == dt.date(2026, 10, 25)


def test_a_week_off_moves_it_by_a_week() -> None:
    week = DaysOff.model_validate({"from": dt.date(2026, 10, 12), "until": dt.date(2026, 10, 18)})
    assert calendar(week).day_after(41.4374) == dt.date(2026, 11, 1)


def test_a_fifth_more_work_ends_in_the_printed_week() -> None:
    """The source knits half an hour on weekdays and more at the week's end, we spread evenly: printed 5 November."""
    found = calendar().day_after(49.7249)
    assert found.isocalendar()[:2] == dt.date(2026, 11, 5).isocalendar()[:2]
