"""Frozen records with unit-aware fields: the shape that every domain value and the season file share.

* :class:`Record`: the base of all frozen values.
* :class:`Keyed`, :func:`keyed_table`: records that stand in a table of a season file under their own key.
* ``LengthCm``, ``YarnLengthM``, ``MassG``, ``Share`` and their kin: numbers that read ``14 in`` or ``470 yd``.
"""

from loopwright.records.base import FROM_FILE, Key, Keyed, Record, keyed_table
from loopwright.records.fields import (
    CountField,
    GrowthCm,
    LengthCm,
    MassG,
    MoneyField,
    NeedleMm,
    Share,
    YarnLengthM,
)

__all__ = [
    "FROM_FILE",
    "CountField",
    "GrowthCm",
    "Key",
    "Keyed",
    "LengthCm",
    "MassG",
    "MoneyField",
    "NeedleMm",
    "Record",
    "Share",
    "YarnLengthM",
    "keyed_table",
]
