"""Chart symbols: what each box means, how many stitches it takes and makes, and its mark in a file.

Symbols are not the same with every publisher. Meanings and shapes follow the descriptions in
``data/chart/symbols.csv``, each with its source; most shapes are recalled, which the table says.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.data import table
from loopwright.units import BadInput

__all__ = [
    "BOXES",
    "BY_KEY",
    "BY_MARK",
    "KNIT",
    "MADE",
    "MIRRORED",
    "NO_STITCH",
    "SYMBOLS",
    "TAKEN",
    "Symbol",
    "symbol",
]


@dataclass(frozen=True, slots=True)
class Symbol:
    """One symbol.

    :ivar key: unique, in plain words.
    :ivar mark: the one character that stands for it in a file.
    :ivar shape: what its box shows, in words.
    :ivar right_side, wrong_side: what is worked, by the side of the fabric that faces the knitter.
    :ivar takes, makes: stitches of the row below that it uses up, stitches that it leaves.
    :ivar boxes: boxes that it fills.
    :ivar mirror: key of the symbol that does the same the other way round; its own where there is none.
    """

    key: str
    name: str
    mark: str
    shape: str
    right_side: str
    wrong_side: str
    takes: int
    makes: int
    boxes: int
    mirror: str


def _read() -> tuple[Symbol, ...]:
    return tuple(
        Symbol(
            key=row["key"],
            name=row["name"],
            mark=row["mark"],
            shape=row["box_shows"],
            right_side=row["right_side"],
            wrong_side=row["wrong_side"],
            takes=int(row["takes"]),
            makes=int(row["makes"]),
            boxes=int(row["boxes"]),
            mirror=row["mirror"] or row["key"],
        )
        for row in table("chart/symbols.csv")
    )


SYMBOLS: Final = _read()
"""Every symbol; a chart's cells hold their places in it."""
BY_KEY: Final = {one.key: at for at, one in enumerate(SYMBOLS)}
BY_MARK: Final = {one.mark: at for at, one in enumerate(SYMBOLS)}
KNIT: Final = BY_KEY["knit"]
NO_STITCH: Final = BY_KEY["no-stitch"]

BOXES: Final[NDArray[np.int64]] = np.array([one.boxes for one in SYMBOLS], dtype=np.int64)
"""Boxes that each symbol fills."""
TAKEN: Final[NDArray[np.int64]] = np.array([one.takes // one.boxes for one in SYMBOLS], dtype=np.int64)
MADE: Final[NDArray[np.int64]] = np.array([one.makes // one.boxes for one in SYMBOLS], dtype=np.int64)
"""Stitches taken and made by one box; a crossing takes and makes one in each of its boxes."""
MIRRORED: Final[NDArray[np.uint8]] = np.array([BY_KEY[one.mirror] for one in SYMBOLS], dtype=np.uint8)
"""Place of each symbol's mirror."""


def symbol(key: str) -> Symbol:
    """Give one symbol.

    :raises BadInput: there is none of that key.
    """
    if key not in BY_KEY:
        raise BadInput(found=f"the stitch '{key}'", wanted=f"one of {', '.join(BY_KEY)}")
    return SYMBOLS[BY_KEY[key]]
