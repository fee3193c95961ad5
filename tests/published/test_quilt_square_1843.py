"""A square in two colours of 1843, as a chart: its printed counts come out, and its white adds up.

Source: Miss Lambert, My Knitting Book, John Murray, London 1843, "A Quilt, or Couvre-Pied, in squares"; read as plain
text; public domain. The table holds what each row works; stitches after rows 6 and 18 are printed there.
"""

import csv
import re
from pathlib import Path

import numpy as np

from loopwright.chart import Chart, ChartRole, areas_per_role, count_faults, row_counts
from loopwright.chart.symbols import BY_KEY

with (Path(__file__).parent / "quilt_square_1843.csv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))
WIDEST = 19


def boxes(row: dict[str, str], before: int) -> list[tuple[str, int]]:
    """The stitches of a row in working order, each with its role: 0 green, 1 white."""
    made: list[tuple[str, int]] = []
    for step in row["worked"].split("; "):
        if step == "yo":
            made.append(("yarn-over", 0))
        elif step == "sl 1":
            made.append(("slip-knitwise", 0))
        elif step == "k2tog":
            made.append(("k2tog", 0))
        elif step == "knit to the end in green":
            taken = sum(2 if key == "k2tog" else key != "yarn-over" for key, _ in made)
            made += [("knit", 0)] * (before - taken)
        else:
            found = re.fullmatch(r"([kp])(\d+) (green|white)", step)
            assert found is not None, step
            made += [("knit" if found[1] == "k" else "purl", int(found[3] == "white"))] * int(found[2])
    return made


def square() -> Chart:
    """The rows in the middle of a grid, the rest of it without stitches. Both sides of row 1 are as they are worked."""
    stitches = np.full((len(ROWS), WIDEST), BY_KEY["no-stitch"], dtype=np.uint8)
    roles = np.zeros_like(stitches)
    before = 1
    for at, row in enumerate(ROWS):
        worked = boxes(row, before)
        line = worked[::-1] if at % 2 == 0 else worked
        first = (WIDEST - len(line)) // 2
        for place, (key, role) in enumerate(line, first):
            stitches[at, place], roles[at, place] = BY_KEY[key], role
        before = int(row["after"])
    return Chart(roles, stitches, (ChartRole("green"), ChartRole("white")))


def test_every_row_works_what_the_row_below_leaves() -> None:
    assert count_faults(square()) == ()
    taken, made = row_counts(square())
    assert taken[0] == 1
    assert made.tolist() == [int(row["after"]) for row in ROWS]


def test_the_counts_that_are_printed_come_out() -> None:
    _, made = row_counts(square())
    printed = {int(row["row"]): int(row["printed"]) for row in ROWS if row["printed"]}
    assert printed == {6: 7, 18: 19}
    assert {number: int(made[number - 1]) for number in printed} == printed


def test_its_white_is_eighty_four_stitches_in_six_bands() -> None:
    chart = square()
    assert int(((chart.cells == 1) & chart.worked).sum()) == 84 == 2 * 2 * (3 + 7 + 11)
    assert areas_per_role(chart)["white"] == 6


def test_a_row_changed_by_one_stitch_would_be_seen() -> None:
    chart = square()
    stitches = chart.stitches.copy()
    stitches[17, np.flatnonzero(stitches[17] == BY_KEY["yarn-over"])] = BY_KEY["knit"]
    assert [fault.number for fault in count_faults(Chart(chart.cells, stitches, chart.roles))] == [18]
