"""One person: whose body it is, its present measures, and what it measured before."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from enum import StrEnum
from typing import Annotated

from pydantic import AfterValidator, Field, field_validator, model_validator

from loopwright.body.dated import MEASURE_KEYS, EarlierMeasures, Measures
from loopwright.records import Keyed
from loopwright.units import BadInput

__all__ = ["Body", "Wearer"]


class Wearer(StrEnum):
    """Whom a body or a pattern's sizes belong to."""

    WOMAN = "woman"
    MAN = "man"
    CHILD = "child"


def _in_order(days: Mapping[str, dt.date]) -> Mapping[str, dt.date]:
    unknown = [key for key in days if key not in MEASURE_KEYS]
    if unknown:
        raise BadInput(found=f"'{unknown[0]}'", wanted="measures of a body, such as hip_girth")
    return {key: days[key] for key in MEASURE_KEYS if key in days}


class _Person(Keyed):
    name: str
    wearer: Wearer
    age_years: Annotated[float | None, Field(ge=0, le=120)] = None
    measured_on: dt.date | None = None


class Body(Measures, _Person):
    """A person's measures; see :class:`~loopwright.body.dated.Measures`.

    :ivar measured_on: the day on which the measures were taken, but for those in ``taken_on``.
    :ivar taken_on: the day of each measure that was taken on another day than ``measured_on``.
    :ivar earlier: what was measured before, where it has changed since.
    """

    taken_on: Annotated[Mapping[str, dt.date], AfterValidator(_in_order)] = Field(default_factory=dict)
    earlier: tuple[EarlierMeasures, ...] = ()
    note: str = ""

    @field_validator("earlier")
    @classmethod
    def _each_day_once(cls, earlier: tuple[EarlierMeasures, ...]) -> tuple[EarlierMeasures, ...]:
        days = [one.measured_on for one in earlier]
        twice = next((day for day in days if days.count(day) > 1), None)
        if twice is not None:
            raise BadInput(found=f"measures of {twice} twice", wanted="one entry for each day")
        return earlier

    @model_validator(mode="after")
    def _days_belong_to_measures(self) -> Body:
        known = self.known()
        for key in self.taken_on:
            if key not in known:
                raise BadInput(found=f"a day for '{key}'", wanted="that measure as well", place=f"taken_on.{key}")
        return self

    def taken(self, key: str) -> dt.date | None:
        """Give the day on which a measure was taken, or None when nobody noted it."""
        return self.taken_on.get(key, self.measured_on)

    @property
    def is_young_child(self) -> bool:
        """Say whether the wearer is a child under three, or a child of unknown age."""
        return self.wearer is Wearer.CHILD and (self.age_years is None or self.age_years < 3)
