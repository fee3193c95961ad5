"""A table as a spreadsheet has it: headings, and rows of cells as text, each row with the line it stands on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from loopwright.files.faults import FileFault

__all__ = ["MOST_BYTES", "MOST_CELL", "MOST_COLUMNS", "MOST_ROWS", "Cell", "Grid", "GridRow", "UnreadableTable"]

MOST_ROWS: Final = 20_000
MOST_COLUMNS: Final = 100
MOST_CELL: Final = 2_000
"""Letters in one cell."""
MOST_BYTES: Final = 5_000_000
"""Of a file, as it lies on the disk."""

Cell = str | int | float | None
"""A cell to be written: a number stays one, so that a spreadsheet can add it up."""


class UnreadableTable(FileFault):
    """A file that holds no table which can be read."""


@dataclass(frozen=True, slots=True)
class GridRow:
    """One row.

    :ivar line: where it stands in the file, from 1: the line of a CSV, the row of a sheet.
    """

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Grid:
    """A table.

    :ivar name: of the file, for messages.
    :ivar line: where the headings stand.
    """

    name: str
    line: int
    headings: tuple[str, ...]
    rows: tuple[GridRow, ...]


def grid_of(name: str, rows: list[GridRow]) -> Grid:
    """Make a table of rows, the first of which that holds something are the headings; empty rows are left out.

    :raises UnreadableTable: there is none, there are too many rows or columns, or a cell is too long.
    """
    filled = [row for row in rows if any(cell.strip() for cell in row.cells)]
    if not filled:
        raise UnreadableTable.make("nothing", "a row of headings and a row for each lot", file=name)
    head, *body = filled
    width = max(_width(row.cells) for row in filled)
    if width > MOST_COLUMNS:
        raise UnreadableTable.make(f"{width} columns", f"at most {MOST_COLUMNS}", file=name, line=head.line)
    if len(body) > MOST_ROWS:
        line = body[MOST_ROWS].line
        raise UnreadableTable.make(f"more than {MOST_ROWS:,} rows", "fewer at a time", file=name, line=line)
    for row in filled:
        if any(len(cell) > MOST_CELL for cell in row.cells):
            raise UnreadableTable.make(
                f"more than {MOST_CELL:,} letters in one cell", "a shorter text", file=name, line=row.line
            )

    def filled_up(cells: tuple[str, ...]) -> tuple[str, ...]:
        return (*cells[:width], *[""] * (width - len(cells)))

    return Grid(
        name=name,
        line=head.line,
        headings=tuple(cell.strip() for cell in filled_up(head.cells)),
        rows=tuple(GridRow(row.line, filled_up(row.cells)) for row in body),
    )


def _width(cells: tuple[str, ...]) -> int:
    return max((place + 1 for place, cell in enumerate(cells) if cell.strip()), default=0)
