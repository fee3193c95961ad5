"""Weeks of a season: bars on one line of time, and the months under them."""

import datetime as dt
from xml.etree import ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.pictures import TimeLine, month_bar, time_bar
from tests.pictures.drawings import HOSTILE, colours_of, drawn, is_grey, number_of, rects, spoken

LINE = TimeLine(dt.date(2027, 3, 1), dt.date(2027, 6, 9))  # 100 days
BAR_DAYS = (dt.date(2027, 3, 11), dt.date(2027, 3, 31), dt.date(2027, 4, 10), dt.date(2027, 4, 30))


def day(number: int) -> dt.date:
    return LINE.first + dt.timedelta(days=number)


def spans(root: ET.Element) -> list[tuple[float, float]]:
    """Each span's first and last day, counted from the line's first."""
    _, _, width, _ = (float(side) for side in root.attrib["viewBox"].split())
    days = (LINE.last - LINE.first).days
    edges = [(number_of(rect, "x"), number_of(rect, "x") + number_of(rect, "width")) for rect in rects(root)]
    return [(first / width * days, last / width * days) for first, last in edges]


def due_marks(root: ET.Element) -> list[float]:
    return [number_of(line, "x1") for line in root.findall("{*}line") if line.get("stroke-width") == "3"]


def month_marks(root: ET.Element) -> list[float]:
    return [number_of(line, "x1") for line in root.findall("{*}line") if line.get("stroke-width") == "1"]


def names(root: ET.Element) -> list[str | None]:
    return [text.text for text in root.findall("{*}text")]


def places(root: ET.Element) -> list[float]:
    return [float(text.attrib["x"].rstrip("%")) for text in root.findall("{*}text")]


def test_spans_follow_each_other_on_the_shared_line() -> None:
    # Worked by hand: 11 March is day 10, 31 March day 30, 10 April day 40, 30 April day 60.
    root = drawn(time_bar(LINE, *BAR_DAYS, None, "Shawl"))
    assert spans(root) == [pytest.approx((10, 30)), pytest.approx((30, 40)), pytest.approx((40, 60))]


def test_spans_grow_lighter_as_dates_grow_surer() -> None:
    fills = [rect.attrib["fill"] for rect in rects(drawn(time_bar(LINE, *BAR_DAYS, None, "Shawl")))]
    assert fills == sorted(fills)
    assert len(set(fills)) == 3


def test_a_due_date_is_a_mark() -> None:
    root = drawn(time_bar(LINE, *BAR_DAYS, day(50), "Shawl"))
    assert due_marks(root) == [pytest.approx(500)]


def test_without_a_due_date_there_is_no_mark() -> None:
    assert due_marks(drawn(time_bar(LINE, *BAR_DAYS, None, "Shawl"))) == []


def test_months_are_ruled_where_their_names_stand() -> None:
    marks = month_marks(drawn(time_bar(LINE, *BAR_DAYS, None, "Shawl")))
    assert marks == pytest.approx([place * 10 for place in places(drawn(month_bar(LINE)))])


def test_every_month_that_begins_on_the_line_is_named() -> None:
    # 1 March is the first day itself; April begins on day 31, May on day 61, June on day 92.
    assert names(drawn(month_bar(LINE))) == ["Mar", "Apr", "May", "Jun"]
    assert places(drawn(month_bar(LINE))) == pytest.approx([0, 31, 61, 92])


def test_a_month_under_way_is_not_named() -> None:
    assert names(drawn(month_bar(TimeLine(dt.date(2027, 3, 2), LINE.last))))[0] == "Apr"


def test_a_name_that_would_be_cut_off_is_left_out() -> None:
    assert names(drawn(month_bar(TimeLine(dt.date(2027, 3, 1), dt.date(2027, 6, 3)))))[-1] == "May"


def test_names_keep_apart_on_a_long_line() -> None:
    root = drawn(month_bar(TimeLine(dt.date(2027, 1, 1), dt.date(2030, 1, 1))))
    assert names(root)[:3] == ["Jan", "May", "Sep"]
    assert min(b - a for a, b in zip(places(root), places(root)[1:], strict=False)) > 8


def test_the_names_of_months_are_not_read_aloud() -> None:
    assert drawn(month_bar(LINE)).get("aria-hidden") == "true"


def test_a_line_spans_all_days_and_a_little_beyond() -> None:
    line = TimeLine.over([day(40), day(0), day(80)])
    assert line.first == day(0)
    assert day(80) < line.last <= day(90)


def test_a_line_over_no_days_is_refused() -> None:
    with pytest.raises(ValueError, match="empty"):
        TimeLine.over([])


def test_a_line_of_one_day_can_be_drawn() -> None:
    line = TimeLine.over([day(0)])
    assert drawn(time_bar(line, day(0), day(0), day(0), day(0), day(0), "Shawl")) is not None


@given(first=st.dates(dt.date(2000, 1, 1), dt.date(2100, 1, 1)), length=st.integers(0, 4000), asked=st.dates())
def test_a_day_lies_on_the_line(first: dt.date, length: int, asked: dt.date) -> None:
    line = TimeLine(first, first + dt.timedelta(days=length))
    assert 0 <= line.x(asked) <= 1000


@given(first=st.dates(dt.date(2000, 1, 1), dt.date(2100, 1, 1)), length=st.integers(1, 2000))
def test_months_are_all_first_days_in_order(first: dt.date, length: int) -> None:
    line = TimeLine(first, first + dt.timedelta(days=length))
    days = (first + dt.timedelta(days=number) for number in range(length + 1))
    assert line.months() == [one for one in days if one.day == 1]


def test_bars_are_grey() -> None:
    used = colours_of(time_bar(LINE, *BAR_DAYS, day(50), "Shawl")) | colours_of(month_bar(LINE))
    assert all(is_grey(colour) for colour in used)


def test_what_it_shows_is_read_aloud_and_escaped() -> None:
    svg = time_bar(LINE, *BAR_DAYS, None, HOSTILE)
    assert spoken(drawn(svg)) == (HOSTILE, HOSTILE)
    assert "<script" not in svg
