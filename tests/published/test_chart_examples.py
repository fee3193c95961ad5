"""Floats, catches, repeats, proportions and yarn of charts: worked examples with their source and status in each row.

They were worked by another program beside the text of our study; what is common practice in them says so there.
"""

import csv
import json
from pathlib import Path

import numpy as np
import pytest

from loopwright.chart import (
    Chart,
    ChartRole,
    catch_cells,
    find_floats,
    fit_flat,
    fit_round,
    long_floats,
    metres_by_role,
    mirror_axes,
)
from loopwright.chart.quantise import dithered, nearest, two_in_a_row
from loopwright.chart.sampling import area_means, proportion_error, rows_for
from loopwright.colour import delta_e_cie76, lab_from_srgb, read_hexes, srgb_from_linear, write_hex
from loopwright.fabric import Gauge

HERE = Path(__file__).parent
EXAMPLES = json.loads((HERE / "chart_examples.json").read_text(encoding="utf-8"))
with (HERE / "chart_counts.csv").open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file))


def rows(letter: str) -> list[tuple[list[float], list[float]]]:
    """Inputs and answers of the rows whose id begins so."""
    found = [row for row in ROWS if row["id"].startswith(letter)]
    return [([float(n) for n in row["inputs"].split()], [float(n) for n in row["answer"].split()]) for row in found]


def chart_of(lines: list[str], *, in_the_round: bool) -> Chart:
    """A chart from letters, its first line the lowest row."""
    names = sorted(set("".join(lines)), reverse=lines[0][0] != "A")
    cells = np.array([[names.index(letter) for letter in line] for line in lines], dtype=np.uint8)
    return Chart(cells, np.zeros_like(cells), tuple(ChartRole(name.lower()) for name in names), in_the_round)


MOTIF = chart_of(EXAMPLES["motif"]["rows_bottom_up_left_to_right"], in_the_round=True)


@pytest.mark.parametrize("example", EXAMPLES["floats"], ids=lambda one: f"{one['row']} {one['round']}")
def test_floats(example: dict[str, object]) -> None:
    chart = chart_of([str(example["row"])], in_the_round=bool(example["round"]))
    found = find_floats(chart)
    names = sorted(set(str(example["row"])), reverse=str(example["row"])[0] != "A")
    told = [
        [names[role], after, length]
        for role, after, length in zip(found.role, found.after, found.stitches, strict=True)
    ]
    assert sorted(told) == sorted(example["floats"])  # type: ignore[call-overload]
    assert found.longest == example["max"]


@pytest.mark.parametrize("example", EXAMPLES["catches"], ids=lambda one: f"{one['run']} {one['max']}")
def test_catches(example: dict[str, object]) -> None:
    assert list(catch_cells(int(str(example["run"])), int(str(example["max"])))) == example["at"]


def test_the_motif_has_its_cells_and_floats() -> None:
    found = find_floats(MOTIF)
    longest = [int(found.stitches[found.row == row].max()) for row in range(12)]
    assert longest == EXAMPLES["motif"]["max_float_per_row_in_round"]
    counts = {one.role: (one.stitches, one.float_stitches) for one in metres_by_role(MOTIF, 17.0, 4.5)}
    assert counts == {"m": (110, 34), "c": (34, 110)}
    assert long_floats(MOTIF, 5, 4.5) == ()
    assert 6.0 in mirror_axes(MOTIF)


def test_a_row_of_twelve_with_one_long_float() -> None:
    """Example 7: MMMMMMMCCMMM in the round: C floats 10, caught once, at its fifth stitch in working order."""
    (long,) = long_floats(chart_of(["MMMMMMMCCMMM"], in_the_round=True), 5, 4.5)
    assert (long.role, long.stitches, long.columns.index(long.catch_columns[0]) + 1) == ("c", 10, 5)


@pytest.mark.parametrize(("inputs", "answer"), rows("P"))
def test_cells_have_the_stitch_s_proportion(inputs: list[float], answer: list[float]) -> None:
    assert inputs[0] / inputs[1] == pytest.approx(answer[0], abs=5e-5)


