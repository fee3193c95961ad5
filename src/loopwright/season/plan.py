"""The one pure function: a season in, its plan out."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from fractions import Fraction

from loopwright.calendar.pace import SHARED_PACE
from loopwright.parcels import ParcelPlan
from loopwright.season.buying import buy, share_out
from loopwright.season.cautions import caution, garment_cautions
from loopwright.season.colour_answers import colour_answer
from loopwright.season.colour_places import places_answer
from loopwright.season.colour_report import colour_report
from loopwright.season.draft_answer import draft_answer
from loopwright.season.fit_answers import fit_answer
from loopwright.season.garment_answers import buy_answer, fabric_answer, time_answer, yarn_answer
from loopwright.season.making import Making, make_in_order
from loopwright.season.result import Caution, GarmentPlan, RolePlanned, SeasonPlan
from loopwright.season.season import Season
from loopwright.season.season_answers import season_answers
from loopwright.season.settle import Settled, settle
from loopwright.season.state import state_of
from loopwright.season.wording import Wording
from loopwright.uncertainty import total
from loopwright.units import Money, Reader

__all__ = ["plan"]


def plan(season: Season, reader: Reader | None = None) -> SeasonPlan:
    """Plan a season: fit, need, cover, purchases, hours and the order of making, with answers in words.

    Pure: the same season gives the same plan; no clock, disk or network is read.

    :param reader: in which measures and words to answer; the season's own when left out.
    """
    wording = Wording(reader or Reader(measures=season.measures, words=season.words), season.today.year)
    settled = [settle(season, garment) for garment in season.garments]
    planned = share_out(season, settled)
    parcels = buy(season, planned)
    making = make_in_order(season, settled, planned, parcels)
    garments = tuple(
        _garment_plan(season, one, planned, parcels, making, wording) for one in _in_order(settled, making)
    )
    hours = total(
        [garment.hours for garment in garments if garment.hours and garment.is_open],
        unit="h",
        correlation=SHARED_PACE,
    )
    return SeasonPlan(
        name=season.name,
        today=season.today,
        currency=season.currency,
        garments=garments,
        parcels=parcels,
        hours=hours,
        least_hours_a_week=making.least_hours_a_week,
        order_proven=making.order.proven,
        answers=season_answers(season, garments, parcels, hours, making.least_hours_a_week, wording),
        cautions=_season_cautions(season, parcels),
    )


def _in_order(settled: Sequence[Settled], making: Making) -> list[Settled]:
    """Give garments in the order of making, then those without a place, then what is not to be made now."""
    places = {key: place for place, key in enumerate((*making.order.keys, *making.unplaced))}
    return sorted(settled, key=lambda one: places.get(one.garment.key, len(places)))


def _garment_plan(
    season: Season,
    one: Settled,
    planned: Mapping[str, tuple[RolePlanned, ...]],
    parcels: ParcelPlan,
    making: Making,
    wording: Wording,
) -> GarmentPlan:
    garment = one.garment
    key = garment.key
    roles = planned.get(key, ())
    to_pay = _to_pay(key, parcels, roles)
    names = {shop.key: shop.name for shop in season.shops}
    starts_on, dates = making.starts.get(key), making.forecasts.get(key)
    colours = None
    if len(garment.yarns) > 1:
        metres = {need.role: need.strand_m.mean for need in one.needs}
        fabric = one.swatch.fabric if one.swatch else one.pattern.fabric
        colours = colour_report(season, garment, fabric, metres)
    places = places_answer(season, one, wording)
    return GarmentPlan(
        key=key,
        name=garment.name,
        state=state_of(one, roles),
        pattern=one.pattern.name,
        construction=one.drafted.construction if one.drafted else one.pattern.construction.value,
        fabric=one.swatch.fabric if one.swatch else one.pattern.fabric,
        wearer=one.body.name if one.body else None,
        due=garment.due,
        size=one.choice.name if one.choice else None,
        fits=one.fits,
        finished_cm=one.finished_cm,
        gauge=one.gauge,
        drafted=one.drafted,
        roles=roles,
        sections=one.sections,
        colours=colours,
        stitches=one.stitches,
        hours=one.hours,
        mass_g=math.fsum(need.mass_g for need in one.needs),
        starts_on=starts_on,
        forecast=dates,
        to_pay=to_pay,
        answers=(
            fit_answer(one, wording, season.today),
            fabric_answer(one, wording),
            draft_answer(one, wording),
            *(() if places is None else (places,)),
            *(() if colours is None else (colour_answer(colours, wording),)),
            yarn_answer(one, roles, _kept_for(season, key, planned), wording),
            buy_answer(key, roles, parcels, to_pay, names, wording),
            time_answer(one, starts_on, dates, wording),
        ),
        cautions=garment_cautions(one, season.yarn_by_key),
    )


def _kept_for(season: Season, key: str, planned: Mapping[str, tuple[RolePlanned, ...]]) -> dict[str, list[str]]:
    """Give, by role of one garment, the other garments for which yarn of that kind and colour is reserved."""
    return {
        role.role: [
            garment.name
            for garment in season.garments
            if garment.key != key
            and any(
                (other.yarn, other.colour) == (role.yarn, role.colour) and other.taken
                for other in planned.get(garment.key, ())
            )
        ]
        for role in planned.get(key, ())
    }


def _to_pay(key: str, parcels: ParcelPlan, roles: Sequence[RolePlanned]) -> Money | None:
    """Give a garment's share of the landed cost: by goods within a parcel, by balls needed within a line."""
    parts = []
    for parcel in parcels.parcels:
        for line in parcel.lines:
            if key not in line.garments or parcel.goods.minor == 0:
                continue
            own = sum(role.balls_to_buy for role in roles if (role.yarn, role.colour) == (line.yarn, line.colour))
            share = Fraction(own, line.balls_needed)
            parts.append(parcel.landed.times(Fraction(line.price.minor, parcel.goods.minor) * share))
    if not parts:
        return None
    whole = parts[0]
    for part in parts[1:]:
        whole = whole + part
    return whole


def _season_cautions(season: Season, parcels: ParcelPlan) -> tuple[Caution, ...]:
    keys = ["hands", "colour"]
    shops = {shop.key: shop for shop in season.shops}
    if any(
        shops[parcel.shop].border_tax or shops[parcel.shop].border_fee or shops[parcel.shop].currency != season.currency
        for parcel in parcels.parcels
    ):
        keys.insert(0, "border")
    return tuple(caution(key) for key in keys)
