"""The tables: one row per season, one per entry of each of its tables, one per change that can be taken back."""

from loopwright.store.models.entry import (
    BodyRow,
    Entry,
    GarmentRow,
    LotRow,
    OrderRow,
    PatternRow,
    ShopRow,
    SwatchRow,
    YarnRow,
)
from loopwright.store.models.revision import Revision
from loopwright.store.models.season import SeasonRow

__all__ = [
    "BodyRow",
    "Entry",
    "GarmentRow",
    "LotRow",
    "OrderRow",
    "PatternRow",
    "Revision",
    "SeasonRow",
    "ShopRow",
    "SwatchRow",
    "YarnRow",
]
