"""Tables that ship with the package: one folder per subject, every row with its source and status.

The tables are part of the program, like its formulas, so they are read once and kept. Nothing else in the
core touches a file.
"""

from __future__ import annotations

import csv
from functools import cache
from importlib.resources import files

__all__ = ["table"]


@cache
def table(name: str) -> tuple[dict[str, str], ...]:
    """Give the rows of a packaged table, such as ``table("pace/fabrics.csv")``.

    :param name: path below ``loopwright/data``, always with forward slashes.
    :returns: one dictionary per row, every cell as text; an empty cell means *not stated*.
    :raises FileNotFoundError: no table of that name is in the package.
    """
    text = files(__name__).joinpath(*name.split("/")).read_text(encoding="utf-8")
    return tuple(csv.DictReader(text.splitlines()))
