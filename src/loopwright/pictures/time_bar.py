"""When each garment is knitted and done, all on one line of time."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.pictures.svg import INK, NEUTRAL, band, element, number, picture, upright

__all__ = ["TimeLine", "month_bar", "time_bar"]

WIDTH, HEIGHT = 1000.0, 22.0
KNITTING = "#5c5f61"
LIKELY = "#929596"
LATEST = "#c6c8c8"
MOST_NAMES = 12
"""Names of months that fit beside each other on a phone."""
END_OF_NAMES = 0.94
"""The share of the line beyond which a name would be cut off."""


@dataclass(frozen=True, slots=True)
class TimeLine:
    """The days that all bars of a season share: from ``first`` to ``last``."""

    first: dt.date
    last: dt.date

    @classmethod
    def over(cls, days: Sequence[dt.date]) -> TimeLine:
        """Span all days given, and a little beyond.

        :raises ValueError: no days.
        """
        first, last = min(days), max(days)
        return cls(first, last + dt.timedelta(days=max(3, (last - first).days // 40)))

    def x(self, day: dt.date) -> float:
        """Give the place of a day between 0 and the drawing's width."""
        span = max((self.last - self.first).days, 1)
        return min(max((day - self.first).days / span, 0.0), 1.0) * WIDTH

    def months(self) -> list[dt.date]:
        """Give the first day of every month that begins on the line."""
        day = self.first.replace(day=1)
        if day < self.first:
            day = (day + dt.timedelta(days=32)).replace(day=1)
        months = []
        while day <= self.last:
            months.append(day)
            day = (day + dt.timedelta(days=32)).replace(day=1)
        return months


def _months(line: TimeLine, height: float) -> str:
    return "".join(
        upright(line.x(day), height, stroke=NEUTRAL, stroke_opacity=0.6, stroke_width=1) for day in line.months()
    )


def month_bar(line: TimeLine) -> str:
    """Write the months' names where they begin on the line; places in percent, so that letters keep their shape.

    On a long line some months between are left out, the same number each time.
    """
    months = line.months()
    every = max(1, math.ceil(len(months) / MOST_NAMES))
    names = "".join(
        element("text", f"{day:%b}", x=f"{number(line.x(day) / WIDTH * 100)}%", y=13, fill=INK, fill_opacity=0.75)
        for day in months[::every]
        if line.x(day) <= END_OF_NAMES * WIDTH
    )
    return element(
        "svg", names, xmlns="http://www.w3.org/2000/svg", width="100%", height=18, aria_hidden="true", class_="months"
    )


def time_bar(
    line: TimeLine,
    starts: dt.date,
    half_likely: dt.date,
    eight_in_ten: dt.date,
    nineteen_in_twenty: dt.date,
    due: dt.date | None,
    says: str,
) -> str:
    """Draw one garment's weeks: dark while it is knitted, lighter towards the dates that are surer, due as a mark.

    :param says: read aloud instead of the drawing.
    """
    spans = (
        (starts, half_likely, KNITTING),
        (half_likely, eight_in_ten, LIKELY),
        (eight_in_ten, nineteen_in_twenty, LATEST),
    )
    parts = [_months(line, HEIGHT)]
    parts += [band(line.x(first), line.x(last) - line.x(first), 6, 10, fill=fill) for first, last, fill in spans]
    if due is not None:
        parts.append(upright(line.x(due), HEIGHT, stroke=INK, stroke_width=3))
    return picture("".join(parts), WIDTH, HEIGHT, says, class_="bar")
