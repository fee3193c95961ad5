"""Needle numbers against the rows of `needle_sizes.csv` (N204 to N221 of our collection), and one warning.

`us` and `old_uk` are the American and the old British or Canadian number, empty where the charts have none; `status`
says that several charts agree.
"""

import csv
from pathlib import Path

import pytest

from loopwright.fabric import needle_of

with (Path(__file__).parent / "needle_sizes.csv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))


@pytest.mark.parametrize("row", ROWS, ids=[row["id"] for row in ROWS])
def test_numbers_are_those_of_the_charts(row: dict[str, str]) -> None:
    needle = needle_of(float(row["mm"]))
    assert needle is not None
    assert (needle.us, needle.old_uk, needle.status) == (row["us"], row["old_uk"], "cross-read")


def test_numbers_of_1917_are_others() -> None:
    """N222: a pattern of 1917 equates English 8 with American 5; by the modern table it is American 6."""
    modern = next(needle for needle in map(needle_of, [4.0]) if needle is not None and needle.old_uk == "8")
    assert modern.us == "6"
    assert modern.us != "5"
