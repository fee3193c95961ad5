"""What a plan holds: figures with their working, and answers in words."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from enum import StrEnum
from typing import Literal, TypeVar

from pydantic import Field

from loopwright.allotment import Taken
from loopwright.calendar import Forecast
from loopwright.fabric import Gauge
from loopwright.fit import SizeFit
from loopwright.need import SectionNeed
from loopwright.parcels import ParcelPlan
from loopwright.records import Record
from loopwright.season.colour_report import ColourReport
from loopwright.season.drafted import Drafted
from loopwright.uncertainty import Estimate
from loopwright.units import Money

__all__ = [
    "Answer",
    "Caution",
    "Figure",
    "GarmentPlan",
    "GaugeAnswer",
    "RolePlanned",
    "SeasonPlan",
    "State",
    "Tone",
]

Tone = Literal["yes", "unsure", "no", "plain"]
"""How an answer bears on the wish behind the question."""


class State(StrEnum):
    """Where a garment stands; derived from what is known, never set by hand."""

    TO_SIZE = "to size"
    TO_SWATCH = "to swatch"
    SHORT = "short of yarn"
    WAITING = "waiting for a parcel"
    READY = "ready to cast on"
    ON_NEEDLES = "on the needles"
    DRYING = "drying"
    DONE = "done"
    SET_ASIDE = "set aside"


class Figure(Record):
    """One figure of an answer: what it is, how it reads, and the number behind it with its working."""

    label: str
    text: str
    estimate: Estimate | None = None


class Answer(Record):
    """A question of the knitter, answered in a sentence; the evidence stands below it."""

    key: str
    question: str
    sentence: str
    tone: Tone = "plain"
    reasons: tuple[str, ...] = ()
    figures: tuple[Figure, ...] = ()


class Caution(Record):
    """A short caution with its source; local rules decide."""

    key: str
    text: str
    source: str


Keyed = TypeVar("Keyed", "Answer", "GarmentPlan")


def _keyed(items: tuple[Keyed, ...], key: str) -> Keyed:
    for item in items:
        if item.key == key:
            return item
    raise KeyError(key)


class RolePlanned(Record):
    """One yarn of one role: how much it takes, what covers it, and what must be bought.

    :ivar need_m, have_m: metres; ``have_m`` is what no earlier garment has reserved.
    :ivar balls_in_all: put-ups that would do if there were none at home.
    :ivar balls_to_buy: put-ups to buy beyond what is at home and on its way.
    :ivar chances: chance that it suffices with no ball more, with one more, and so on, to one beyond what is to be
        bought.
    """

    role: str
    yarn: str
    yarn_name: str
    colour: str
    shade: str | None
    need_m: Estimate
    need_g: float
    have_m: Estimate
    chances: tuple[float, ...]
    sureness: float
    balls_in_all: int
    balls_to_buy: int
    ball_m: float
    ball_g: float
    taken: tuple[Taken, ...]
    dye_lots: tuple[str, ...]
    ready_on: dt.date | None

    @property
    def p_enough(self) -> float:
        """Give the chance that it suffices as it is."""
        return self.chances[0]

    @property
    def p_after(self) -> float:
        """Give the chance that it suffices once the balls to buy are bought."""
        return self.chances[self.balls_to_buy]


class GaugeAnswer(Record):
    """Her gauge beside the pattern's, and what her counting error means in width.

    :ivar width_point: the measure that the doubt is told for: bust, else head, else width.
    :ivar width_doubt_cm: one standard error of her gauge over it, in cm.
    :ivar wash_width, wash_length: after ÷ before; above one it grows.
    """

    pattern: Gauge
    own: Gauge
    is_washed: bool
    width_point: str | None
    width_doubt_cm: float | None
    wash_width: float | None
    wash_length: float | None


class GarmentPlan(Record):
    """Everything worked out for one garment.

    :ivar colours: how the colours stand together, where there is more than one.
    :ivar sections: yarn by section and role, still to knit; empty where it cannot be drafted. Those of a role add up to
        its need.
    """

    key: str
    name: str
    state: State
    pattern: str
    construction: str
    fabric: str
    wearer: str | None
    due: dt.date | None
    size: str | None
    fits: tuple[SizeFit, ...] = ()
    finished_cm: Mapping[str, float] = Field(default_factory=dict)
    gauge: GaugeAnswer | None = None
    drafted: Drafted | None = None
    roles: tuple[RolePlanned, ...] = ()
    sections: tuple[SectionNeed, ...] = ()
    colours: ColourReport | None = None
    stitches: Estimate | None = None
    hours: Estimate | None = None
    mass_g: float = 0.0
    starts_on: dt.date | None = None
    forecast: Forecast | None = None
    to_pay: Money | None = None
    answers: tuple[Answer, ...] = ()
    cautions: tuple[Caution, ...] = ()

    def answer(self, key: str) -> Answer:
        """Give the answer with this key.

        :raises KeyError: there is none.
        """
        return _keyed(self.answers, key)

    @property
    def is_open(self) -> bool:
        """Say whether it is still to be made."""
        return self.state not in {State.DONE, State.SET_ASIDE, State.DRYING}


class SeasonPlan(Record):
    """The whole season, the garments in the order of making."""

    name: str
    today: dt.date
    currency: str
    garments: tuple[GarmentPlan, ...]
    parcels: ParcelPlan
    hours: Estimate
    least_hours_a_week: float | None
    order_proven: bool
    answers: tuple[Answer, ...] = ()
    cautions: tuple[Caution, ...] = ()

    def garment(self, key: str) -> GarmentPlan:
        """Give the plan of the garment with this key.

        :raises KeyError: there is none.
        """
        return _keyed(self.garments, key)

    def answer(self, key: str) -> Answer:
        """Give the season's answer with this key.

        :raises KeyError: there is none.
        """
        return _keyed(self.answers, key)
