"""CIEDE2000 against the 34 pairs of Sharma, Wu and Dalal 2005, to the four decimals printed.

Source and status of each row stand in `ciede2000_pairs.csv`. Copies of the table with a 35th row are in circulation;
the paper has 34. Pairs 10 and 14 lie on a jump of the formula.
"""

import csv
from pathlib import Path

import numpy as np
import pytest

from loopwright.colour import delta_e_ciede2000

with (Path(__file__).parent / "ciede2000_pairs.csv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))
PRINTED = 0.5e-4 * 1.001
"""Half of the last printed decimal."""


def colour(row: dict[str, str], which: str) -> list[float]:
    return [float(row[axis + which]) for axis in "Lab"]


def test_there_are_34() -> None:
    assert [int(row["pair"]) for row in ROWS] == list(range(1, 35))


@pytest.mark.parametrize("row", ROWS, ids=[row["pair"] for row in ROWS])
def test_a_pair_either_way_round(row: dict[str, str]) -> None:
    one, other = colour(row, "1"), colour(row, "2")
    assert float(delta_e_ciede2000(one, other)) == pytest.approx(float(row["dE00"]), abs=PRINTED)
    assert float(delta_e_ciede2000(other, one)) == pytest.approx(float(row["dE00"]), abs=PRINTED)


def test_all_pairs_at_once() -> None:
    found = delta_e_ciede2000([colour(row, "1") for row in ROWS], [colour(row, "2") for row in ROWS])
    np.testing.assert_allclose(found, [float(row["dE00"]) for row in ROWS], rtol=0, atol=PRINTED)
