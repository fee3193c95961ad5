"""The people of a season: measured again, too old to knit by, and what to mind with children."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from loopwright.body import CHILD_MEASURES_LAST_DAYS, Body, days_too_old, remeasured
from loopwright.records import FROM_FILE, Record
from loopwright.season.change import tables_with_entry
from loopwright.season.season import Season

__all__ = ["OldMeasures", "old_measures", "tables_with_body"]


class OldMeasures(Record):
    """Measures of a child that will be too old on a day that matters.

    :ivar on: the day: the planning date, or the day on which a garment is due.
    :ivar garment: name of the garment that is due then; None for the planning date.
    :ivar ages_days: by measure, how old each will be then.
    """

    on: dt.date
    garment: str | None
    ages_days: Mapping[str, int]
    limit_days: int = CHILD_MEASURES_LAST_DAYS


def old_measures(season: Season, body_key: str) -> tuple[OldMeasures, ...]:
    """Give the days on which a child's measures will be older than three months: our judgement.

    The planning date comes first, then each garment for this child with a day on which it is due and that is not done.
    """
    body = season.body_by_key[body_key]
    days: list[tuple[dt.date, str | None]] = [(season.today, None)]
    days += [
        (garment.due, garment.name)
        for garment in season.garments
        if garment.wearer == body_key and garment.due is not None and garment.done_on is None
    ]
    return tuple(
        OldMeasures(on=day, garment=name, ages_days=ages) for day, name in days if (ages := days_too_old(body, day))
    )


def tables_with_body(
    season: Season, body_key: str, changes: Mapping[str, Any], measured_on: dt.date, *, all_again: bool = False
) -> dict[str, Any]:
    """Give the season's plain tables with a body changed and its history kept; they are not checked yet.

    :param changes: by field in the words of the season file; None or an empty text takes a field away.
    :param measured_on: the day on which what is new was measured.
    :param all_again: whether the measures that stay the same were measured on that day as well.
    :raises BadInput: no body of that key.
    """
    tables = tables_with_entry(season, "bodies", body_key, {**changes, "taken_on": None})
    try:
        after = Season.model_validate(tables, context=FROM_FILE).body_by_key[body_key]
    except ValidationError:
        return tables  # whoever checks the tables finds the same, and says where
    body = remeasured(season.body_by_key[body_key], after, measured_on, all_again=all_again)
    tables["bodies"][body_key] = _fields(body)
    return tables


def _fields(body: Body) -> dict[str, Any]:
    return body.model_dump(mode="json", by_alias=True, exclude_none=True, exclude_defaults=True, exclude={"key"})
