"""Working a pattern at one's own gauge, by the functions that offer both ways out.

Widths and girths are checked in `test_numeric_garment.py`; here are the counts that become other counts
(resize_by_gauge, N037, N038, N043, N044), whole counts, and the arithmetic of our notes on gauge: 100 cm planned at
20 stitches come to 95.2 cm at 21 and to 105.3 cm at 19 (derived there; a retailer tells the same 5 %).
"""

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

from loopwright.fabric import Gauge, Swatch
from loopwright.fit.sizes import SizeChoice
from loopwright.fit.ways_out import Repeat, count_for_repeat, stitches_for_width, ways_out
from loopwright.pattern import PatternFacts
from loopwright.units import read_gauge, read_length_cm

with (Path(__file__).parent / "numeric_checks.csv").open(encoding="utf-8", newline="") as file:
    ROWS = {row["id"]: row for row in csv.DictReader(file)}


def gauge(text: str) -> Gauge:
    return Gauge(stitches_per_10cm=read_gauge(text).stitches_per_10cm)


def in_own(stitches: float, pattern: str, own: str) -> float:
    return gauge(own).stitches_for(stitches, of=gauge(pattern))


ANSWERS: dict[str, Callable[[], float]] = {
    "N037": lambda: in_own(100, "3.5 st/in", "4 st/in"),
    "N038": lambda: in_own(114, "30 sts = 4 in", "19 sts = 4 in"),
    "N043": lambda: in_own(36, "6 sts = 4 in", "7 sts = 2 in"),
    "N044": lambda: in_own(2, "1.5 st/in", "3.5 st/in"),
}


@pytest.mark.parametrize("name", ANSWERS)
def test_a_count_at_another_gauge(name: str) -> None:
    row = ROWS[name]
    assert ANSWERS[name]() == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]) or 1e-9)


@pytest.mark.parametrize(("own", "comes_to_cm"), [("21 sts = 10 cm", 95.2), ("19 sts = 10 cm", 105.3)])
def test_one_stitch_off_is_five_percent_of_the_width(own: str, comes_to_cm: float) -> None:
    facts = {"key": "p", "name": "P", "construction": "drop shoulder", "gauge": "20 sts = 10 cm", "sizes": "M"}
    pattern = PatternFacts.model_validate(facts | {"finished": {"bust_girth": "100 cm"}})
    swatch = Swatch.model_validate({"key": "s", "yarns": ["dk"], "after": own})
    found = ways_out(pattern, SizeChoice(low=0, high=0, name="M"), swatch)
    assert found.as_it_is_cm == pytest.approx(comes_to_cm, abs=0.07)


def test_a_width_becomes_a_whole_count() -> None:
    """62 cm at 28 to 10 cm are 173.6, so 174 (a design blog of 2007, read); 44 + 1½ in at 7 to the inch 318.5, so 319
    (a magazine article on waist shaping, read)."""
    assert stitches_for_width(62, gauge("28 sts = 10 cm")) == 174
    assert stitches_for_width(read_length_cm("45 1/2 in"), gauge("7 st/in")) == 319


def test_a_ribbed_hem_fits_its_repeat() -> None:
    """189 for k2 p2 becomes 188, a multiple of 4: a reading of the percentage system, read."""
    assert count_for_repeat(189, Repeat(multiple=4)) == 188
