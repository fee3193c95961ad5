"""Days on which she knits, and how many hours lie before a date."""

from __future__ import annotations

import datetime as dt
from bisect import bisect_left
from functools import cached_property
from typing import Annotated

from pydantic import Field, model_validator

from loopwright.records import Record
from loopwright.units import BadInput

__all__ = ["Calendar", "DaysOff"]

HOURS_A_WEEK_RELATIVE_SD = 0.3
"""How far a usual week strays from her hours a week when she does not say; our judgement."""
HORIZON_DAYS = 366 * 100


class DaysOff(Record):
    """Days without knitting, both ends included."""

    first: dt.date = Field(alias="from")
    last: dt.date = Field(alias="until")
    note: str = ""

    @model_validator(mode="after")
    def _in_order(self) -> DaysOff:
        if self.last < self.first:
            raise BadInput(found=f"days off from {self.first} until {self.last}", wanted="from before until")
        return self


class Calendar(Record):
    """Hours of knitting from ``today`` on: the week's hours spread evenly over its days, none on days off.

    :ivar today: first day that can be knitted on.
    :ivar hours_a_week: of a usual week.
    :ivar hours_a_week_sd: standard deviation of one week's hours.
    """

    today: dt.date
    hours_a_week: Annotated[float, Field(gt=0)]
    hours_a_week_sd: Annotated[float, Field(ge=0)]
    days_off: tuple[DaysOff, ...] = ()

    @cached_property
    def _off(self) -> frozenset[dt.date]:
        return frozenset(
            span.first + dt.timedelta(days=number)
            for span in self.days_off
            for number in range((span.last - span.first).days + 1)
        )

    @cached_property
    def _off_ahead(self) -> list[dt.date]:
        return sorted(day for day in self._off if day >= self.today)

    def hours_before(self, day: dt.date) -> float:
        """Give the hours of knitting from today to ``day``, that day not included; 0 for a past date."""
        span = (day - self.today).days
        if span <= 0:
            return 0.0
        return (span - bisect_left(self._off_ahead, day)) * self.hours_a_week / 7

    def day_after(self, hours: float) -> dt.date:
        """Give the last day of knitting when ``hours`` are knitted from today on.

        :raises OverflowError: not within a hundred years.
        """
        day, done = self.today, 0.0
        for _ in range(HORIZON_DAYS):
            if day not in self._off:
                done += self.hours_a_week / 7
                if done >= hours - 1e-9:
                    return day
            day += dt.timedelta(days=1)
        raise OverflowError(f"{hours:.0f} hours do not fit into a hundred years of {self.hours_a_week:g} hours a week")
