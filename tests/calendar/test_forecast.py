"""Finish dates against simulated weeks, and what they must keep."""

import datetime as dt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.calendar import Calendar, DaysOff, forecast

TODAY = dt.date(2027, 3, 1)
WEEK = dt.timedelta(days=7)


def calendar(*days_off: DaysOff, hours: float = 8, sd: float = 2.5) -> Calendar:
    return Calendar(today=TODAY, hours_a_week=hours, hours_a_week_sd=sd, days_off=days_off)


@pytest.mark.parametrize("weeks", [4, 5, 6])
def test_the_chance_to_be_done_after_whole_weeks_by_monte_carlo(weeks: int) -> None:
    """40 ± 5 h of work, weeks of 8 ± 2.5 h, 200,000 seasons; the draw errs by about 0.001."""
    random = np.random.default_rng(5)
    knitted = random.normal(8, 2.5, size=(200_000, weeks)).sum(axis=1)
    work = random.normal(40, 5, size=200_000)
    due = TODAY + weeks * WEEK - dt.timedelta(days=1)
    found = forecast(calendar(), 40, 5, due=due).p_by_due
    assert found == pytest.approx(float((knitted >= work).mean()), abs=0.005)


def test_three_garments_of_one_pace_by_monte_carlo() -> None:
    """The last of three, errors correlated 0.7, nine weeks: their total as the season hands it over."""
    sds = np.array([4.0, 2.0, 5.0])
    matrix = np.outer(sds, sds) * (np.full((3, 3), 0.7) + 0.3 * np.eye(3))
    random = np.random.default_rng(6)
    work = random.multivariate_normal([20, 12, 30], matrix, size=200_000).sum(axis=1)
    knitted = random.normal(8, 2.5, size=(200_000, 9)).sum(axis=1)
    due = TODAY + 9 * WEEK - dt.timedelta(days=1)
    found = forecast(calendar(), 62, float(np.sqrt(matrix.sum())), due=due).p_by_due
    assert found == pytest.approx(float((knitted >= work).mean()), abs=0.005)


def test_without_doubt_every_chance_has_one_day() -> None:
    found = forecast(calendar(hours=7, sd=0), 10, 0)
    assert found.half_likely == found.eight_in_ten == found.nineteen_in_twenty == TODAY + dt.timedelta(days=9)


def test_drying_and_waiting_move_it() -> None:
    plain = forecast(calendar(hours=7, sd=0), 10, 0).half_likely
    later = forecast(calendar(hours=7, sd=0), 10, 0, idle_hours=3, drying_days=2).half_likely
    assert later - plain == dt.timedelta(days=5)


def test_days_off_move_it() -> None:
    week = DaysOff.model_validate({"from": TODAY, "until": TODAY + 6 * dt.timedelta(days=1)})
    moved = forecast(calendar(week, hours=7, sd=0), 10, 0).half_likely
    assert moved - forecast(calendar(hours=7, sd=0), 10, 0).half_likely == WEEK


@given(st.floats(1, 400), st.floats(0, 40), st.floats(2, 20), st.floats(0, 6))
def test_surer_dates_are_never_earlier(hours: float, sd: float, a_week: float, week_sd: float) -> None:
    found = forecast(calendar(hours=a_week, sd=week_sd), hours, sd)
    assert found.half_likely <= found.eight_in_ten <= found.nineteen_in_twenty


@given(st.floats(5, 400), st.floats(0.5, 40))
def test_the_chance_by_a_date_is_the_chance_of_that_date(hours: float, sd: float) -> None:
    """By the eight-in-ten day it is at least eight in ten, and by the day before it is not."""
    day = forecast(calendar(), hours, sd).eight_in_ten
    by_then = forecast(calendar(), hours, sd, due=day).p_by_due
    before = forecast(calendar(), hours, sd, due=day - dt.timedelta(days=1)).p_by_due
    assert before is not None
    assert by_then is not None
    assert before < 0.8 <= by_then


def test_a_date_that_is_past_cannot_be_kept() -> None:
    chance = forecast(calendar(), 10, 1, due=TODAY - WEEK).p_by_due
    assert chance == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("days_ago", [1, 30])
def test_what_was_due_before_today_has_no_chance(days_ago: int) -> None:
    """However doubtful the hours: 2 ± 5 h are not done by a day that is over."""
    assert forecast(calendar(), 2, 5, due=TODAY - dt.timedelta(days=days_ago)).p_by_due == 0
