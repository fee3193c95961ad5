"""What a season is planned from: its fields, and look-ups by key."""

from __future__ import annotations

import datetime as dt
from decimal import Decimal
from functools import cached_property
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BeforeValidator, Field, PlainSerializer

from loopwright.body import Body
from loopwright.calendar import DaysOff, Pace
from loopwright.chart import NamedChart
from loopwright.fabric import Swatch
from loopwright.garment import Garment
from loopwright.parcels import Shop
from loopwright.parcels.shop import Currency
from loopwright.pattern import PatternFacts
from loopwright.records import MoneyField, Record, Share, keyed_table
from loopwright.units import BadInput
from loopwright.yarn import Lot, Yarn, YarnOrder

__all__ = ["Rate", "SeasonFacts"]


def _plausible_rate(rate: Decimal) -> Decimal:
    if not Decimal("0.000001") <= rate <= 1_000_000:
        raise BadInput(found=f"a rate of {rate}", wanted="from 0.000001 to 1,000,000")
    return rate


class Rate(Record):
    """What one unit of a foreign currency costs in the season's currency."""

    currency: Currency
    rate: Annotated[Decimal, Field(gt=0), AfterValidator(_plausible_rate)]


def _read_rates(value: Any) -> Any:
    if isinstance(value, dict):
        return [{"currency": currency, "rate": str(rate)} for currency, rate in value.items()]
    return value


def _write_rates(rates: tuple[Rate, ...]) -> dict[str, str]:
    return {rate.currency: str(rate.rate) for rate in rates}


def _below_one(share: float) -> float:
    if not 0.5 <= share < 1:
        raise BadInput(found=f"{share * 100:g} %", wanted="from 50 % to under 100 %")
    return share


Sureness = Annotated[Share, AfterValidator(_below_one)]


class SeasonFacts(Record):
    """Everything one plan is computed from; today's date and the rates are in it, so planning reads no clock.

    Whether its keys lead somewhere is checked by :class:`~loopwright.season.season.Season`.

    :ivar today: the date the plan is made for; nothing can be knitted before it.
    :ivar hours_a_week: hours that she knits in a usual week.
    :ivar hours_a_week_sd: how far a week strays from that; left out, 30 % of it (our judgement).
    :ivar purse: what she will spend on yarn, postage and border charges included.
    :ivar sureness: how sure the yarn must suffice when balls are counted.
    """

    name: str
    today: dt.date
    hours_a_week: Annotated[float, Field(gt=0, le=100)]
    hours_a_week_sd: Annotated[float | None, Field(ge=0, le=60)] = None
    days_off: tuple[DaysOff, ...] = ()
    currency: Currency
    rates: Annotated[
        tuple[Rate, ...], BeforeValidator(_read_rates), PlainSerializer(_write_rates, when_used="json")
    ] = ()
    rates_as_of: dt.date | None = None
    purse: MoneyField | None = None
    sureness: Sureness = 0.95
    measures: Literal["metric", "imperial"] = "metric"
    words: Literal["british", "american"] = "british"
    pace: Pace = Pace()
    note: str = ""
    bodies: Annotated[tuple[Body, ...], *keyed_table] = ()
    yarns: Annotated[tuple[Yarn, ...], *keyed_table] = ()
    swatches: Annotated[tuple[Swatch, ...], *keyed_table] = ()
    cupboard: Annotated[tuple[Lot, ...], *keyed_table] = ()
    patterns: Annotated[tuple[PatternFacts, ...], *keyed_table] = ()
    garments: Annotated[tuple[Garment, ...], *keyed_table] = ()
    shops: Annotated[tuple[Shop, ...], *keyed_table] = ()
    orders: Annotated[tuple[YarnOrder, ...], *keyed_table] = ()
    charts: Annotated[tuple[NamedChart, ...], *keyed_table] = ()

    @cached_property
    def body_by_key(self) -> dict[str, Body]:
        """Give the bodies by key."""
        return {body.key: body for body in self.bodies}

    @cached_property
    def yarn_by_key(self) -> dict[str, Yarn]:
        """Give the yarns by key."""
        return {yarn.key: yarn for yarn in self.yarns}

    @cached_property
    def swatch_by_key(self) -> dict[str, Swatch]:
        """Give the swatches by key."""
        return {swatch.key: swatch for swatch in self.swatches}

    @cached_property
    def pattern_by_key(self) -> dict[str, PatternFacts]:
        """Give the pattern facts by key."""
        return {pattern.key: pattern for pattern in self.patterns}

    @cached_property
    def garment_by_key(self) -> dict[str, Garment]:
        """Give the garments by key."""
        return {garment.key: garment for garment in self.garments}

    @cached_property
    def chart_by_key(self) -> dict[str, NamedChart]:
        """Give the charts by key."""
        return {chart.key: chart for chart in self.charts}

    def rate_of(self, currency: str) -> Decimal | None:
        """Give what one unit of a currency costs in the season's, or None when she gave no rate."""
        if currency == self.currency:
            return Decimal(1)
        return next((rate.rate for rate in self.rates if rate.currency == currency), None)
