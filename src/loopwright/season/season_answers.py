"""The season's questions, answered in words."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.parcels import ParcelPlan
from loopwright.season.result import Answer, Figure, GarmentPlan, State, Tone
from loopwright.season.season import Season
from loopwright.season.wording import Wording, odds
from loopwright.uncertainty import Estimate
from loopwright.units import write_money, write_share

__all__ = ["season_answers"]

PROMISE = 0.8
"""A deadline counts as kept when it is this sure: presents are planned on the eight-in-ten date."""


def season_answers(
    season: Season,
    garments: Sequence[GarmentPlan],
    parcels: ParcelPlan,
    hours: Estimate,
    least_hours_a_week: float | None,
    wording: Wording,
) -> tuple[Answer, ...]:
    """Answer the season's five questions; ``garments`` stand in the order of making."""
    return (
        _order(garments, wording),
        _yarn(garments, wording),
        _buy(season, parcels, wording),
        _cost(season, parcels, wording),
        _time(season, garments, hours, least_hours_a_week, wording),
    )


def _order(garments: Sequence[GarmentPlan], wording: Wording) -> Answer:
    open_ones = [garment for garment in garments if garment.is_open]
    names = [garment.name for garment in open_ones]
    sentence = f"{wording.counted(len(open_ones), 'garment').capitalize()}: {', then '.join(names)}."
    if not open_ones:
        sentence = "Nothing is open."
    return Answer(
        key="order",
        question="What am I making, and in what order?",
        sentence=sentence,
        reasons=(
            "Dates are kept where they can be; then what is begun comes first, then what need not wait for yarn.",
        ),
        figures=tuple(
            Figure(
                label=garment.name,
                text=f"{garment.state}, "
                + (f"from {wording.date(garment.starts_on)}" if garment.starts_on else "no date yet"),
            )
            for garment in open_ones
        ),
    )


def _yarn(garments: Sequence[GarmentPlan], wording: Wording) -> Answer:
    open_ones = [garment for garment in garments if garment.is_open and garment.roles]
    short = [garment for garment in open_ones if any(role.balls_to_buy for role in garment.roles)]
    question = "Is there enough yarn?"
    if not open_ones:
        return Answer(key="yarn", question=question, sentence="Nothing to knit yet needs yarn.", tone="plain")
    if not short:
        return Answer(key="yarn", question=question, sentence="Yes, for everything.", tone="yes")
    parts = []
    for garment in short:
        colours = [
            f"{wording.counted(role.balls_to_buy, 'ball')} in {role.colour}"
            for role in garment.roles
            if role.balls_to_buy
        ]
        parts.append(f"{garment.name} lacks {wording.listed(colours)}")
    enough = len(open_ones) - len(short)
    opening = f"For {enough} of {len(open_ones)}" if enough else "Not yet"
    return Answer(
        key="yarn",
        question=question,
        sentence=f"{opening}: {'; '.join(parts)}.",
        tone="no",
        figures=tuple(
            Figure(
                label=f"{garment.name}, {role.colour}",
                text=f"{wording.yarn(role.have_m.mean)} for {wording.estimate(role.need_m)}, "
                f"{write_share(role.p_enough)} sure",
                estimate=role.need_m,
            )
            for garment in open_ones
            for role in garment.roles
        ),
    )


def _buy(season: Season, parcels: ParcelPlan, wording: Wording) -> Answer:
    question = "What must I buy?"
    unsold = wording.listed([f"{wording.counted(need.balls, 'ball')} in {need.colour}" for need in parcels.unsupplied])
    warning = f"No shop that you listed sells {unsold}." if unsold else ""
    if unsold and not season.shops:
        warning = f"{unsold[0].upper()}{unsold[1:]}; list a shop to see what that costs."
    if not parcels.parcels:
        sentence = warning or "Nothing."
        return Answer(key="buy", question=question, sentence=sentence, tone="no" if unsold else "yes")
    shops = {shop.key: shop.name for shop in season.shops}
    yarns = season.yarn_by_key
    parts = []
    figures = []
    for parcel in parcels.parcels:
        lines = [
            f"{wording.counted(line.balls, 'ball')} of {yarns[line.yarn].name} in {line.colour}"
            for line in parcel.lines
        ]
        parts.append(f"{wording.listed(lines)} from {shops[parcel.shop]}")
        figures.append(
            Figure(
                label=shops[parcel.shop],
                text=f"goods {write_money(parcel.goods)}, postage {write_money(parcel.postage)}, "
                f"landed {write_money(parcel.landed)}, here by {wording.date(parcel.arrives_on)}",
            )
        )
    sentence = "; ".join(parts)
    return Answer(
        key="buy",
        question=question,
        sentence=f"{sentence[0].upper()}{sentence[1:]}.",
        tone="no" if unsold else "unsure",
        reasons=(*((warning,) if warning else ()), *_why_these(parcels)),
        figures=tuple(figures),
    )


