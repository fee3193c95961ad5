"""One substitute of a role: what of it is at home, how many put-ups it takes and what they cost."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import Literal

from loopwright.need.substitution import (
    Comparison,
    Original,
    YarnCatalogue,
    compare,
    metres_of,
    put_ups_for,
    rank_catalogue,
    wish_of,
)
from loopwright.records import Record
from loopwright.season.free_yarn import FreeColour
from loopwright.season.season import Season
from loopwright.uncertainty import Estimate, p_at_least
from loopwright.units import Money
from loopwright.yarn import Yarn

__all__ = ["Shelf", "SwapOption", "catalogue_options"]

Source = Literal["cupboard", "season", "catalogue"]


class SwapOption(Record):
    """One substitute.

    :ivar source: where it stands: at home or on its way, among the season's yarns, or in the catalogue.
    :ivar yarns: the yarns of its strand by key; one twice for two strands. A row of the catalogue is ``row-`` and its
        number.
    :ivar free: what of each yarn is at home or on its way and reserved for nothing else, by key; largest colour first.
    :ivar p_enough: chance that what is free suffices, each yarn in one colour; None where nothing is or the need is
        not known.
    :ivar put_ups: whole put-ups of each yarn for the whole role, none being at home; None where the need is not known.
    :ivar price: of those put-ups, without postage and border; None where a price is missing.
    """

    source: Source
    yarns: tuple[str, ...]
    comparison: Comparison
    free: Mapping[str, tuple[FreeColour, ...]]
    p_enough: float | None
    put_ups: Mapping[str, int] | None
    price: Money | None

    @property
    def name(self) -> str:
        """Give the name of the strand."""
        return self.comparison.substitute.name


def catalogue_options(
    original: Original, catalogue: YarnCatalogue, without: Sequence[str], top: int, sureness: float
) -> list[SwapOption]:
    """Give the best of a catalogue, compared one by one."""
    ranking = rank_catalogue(wish_of(original), catalogue, top, without)
    options = []
    for place in ranking.places:
        yarn = catalogue.yarn(int(place))
        comparison = compare(original, (yarn,))
        put_ups = _put_ups((yarn,), comparison, sureness)
        each = catalogue.price(int(place))
        options.append(
            SwapOption(
                source="catalogue",
                yarns=(yarn.key,),
                comparison=comparison,
                free={},
                p_enough=None,
                put_ups=put_ups,
                price=None if put_ups is None or each is None else each * put_ups[yarn.key],
            )
        )
    return options


def _put_ups(yarns: Sequence[Yarn], comparison: Comparison, sureness: float) -> dict[str, int] | None:
    metres = comparison.substitute.garment_m
    if metres is None:
        return None
    try:
        return put_ups_for(yarns, metres, sureness)
    except OverflowError:
        return None


class Shelf:
    """The season's own yarns: what of them is free, and what they cost in its shops."""

    def __init__(
        self, season: Season, original: Original, free: Mapping[str, tuple[FreeColour, ...]], sureness: float
    ) -> None:
        self.season, self.original, self.free, self.sureness = season, original, free, sureness

    def option(self, yarns: tuple[Yarn, ...]) -> SwapOption:
        """Compare one strand with the original."""
        comparison = compare(self.original, yarns)
        free = {yarn.key: self.free[yarn.key] for yarn in yarns if yarn.key in self.free}
        put_ups = _put_ups(yarns, comparison, self.sureness)
        return SwapOption(
            source="cupboard" if all(yarn.key in free for yarn in yarns) else "season",
            yarns=tuple(yarn.key for yarn in yarns),
            comparison=comparison,
            free=free,
            p_enough=_p_enough(yarns, comparison.substitute.garment_m, free),
            put_ups=put_ups,
            price=None if put_ups is None else self._price(put_ups),
        )

    def _price(self, put_ups: Mapping[str, int]) -> Money | None:
        """Give the goods' price in the season's currency, each yarn where it is cheapest; None if one is not sold."""
        parts = [self._cheapest(key, number) for key, number in put_ups.items()]
        known = [part for part in parts if part is not None]
        if len(known) < len(parts):
            return None
        return Money(sum(part.minor for part in known), self.season.currency)

    def _cheapest(self, key: str, number: int) -> Money | None:
        prices = []
        for shop in self.season.shops:
            rate = self.season.rate_of(shop.currency)
            if rate is None:
                continue
            for offer in shop.offers:
                if offer.yarn == key:
                    packs = math.ceil(Fraction(number, offer.balls))
                    prices.append((offer.price * packs).converted(rate, self.season.currency))
        return min(prices, key=lambda price: price.minor, default=None)


def _p_enough(
    yarns: Sequence[Yarn], strand_m: Estimate | None, free: Mapping[str, tuple[FreeColour, ...]]
) -> float | None:
    if strand_m is None or not all(yarn.key in free for yarn in yarns):
        return None
    counts = Counter(yarn.key for yarn in yarns)
    return min(p_at_least(free[key][0].length_m, metres_of(strand_m, count)) for key, count in counts.items())
