"""Shops, what they offer, and what it costs to have it sent."""

from __future__ import annotations

from typing import Annotated

from pydantic import AfterValidator, Field, model_validator

from loopwright.records import Keyed, MassG, MoneyField, Record, Share
from loopwright.units import BadInput, Money, write_money

__all__ = ["Currency", "Offer", "Postage", "PostageStep", "Shop"]


def _iso_4217(code: str) -> str:
    if not (len(code) == 3 and code.isascii() and code.isalpha() and code.isupper()):
        raise BadInput(found=f"the currency '{code}'", wanted="an ISO 4217 code of three capitals, such as NZD")
    return code


Currency = Annotated[str, AfterValidator(_iso_4217)]
"""A currency by its ISO 4217 code."""


class Offer(Record):
    """A yarn as one shop sells it.

    :ivar yarn: key of the yarn.
    :ivar colours: colours it can be had in; empty for every colour.
    :ivar price: for one pack, in the shop's currency.
    :ivar balls: put-ups in one pack.
    :ivar in_stock: put-ups on the shelf, if known: all from one dye lot.
    """

    yarn: str
    colours: tuple[str, ...] = ()
    price: MoneyField
    balls: Annotated[int, Field(ge=1, le=1000)] = 1
    in_stock: Annotated[int | None, Field(ge=0)] = None

    def sells(self, yarn: str, colour: str) -> bool:
        """Say whether this yarn is offered in this colour."""
        return self.yarn == yarn and (not self.colours or colour in self.colours)


class PostageStep(Record):
    """Postage for a parcel up to a mass, that mass included."""

    up_to_g: MassG = Field(alias="up_to")
    price: MoneyField


class Postage(Record):
    """What a shop charges to send a parcel: one price, or steps by mass; free from an amount of goods on.

    :ivar flat: one price whatever the mass.
    :ivar steps: price by mass, ascending; above the last step the shop does not send.
    :ivar free_from: goods of at least this much go free.
    """

    flat: MoneyField | None = None
    steps: tuple[PostageStep, ...] = ()
    free_from: MoneyField | None = None
    packing_g: MassG | None = Field(default=None, alias="packing")

    @model_validator(mode="after")
    def _one_way(self) -> Postage:
        if (self.flat is None) == (not self.steps):
            raise BadInput(found="neither or both of flat and steps", wanted="postage as flat, or as steps by mass")
        tops = [step.up_to_g for step in self.steps]
        if tops != sorted(set(tops)):
            raise BadInput(found=f"steps up to {tops}", wanted="steps in rising order of mass")
        return self

    def price(self, goods: Money, mass_g: float) -> Money | None:
        """Give the postage for goods of this price and mass, or None when the parcel is too heavy.

        :param mass_g: of the yarn; the packing is added. A step's top belongs to the step; nothing is interpolated.
        """
        if self.free_from is not None and goods.minor >= self.free_from.minor:
            return Money(0, goods.currency)
        if self.flat is not None:
            return self.flat
        gross = mass_g + (self.packing_g or 0)
        return next((step.price for step in self.steps if gross <= step.up_to_g), None)


class Shop(Keyed):
    """Where yarn can be bought. Taxes and fees at the border are her own figures, never ours.

    :ivar currency: of every price of this shop.
    :ivar border_tax: share of goods and postage taken at the border, as she reads it on the official page.
    :ivar border_fee: what the carrier or the border adds to a parcel, in the season's currency.
    """

    name: str
    country: str = ""
    currency: Currency
    postage: Postage
    days_to_arrive: Annotated[int, Field(ge=0, le=365)] = 7
    days_to_arrive_sd: Annotated[float, Field(ge=0, le=180)] = 0.0
    border_tax: Share | None = None
    border_fee: MoneyField | None = None
    offers: tuple[Offer, ...] = ()
    note: str = ""

    @model_validator(mode="after")
    def _prices_in_its_currency(self) -> Shop:
        prices = [(f"offers.{number}.price", offer.price) for number, offer in enumerate(self.offers)]
        prices += [(f"postage.steps.{n}.price", step.price) for n, step in enumerate(self.postage.steps)]
        prices += [("postage.flat", self.postage.flat)] if self.postage.flat else []
        prices += [("postage.free_from", self.postage.free_from)] if self.postage.free_from else []
        for place, price in prices:
            if price.currency != self.currency:
                raise BadInput(place=place, found=write_money(price), wanted=f"{self.currency}, the shop's currency")
        return self
