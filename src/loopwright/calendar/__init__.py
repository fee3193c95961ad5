"""Time: hours from stitches and pace, the order of making, and when each garment is done.

* :class:`Pace`, :class:`DaysOff`: her speed by fabric and the days she does not knit.
* :func:`hours_for`: hours of one garment, with its doubt.
* :class:`Job`, :func:`best_order`: in which order deadlines are kept best.
* :func:`forecast`: a finish date as a distribution, never as a day.
"""

from loopwright.calendar.forecast import Forecast, forecast
from loopwright.calendar.hours import hours_for
from loopwright.calendar.order import Job, Order, Slot, best_order, least_hours_a_week
from loopwright.calendar.pace import Pace
from loopwright.calendar.week import Calendar, DaysOff

__all__ = [
    "Calendar",
    "DaysOff",
    "Forecast",
    "Job",
    "Order",
    "Pace",
    "Slot",
    "best_order",
    "forecast",
    "hours_for",
    "least_hours_a_week",
]
