"""The cupboard as a table, in and out: comma-separated values and workbooks.

* :func:`cupboard_rows`, :func:`write_csv`, :func:`write_xlsx`: every lot with its yarn, and what is worked out from it.
* :func:`read_table`: a file as a :class:`Grid`, bounded in bytes, rows and columns.
* :func:`understand`: what its columns mean, :class:`Columns`; what is not clear is asked, never guessed.
* :func:`take_in`, :func:`entries_to_keep`: what is new and what is there already, before anything is kept.
"""

from __future__ import annotations

from loopwright.files.cupboard_table.columns import ASIDE, FIELDS, Column, Columns, Field, meaning_of, understand
from loopwright.files.cupboard_table.csv_grid import read_csv, read_csv_text, write_csv
from loopwright.files.cupboard_table.export import cupboard_rows
from loopwright.files.cupboard_table.grid import MOST_BYTES, Grid, GridRow, UnreadableTable
from loopwright.files.cupboard_table.taking_in import (
    COMPARED,
    Added,
    Choice,
    Matched,
    TakenIn,
    entries_to_keep,
    take_in,
)
from loopwright.files.cupboard_table.xlsx_grid import read_xlsx, write_xlsx

__all__ = [
    "ASIDE",
    "COMPARED",
    "FIELDS",
    "MOST_BYTES",
    "Added",
    "Choice",
    "Column",
    "Columns",
    "Field",
    "Grid",
    "GridRow",
    "Matched",
    "TakenIn",
    "UnreadableTable",
    "cupboard_rows",
    "entries_to_keep",
    "meaning_of",
    "read_csv",
    "read_csv_text",
    "read_table",
    "read_xlsx",
    "take_in",
    "understand",
    "write_csv",
    "write_xlsx",
]

_ZIP = b"PK"


def read_table(content: bytes, name: str) -> Grid:
    """Read a table, a workbook or comma-separated values, whichever it is.

    :raises UnreadableTable: it is neither, or holds no table.
    """
    return read_xlsx(content, name) if content.startswith(_ZIP) else read_csv(content, name)
