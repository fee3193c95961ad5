"""Yarn that is ordered and on its way."""

from __future__ import annotations

import datetime as dt
from typing import Annotated

from pydantic import Field

from loopwright.records import Keyed, Record

__all__ = ["OrderLine", "YarnOrder"]


class OrderLine(Record):
    """Put-ups of one yarn in one colour within an order."""

    yarn: str
    colour: str
    put_ups: Annotated[int, Field(ge=1, le=10_000)]
    dye_lot: str = ""


class YarnOrder(Keyed):
    """A parcel she has ordered: what is in it and when it should be here.

    :ivar arrives_on: the day it is expected; garments that need it start then at the earliest.
    """

    shop: str = ""
    arrives_on: dt.date
    lines: Annotated[tuple[OrderLine, ...], Field(min_length=1)]
