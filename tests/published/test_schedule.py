"""Four garments, one knitter: order, lateness and the least hours a week.

Source: our study of time, `estimating`, section 5 (computed, checked there against all 24 orders; printed to three
decimals of a week). Rules: earliest due date (Jackson 1955), shortest first (Smith 1956), both from memory.
"""

import pytest

from loopwright.calendar import Job, best_order, least_hours_a_week

HOURS_A_WEEK = 6
HOURS_AND_DUE_WEEK = {"A": (42.0, 9.0), "B": (16.0, 4.0), "C": (30.0, 12.0), "D": (13.0, 5.0)}
PRINTED_WEEKS = 0.0005

JOBS = [Job(key, hours, due_at=weeks * HOURS_A_WEEK) for key, (hours, weeks) in HOURS_AND_DUE_WEEK.items()]


def test_the_largest_lateness_is_the_least_there_is() -> None:
    late = max(slot.late for slot in best_order(JOBS).slots)
    assert late / HOURS_A_WEEK == pytest.approx(4.833, abs=PRINTED_WEEKS)


def test_earliest_due_date_comes_out() -> None:
    assert "".join(best_order(JOBS).keys) == "BDAC"


def test_the_total_lateness_is_that_of_earliest_due_date() -> None:
    late = sum(slot.late for slot in best_order(JOBS).slots)
    assert late / HOURS_A_WEEK == pytest.approx(7.667, abs=PRINTED_WEEKS)


def test_ends_in_weeks() -> None:
    ends = [slot.end / HOURS_A_WEEK for slot in best_order(JOBS).slots]
    assert ends == pytest.approx([2.667, 4.833, 11.833, 16.833], abs=PRINTED_WEEKS)


def test_without_deadlines_the_shortest_goes_first() -> None:
    order = best_order([Job(job.key, job.hours) for job in JOBS])
    assert "".join(order.keys) == "DBCA"
    assert sum(slot.end for slot in order.slots) / HOURS_A_WEEK == pytest.approx(33.667, abs=PRINTED_WEEKS)


def test_least_hours_a_week() -> None:
    assert least_hours_a_week(list(HOURS_AND_DUE_WEEK.values())) == pytest.approx(8.417, abs=PRINTED_WEEKS)
