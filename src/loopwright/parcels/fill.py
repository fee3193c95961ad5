"""What goes into one parcel: packs chosen so that goods and postage together cost least."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from loopwright.parcels.packs import PackChoice, pack_mixes
from loopwright.parcels.shop import Postage, Shop
from loopwright.records import Record
from loopwright.units import Money

__all__ = ["Fill", "cheapest_fill", "cheapest_goods"]


class Fill(Record):
    """Packs for each need of a parcel, in the order of the needs, with goods and postage in the shop's currency."""

    choices: tuple[PackChoice, ...]
    goods: Money
    postage: Money
    mass_g: float


def _most_postage_minor(postage: Postage) -> int:
    """Give the dearest postage there is: more than this can never be saved on it."""
    prices = [step.price.minor for step in postage.steps]
    return max(prices if postage.flat is None else [postage.flat.minor])


def _worth_adding_minor(postage: Postage, cheapest: Money, mass_g: float) -> int:
    """Give by how much goods may be dearer than the cheapest, of this mass, and still save it in postage."""
    as_it_is = postage.price(cheapest, mass_g)
    if as_it_is is None:
        return _most_postage_minor(postage)
    most = as_it_is.minor
    if postage.free_from is not None and cheapest.minor + most >= postage.free_from.minor:
        return most
    prices = [step.price.minor for step in postage.steps]
    return max(0, most - min(prices if postage.flat is None else [postage.flat.minor]))


@lru_cache(maxsize=4096)
def _mixes(shop: Shop, yarn: str, colour: str, balls: int, extra_minor: int) -> tuple[PackChoice, ...]:
    offers = [offer for offer in shop.offers if offer.sells(yarn, colour)]
    if not offers:
        return ()
    stocks = [offer.in_stock for offer in offers if offer.in_stock is not None]
    packs = [(offer.balls, offer.price.minor) for offer in offers]
    return pack_mixes(balls, packs, extra_minor=extra_minor, in_stock=min(stocks, default=None))


def cheapest_goods(shop: Shop, yarn: str, colour: str, balls: int) -> PackChoice | None:
    """Give the cheapest packs of one yarn from the shelf of a shop, or None when it cannot supply them."""
    mixes = _mixes(shop, yarn, colour, balls, 0)
    return mixes[0] if mixes else None


def cheapest_fill(shop: Shop, needs: Sequence[tuple[str, str, int, float]]) -> Fill | None:
    """Choose packs for every need so that goods and postage together cost least.

    Dearer goods are taken where they save more postage: one ball more that makes it free, or single balls in place
    of a heavy pack. Exact (up to sixty packs beyond a need), since no more can be saved than it costs to send the
    cheapest goods.

    :param needs: yarn, colour, balls and grams of a ball, for each line.
    :returns: None when the shop does not sell one of them, or cannot send the parcel.
    """
    most = _most_postage_minor(shop.postage)
    mixes_of = [_mixes(shop, yarn, colour, balls, most) for yarn, colour, balls, _ in needs]
    if not all(mixes_of):
        return None
    least = sum(mixes[0].cost_minor for mixes in mixes_of)
    least_mass = sum(mixes[0].balls * need[3] for mixes, need in zip(mixes_of, needs, strict=True))
    extra = _worth_adding_minor(shop.postage, Money(least, shop.currency), least_mass)
    fills = {(0, 0.0): tuple[PackChoice, ...]()}
    for mixes, (*_, ball_mass_g) in zip(mixes_of, needs, strict=True):
        grown: dict[tuple[int, float], tuple[PackChoice, ...]] = {}
        for (over, mass), chosen in fills.items():
            for choice in mixes:
                dearer = over + choice.cost_minor - mixes[0].cost_minor
                if dearer > extra:
                    break
                grown.setdefault((dearer, mass + choice.balls * ball_mass_g), (*chosen, choice))
        fills = grown
    sent = []
    for (over, mass), chosen in fills.items():
        goods = Money(least + over, shop.currency)
        postage = shop.postage.price(goods, mass)
        if postage is not None:
            sent.append((goods.minor + postage.minor, mass, goods.minor, chosen, postage))
    if not sent:
        return None
    _, mass, goods_minor, chosen, postage = min(sent, key=lambda row: row[:3])
    return Fill(choices=chosen, goods=Money(goods_minor, shop.currency), postage=postage, mass_g=mass)
