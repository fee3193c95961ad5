"""Whether every key in a season leads somewhere; all faults are found at once, each with its place."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from difflib import get_close_matches

from loopwright.fit import size_between
from loopwright.garment import Garment
from loopwright.pattern import PatternFacts
from loopwright.season.facts import SeasonFacts
from loopwright.units import BadInput, write_money

__all__ = ["Faults", "reference_faults"]


class Faults(ValueError):
    """Several faults of one season, each a :class:`~loopwright.units.BadInput` with its place."""

    def __init__(self, faults: list[BadInput]) -> None:
        super().__init__("; ".join(str(fault) for fault in faults))
        self.faults = faults


def _missing(place: str, key: str, known: Iterable[str], kind: str) -> Iterator[BadInput]:
    names = list(known)
    if key in names:
        return
    near = get_close_matches(key, names, n=1)
    yield BadInput(
        place=place,
        found=f"the {kind} '{key}', which is not there",
        wanted=f"a {kind} of this season ({', '.join(names) if names else 'it has none yet'})",
        hint=f"did you mean '{near[0]}'?" if near else None,
    )


def reference_faults(season: SeasonFacts) -> list[BadInput]:
    """Give every key that leads nowhere, with its place, what was found and what is there."""
    return [
        *_empty(season),
        *_yarn_keys(season),
        *_charts(season),
        *(fault for garment in season.garments for fault in _garment(season, garment)),
        *_rates(season),
    ]


def _empty(season: SeasonFacts) -> Iterator[BadInput]:
    if not season.garments:
        yield BadInput(
            place="garments",
            found="a season without garments",
            wanted="at least one garment, such as [garments.cardigan]",
        )


def _yarn_keys(season: SeasonFacts) -> Iterator[BadInput]:
    yarns = season.yarn_by_key
    for lot in season.cupboard:
        yield from _missing(f"cupboard.{lot.key}.yarn", lot.yarn, yarns, "yarn")
    for swatch in season.swatches:
        for yarn in swatch.yarns:
            yield from _missing(f"swatches.{swatch.key}.yarns", yarn, yarns, "yarn")
    for order in season.orders:
        for number, line in enumerate(order.lines):
            yield from _missing(f"orders.{order.key}.lines.{number}.yarn", line.yarn, yarns, "yarn")
    for shop in season.shops:
        for number, offer in enumerate(shop.offers):
            yield from _missing(f"shops.{shop.key}.offers.{number}.yarn", offer.yarn, yarns, "yarn")


def _charts(season: SeasonFacts) -> Iterator[BadInput]:
    for chart in season.charts:
        place = f"charts.{chart.key}"
        if chart.garment is not None:
            yield from _missing(f"{place}.garment", chart.garment, season.garment_by_key, "garment")
        if chart.swatch is not None:
            yield from _missing(f"{place}.swatch", chart.swatch, season.swatch_by_key, "swatch")


def _garment(season: SeasonFacts, garment: Garment) -> Iterator[BadInput]:
    place = f"garments.{garment.key}"
    if garment.pattern is not None:
        yield from _missing(f"{place}.pattern", garment.pattern, season.pattern_by_key, "pattern")
    elif garment.swatch is None:
        yield BadInput(
            place=f"{place}.swatch",
            found="a draft of your own without a swatch",
            wanted="the swatch whose counts it is drafted at",
        )
    if garment.wearer is not None:
        yield from _missing(f"{place}.for", garment.wearer, season.body_by_key, "body")
    if garment.swatch is not None:
        yield from _missing(f"{place}.swatch", garment.swatch, season.swatch_by_key, "swatch")
    lots = {lot.key: lot for lot in season.cupboard}
    for role in garment.yarns:
        role_place = f"{place}.yarns.{role.key}"
        own = (role.yarn, *(strand.yarn for strand in role.held_with))
        for yarn in own:
            yield from _missing(f"{role_place}.yarn", yarn, season.yarn_by_key, "yarn")
        for lot in role.lots:
            yield from _missing(f"{role_place}.lots", lot, lots, "lot")
            if lot in lots and lots[lot].yarn not in own:
                yield BadInput(
                    place=f"{role_place}.lots",
                    found=f"the lot '{lot}', which is of the yarn '{lots[lot].yarn}'",
                    wanted=f"a lot of the yarn '{role.yarn}'",
                )
    for field, run in garment.colours.named():
        if run.chart is not None:
            yield from _chart_on(season, garment, run.chart, f"{place}.colours.{field}")
    yield from _pattern_side(season, garment)


def _chart_on(season: SeasonFacts, garment: Garment, key: str, place: str) -> Iterator[BadInput]:
    """Check that a chart is there, and that every role of it has a yarn in the garment."""
    charts = {chart.key: chart for chart in season.charts}
    yield from _missing(place, key, charts, "chart")
    if key not in charts:
        return
    known = [role.key for role in garment.yarns]
    strange = [one.role for one in charts[key].roles if one.role not in known]
    if strange:
        yield BadInput(
            place=place,
            found=f"the chart '{key}', which has the role '{strange[0]}'",
            wanted=f"a chart of this garment's roles ({', '.join(known)}), or a yarn for that role",
        )


def _pattern_side(season: SeasonFacts, garment: Garment) -> Iterator[BadInput]:
    pattern = season.pattern_by_key.get(garment.pattern or "")
    if pattern is None:
        return
    place = f"garments.{garment.key}"
    if garment.size is not None:
        yield from _missing(f"{place}.size", garment.size, pattern.sizes, "size")
    stated = [amount.key for amount in pattern.yarn]
    if stated:
        for role in garment.yarns:
            yield from _missing(f"{place}.yarns.{role.key}", role.key, stated, "role")
        for key in stated:
            if garment.role(key) is None:
                yield BadInput(
                    place=f"{place}.yarns",
                    found=f"no yarn for the role '{key}'",
                    wanted=f"a yarn for each role of the pattern ({', '.join(stated)})",
                )
    yield from _changes(pattern, garment)
    if garment.role(garment.changes.role) is None and (
        garment.changes.body_longer_cm or garment.changes.sleeves_longer_cm
    ):
        yield from _missing(f"{place}.changes.role", garment.changes.role, [role.key for role in garment.yarns], "role")


def _changes(pattern: PatternFacts, garment: Garment) -> Iterator[BadInput]:
    place = f"garments.{garment.key}.changes"
    changes = garment.changes
    if changes.bust_girth_cm is not None:
        try:
            size_between(pattern, changes.bust_girth_cm)
        except BadInput as fault:
            yield fault.at(f"{place}.bust_girth")
    for name, longer, row in (
        ("body_longer", changes.body_longer_cm, pattern.finished.length),
        ("sleeves_longer", changes.sleeves_longer_cm, pattern.finished.sleeve_length),
    ):
        if longer is None:
            continue
        stated = [length for length in row or () if length is not None]
        if not stated:
            yield BadInput(
                place=f"{place}.{name}",
                found=f"a change of {longer:g} cm to a length that the pattern does not state",
                wanted="the finished length of that part in the pattern's facts",
            )
        elif min(stated) + longer <= 0:
            yield BadInput(
                place=f"{place}.{name}",
                found=f"{-longer:g} cm less of {min(stated):g} cm",
                wanted="something left to knit",
            )


def _rates(season: SeasonFacts) -> Iterator[BadInput]:
    for shop in season.shops:
        if season.rate_of(shop.currency) is None:
            yield BadInput(
                place="rates",
                found=f"no rate for {shop.currency}, the currency of {shop.name}",
                wanted=f'rates = {{ {shop.currency} = "…" }}: what one {shop.currency} costs in {season.currency}',
            )
        fee = shop.border_fee
        if fee is not None and fee.currency != season.currency:
            yield BadInput(
                place=f"shops.{shop.key}.border_fee",
                found=write_money(fee),
                wanted=f"an amount in {season.currency}, the season's currency",
            )
    if season.purse is not None and season.purse.currency != season.currency:
        yield BadInput(
            place="purse",
            found=write_money(season.purse),
            wanted=f"an amount in {season.currency}, the season's currency",
        )
