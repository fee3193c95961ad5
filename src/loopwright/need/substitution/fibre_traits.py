"""What a fibre brings to a fabric: how thick it lies, how warm, how it falls, springs back and is washed."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.data import table
from loopwright.records import Record
from loopwright.yarn import FIBRES, FibreShare

__all__ = [
    "CARE_NOT_STATED",
    "CARE_STEPS",
    "FIBRE_NAMES",
    "FIBRE_TRAITS",
    "WOOL_BULK_DENSITY_G_CM3",
    "CareClass",
    "FibreTraits",
    "share_row",
]

WOOL_BULK_DENSITY_G_CM3: Final = 0.40
"""Density of a smooth wool yarn within a hand-knitted fabric, at which the effective diameter is 0.0564·√tex."""


class CareClass(Record):
    """How delicate the washing must be.

    :ivar step: higher is more delicate.
    :ivar words: what to do, in words.
    """

    key: str
    step: int
    words: str
    source: str


class FibreTraits(Record):
    """One fibre. Ranks run from 1 to 10, higher is more; they are our judgement and only put in order.

    :ivar bulk_density_g_cm3: of a yarn of this fibre within the fabric.
    :ivar brushed_density_g_cm3: the same for a brushed yarn, where that is usual; else None.
    """

    name: str
    bulk_density_g_cm3: float
    brushed_density_g_cm3: float | None
    warmth_rank: int
    drape_rank: int
    elasticity_rank: int
    felts: str
    care: str


def _read_care() -> dict[str, CareClass]:
    return {
        row["care"]: CareClass(key=row["care"], step=int(row["step"]), words=row["words"], source=row["source"])
        for row in table("yarn/care_classes.csv")
    }


def _read_traits() -> dict[str, FibreTraits]:
    return {
        row["fibre"]: FibreTraits(
            name=row["fibre"],
            bulk_density_g_cm3=float(row["bulk_density_g_cm3"]),
            brushed_density_g_cm3=float(row["brushed_density_g_cm3"]) if row["brushed_density_g_cm3"] else None,
            warmth_rank=int(row["warmth_rank"]),
            drape_rank=int(row["drape_rank"]),
            elasticity_rank=int(row["elasticity_rank"]),
            felts=row["felts"],
            care=row["care"],
        )
        for row in table("fibre/traits.csv")
    }


CARE_STEPS: Final = _read_care()
"""The classes of care by key. Source: ``data/yarn/care_classes.csv``."""
CARE_NOT_STATED: Final = "not stated"
"""Key of the class for a yarn without a known fibre."""
FIBRE_TRAITS: Final = _read_traits()
"""The traits by fibre. Source: ``data/fibre/traits.csv``."""
FIBRE_NAMES: Final = (*FIBRES, "other")
"""The columns of a matrix of fibre shares, in this order."""
_PLACE = {name: place for place, name in enumerate(FIBRE_NAMES)}


def share_row(blend: Iterable[FibreShare]) -> NDArray[np.float64]:
    """Give a blend as shares of one by mass, in the order of :data:`FIBRE_NAMES`; zeros where nothing is stated."""
    row = np.zeros(len(FIBRE_NAMES))
    for share in blend:
        row[_PLACE[share.fibre]] += share.percent / 100
    return row


def fibre_place(name: str) -> int:
    """Give the column of a fibre in a matrix of shares.

    :raises KeyError: there is no such fibre.
    """
    return _PLACE[name]


def known_fibres() -> Sequence[FibreTraits]:
    """Give the traits in the order of :data:`FIBRE_NAMES`, without ``other``."""
    return [FIBRE_TRAITS[name] for name in FIBRE_NAMES[:-1]]