@pytest.mark.parametrize(("inputs", "answer"), rows("R"))
def test_repeats_in_a_round(inputs: list[float], answer: list[float]) -> None:
    fit = fit_round(int(inputs[0]), int(inputs[1]))
    repeats, fewer, more, less_mm, more_mm = answer
    assert fit.repeats == pytest.approx(repeats, abs=5e-5)
    assert (fit.fewer, fit.more) == (fewer, more)
    off_mm = [(count - fit.count) * 100 / 22 for count in (fit.fewer, fit.more)]
    assert off_mm == pytest.approx([less_mm, more_mm], abs=0.06)


def test_front_and_back_share_the_motif_only_if_it_divides_half_the_round() -> None:
    """208 in repeats of 16 do not, 200 in repeats of 20 do (definition)."""
    assert (fit_round(208, 16).halves_match, fit_round(200, 20).halves_match) == (False, True)


@pytest.mark.parametrize(("inputs", "answer"), rows("C"))
def test_a_flat_repeat_is_centred(inputs: list[float], answer: list[float]) -> None:
    count, width, axis = (int(number) for number in inputs)
    fit = fit_flat(count, width, axis)
    assert [fit.columns[0], fit.columns[-1]] == answer
    assert fit.axis_off == (0 if count % 2 else 0.5)


@pytest.mark.parametrize(("inputs", "answer"), rows("S"))
def test_a_picture_s_rows(inputs: list[float], answer: list[float]) -> None:
    width, height, stitches = (int(number) for number in inputs[:3])
    gauge = Gauge(stitches_per_10cm=inputs[3], rows_per_10cm=inputs[4])
    found = rows_for(stitches, width, height, gauge)
    assert found == answer[0]
    assert 100 * proportion_error(stitches, found, width, height, gauge) == pytest.approx(answer[1], abs=0.006)


@pytest.mark.parametrize(("inputs", "answer"), rows("Y"))
def test_yarn_of_the_motif(inputs: list[float], answer: list[float]) -> None:
    width_mm = 100 / 22
    found = metres_by_role(MOTIF, inputs[0] * width_mm, width_mm, slack=inputs[1], across=10)
    by_role = {one.role: one.metres for one in found}
    assert [by_role["m"], by_role["c"]] == pytest.approx(answer, abs=5e-4)


def test_cells_are_means_of_light() -> None:
    """Example 9: half black, half white is #bcbcbc; means of bytes would give #808080 (computed)."""
    pixels = np.zeros((8, 8, 3), dtype=np.uint8)
    pixels[:, 4:] = 255
    means = area_means(pixels, 3, rows_for(3, 8, 8, Gauge(stitches_per_10cm=22, rows_per_10cm=30)))
    assert [[write_hex(cell) for cell in row] for row in srgb_from_linear(means)] == [
        ["#000000", "#bcbcbc", "#ffffff"]
    ] * 4


def test_a_row_brought_to_four_yarns_and_to_two_of_them() -> None:
    """Example 10: free 474.09 ΔE*ab² in three colours; the best pair is cream and teal, 1726.41 (computed)."""
    palette = lab_from_srgb(read_hexes(["#efe6d2", "#c9982e", "#2f6f73", "#22304f"]))
    row = ["#f0e8d8", "#d8c090", "#407880", "#203050", "#efe6d2", "#2f6f73"]
    lab = lab_from_srgb(read_hexes(row))[None]
    for cells, wanted, cost in (
        (nearest(lab, palette), [0, 0, 2, 3, 0, 2], 474.09),
        (two_in_a_row(lab, palette), [0, 0, 2, 2, 0, 2], 1726.41),
    ):
        assert cells.tolist() == [wanted]
        assert (delta_e_cie76(lab, palette[cells]) ** 2).sum() == pytest.approx(cost, abs=0.005)


def test_dithering_of_flat_greys() -> None:
    """Linear 0.5 gives strict checks, 59 changes in a row of 60; linear 0.25 gives 24.8 % light cells (computed)."""
    palette = np.array([[0.0] * 3, [1.0] * 3])
    half = dithered(np.full((60, 60, 3), 0.5), palette)
    assert (np.abs(np.diff(half.astype(int), axis=1)).sum(axis=1) == 59).all()
    quarter = dithered(np.full((60, 60, 3), 0.25), palette)
    assert 100 * quarter.mean() == pytest.approx(24.8, abs=0.05)
    assert (quarter.sum(axis=1) == 0).any()
