"""The order of making: every order compared by an independent cost, and the local search beyond eight."""

from itertools import permutations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from loopwright.calendar import Job, best_order, least_hours_a_week

HOURS = st.floats(1, 60)
DUE = st.none() | st.floats(5, 250)


@st.composite
def jobs(draw: st.DrawFn, least: int = 1, most: int = 5) -> list[Job]:
    number = draw(st.integers(least, most))
    return [
        Job(
            f"g{n}",
            draw(HOURS),
            hours_sd=draw(st.sampled_from([0.0, 3.0, 9.0])),
            ready_at=draw(st.sampled_from([0.0, 0.0, 10.0, 40.0])),
            due_at=draw(DUE),
            begun=draw(st.booleans()),
        )
        for n in range(number)
    ]


def largest_lateness(order: list[Job]) -> float:
    """Written anew: walk through the order, eight-in-ten ends by scipy, the spread of a sum as a quadratic form."""
    time, late = 0.0, 0.0
    for place, job in enumerate(order):
        time = max(time, job.ready_at) + job.hours
        if job.due_at is not None:
            deviations = np.array([one.hours_sd for one in order[: place + 1]])
            correlations = np.full((place + 1, place + 1), 0.7)
            np.fill_diagonal(correlations, 1.0)
            spread = float(np.sqrt(deviations @ correlations @ deviations))
            late = max(late, time + float(stats.norm.ppf(0.8)) * spread - job.due_at)
    return late


@settings(max_examples=60)
@given(jobs())
def test_no_order_is_less_late(some: list[Job]) -> None:
    found = best_order(some)
    least = min(largest_lateness(list(order)) for order in permutations(some))
    assert max(slot.late for slot in found.slots) == pytest.approx(least, abs=2e-6)
    assert found.proven


@settings(max_examples=30)
@given(jobs(least=9, most=12))
def test_beyond_eight_it_is_no_later_than_by_due_date(some: list[Job]) -> None:
    found = best_order(some)
    by_due = sorted(some, key=lambda job: float("inf") if job.due_at is None else job.due_at)
    assert max(slot.late for slot in found.slots) <= largest_lateness(by_due) + 2e-6
    assert not found.proven


@settings(max_examples=30)
@given(st.lists(st.tuples(HOURS, st.floats(5, 250)), min_size=9, max_size=12))
def test_beyond_eight_without_waiting_it_is_the_best_there_is(rows: list[tuple[float, float]]) -> None:
    """Jackson 1955 (from memory): without release times earliest due date has the least largest lateness."""
    some = [Job(f"g{n}", hours, due_at=due) for n, (hours, due) in enumerate(rows)]
    by_due = sorted(some, key=lambda job: job.due_at or 0)
    found = max(slot.late for slot in best_order(some).slots)
    assert found == pytest.approx(largest_lateness(by_due), abs=2e-6)


@given(jobs(most=9))
def test_every_garment_has_one_place_and_none_overlap(some: list[Job]) -> None:
    slots = best_order(some).slots
    assert sorted(slot.key for slot in slots) == sorted(job.key for job in some)
    ends = [0.0, *(slot.end for slot in slots)]
    assert all(slot.start >= end for slot, end in zip(slots, ends, strict=False))


@given(jobs(most=6))
def test_none_starts_before_its_yarn_is_here(some: list[Job]) -> None:
    ready = {job.key: job.ready_at for job in some}
    assert all(slot.start >= ready[slot.key] for slot in best_order(some).slots)


def test_what_is_on_the_needles_goes_first() -> None:
    assert best_order([Job("hat", 4), Job("shawl", 40, begun=True)]).keys == ("shawl", "hat")


def test_a_deadline_goes_before_what_is_on_the_needles() -> None:
    assert best_order([Job("shawl", 40, begun=True), Job("hat", 4, due_at=10)]).keys == ("hat", "shawl")


def test_yarn_that_is_here_goes_before_yarn_that_is_not() -> None:
    found = best_order([Job("hat", 4, ready_at=3), Job("shawl", 40)])
    assert found.keys == ("shawl", "hat")
    assert sum(slot.waiting for slot in found.slots) == 0


def test_equals_stand_as_she_listed_them() -> None:
    assert best_order([Job("b", 4), Job("a", 4), Job("c", 4)]).keys == ("b", "a", "c")


def test_nothing_to_make() -> None:
    assert best_order([]).slots == ()


@given(st.lists(st.tuples(HOURS, st.floats(0.5, 50)), min_size=1, max_size=6))
def test_the_least_hours_keep_every_deadline_and_fewer_do_not(rows: list[tuple[float, float]]) -> None:
    """Laid out by due date at that pace none is late; at a hundredth less one is."""
    least = least_hours_a_week(rows)
    assert least is not None

    def late(pace: float) -> float:
        some = [Job(str(n), hours, due_at=weeks * pace) for n, (hours, weeks) in enumerate(rows)]
        return max(slot.late for slot in best_order(some).slots)

    assert late(least) <= 1e-6
    assert late(least * 0.99) > 0


def test_a_deadline_that_is_not_ahead() -> None:
    assert least_hours_a_week([(10, 2), (5, 0)]) is None
    assert least_hours_a_week([]) is None
