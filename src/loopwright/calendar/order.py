"""In which order to make the garments."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import permutations
from statistics import NormalDist

__all__ = ["Job", "Order", "Slot", "best_order", "least_hours_a_week"]

EXACT_UP_TO = 7
"""Up to this many garments every order is compared; beyond it the best found by exchange is taken."""
PROMISE = NormalDist().inv_cdf(0.8)
"""Deadlines are held against the eight-in-ten date: standard deviations above the mean."""


@dataclass(frozen=True, slots=True)
class Job:
    """One garment as the order of making sees it; all times are hours of knitting from today.

    :ivar hours: work still to do.
    :ivar hours_sd: its standard deviation.
    :ivar ready_at: hours of knitting that lie before its yarn is here; 0 when it is here.
    :ivar due_at: hours of knitting that lie before its last day of knitting; None without a deadline.
    :ivar begun: whether it is on the needles already.
    """

    key: str
    hours: float
    hours_sd: float = 0.0
    ready_at: float = 0.0
    due_at: float | None = None
    begun: bool = False


@dataclass(frozen=True, slots=True)
class Slot:
    """One garment's place: hours from today at which it starts and ends, the wait before it, and its lateness."""

    key: str
    start: float
    end: float
    waiting: float
    late: float
    """Hours by which the eight-in-ten end overruns the deadline; 0 when it does not, or there is none."""


@dataclass(frozen=True, slots=True)
class Order:
    """The chosen order. ``proven`` says whether every order was compared."""

    slots: tuple[Slot, ...]
    proven: bool

    @property
    def keys(self) -> tuple[str, ...]:
        """Give the garments' keys in order of making."""
        return tuple(slot.key for slot in self.slots)


def _lay_out(jobs: Iterable[Job]) -> tuple[Slot, ...]:
    slots, time, variance = [], 0.0, 0.0
    for job in jobs:
        start = max(time, job.ready_at)
        end = start + job.hours
        variance += job.hours_sd**2
        promised = end + PROMISE * variance**0.5
        late = 0.0 if job.due_at is None else max(0.0, promised - job.due_at)
        slots.append(Slot(job.key, start, end, start - time, late))
        time = end
    return tuple(slots)


def _cost(jobs: Sequence[Job], places: dict[str, int]) -> tuple[float, ...]:
    """Rank an order: lateness first, then begun work, idle waiting, yarn that is here, early ends, her own order."""
    slots = _lay_out(jobs)
    first_not_here = next((place for place, job in enumerate(jobs) if job.ready_at > 0), len(jobs))
    here_after_waiting = sum(1 for job in jobs[first_not_here:] if job.ready_at == 0)
    begun_late = sum(place for place, job in enumerate(jobs) if job.begun)
    return (
        round(max((slot.late for slot in slots), default=0.0), 6),
        round(sum(slot.late for slot in slots), 6),
        begun_late,
        round(sum(slot.waiting for slot in slots), 6),
        here_after_waiting,
        round(sum(slot.end for slot in slots), 6),
        sum(abs(place - places[job.key]) for place, job in enumerate(jobs)),
    )


def best_order(jobs: Sequence[Job]) -> Order:
    """Give the order of making that keeps deadlines best.

    Orders are compared by, in turn: the largest lateness, the sum of latenesses (both at the eight-in-ten end),
    garments on the needles first, hours lost waiting for yarn, yarn that is here before yarn that is not, the sum
    of ends (so that short ones come first), and the order in which she listed them. Up to seven garments every
    order is compared; with more, pairs are exchanged from the earliest deadline on until nothing gets better.

    Source: single-machine sequencing; earliest due date is optimal for the largest lateness without release
    times (Jackson 1955, from memory).
    """
    places = {job.key: place for place, job in enumerate(jobs)}
    if len(jobs) <= EXACT_UP_TO:
        best = min(permutations(jobs), key=lambda order: _cost(order, places))
        return Order(_lay_out(best), proven=True)
    late = float("inf")
    order = sorted(jobs, key=lambda job: (late if job.due_at is None else job.due_at, job.ready_at, job.hours))
    return Order(_lay_out(_exchange(order, places)), proven=False)


def _exchange(order: list[Job], places: dict[str, int]) -> list[Job]:
    """Move single garments to other places while that lowers the cost."""
    cost = _cost(order, places)
    improved = True
    while improved:
        improved = False
        for source in range(len(order)):
            for target in range(len(order)):
                trial = order.copy()
                trial.insert(target, trial.pop(source))
                trial_cost = _cost(trial, places)
                if trial_cost < cost:
                    order, cost, improved = trial, trial_cost, True
    return order


def least_hours_a_week(work_and_weeks: Sequence[tuple[float, float]]) -> float | None:
    """Give the least weekly hours with which every deadline is kept: ``max over prefixes Σ hours / weeks``.

    :param work_and_weeks: (hours, weeks until due) of each garment that has a deadline; taken by due date.
    :returns: hours a week, or None when a deadline is not ahead or there is none.
    """
    done, least = 0.0, 0.0
    for hours, weeks in sorted(work_and_weeks, key=lambda pair: pair[1]):
        if weeks <= 0:
            return None
        done += hours
        least = max(least, done / weeks)
    return least or None
