"""Tables as comma-separated values. Source: RFC 4180; semicolons and tabs are read as well."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import Final

from loopwright.files.cupboard_table.grid import MOST_BYTES, MOST_CELL, MOST_ROWS, Cell, Grid, GridRow, UnreadableTable
from loopwright.files.cupboard_table.grid import grid_of as _grid_of

__all__ = ["read_csv", "read_csv_text", "write_csv"]

_SEPARATORS: Final = (",", ";", "\t")
_FORMULA: Final = re.compile(r"'*[=+\-@\t\r]")
"""How a text begins that a spreadsheet might take for a formula, be it marked already."""
_MARKED: Final = re.compile(r"''*[=+\-@\t\r]")


def read_csv(content: bytes, name: str) -> Grid:
    """Read a table of comma-separated values in UTF-8, or UTF-16 with its mark.

    :raises UnreadableTable: the bytes are no such text, or hold no table.
    """
    if len(content) > MOST_BYTES:
        raise UnreadableTable.make(f"more than {MOST_BYTES // 1_000_000} MB", "a smaller table", file=name)
    encoding = "utf-16" if content.startswith((b"\xff\xfe", b"\xfe\xff")) else "utf-8-sig"
    try:
        text = content.decode(encoding)
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise UnreadableTable.make(
            "bytes that are not text in UTF-8",
            "a table in UTF-8",
            file=name,
            line=line,
            hint="save it from the spreadsheet as CSV UTF-8",
        ) from error
    return read_csv_text(text, name)


def read_csv_text(text: str, name: str) -> Grid:
    """Read a table of comma-separated values.

    :raises UnreadableTable: the text holds no table.
    """
    rows: list[GridRow] = []
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=_separator(text), strict=True)
    begins = 1
    try:
        for cells in reader:
            if any(cells):
                rows.append(GridRow(begins, tuple(_unmarked(cell) for cell in cells)))
            begins = reader.line_num + 1
            if len(rows) > MOST_ROWS + 1:
                break
    except csv.Error as error:
        raise UnreadableTable.make(
            f"a row that cannot be read: {error}",
            f"cells of at most {MOST_CELL:,} letters, text with a separator in double quotes",
            file=name,
            line=begins,
        ) from error
    return _grid_of(name, rows)


def _separator(text: str) -> str:
    """Give the separator that stands most often in the first line that holds something, outside of quotes."""
    first = next((line for line in text.splitlines() if line.strip()), "")
    bare = re.sub(r'"[^"]*"', "", first)
    return max(_SEPARATORS, key=bare.count)


def _unmarked(cell: str) -> str:
    return cell[1:] if _MARKED.match(cell) else cell


def write_csv(rows: Iterable[Sequence[Cell]]) -> bytes:
    """Write a table so that any spreadsheet reads it: UTF-8 with its mark, lines ended as RFC 4180 wants them.

    A text that a spreadsheet would run as a formula gets an apostrophe in front, which :func:`read_csv` takes off.
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    for row in rows:
        writer.writerow([_written(cell) for cell in row])
    return out.getvalue().encode("utf-8-sig")


def _written(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, str):
        return f"'{cell}" if _FORMULA.match(cell) else cell
    return number_text(cell)


def number_text(number: float) -> str:
    """Write a number so that it reads back to the very same, without an exponent."""
    whole = int(number) if float(number).is_integer() else None
    return str(whole) if whole is not None else f"{Decimal(repr(number)):f}"
