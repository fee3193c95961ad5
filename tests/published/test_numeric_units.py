"""The rows of `numeric_checks.csv` that the units room answers, each at the tolerance of its source.

Covered: N001-N010 (unit), N011-N015 (gauge), N045-N047 (yardage_from_mass), N048-N050 (skein_count), N059
(mass_area), N068-N069 (held_double, masses of strands add), N073-N083 (grist), N084 (wpi).

The other rows of the file are checked where they are computed: gauge_to_width, gauge_to_count,
gauge_to_rows (N016 to N021), gauge_error (N022) and resize_by_gauge (N037 to N044). The file is UTF-8 CSV;
`tolerance` is absolute and 0 means equal to the digits shown; `status` says whether the source was read,
read in two texts, or remembered.
"""

import csv
import math
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path

import pytest

from loopwright.units import (
    count_from_tex,
    length_of_mass_m,
    read_gauge,
    read_grist_tex,
    read_length_cm,
    read_mass_g,
    read_quantity,
    read_share,
    read_yarn_length_m,
    tex_from_count,
    tex_from_put_up,
)

with (Path(__file__).parent / "numeric_checks.csv").open(encoding="utf-8", newline="") as file:
    ROWS = {row["id"]: row for row in csv.DictReader(file)}

PER_IN = 0.254
"""Times a count per 10 cm gives the count per inch."""
IN2_CM2 = 2.54**2
YD_M = 0.9144


def gauge_per_in(text: str) -> float:
    return read_gauge(text).stitches_per_10cm * PER_IN


def rows_per_in(text: str) -> float:
    rows = read_gauge(text).rows_per_10cm
    assert rows is not None
    return rows * PER_IN


def whole_balls(need: str, ball: str, reserve: str = "0 %") -> int:
    """Balls to buy, rounded up in exact numbers: floats may cost a ball more where a division is even."""
    wanted = read_quantity(need, "length").in_base * (1 + Fraction(str(read_share(reserve))))
    return math.ceil(wanted / read_quantity(ball, "length").in_base)


ANSWERS: dict[str, Callable[[], float | tuple[float, float]]] = {
    "N001": lambda: read_yarn_length_m("1 yd"),
    "N002": lambda: read_length_cm("1 in"),
    "N003": lambda: read_mass_g("1 oz"),
    "N004": lambda: read_mass_g("1 lb"),
    "N005": lambda: read_yarn_length_m("1 m") / read_yarn_length_m("1 yd"),
    "N006": lambda: read_mass_g("1¾ oz"),
    "N007": lambda: read_mass_g("3½ oz"),
    "N008": lambda: read_yarn_length_m("437 yd"),
    "N009": lambda: read_gauge("20 sts = 4 in").stitches_per_10cm,
    "N010": lambda: read_mass_g("3/4 lb"),
    "N011": lambda: gauge_per_in("11 sts = 2 in"),
    "N012": lambda: read_gauge("11 sts = 2 in").stitches_per_10cm,
    "N013": lambda: gauge_per_in("50 sts = 11 in"),
    "N014": lambda: (gauge_per_in("18 sts = 4 in"), rows_per_in("18 sts x 24 rows = 4 in")),
    "N015": lambda: rows_per_in("20 sts = 4 in, 25 ridges = 6 in"),
    "N045": lambda: length_of_mass_m(95, read_grist_tex("1750 m / 500 g")),
    "N046": lambda: length_of_mass_m(78, read_grist_tex("400 m / 100 g")),
    "N047": lambda: length_of_mass_m(read_mass_g("21 oz"), read_grist_tex("1000 yd/lb")) / YD_M,
    "N048": lambda: whole_balls("1312.5 yd", "186 yd"),
    "N049": lambda: whole_balls("1175 m", "120 m"),
    "N050": lambda: whole_balls("1175 m", "120 m", "10 %"),
    "N059": lambda: read_mass_g("10 oz") / (read_length_cm("11 in") * read_length_cm("68 in")) * IN2_CM2,
    "N068": lambda: read_grist_tex("200 tex x 2"),
    "N069": lambda: count_from_tex(read_grist_tex("420 m / 100 g") + read_grist_tex("210 m / 25 g"), "m/100g"),
    "N073": lambda: length_of_mass_m(1000, read_grist_tex("1000 yd/lb")),
    "N074": lambda: read_grist_tex("400 m / 100 g"),
    "N075": lambda: count_from_tex(tex_from_put_up(400, 100), "Nm"),
    "N076": lambda: count_from_tex(tex_from_put_up(400, 100), "yd/lb"),
    "N077": lambda: read_grist_tex("Nm 30/2"),
    "N078": lambda: read_grist_tex("NeK 2/24"),
    "N079": lambda: tex_from_count(1, "NeC"),
    "N080": lambda: tex_from_count(1, "NeK"),
    "N081": lambda: tex_from_count(1, "YSW"),
    "N082": lambda: count_from_tex(tex_from_put_up(80 * YD_M, read_mass_g("1 lb") * 50 / 7000), "NeK"),
    "N083": lambda: count_from_tex(250, "den"),
    "N084": lambda: read_length_cm("1 in") / read_length_cm("2.0 mm"),
}


@pytest.mark.parametrize("number", ANSWERS)
def test_published_value(number: str) -> None:
    row, answer = ROWS[number], ANSWERS[number]()
    expected = [float(part) for part in row["expected"].split("|")]
    found = answer if isinstance(answer, tuple) else (answer,)
    assert found == pytest.approx(expected, rel=0, abs=float(row["tolerance"]) or 1e-9)


# The reference's table "Balls from metres": rows where binary floats buy one ball too many.
@pytest.mark.parametrize(
    ("need", "ball", "margin", "balls"),
    [
        ("850 m", "85 m", "10 %", 11),
        ("200 m", "110 m", "10 %", 2),
        ("1500 m", "50 m", "10 %", 33),
        ("3000 m", "400 m", "7.5 %", 9),
        ("1200 m", "200 m", "0 %", 6),
    ],
)
def test_balls_are_counted_exactly(need: str, ball: str, margin: str, balls: int) -> None:
    assert whole_balls(need, ball, margin) == balls


def test_rows_left_to_other_rooms_are_only_those_named_above() -> None:
    left = {row["topic"] for number, row in ROWS.items() if number not in ANSWERS}
    assert left == {"gauge_to_width", "gauge_to_count", "gauge_to_rows", "gauge_error", "resize_by_gauge"}
