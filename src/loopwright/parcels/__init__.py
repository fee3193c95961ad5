"""Buying: shops, their offers and postage, and the cheapest way to cover what is short.

* :class:`Shop`, :class:`Offer`: what is sold, where, for how much.
* :func:`cheapest_packs`: singles and packs that cover a number of balls.
* :func:`cheapest_parcels`: which shop supplies which shortfall, postage and border charges included.
"""

from loopwright.parcels.choose import Parcel, ParcelLine, ParcelPlan, Shortfall, cheapest_parcels
from loopwright.parcels.packs import PackChoice, cheapest_packs
from loopwright.parcels.shop import Offer, Postage, Shop

__all__ = [
    "Offer",
    "PackChoice",
    "Parcel",
    "ParcelLine",
    "ParcelPlan",
    "Postage",
    "Shop",
    "Shortfall",
    "cheapest_packs",
    "cheapest_parcels",
]