def _why_these(parcels: ParcelPlan) -> tuple[str, ...]:
    how = "every way to spread it over the shops was priced" if parcels.proven else "not every way was priced"
    if parcels.next_best is None:
        return (f"There is one way to buy it; {how}.",)
    return (f"The next best way costs {write_money(parcels.next_best)}; {how}.",)


def _cost(season: Season, parcels: ParcelPlan, wording: Wording) -> Answer:
    question = "What will it cost?"
    total = parcels.total
    if not parcels.parcels and parcels.unsupplied:
        return Answer(
            key="cost", question=question, sentence="Not known: what is short has no price yet.", tone="unsure"
        )
    if not parcels.parcels:
        return Answer(key="cost", question=question, sentence="Nothing to pay.", tone="yes")
    tone: Tone = "plain"
    border = any(parcel.border_tax.minor or parcel.border_fee.minor for parcel in parcels.parcels)
    landed = f"{write_money(total)} landed, with postage{' and what you entered for the border' if border else ''}"
    sentence = f"{landed}."
    if season.purse is not None:
        left = season.purse - total
        tone = "yes" if left.minor >= 0 else "no"
        rest = (
            f"{write_money(left)} of your purse is left"
            if left.minor >= 0
            else f"{write_money(left * -1)} more than your purse"
        )
        sentence = f"{landed}: {rest}."
    reasons = []
    if season.rates:
        day = f" of {wording.date(season.rates_as_of)}" if season.rates_as_of else ""
        rates = wording.listed([f"1 {rate.currency} = {rate.rate} {season.currency}" for rate in season.rates])
        reasons.append(f"At your rates{day}: {rates}.")
    return Answer(key="cost", question=question, sentence=sentence, tone=tone, reasons=tuple(reasons))


def _time(
    season: Season,
    garments: Sequence[GarmentPlan],
    hours: Estimate,
    least_hours_a_week: float | None,
    wording: Wording,
) -> Answer:
    question = "Will I have time?"
    placed = {garment.key: garment.forecast for garment in garments if garment.forecast is not None}
    figures = (Figure(label="hours in all", text=wording.estimate(hours), estimate=hours),)
    if not placed:
        sentence = "Nothing can be given a date yet."
        return Answer(key="time", question=question, sentence=sentence, figures=figures)
    last = max(dates.eight_in_ten for dates in placed.values())
    pace = f"{wording.estimate(hours)} at {season.hours_a_week:g} hours a week"
    work = f"{pace}, all done eight in ten by {wording.date(last)}"
    opening, tone = _deadlines([garment for garment in garments if garment.key in placed], wording)
    reasons = []
    if opening and least_hours_a_week is not None:
        reasons.append(
            f"What has a date needs at least {least_hours_a_week:.1f} hours a week, with nothing else begun."
        )
    if any(garment.state is State.SHORT for garment in garments if garment.key in placed):
        reasons.append(_when_yarn_comes(season))
    return Answer(
        key="time",
        question=question,
        sentence=f"{opening}{work[0].upper()}{work[1:]}.",
        tone=tone,
        reasons=tuple(reasons),
        figures=figures,
    )


def _deadlines(placed: Sequence[GarmentPlan], wording: Wording) -> tuple[str, Tone]:
    """Say how sure each date is kept, the least sure deciding; nothing where no garment has one."""
    due = [
        (garment.name, garment.due, garment.forecast.p_by_due)
        for garment in placed
        if garment.due is not None and garment.forecast is not None and garment.forecast.p_by_due is not None
    ]
    if not due:
        return "", "plain"
    word, tone = odds(min(p for _, _, p in due), PROMISE)
    kept = wording.listed([f"{name} by {wording.date(day)} {write_share(p)} sure" for name, day, p in due])
    return f"{word}: {kept}. ", tone


def _when_yarn_comes(season: Season) -> str:
    if season.shops:
        return "Garments that lack yarn start when their parcel should be here."
    return "Dates suppose that the missing yarn is bought at once."
