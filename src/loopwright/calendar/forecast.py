"""When a garment is done: a date for each chance, never a bare day."""

from __future__ import annotations

import datetime as dt
import math
from statistics import NormalDist

from loopwright.calendar.week import HORIZON_DAYS, Calendar
from loopwright.records import Record

__all__ = ["Forecast", "forecast"]


class Forecast(Record):
    """Dates by which a garment is done, half likely, eight in ten and nineteen in twenty, and its deadline's chance."""

    half_likely: dt.date
    eight_in_ten: dt.date
    nineteen_in_twenty: dt.date
    p_by_due: float | None = None


def forecast(
    calendar: Calendar,
    hours: float,
    hours_sd: float,
    *,
    idle_hours: float = 0.0,
    drying_days: int = 0,
    due: dt.date | None = None,
) -> Forecast:
    r"""Give the finish of work that takes ``hours`` from today, with ``idle_hours`` lost waiting for yarn.

    By a day the hours knitted are :math:`A = h w` with variance :math:`s_h^2 w` for w weeks, so

    .. math:: P = \Phi\left(\frac{A - H - I}{\sqrt{s_H^2 + s_h^2 w}}\right)

    Before the first day of knitting it is 0, however doubtful the hours are.

    :param hours: work of this garment and of all before it.
    :param hours_sd: its standard deviation.
    :param drying_days: days between the last stitch and a garment that can be worn or given.
    :raises OverflowError: not within a hundred years.
    """

    def p_by(day: dt.date) -> float:
        last = day - dt.timedelta(days=drying_days)
        available = calendar.hours_before(last + dt.timedelta(days=1))
        weeks = max(available / calendar.hours_a_week, 0.0)
        spread = math.hypot(hours_sd, calendar.hours_a_week_sd * math.sqrt(weeks))
        slack = available - hours - idle_hours
        if available <= 0 < hours:
            return 0.0
        if spread == 0:
            return 1.0 if slack >= -1e-9 else 0.0
        return NormalDist().cdf(slack / spread)

    def day_for(share: float) -> dt.date:
        low, high = 0, HORIZON_DAYS
        if p_by(calendar.today + dt.timedelta(days=high)) < share:
            raise OverflowError(
                f"{hours:.0f} hours do not fit into a hundred years of {calendar.hours_a_week:g} hours a week"
            )
        while low < high:
            middle = (low + high) // 2
            if p_by(calendar.today + dt.timedelta(days=middle)) >= share:
                high = middle
            else:
                low = middle + 1
        return calendar.today + dt.timedelta(days=low)

    return Forecast(
        half_likely=day_for(0.5),
        eight_in_ten=day_for(0.8),
        nineteen_in_twenty=day_for(0.95),
        p_by_due=None if due is None else p_by(due),
    )
