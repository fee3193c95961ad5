"""Days of knitting: hours before a date, the day after hours, days off."""

import datetime as dt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.calendar import Calendar, DaysOff

TODAY = dt.date(2027, 3, 1)


def off(first: dt.date, last: dt.date) -> DaysOff:
    return DaysOff.model_validate({"from": first, "until": last})


def calendar(*days_off: DaysOff, hours: float = 7) -> Calendar:
    """An hour a day, unless said otherwise."""
    return Calendar(today=TODAY, hours_a_week=hours, hours_a_week_sd=0, days_off=days_off)


def day(number: int) -> dt.date:
    return TODAY + dt.timedelta(days=number)


def test_today_counts_and_the_day_itself_does_not() -> None:
    assert calendar().hours_before(TODAY) == 0
    assert calendar().hours_before(day(10)) == 10


def test_nothing_lies_before_a_date_that_is_past() -> None:
    assert calendar().hours_before(day(-3)) == 0


def test_both_ends_of_days_off_are_off() -> None:
    assert calendar(off(day(2), day(4))).hours_before(day(10)) == 7
    assert calendar(off(day(2), day(2))).hours_before(day(10)) == 9


def test_a_day_that_is_off_twice_is_off_once() -> None:
    assert calendar(off(day(2), day(4)), off(day(3), day(6))).hours_before(day(10)) == 5


def test_days_off_that_are_past_take_nothing() -> None:
    assert calendar(off(day(-9), day(-1))).hours_before(day(10)) == 10


@pytest.mark.parametrize(("hours", "number"), [(0.5, 0), (1, 0), (1.5, 1), (3, 4)])
def test_the_day_on_which_hours_are_done(hours: float, number: int) -> None:
    """Day 2 and 3 are off, so the third hour falls on day 4."""
    assert calendar(off(day(2), day(3))).day_after(hours) == day(number)


@given(st.floats(0.1, 2000), st.floats(1, 40), st.lists(st.tuples(st.integers(0, 200), st.integers(0, 20)), max_size=4))
def test_hours_before_and_day_after_agree(hours: float, a_week: float, spans: list[tuple[int, int]]) -> None:
    """On the day it is done the hours are there, and on the day before they were not."""
    weeks = calendar(*(off(day(first), day(first + long)) for first, long in spans), hours=a_week)
    done = weeks.day_after(hours)
    assert weeks.hours_before(done + dt.timedelta(days=1)) >= hours - 1e-6
    assert weeks.hours_before(done) < hours + 1e-6


def test_a_wish_list_for_thirty_years_has_its_dates() -> None:
    """Fifty garments of 40 h at an hour and a quarter a week: 32 years, which is no fault."""
    assert calendar(hours=1.25).day_after(2000).year == 2057


def test_what_never_ends_is_said() -> None:
    with pytest.raises(OverflowError, match="a hundred years"):
        calendar(hours=0.1).day_after(2000)


def test_days_off_from_before_until() -> None:
    with pytest.raises(ValueError, match="from before until"):
        off(day(3), day(2))


@given(st.lists(st.tuples(st.integers(-40, 40), st.integers(0, 20)), max_size=4), st.integers(-5, 60))
def test_hours_before_a_day_are_those_of_the_days_that_are_not_off(spans: list[tuple[int, int]], number: int) -> None:
    """Counted one by one; spans may overlap and lie in the past."""
    free = {day(first + n) for first, length in spans for n in range(length + 1)}
    ahead = [day(n) for n in range(number) if day(n) not in free]
    spans_off = [off(day(first), day(first + length)) for first, length in spans]
    assert calendar(*spans_off).hours_before(day(number)) == pytest.approx(len(ahead))
