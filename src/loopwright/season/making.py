"""In which order the garments are made, and when each is done."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence

from loopwright.calendar import (
    Calendar,
    Forecast,
    Job,
    Order,
    Slot,
    best_order,
    forecast,
    least_hours_a_week,
)
from loopwright.calendar.pace import SHARED_PACE
from loopwright.calendar.week import HOURS_A_WEEK_RELATIVE_SD
from loopwright.parcels import ParcelPlan
from loopwright.records import Record
from loopwright.season.result import RolePlanned
from loopwright.season.season import Season
from loopwright.season.settle import Settled
from loopwright.uncertainty import Estimate, total
from loopwright.units import BadInput

__all__ = ["Making", "calendar_of", "drying_days", "make_in_order", "ready_on"]


def drying_days(one: Settled) -> int:
    """Give the days a washed garment dries: two for a top, one for small things (common practice: 12 to 72 hours)."""
    return 2 if one.pattern.construction.is_top else 1


class Making(Record):
    """The order of making: garments with a place in it, and those that cannot be placed yet."""

    order: Order
    starts: dict[str, dt.date]
    forecasts: dict[str, Forecast]
    unplaced: tuple[str, ...]
    least_hours_a_week: float | None


def calendar_of(season: Season) -> Calendar:
    """Give the season's knitting days."""
    spread = season.hours_a_week_sd
    return Calendar(
        today=season.today,
        hours_a_week=season.hours_a_week,
        hours_a_week_sd=HOURS_A_WEEK_RELATIVE_SD * season.hours_a_week if spread is None else spread,
        days_off=season.days_off,
    )


def ready_on(key: str, roles: Sequence[RolePlanned], parcels: ParcelPlan) -> dt.date | None:
    """Give the day on which the last yarn of a garment is expected, or None when all of it is here."""
    days = [role.ready_on for role in roles if role.ready_on is not None]
    days += [parcel.arrives_on for parcel in parcels.parcels if any(key in line.garments for line in parcel.lines)]
    return max(days, default=None)


def _cannot_be_had(key: str, parcels: ParcelPlan) -> bool:
    return any(key in shortfall.garments for shortfall in parcels.unsupplied)


def make_in_order(
    season: Season,
    settled: Sequence[Settled],
    planned: Mapping[str, Sequence[RolePlanned]],
    parcels: ParcelPlan,
) -> Making:
    """Put the open garments in the best order and forecast each one's end.

    A garment whose hours are unknown, or whose yarn no shop of hers sells, has no place yet. While she lists no shop at
    all, its yarn is supposed to be bought at once.

    :raises BadInput: the hours a week do not finish the season within a hundred years.
    """
    calendar = calendar_of(season)
    open_ones = {one.garment.key: one for one in settled if one.garment.key in planned}
    placed = {
        key: one
        for key, one in open_ones.items()
        if one.hours is not None and not (season.shops and _cannot_be_had(key, parcels))
    }
    jobs = [_job(key, one, planned[key], parcels, calendar) for key, one in placed.items()]
    order = best_order(jobs)
    try:
        starts, forecasts = _dates(order.slots, placed, calendar)
    except OverflowError as error:
        raise BadInput(
            place="hours_a_week", found=str(error), wanted="hours that finish the season within a hundred years"
        ) from error
    weeks = [
        (one.hours.mean, calendar.hours_before(last) / calendar.hours_a_week)
        for one in placed.values()
        if one.hours is not None and (last := _last_day(one)) is not None
    ]
    return Making(
        order=order,
        starts=starts,
        forecasts=forecasts,
        unplaced=tuple(key for key in open_ones if key not in placed),
        least_hours_a_week=least_hours_a_week(weeks) if weeks else None,
    )


def _last_day(one: Settled) -> dt.date | None:
    """Give the day before which the knitting must be done, so that it is dry when due."""
    due = one.garment.due
    return None if due is None else due - dt.timedelta(days=drying_days(one) - 1)


def _job(key: str, one: Settled, roles: Sequence[RolePlanned], parcels: ParcelPlan, calendar: Calendar) -> Job:
    assert one.hours is not None  # only placed garments become jobs
    last, arrives = _last_day(one), ready_on(key, roles, parcels)
    return Job(
        key=key,
        hours=one.hours.mean,
        hours_sd=one.hours.sd,
        ready_at=0.0 if arrives is None else calendar.hours_before(arrives),
        due_at=None if last is None else calendar.hours_before(last),
        begun=one.garment.begun_on is not None,
    )


def _dates(
    slots: Sequence[Slot], placed: Mapping[str, Settled], calendar: Calendar
) -> tuple[dict[str, dt.date], dict[str, Forecast]]:
    starts, forecasts = {}, {}
    done: list[Estimate] = []
    idle = 0.0
    for slot in slots:
        one = placed[slot.key]
        assert one.hours is not None  # only placed garments have a slot
        idle += slot.waiting
        done.append(one.hours)
        work = total(done, unit="h", correlation=SHARED_PACE)
        starts[slot.key] = calendar.day_after(slot.start + 1e-6)
        forecasts[slot.key] = forecast(
            calendar,
            work.mean,
            work.sd,
            idle_hours=idle,
            drying_days=drying_days(one),
            due=one.garment.due,
        )
    return starts, forecasts
