"""Which shop supplies which shortfall: the least cost landed, postage and border charges included."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from functools import cache
from itertools import combinations, product
from math import prod
from typing import NamedTuple

from loopwright.parcels.fill import cheapest_fill, cheapest_goods
from loopwright.parcels.shop import Shop
from loopwright.records import Record
from loopwright.units import Money

__all__ = ["Parcel", "ParcelLine", "ParcelPlan", "Shortfall", "cheapest_parcels"]

EXACT_UP_TO = 50_000
"""Up to this many ways to spread the shortfalls over the shops each one is priced."""
MOST_PARCELS = 5_000
"""And only up to this many different parcels: of twelve colours two shops can pack eight thousand."""


class Shortfall(Record):
    """Balls of one yarn in one colour that garments still need; all come from one dye lot, so from one shop."""

    yarn: str
    colour: str
    balls: int
    ball_mass_g: float
    garments: tuple[str, ...]


class ParcelLine(Record):
    """One yarn in one parcel, as it is paid in the shop's currency."""

    yarn: str
    colour: str
    balls: int
    balls_needed: int
    price: Money
    garments: tuple[str, ...]


class Parcel(Record):
    """One order from one shop: goods and postage in its currency, and all of it landed in the season's."""

    shop: str
    lines: tuple[ParcelLine, ...]
    goods: Money
    postage: Money
    mass_g: float
    border_tax: Money
    border_fee: Money
    landed: Money
    arrives_on: dt.date


class ParcelPlan(Record):
    """The parcels to order.

    :ivar total: of all parcels, in the season's currency.
    :ivar next_best: what the next best way would cost, when there is one.
    :ivar unsupplied: shortfalls that no shop of hers sells (enough of).
    :ivar proven: whether every way was priced.
    """

    parcels: tuple[Parcel, ...]
    total: Money
    next_best: Money | None = None
    unsupplied: tuple[Shortfall, ...] = ()
    proven: bool = True


class _Terms(NamedTuple):
    shops: Mapping[str, Shop]
    rates: Mapping[str, Decimal]
    currency: str
    today: dt.date


def _parcel(key: str, needs: Sequence[Shortfall], terms: _Terms) -> Parcel | None:
    """Price one shop's parcel, or None when the shop cannot send it."""
    shop = terms.shops[key]
    fill = cheapest_fill(shop, [(need.yarn, need.colour, need.balls, need.ball_mass_g) for need in needs])
    if fill is None:
        return None
    lines = [
        ParcelLine(
            yarn=need.yarn,
            colour=need.colour,
            balls=choice.balls,
            balls_needed=need.balls,
            price=Money(choice.cost_minor, shop.currency),
            garments=need.garments,
        )
        for need, choice in zip(needs, fill.choices, strict=True)
    ]
    sent = (fill.goods + fill.postage).converted(terms.rates[shop.currency], terms.currency)
    tax = sent.times(Fraction(str(shop.border_tax or 0)))
    fee = shop.border_fee or Money(0, terms.currency)
    return Parcel(
        shop=key,
        lines=tuple(lines),
        goods=fill.goods,
        postage=fill.postage,
        mass_g=fill.mass_g,
        border_tax=tax,
        border_fee=fee,
        landed=sent + tax + fee,
        arrives_on=terms.today + dt.timedelta(days=shop.days_to_arrive),
    )


def _price(
    assignment: Sequence[str],
    needs: Sequence[Shortfall],
    parcel_of: Callable[[str, tuple[Shortfall, ...]], Parcel | None],
) -> tuple[Parcel, ...] | None:
    parcels = []
    for key in sorted(set(assignment)):
        own = tuple(need for shop, need in zip(assignment, needs, strict=True) if shop == key)
        parcel = parcel_of(key, own)
        if parcel is None:
            return None
        parcels.append(parcel)
    return tuple(parcels)


def _can_price_all(sellers: Sequence[Sequence[str]]) -> bool:
    sold = Counter(key for keys in sellers for key in keys)
    return prod(map(len, sellers)) <= EXACT_UP_TO and sum(2**needs for needs in sold.values()) <= MOST_PARCELS


def _ways(sellers: Sequence[Sequence[str]], needs: Sequence[Shortfall], terms: _Terms) -> Sequence[tuple[str, ...]]:
    """Give every way to spread the needs, or with too many, the cheapest goods within each set of shops."""
    if _can_price_all(sellers):
        return list(product(*sellers))
    shops = sorted({key for keys in sellers for key in keys})
    ways = []
    for size in range(1, min(len(shops), 6) + 1):
        for chosen in combinations(shops, size):
            choices = [[key for key in keys if key in chosen] for keys in sellers]
            if all(choices):
                ways.append(
                    tuple(
                        min(keys, key=lambda key, need=need: _goods_alone(key, need, terms))  # type: ignore[misc]
                        for keys, need in zip(choices, needs, strict=True)
                    )
                )
    return ways


def _goods_alone(key: str, need: Shortfall, terms: _Terms) -> Fraction:
    choice = cheapest_goods(terms.shops[key], need.yarn, need.colour, need.balls)
    assert choice is not None  # only sellers are asked
    money = Money(choice.cost_minor, terms.shops[key].currency)
    return Fraction(money.converted(terms.rates[money.currency], terms.currency).minor)


def cheapest_parcels(
    shortfalls: Sequence[Shortfall],
    shops: Sequence[Shop],
    rates: Mapping[str, Decimal],
    currency: str,
    today: dt.date,
) -> ParcelPlan:
    """Give the parcels that cover all shortfalls at the least landed cost.

    Landed = (goods + postage) at the rate, plus her border tax on both, plus her border fee. Every way to spread the
    shortfalls over the shops is priced (up to 50,000 ways and 5,000 parcels; beyond, the cheapest goods within each
    set of shops).
    Balls beyond the need are bought where they save more postage than they cost.

    :param rates: what one unit of each shop's currency costs in ``currency``.
    :returns: parcels by shop; shortfalls that nobody sells are named, never dropped.
    Taxes and fees are her own figures: rules change, and the official page decides.
    """
    by_key = {shop.key: shop for shop in shops}
    terms = _Terms(by_key, rates, currency, today)

    @cache
    def parcel_of(key: str, needs: tuple[Shortfall, ...]) -> Parcel | None:
        return _parcel(key, needs, terms)

    sellers = [[key for key in by_key if parcel_of(key, (need,))] for need in shortfalls]
    supplied = [need for need, keys in zip(shortfalls, sellers, strict=True) if keys]
    unsupplied = tuple(need for need, keys in zip(shortfalls, sellers, strict=True) if not keys)
    sellers = [keys for keys in sellers if keys]
    nothing = Money(0, currency)
    if not supplied:
        return ParcelPlan(parcels=(), total=nothing, unsupplied=unsupplied)
    priced = []
    for way in _ways(sellers, supplied, terms):
        parcels = _price(way, supplied, parcel_of)
        if parcels is not None:
            total = nothing
            for parcel in parcels:
                total = total + parcel.landed
            priced.append((total.minor, len(parcels), way, parcels))
    if not priced:
        return ParcelPlan(parcels=(), total=nothing, unsupplied=tuple(shortfalls), proven=False)
    priced.sort(key=lambda row: row[:3])
    best = priced[0]
    return ParcelPlan(
        parcels=best[3],
        total=Money(best[0], currency),
        next_best=Money(priced[1][0], currency) if len(priced) > 1 else None,
        unsupplied=unsupplied,
        proven=_can_price_all(sellers),
    )
