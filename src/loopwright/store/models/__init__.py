"""The tables: one row per season, per entry of each of its tables, per photo, per change that can be taken back."""

from loopwright.store.models.entry import (
    BodyRow,
    ChartRow,
    Entry,
    GarmentRow,
    LotRow,
    OrderRow,
    PatternRow,
    ShopRow,
    SwatchRow,
    YarnRow,
)
from loopwright.store.models.photo import LotPhotoRow
from loopwright.store.models.revision import Revision
from loopwright.store.models.season import SeasonRow

__all__ = [
    "BodyRow",
    "ChartRow",
    "Entry",
    "GarmentRow",
    "LotPhotoRow",
    "LotRow",
    "OrderRow",
    "PatternRow",
    "Revision",
    "SeasonRow",
    "ShopRow",
    "SwatchRow",
    "YarnRow",
]
