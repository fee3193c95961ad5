"""Measuring again: new values in, former ones into the history, and the day of each measure kept right."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Iterable, Mapping

from loopwright.body.body import Body
from loopwright.body.dated import EarlierMeasures

__all__ = ["remeasured"]


def remeasured(before: Body, after: Body, on: dt.date, *, all_again: bool = False) -> Body:
    """Give a body with new values, and its history with the former ones; nothing that had a day is lost.

    A value that is written anew on the day it already has is a correction: it leaves no trace. So does one whose day
    nobody noted, and one that is taken away.

    :param before: the body as it is kept.
    :param after: the same with the new values in the place of the old ones; its days and history are not looked at.
    :param on: the day on which what is new was measured.
    :param all_again: whether the measures that have not changed were measured on that day as well.
    """
    old, new = before.known(), after.known()
    changed = {key for key, value in new.items() if old.get(key) != value}
    days = {key: on if key in changed or all_again else before.taken(key) for key in new}
    former: dict[dt.date, dict[str, float]] = {}
    for key in changed & set(old):
        day = before.taken(key)
        if day is not None and day != on:
            former.setdefault(day, {})[key] = old[key]
    return after.model_copy(update=_days_of(new, days, before) | {"earlier": _with(before.earlier, former)})


def _days_of(known: Iterable[str], days: Mapping[str, dt.date | None], before: Body) -> dict[str, object]:
    """Give the day of most measures, and the days of the others."""
    counted = Counter(day for day in days.values() if day is not None)
    most = max(counted, key=lambda day: (counted[day], day)) if counted else before.measured_on
    undated = any(day is None for day in days.values())
    main = None if undated else most
    others = {key: day for key in known if (day := days.get(key)) is not None and day != main}
    return {"measured_on": main, "taken_on": others}


def _with(
    earlier: tuple[EarlierMeasures, ...], former: Mapping[dt.date, dict[str, float]]
) -> tuple[EarlierMeasures, ...]:
    """Give the history with former values added, oldest day first; what stands there already stays."""
    if not former:
        return earlier
    by_day = {one.measured_on: one for one in earlier}
    for day, values in former.items():
        there = by_day.get(day)
        known = values if there is None else values | there.known()
        by_day[day] = EarlierMeasures.model_validate({"measured_on": day, **_fields(known)})
    return tuple(by_day[day] for day in sorted(by_day))


def _fields(known: Mapping[str, float]) -> dict[str, float]:
    return {"mass_kg" if key == "mass" else f"{key}_cm": value for key, value in known.items()}
