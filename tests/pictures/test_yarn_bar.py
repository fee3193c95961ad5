"""The bar of a yarn: what there is against what is needed."""

from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import norm

from loopwright.pictures import yarn_bar
from loopwright.uncertainty import Estimate, Origin
from tests.pictures.drawings import HOSTILE, colours_of, drawn, is_grey, number_of, rects, spoken

TARN = "#4f7583"


def metres(mean: float, sd: float = 0.0) -> Estimate:
    return Estimate(mean=mean, sd=sd, unit="m", origin=Origin.MEASURED)


def stock_width(root: ET.Element) -> float:
    (stock,) = [rect for rect in rects(root) if rect.get("fill") == TARN]
    assert number_of(stock, "x") == 0
    return number_of(stock, "width")


def frame(root: ET.Element) -> tuple[float, float]:
    """The edges of the frame that holds nine in ten of what the need may turn out to be."""
    (box,) = [rect for rect in rects(root) if rect.get("fill") == "none"]
    return number_of(box, "x"), number_of(box, "x") + number_of(box, "width")


def mark(root: ET.Element) -> float:
    (line,) = root.findall("{*}line")
    assert line.get("x1") == line.get("x2")
    return number_of(line, "x1")


def cuts(root: ET.Element) -> list[float]:
    """Where the stock is parted: thin strips of paper, by their middles."""
    return [number_of(rect, "x") + 1 for rect in rects(root) if rect.get("width") == "2"]


def test_stock_and_need_stand_on_one_scale() -> None:
    root = drawn(yarn_bar(metres(890, 42), metres(680), TARN, "Tarn"))
    assert stock_width(root) / mark(root) == pytest.approx(680 / 890, abs=1e-4)


def test_a_double_stock_is_a_double_bar() -> None:
    short, long = (stock_width(drawn(yarn_bar(metres(900, 40), metres(m), TARN, "Tarn"))) for m in (300, 600))
    assert long == pytest.approx(2 * short, abs=0.02)


def test_the_frame_holds_nine_in_ten_of_the_need() -> None:
    root = drawn(yarn_bar(metres(500, 50), metres(1000), TARN, "Tarn"))
    low, high = (x / stock_width(root) * 1000 for x in frame(root))
    assert (low, high) == pytest.approx(norm.interval(0.9, 500, 50), abs=0.1)


def test_the_mark_stands_in_the_middle_of_the_frame() -> None:
    root = drawn(yarn_bar(metres(783, 39), metres(969), TARN, "Tarn"))
    assert mark(root) == pytest.approx(sum(frame(root)) / 2, abs=0.02)


@given(need=st.floats(0, 5000), doubt=st.floats(0, 0.5), have=st.floats(-50, 5000))
def test_everything_lies_inside_the_drawing(need: float, doubt: float, have: float) -> None:
    root = drawn(yarn_bar(metres(need, need * doubt), metres(have), TARN, "Tarn"))
    _, _, width, height = (float(side) for side in root.attrib["viewBox"].split())
    for rect in rects(root):
        assert number_of(rect, "width") >= 0
        assert number_of(rect, "x") >= 0
        assert number_of(rect, "x") + number_of(rect, "width") <= width + 0.02
        assert number_of(rect, "y") + number_of(rect, "height") <= height
    assert 0 <= mark(root) <= width


def test_lots_are_parted_where_one_ends() -> None:
    root = drawn(yarn_bar(metres(300, 10), metres(400), TARN, "Tarn", [100, 250, 50]))
    assert cuts(root) == pytest.approx([stock_width(root) * share for share in (100 / 400, 350 / 400)], abs=0.02)


@pytest.mark.parametrize("lots", [[], [400.0]])
def test_a_single_lot_is_not_parted(lots: list[float]) -> None:
    assert cuts(drawn(yarn_bar(metres(300, 10), metres(400), TARN, "Tarn", lots))) == []


@pytest.mark.parametrize("have", [0.0, -12.0])
def test_no_stock_is_no_bar(have: float) -> None:
    assert stock_width(drawn(yarn_bar(metres(890, 42), metres(have), TARN, "Tarn"))) == 0


def test_nothing_needed_and_nothing_there_can_be_drawn() -> None:
    root = drawn(yarn_bar(metres(0), metres(0), TARN, "Tarn"))
    assert (mark(root), stock_width(root)) == (0, 0)


def test_only_the_yarn_has_a_colour() -> None:
    others = colours_of(yarn_bar(metres(890, 42), metres(680), TARN, "Tarn", [340, 340])) - {TARN}
    assert others
    assert all(is_grey(colour) for colour in others)


def test_a_yarn_without_a_likeness_is_grey() -> None:
    assert all(is_grey(colour) for colour in colours_of(yarn_bar(metres(890, 42), metres(680), None, "Tarn")))


def test_what_it_shows_is_read_aloud() -> None:
    root = drawn(yarn_bar(metres(890, 42), metres(680), TARN, HOSTILE))
    assert root.get("role") == "img"
    assert spoken(root) == (HOSTILE, HOSTILE)


def test_a_hostile_name_and_colour_add_no_element() -> None:
    svg = yarn_bar(metres(890, 42), metres(680), '"/><script>', HOSTILE)
    assert "<script" not in svg
    assert {element.tag.partition("}")[2] for element in drawn(svg).iter()} == {"svg", "title", "rect", "line"}


def test_equal_figures_are_equal_text() -> None:
    first, second = (yarn_bar(metres(890 / 3, 42), metres(2 * 340), TARN, "Tarn", [340, 340]) for _ in range(2))
    assert first == second
