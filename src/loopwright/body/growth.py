"""What changed between two days of measuring, and when a child's measures are too old to knit by."""

from __future__ import annotations

import datetime as dt
import math
from typing import Final

from loopwright.body.body import Body, Wearer
from loopwright.body.measures import MEASURES
from loopwright.records import Record
from loopwright.uncertainty import Estimate, Origin, Step

__all__ = ["CHILD_MEASURES_LAST_DAYS", "Growth", "days_too_old", "growths", "readings"]

CHILD_MEASURES_LAST_DAYS: Final = 92
"""After about three months a child is measured again: our judgement."""
_A_YEAR_DAYS: Final = 365.25
_LEAST_FOR_A_RATE_DAYS: Final = 60
_OURS: Final = "our judgement; see plan_sd_cm in data/body/measures.csv"


class Growth(Record):
    """How one measure changed from one day to the next on which it was taken.

    :ivar change_cm: with the doubt of two readings.
    :ivar per_year_cm: the same as a rate; None over less than two months, when reading errors outweigh it (judged).
    """

    measure: str
    from_on: dt.date
    to_on: dt.date
    from_cm: float
    to_cm: float
    change_cm: Estimate
    per_year_cm: Estimate | None

    @property
    def is_clear(self) -> bool:
        """Say whether it is more than two readings stray: twice the standard deviation, nineteen times in twenty."""
        return abs(self.change_cm.mean) > 2 * self.change_cm.sd


def readings(body: Body, measure: str) -> tuple[tuple[dt.date, float], ...]:
    """Give every reading of a measure that has a day, in cm, the oldest first."""
    found = [(one.measured_on, value) for one in body.earlier if (value := one.measure_cm(measure)) is not None]
    present, day = body.measure_cm(measure), body.taken(measure)
    if present is not None and day is not None:
        found.append((day, present))
    return tuple(sorted(found))


def growths(body: Body) -> tuple[Growth, ...]:
    r"""Give for each measure the change between its last two readings, in the order of the measures.

    .. math:: d = x_2 - x_1, \quad s_d = s\sqrt 2, \quad \text{rate} = d / t

    with ``s`` the standard deviation of one home reading. Source: JCGM 100:2008 (GUM), 5.1.2 (from memory).
    """
    found = []
    for measure in MEASURES:
        last_two = readings(body, measure)[-2:]
        if len(last_two) == 2 and last_two[0][0] < last_two[1][0]:
            found.append(_growth(measure, *last_two))
    return tuple(found)


def _growth(measure: str, first: tuple[dt.date, float], second: tuple[dt.date, float]) -> Growth:
    (from_on, from_cm), (to_on, to_cm) = first, second
    sd = MEASURES[measure].plan_sd_cm
    taken = [
        Step(says=f"measured on {day}", value=value, sd=sd, unit="cm", origin=Origin.MEASURED, source=_OURS)
        for day, value in (first, second)
    ]
    change = Step(
        says="later less earlier",
        working=f"{to_cm:g} − {from_cm:g}; doubt {sd:g} × √2",
        value=to_cm - from_cm,
        sd=sd * math.sqrt(2),
        unit="cm",
        origin=Origin.COMPUTED,
    )
    return Growth(
        measure=measure,
        from_on=from_on,
        to_on=to_on,
        from_cm=from_cm,
        to_cm=to_cm,
        change_cm=_estimate(*taken, change),
        per_year_cm=_rate((*taken, change), (to_on - from_on).days),
    )


def _rate(steps: tuple[Step, ...], days: int) -> Estimate | None:
    if days < _LEAST_FOR_A_RATE_DAYS:
        return None
    change, years = steps[-1], days / _A_YEAR_DAYS
    rate = Step(
        says="as a rate",
        working=f"over {days} days",
        value=change.value / years,
        sd=change.sd / years,
        unit="cm/year",
        origin=Origin.COMPUTED,
    )
    return _estimate(*steps, rate)


def _estimate(*steps: Step) -> Estimate:
    last = steps[-1]
    return Estimate(mean=last.value, sd=last.sd, unit=last.unit, origin=last.origin, steps=steps)


def days_too_old(body: Body, on: dt.date) -> dict[str, int]:
    """Give the measures of a child that will be older than three months on a day, each with its age in days then.

    Grown-ups have none. A measure without a day is not in it. Three months are our judgement: nobody published how
    soon a hand-knitted size is outgrown.
    """
    if body.wearer is not Wearer.CHILD:
        return {}
    ages = {key: (on - day).days for key in MEASURES if body.measure_cm(key) and (day := body.taken(key))}
    return {key: age for key, age in ages.items() if age > CHILD_MEASURES_LAST_DAYS}
