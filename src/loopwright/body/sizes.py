"""A table of body measures by size, to draft a range of sizes from."""

from __future__ import annotations

from functools import cache
from typing import Literal, get_args

from loopwright.data import table

__all__ = ["SIZE_TABLES", "SizeTable", "size_table"]

SizeTable = Literal["women", "children"]
SIZE_TABLES: tuple[SizeTable, ...] = get_args(SizeTable)


@cache
def _tables() -> dict[str, dict[str, dict[str, float]]]:
    tables: dict[str, dict[str, dict[str, float]]] = {}
    for row in table("body/sizes.csv"):
        tables.setdefault(row["table"], {}).setdefault(row["size"], {})[row["measure"]] = float(row["cm"])
    return tables


def size_table(name: SizeTable) -> dict[str, dict[str, float]]:
    """Give body measures in cm by size and measure; a child's chest stands as the bust.

    Source: ``data/body/sizes.csv``, a trade council's table; most of the women's figures are from memory, as its column
    ``status`` says, so a draft over them is a first look and not a graded pattern.
    """
    return _tables()[name]
