"""A chart drawn: cells in their proportion, numbers on the side where a row begins, symbols, repeat, key."""

import numpy as np
import pytest
from hypothesis import given

from loopwright.chart import SYMBOLS, Chart, ChartRole, RepeatBox
from loopwright.chart.symbols import BY_KEY
from loopwright.pictures.chart_symbols import SHAPES, placed
from loopwright.pictures.chart_view import CELL_WIDTH, ChartLook, chart_drawing, inks, shaded
from tests.chart.samples import any_charts, lettered, stitched
from tests.pictures.drawings import HOSTILE, colours_of, drawn, is_grey, spoken

SPACE = "{http://www.w3.org/2000/svg}"
PLAIN = ChartLook(numbers=False, key=False, carry=False)


def numbers(chart: Chart) -> list[tuple[str, str]]:
    """Each row number with the side it stands at."""
    root = drawn(chart_drawing(chart, "a chart", ChartLook(key=False)))
    texts = [text for text in root.iter(f"{SPACE}text") if text.get("text-anchor")]
    return [(str(text.text), "right" if text.get("text-anchor") == "start" else "left") for text in texts]


@given(any_charts(most_side=5))
def test_every_chart_is_drawn_and_read_aloud(chart: Chart) -> None:
    assert spoken(drawn(chart_drawing(chart, HOSTILE))) == (HOSTILE, HOSTILE)


@pytest.mark.parametrize(("stitches", "rows"), [(22, 30), (20, 28), (32, 40)])
def test_cells_have_the_stitch_s_proportion(stitches: int, rows: int) -> None:
    """Cell height over width is stitches over rows (definition): 15 by 11 for 22 x 30."""
    root = drawn(chart_drawing(lettered("A"), "one", ChartLook(ratio=stitches / rows, numbers=False, key=False)))
    width, height = (float(size) for size in root.attrib["viewBox"].split()[2:])
    assert (height - 4) / (width - 4) == pytest.approx(stitches / rows, abs=1e-3)
    assert width - 4 == CELL_WIDTH


def test_flat_rows_are_numbered_where_they_begin() -> None:
    """Common practice: odd rows at the right, even ones at the left; in the round all at the right."""
    flat = lettered("A", "A", "A")
    assert numbers(flat) == [("1", "right"), ("2", "left"), ("3", "right")]
    assert {side for _, side in numbers(lettered("A", "A", in_the_round=True))} == {"right"}
    wrong = Chart(flat.cells, flat.stitches, flat.roles, first_row_right_side=False)
    assert numbers(wrong)[0] == ("1", "left")


def test_large_charts_are_numbered_by_tens() -> None:
    assert [number for number, _ in numbers(lettered(*["A" * 9] * 50))] == ["1", "10", "20", "30", "40", "50"]


def test_stitches_are_numbered_from_the_right() -> None:
    root = drawn(chart_drawing(lettered("ABCDE"), "five", ChartLook(key=False)))
    found = [
        (float(text.attrib["x"]), str(text.text)) for text in root.iter(f"{SPACE}text") if not text.get("text-anchor")
    ]
    assert [number for _, number in sorted(found)] == ["5", "4", "3", "2", "1"]


def test_the_repeat_is_framed() -> None:
    with_box = chart_drawing(lettered("XABY", repeat=RepeatBox(1, 0, 2, 1)), "x", PLAIN)
    (frame, _) = drawn(with_box).iter(f"{SPACE}rect")
    assert (float(frame.attrib["x"]), float(frame.attrib["width"])) == (CELL_WIDTH, 2 * CELL_WIDTH)


def test_symbols_and_what_they_mean_stand_in_the_key() -> None:
    svg = chart_drawing(stitched(["k2tog", "yarn-over", "cross-2-over-1-left", *["cross-2-over-1-left"] * 2]), "lace")
    assert "knit two together: k2tog; wrong side p2tog" in svg
    assert "yarn over" in svg
    assert "wrong side not usually worked" not in svg
    assert "purl:" not in svg


@pytest.mark.parametrize("at", range(len(SYMBOLS)), ids=[one.key for one in SYMBOLS])
def test_a_shape_keeps_to_its_boxes(at: int) -> None:
    shape, boxes = SHAPES[at], SYMBOLS[at].boxes
    values = [
        float(n) for n in placed(shape.lines + shape.dots, 0, 0, 1, 1).translate(str.maketrans("MLCZ", "    ")).split()
    ]
    assert all(-0.01 <= x <= boxes + 0.01 for x in values[::2])
    assert all(-0.01 <= y <= 1.01 for y in values[1::2])
    assert values or SYMBOLS[at].key in {"knit", "wrap"}


def test_all_but_knit_look_different() -> None:
    shapes = [
        (shape.lines, shape.dots) for shape, one in zip(SHAPES, SYMBOLS, strict=True) if one.key not in {"knit", "wrap"}
    ]
    assert len(set(shapes)) == len(shapes)


def test_a_mirrored_symbol_is_the_shape_mirrored() -> None:
    right, left = (SHAPES[BY_KEY[f"cross-2-over-1-{side}"]].lines for side in ("right", "left"))
    points = [
        {tuple(round(v, 2) for v in pair) for pair in pairs_of(path, mirror)}
        for path, mirror in ((right, True), (left, False))
    ]
    assert points[0] == points[1]


def pairs_of(path: str, mirror: bool) -> list[tuple[float, float]]:
    values = [float(n) for n in path.translate(str.maketrans("MLCZ", "    ")).split()]
    return [(3 - x if mirror else x, y) for x, y in zip(values[::2], values[1::2], strict=True)]


def test_symbols_are_light_on_dark_yarn() -> None:
    chart = lettered("AB")
    roles = (ChartRole("a", "#101418"), ChartRole("b", "#f0ead8"))
    assert inks(Chart(chart.cells, chart.stitches, roles)) == ["#fbfbfa", "#1f2021"]


def test_yarns_are_the_only_colour() -> None:
    chart = lettered("ABC")
    assert all(is_grey(colour) for colour in colours_of(chart_drawing(chart, "x")))
    roles = (ChartRole("a", "#a2502f"), *chart.roles[1:])
    coloured = colours_of(chart_drawing(Chart(chart.cells, chart.stitches, roles), "x"))
    assert {colour for colour in coloured if not is_grey(colour)} == {"#a2502f"}


def test_cells_are_drawn_once_and_wholly() -> None:
    """The areas of a role's shape add up to its cells."""
    chart = shaded(lettered("AABB", "ABAB"))
    root = drawn(chart_drawing(chart, "x", PLAIN))
    fills = {path.attrib["fill"]: path.attrib["d"] for path in root.iter(f"{SPACE}path") if path.get("fill") != "none"}
    for at, role in enumerate(chart.roles):
        across = [float(part.split("h")[1].split("v")[0]) for part in fills[str(role.shade)].split("z")[:-1]]
        assert sum(across) == CELL_WIDTH * int(np.count_nonzero(chart.cells == at))
