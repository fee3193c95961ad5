"""Written out and read again: CSV, PNG, SVG, the season file; what cannot be read is named by row and stitch."""

import io

import numpy as np
import pytest
from hypothesis import given
from PIL import Image
from pydantic import ValidationError

from loopwright.chart import Chart, ChartRole, NamedChart, chart_csv, chart_fields, read_chart_csv, read_chart_svg
from loopwright.chart.png_form import chart_png, read_chart_png
from loopwright.pictures.chart_view import chart_drawing
from loopwright.units import BadInput
from tests.chart.samples import any_charts, lettered

HEAD = "chart,1\nrole,main\nrole,contrast,#23424f\n"


@given(any_charts())
def test_csv_gives_the_very_same_chart(chart: Chart) -> None:
    assert read_chart_csv(chart_csv(chart)) == chart


@given(any_charts(most_side=6))
def test_a_drawing_carries_the_very_same_chart(chart: Chart) -> None:
    assert read_chart_svg(chart_drawing(chart, "a <chart> & more")) == chart


@given(any_charts())
def test_a_season_file_gives_the_very_same_chart(chart: Chart) -> None:
    fields = {name: value for name, value in chart_fields(chart).items() if value is not None}
    named = NamedChart.model_validate({"key": "one", "name": "One", **fields})
    assert named.chart == chart


@given(any_charts(stitches=False))
def test_a_picture_of_one_point_a_cell_gives_the_cells(chart: Chart) -> None:
    roles = tuple(ChartRole(role.name, f"#0000{at:02x}") for at, role in enumerate(chart.roles))
    shown = Chart(chart.cells, chart.stitches, roles)
    assert np.array_equal(read_chart_png(chart_png(shown), roles).cells, chart.cells)


def test_an_enlarged_picture_keeps_the_stitch_s_proportion() -> None:
    chart = Chart(np.zeros((3, 4), np.uint8), np.zeros((3, 4), np.uint8), (ChartRole("main", "#102030"),))
    with Image.open(io.BytesIO(chart_png(chart, scale=15, ratio=22 / 30))) as picture:
        assert picture.size == (4 * 15, 3 * 11)  # 22 x 30: cells of 15 by 11, our study of charts (computed)


def test_colours_of_a_picture_become_roles_the_most_frequent_first() -> None:
    pixels = np.array([[[9, 9, 9], [200, 0, 0], [200, 0, 0]]], dtype=np.uint8)
    file = io.BytesIO()
    Image.fromarray(pixels).save(file, "PNG")
    chart = read_chart_png(file.getvalue())
    assert chart.roles == (ChartRole("main", "#c80000"), ChartRole("contrast-1", "#090909"))
    assert chart.cells.tolist() == [[1, 0, 0]]
    with pytest.raises(BadInput, match=r"row 1, stitch 3: found .#090909.*#c80000"):
        read_chart_png(file.getvalue(), (ChartRole("main", "#c80000"),))


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "line 1: found nothing"),
        ("chart,9\n", "wanted chart,1"),
        (HEAD + "row,1,main,main\nrow,1,main\n", r"line 4, column 2: found .1.; wanted the number 2"),
        (HEAD + "row,2,main,main,main\nrow,1,main,main\n", r"row 2 \(line 4\): found .3 stitches.; wanted 2"),
        (HEAD + "row,2,main,main\nrow,1,main,maine\n", r"row 1, stitch 1 \(line 5\): found .maine.; wanted a role"),
        (HEAD + "row,1,main k9tog,main\n", r"row 1, stitch 2 \(line 4\): found .the stitch 'k9tog'"),
        (HEAD + "colour,main\n", "line 4, column 1: found .colour"),
        ("chart,1\nrole,Main\n", "line 2, column 2"),
        ("chart,1\nrole,main,red\n", "line 2, column 3"),
        ("chart,1\nworked,sideways\n", "line 2: found .sideways.; wanted flat or in the round"),
        (HEAD + "repeat,3,9,1,1\nrow,1,main,main\n", "line 4: repeat: found .a repeat that lies outside"),
        ("A,B\nA\n", "line 1: found .2 cells.; wanted 1"),
        ("A,B\nA,\n", "line 2, column 2: found nothing"),
    ],
)
def test_what_cannot_be_read_is_named_by_its_place(text: str, message: str) -> None:
    with pytest.raises(BadInput, match=message):
        read_chart_csv(text)


def test_a_bare_grid_of_letters_or_colours_is_read() -> None:
    assert read_chart_csv("A,B\nB,B\n").cells.tolist() == [[0, 0], [1, 0]]
    shaded = read_chart_csv("#FFFFFF,#000000\n")
    assert [role.shade for role in shaded.roles] == ["#ffffff", "#000000"]
    assert [role.name for role in read_chart_csv("x!,é,2\n").roles] == ["main", "contrast-1", "contrast-2"]


def test_a_drawing_from_elsewhere_is_refused() -> None:
    with pytest.raises(BadInput, match="carries no chart"):
        read_chart_svg("<svg/>")


def named(**fields: object) -> NamedChart:
    usual: dict[str, object] = {
        "key": "one",
        "name": "One",
        "rows": ["ab", "aa"],
        "roles": {"a": "main", "b": "contrast"},
    }
    return NamedChart.model_validate(usual | fields)


@pytest.mark.parametrize(
    ("fields", "message"),
    [
        ({"rows": ["ab", "aaa"]}, "3 stitches in row 1"),
        ({"rows": ["ax", "aa"]}, "'x' at stitch 1 of row 2, a mark that no role has"),
        ({"rows": ["aé", "aa"]}, "'é' at stitch 1 of row 2"),
        ({"rows": []}, "no row"),
        ({"stitches": ["..", ".?"]}, r"'\?' at stitch 1 of row 1, a mark that no stitch has"),
        ({"stitches": [".."]}, "2 stitches by 1 rows of stitches"),
        ({"roles": {"a": "main", "b": "main"}}, "'main' twice"),
        ({"shades": {"rust": "#a2502f"}}, "a colour for 'rust'"),
        ({"repeat": {"from_stitch": 2, "to_stitch": 3}}, "stitches 2 to 3, rows 1 to 2"),
        ({"repeat": {"from_stitch": 2, "to_stitch": 1}}, "the smaller number first"),
    ],
)
def test_a_chart_in_a_file_is_checked(fields: dict[str, object], message: str) -> None:
    with pytest.raises(ValidationError, match=message):
        named(**fields)


def test_a_fingerprint_is_another_for_every_change() -> None:
    assert named().fingerprint == named().fingerprint
    assert named().fingerprint != named(rows=["aa", "aa"]).fingerprint
    assert named().fingerprint != named(roles={"b": "contrast", "a": "main"}).fingerprint


def test_marks_stay_and_new_ones_are_free() -> None:
    roles = chart_fields(lettered("ABC"), {"b": "7"})["roles"]
    assert roles == {"a": "a", "7": "b", "c": "c"}
