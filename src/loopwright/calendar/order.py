"""In which order to make the garments."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import NormalDist

from loopwright.calendar.pace import SHARED_PACE

__all__ = ["Job", "Order", "Slot", "best_order", "least_hours_a_week"]

EXACT_UP_TO = 8
"""Up to this many garments the order is proven best; beyond it the best found by moving single ones is taken."""
FARTHEST_MOVE = 6
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


Cost = tuple[float, float, int, float, int, float, int]
"""How bad an order is, the weightiest first: largest lateness, sum of latenesses, places of begun work, hours lost
waiting, yarn that is here after yarn that is not, sum of ends, shifts from her own order. None of them can fall as
an order grows, so a beginning that is already worse than a whole order need not be tried further."""


@dataclass(frozen=True, slots=True)
class _Line:
    """The beginning of an order, with what it has cost so far."""

    slots: tuple[Slot, ...] = ()
    time: float = 0.0
    squares: float = 0.0
    deviations: float = 0.0
    waited: bool = False
    cost: Cost = (0.0, 0.0, 0, 0.0, 0, 0.0, 0)

    def then(self, job: Job, own_place: int) -> _Line:
        """Give this beginning with one more garment; doubts of hours are correlated by :data:`SHARED_PACE`."""
        start = max(self.time, job.ready_at)
        end = start + job.hours
        squares, deviations = self.squares + job.hours_sd**2, self.deviations + job.hours_sd
        spread = math.sqrt((1 - SHARED_PACE) * squares + SHARED_PACE * deviations**2)
        late = 0.0 if job.due_at is None else max(0.0, round(end + PROMISE * spread - job.due_at, 6))
        place = len(self.slots)
        largest, latenesses, begun, waiting, here_after, ends, shifts = self.cost
        return _Line(
            slots=(*self.slots, Slot(job.key, start, end, start - self.time, late)),
            time=end,
            squares=squares,
            deviations=deviations,
            waited=self.waited or job.ready_at > 0,
            cost=(
                max(largest, late),
                latenesses + late,
                begun + (place if job.begun else 0),
                waiting + round(start - self.time, 6),
                here_after + (1 if self.waited and job.ready_at == 0 else 0),
                ends + round(end, 6),
                shifts + abs(place - own_place),
            ),
        )


def best_order(jobs: Sequence[Job]) -> Order:
    """Give the order of making that keeps deadlines best.

    Orders are compared by, in turn: the largest lateness, the sum of latenesses (both at the eight-in-ten end),
    garments on the needles first, hours lost waiting for yarn, yarn that is here before yarn that is not, the sum
    of ends (so that short ones come first), and the order in which she listed them. Up to eight garments the answer
    is proven: every beginning is followed until it is worse than the best order known. With more, single garments
    are moved from the earliest deadline on until nothing gets better.

    Source: single-machine sequencing; earliest due date is optimal for the largest lateness without release
    times (Jackson 1955, from memory).
    """
    places = {job.key: place for place, job in enumerate(jobs)}
    late = float("inf")
    first = sorted(jobs, key=lambda job: (late if job.due_at is None else job.due_at, job.ready_at, job.hours))
    good = _move_single(first, places)
    if len(jobs) <= EXACT_UP_TO:
        return Order(_search(_Line(), tuple(first), places, good).slots, proven=True)
    return Order(good.slots, proven=False)


def _beginnings(order: Sequence[Job], places: dict[str, int]) -> list[_Line]:
    """Give every beginning of an order, from none of it to all."""
    lines = [_Line()]
    for job in order:
        lines.append(lines[-1].then(job, places[job.key]))
    return lines


def _search(line: _Line, left: tuple[Job, ...], places: dict[str, int], best: _Line) -> _Line:
    """Follow a beginning through all that is left; a worse one than the best is cut off."""
    if not left:
        return line if line.cost < best.cost else best
    for number, job in enumerate(left):
        longer = line.then(job, places[job.key])
        if longer.cost < best.cost:
            best = _search(longer, left[:number] + left[number + 1 :], places, best)
    return best


def _move_single(order: list[Job], places: dict[str, int]) -> _Line:
    """Move single garments to other places, at most :data:`FARTHEST_MOVE` away, while that lowers the cost."""
    lines = _beginnings(order, places)
    improved = True
    while improved:
        improved = False
        for source in range(len(order)):
            for target in range(max(0, source - FARTHEST_MOVE), min(len(order), source + FARTHEST_MOVE + 1)):
                trial = order.copy()
                trial.insert(target, trial.pop(source))
                if _is_better(trial, min(source, target), lines, places):
                    order, improved = trial, True
                    lines = _beginnings(order, places)
    return lines[-1]


def _is_better(trial: Sequence[Job], same: int, lines: Sequence[_Line], places: dict[str, int]) -> bool:
    """Say whether a trial costs less than the order of ``lines``, with which it agrees in the first ``same`` places."""
    line = lines[same]
    for job in trial[same:]:
        line = line.then(job, places[job.key])
        if line.cost >= lines[-1].cost:
            return False
    return True


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
