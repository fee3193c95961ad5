"""A catalogue of yarns by column, ranked as a whole."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.need.substitution.fibre_traits import FIBRE_NAMES, fibre_place, share_row
from loopwright.need.substitution.original import Wish
from loopwright.need.substitution.score import Ranking, rank
from loopwright.need.substitution.strands import StrandColumns, strand_columns
from loopwright.units import Money
from loopwright.yarn import FibreShare, Yarn

__all__ = ["NO_PRICE", "YarnCatalogue", "catalogue_of", "free_of", "rank_catalogue"]

NO_PRICE: Final = -1


@dataclass(frozen=True, slots=True, eq=False)
class YarnCatalogue:
    """Yarns, one a row; every column has the length n.

    :ivar names: as they are called.
    :ivar length_m, mass_g: of one put-up.
    :ivar price_minor: of one put-up, in minor units; ``NO_PRICE`` where none is stated.
    :ivar currency: place of its currency in ``currencies``.
    :ivar shares: n × 21 shares of one by mass, in the order of ``FIBRE_NAMES``; a row of zeros states no fibre.
    :ivar strands: the same yarns as strands, worked out once when the catalogue is made.
    """

    names: Sequence[str]
    length_m: NDArray[np.float64]
    mass_g: NDArray[np.float64]
    price_minor: NDArray[np.int64]
    currency: NDArray[np.int16]
    currencies: tuple[str, ...]
    shares: NDArray[np.float32]
    strands: StrandColumns

    @classmethod
    def made(
        cls,
        names: Sequence[str],
        length_m: NDArray[np.float64],
        mass_g: NDArray[np.float64],
        shares: NDArray[np.float32],
        prices: tuple[NDArray[np.int64], NDArray[np.int16], tuple[str, ...]] | None = None,
    ) -> YarnCatalogue:
        """Make a catalogue from its columns.

        :param prices: minor units, places of the currencies, and the currencies; None for a catalogue without prices.
        :raises ValueError: the columns are not equally long, or a length or mass is not above nothing.
        """
        number = len(names)
        if prices is None:
            prices = (np.full(number, NO_PRICE, np.int64), np.zeros(number, np.int16), ())
        minor, currency, currencies = prices
        if {len(length_m), len(mass_g), len(shares), len(minor), len(currency)} != {number}:
            raise ValueError(f"found columns of several lengths; wanted {number} rows in each")
        if shares.shape[1] != len(FIBRE_NAMES):
            raise ValueError(f"found {shares.shape[1]} fibres; wanted {len(FIBRE_NAMES)}")
        if not (np.all(length_m > 0) and np.all(mass_g > 0)):
            raise ValueError("found a length or a mass that is not above nothing")
        strands = strand_columns(mass_g / length_m * 1000, shares)
        return cls(names, length_m, mass_g, minor, currency, currencies, shares, strands)

    def __len__(self) -> int:
        return len(self.names)

    def yarn(self, place: int) -> Yarn:
        """Give one row as a yarn, under the key ``row-`` and its number from 1."""
        blend = {
            FIBRE_NAMES[fibre]: round(float(self.shares[place, fibre]) * 100, 3)
            for fibre in np.flatnonzero(self.shares[place])
        }
        return Yarn(
            key=f"row-{place + 1}",
            name=self.names[place],
            fibres=tuple(FibreShare(fibre=fibre, percent=percent) for fibre, percent in blend.items()),
            length_m=float(self.length_m[place]),
            mass_g=float(self.mass_g[place]),
        )

    def price(self, place: int) -> Money | None:
        """Give the price of one put-up of a row, or None where none is stated."""
        minor = int(self.price_minor[place])
        return None if minor == NO_PRICE else Money(minor, self.currencies[int(self.currency[place])])


def catalogue_of(yarns: Sequence[Yarn]) -> YarnCatalogue:
    """Make a catalogue of yarns as a season has them, without prices."""
    shares = np.array([share_row(yarn.fibres) for yarn in yarns]).reshape(-1, len(FIBRE_NAMES)).astype(np.float32)
    return YarnCatalogue.made(
        tuple(yarn.name for yarn in yarns),
        np.array([yarn.length_m for yarn in yarns], dtype=np.float64),
        np.array([yarn.mass_g for yarn in yarns], dtype=np.float64),
        shares,
    )


def free_of(shares: NDArray[np.floating], fibres: Iterable[str]) -> NDArray[np.bool_]:
    """Say of each row of shares whether it is surely free of these fibres.

    A yarn of which a fibre is not stated is never surely free. On an allergy ask the maker, too: a mill spins many
    fibres on one machine.
    """
    left_out = [fibre_place(fibre) for fibre in fibres]
    if not left_out:
        return np.ones(len(shares), dtype=bool)
    stated = (shares[:, -1] == 0) & (shares.sum(axis=1) > 0)
    free: NDArray[np.bool_] = stated & ~(shares[:, left_out] > 0).any(axis=1)
    return free


def rank_catalogue(wish: Wish, catalogue: YarnCatalogue, best: int, without: Iterable[str] = ()) -> Ranking:
    """Rank a whole catalogue against one wish and give the best.

    :param without: fibres that must not be in it, nor may anything in it be unknown then.
    """
    fibres = tuple(without)
    return rank(wish, catalogue.strands, best, free_of(catalogue.shares, fibres) if fibres else None)
