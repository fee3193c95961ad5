"""Tables as sheets of a workbook (Office Open XML, ECMA-376), read with bounds: such a file is a zip of XML."""

from __future__ import annotations

import datetime as dt
import io
import re
import zipfile
from collections.abc import Iterable, Sequence
from typing import Any, Final
from xml.etree.ElementTree import ParseError

from openpyxl import Workbook, load_workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter
from openpyxl.utils.exceptions import InvalidFileException

from loopwright.files.cupboard_table.csv_grid import number_text
from loopwright.files.cupboard_table.grid import (
    MOST_BYTES,
    MOST_COLUMNS,
    MOST_ROWS,
    Cell,
    Grid,
    GridRow,
    UnreadableTable,
    grid_of,
)

__all__ = ["read_xlsx", "write_xlsx"]

MOST_UNPACKED_BYTES: Final = 60_000_000
MOST_PARTS: Final = 500
_ROOM_ABOVE: Final = 50
"""Rows that may stand empty above and between."""
_WANTED: Final = "a workbook, .xlsx, or a table as .csv"
_BROKEN: Final = (
    zipfile.BadZipFile,
    InvalidFileException,
    ParseError,
    KeyError,
    ValueError,
    TypeError,
    AttributeError,
    IndexError,
    EOFError,
    OSError,
)
"""What the reading library raises at a file that only looks like a workbook."""
_ESCAPED: Final = re.compile(r"_x([0-9A-Fa-f]{4})_")
_TO_ESCAPE: Final = re.compile(r"[\x00-\x08\x0b-\x1f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)")
_WIDTHS: Final = {"note": 40, "yarn": 24, "fibres": 30, "reserved for": 30, "kept in": 18}


def read_xlsx(content: bytes, name: str) -> Grid:
    """Read the first sheet of a workbook that holds something; formulas give what they last came to.

    :raises UnreadableTable: it is no workbook, unpacks to too much, or holds no table.
    """
    _check_size(content, name)
    try:
        book = load_workbook(io.BytesIO(content), read_only=True, data_only=True, keep_links=False)
        try:
            for sheet in book.worksheets:
                rows = _rows(sheet)
                if rows:
                    return grid_of(name, rows)
        finally:
            book.close()
    except UnreadableTable:
        raise
    except _BROKEN as error:
        raise UnreadableTable.make("a workbook that cannot be read", _WANTED, file=name) from error
    return grid_of(name, [])


def _check_size(content: bytes, name: str) -> None:
    """Refuse what unpacks to more than can be read, and what defines entities, before anything is unpacked for good.

    The sizes that a zip states bind its reader: no part gives more bytes than it says.
    """
    if len(content) > MOST_BYTES:
        raise UnreadableTable.make(f"more than {MOST_BYTES // 1_000_000} MB", "a smaller table", file=name)
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            parts = packed.infolist()
            unpacked = sum(part.file_size for part in parts)
            if unpacked > MOST_UNPACKED_BYTES or len(parts) > MOST_PARTS:
                raise UnreadableTable.make(
                    f"a workbook that unpacks to {unpacked / 1e6:,.0f} MB in {len(parts)} parts",
                    f"at most {MOST_UNPACKED_BYTES // 1_000_000} MB in {MOST_PARTS} parts",
                    file=name,
                )
            for part in parts:
                if part.filename.endswith((".xml", ".rels")) and _defines_entities(packed, part):
                    raise UnreadableTable.make("a workbook with a document type", _WANTED, file=name)
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, EOFError, OSError) as error:
        raise UnreadableTable.make("a file that is no workbook", _WANTED, file=name) from error


def _defines_entities(packed: zipfile.ZipFile, part: zipfile.ZipInfo) -> bool:
    """Say whether a part has a document type; no workbook needs one, and only there can entities be defined."""
    with packed.open(part) as file:
        return b"<!DOCTYPE" in file.read().replace(b"\0", b"")


def _rows(sheet: Any) -> list[GridRow]:
    """Read a sheet no further than a table may go; what it says of its own size is not believed."""
    sheet.reset_dimensions()
    rows = []
    most = MOST_ROWS + 2 + _ROOM_ABOVE
    for line, cells in enumerate(sheet.iter_rows(max_row=most, max_col=MOST_COLUMNS + 1, values_only=True), 1):
        row = GridRow(line, tuple(_text(cell) for cell in cells))
        if any(row.cells):
            rows.append(row)
    return rows


def _text(cell: object) -> str:
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, int | float):
        return number_text(cell)
    if isinstance(cell, dt.datetime) and cell.time() == dt.time():
        return cell.date().isoformat()
    return _ESCAPED.sub(lambda found: chr(int(found[1], 16)), str(cell))


def write_xlsx(rows: Iterable[Sequence[Cell]], title: str) -> bytes:
    """Write a workbook of one sheet; its headings stay in sight, and no text in it is taken for a formula.

    :param rows: the headings first.
    """
    book = Workbook(write_only=True)
    sheet = book.create_sheet(title)
    sheet.freeze_panes = "A2"
    for number, row in enumerate(rows):
        if number == 0:
            for place, heading in enumerate(row):
                sheet.column_dimensions[get_column_letter(place + 1)].width = _WIDTHS.get(str(heading), 14)
        sheet.append([_cell(sheet, cell, bold=number == 0) for cell in row])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _cell(sheet: Any, cell: Cell, *, bold: bool) -> Any:
    if cell is None or cell == "":
        return None
    if not isinstance(cell, str):
        return cell
    text = _TO_ESCAPE.sub(lambda found: f"_x{ord(found[0]):04X}_", cell)
    made = WriteOnlyCell(sheet, text)
    made.data_type = "s"
    if bold:
        made.font = Font(bold=True)
    return made
