"""What the page that takes a table in shows: what its columns mean, and what keeping it would do."""

from __future__ import annotations

from dataclasses import dataclass

from pydantic import TypeAdapter, ValidationError

from loopwright.files.cupboard_table import COMPARED, Column, Columns, Grid, Matched, TakenIn
from loopwright.units import BadInput

__all__ = ["ColumnRow", "TakingPage", "columns_view", "grid_from_text", "grid_text", "taking_view"]

MOST_SHOWN = 60
_EXAMPLES = 3
_GRID = TypeAdapter(Grid)


@dataclass(frozen=True, slots=True)
class ColumnRow:
    """One column: its heading, what stands in it, and what it is taken to mean."""

    place: int
    heading: str
    examples: tuple[str, ...]
    means: str
    is_unclear: bool


@dataclass(frozen=True, slots=True)
class TakingPage:
    """What keeping a table would do.

    :ivar added: line, yarn, colour, dye lot and amount of the first lots that are new.
    :ivar differing: line, key and name of a lot, and what the file says otherwise.
    """

    sentence: str
    yarns: tuple[str, ...]
    added: tuple[tuple[int, str, str, str, str], ...]
    added_count: int
    differing: tuple[tuple[int, str, str, str], ...]
    differing_count: int
    equal_count: int
    faults: tuple[str, ...]
    fault_count: int


def columns_view(grid: Grid, columns: Columns) -> tuple[ColumnRow, ...]:
    """Lay out the columns with the first cells that hold something."""
    return tuple(_column(grid, column) for column in columns.all)


def _column(grid: Grid, column: Column) -> ColumnRow:
    cells = (row.cells[column.place].strip() for row in grid.rows)
    filled = dict.fromkeys(cell[:40] for cell in cells if cell)
    examples = tuple(list(filled)[:_EXAMPLES])
    return ColumnRow(column.place, column.heading or "no heading", examples, column.means or "", column.means is None)


def taking_view(taken: TakenIn) -> TakingPage:
    """Lay out what keeping would do, the first of each kind."""
    added = tuple(
        (
            one.line,
            one.yarn_name,
            one.fields.get("colour", ""),
            one.fields.get("dye_lot", ""),
            _amount(one.fields.get("put_ups"), one.fields.get("weighed")),
        )
        for one in taken.added[:MOST_SHOWN]
    )
    return TakingPage(
        sentence=_sentence(taken),
        yarns=tuple(str(fields["name"]) for fields in taken.yarns.values())[:MOST_SHOWN],
        added=added,
        added_count=len(taken.added),
        differing=tuple(
            (one.line, one.key, f"{one.again.yarn_name}, {one.again.fields.get('colour', '')}", _difference(one))
            for one in taken.differing[:MOST_SHOWN]
        ),
        differing_count=len(taken.differing),
        equal_count=len(taken.equal),
        faults=tuple(str(fault) for fault in taken.faults[:MOST_SHOWN]),
        fault_count=len(taken.faults),
    )


def _amount(put_ups: int | None, weighed: str | None) -> str:
    balls = f"{put_ups} {'ball' if put_ups == 1 else 'balls'}" if put_ups else ""
    return " + ".join(part for part in (balls, weighed or "") if part)


def _difference(one: Matched) -> str:
    return "; ".join(
        f"{COMPARED[name]}: here {here or 'nothing'}, in the file {said or 'nothing'}"
        for name, here, said in one.differs
    )


def _sentence(taken: TakenIn) -> str:
    if taken.faults:
        count = len(taken.faults)
        return f"{'One thing' if count == 1 else f'{count} things'} must be put right in the file first."
    new, there = len(taken.added), len(taken.matched)
    parts = [f"{new} new {'lot' if new == 1 else 'lots'}" if new else "no new lot"]
    if taken.yarns:
        parts.append(f"{len(taken.yarns)} new {'yarn' if len(taken.yarns) == 1 else 'yarns'}")
    if there:
        parts.append(f"{there} that {'is' if there == 1 else 'are'} here already")
    text = ", ".join(parts)
    return f"{text[:1].upper()}{text[1:]}."


def grid_text(grid: Grid) -> str:
    """Write a table for the form to carry from one step to the next: nothing of it is kept here meanwhile."""
    return _GRID.dump_json(grid).decode()


def grid_from_text(text: str) -> Grid:
    """Read what :func:`grid_text` wrote.

    :raises BadInput: it is something else.
    """
    try:
        grid = _GRID.validate_json(text)
    except ValidationError:
        raise BadInput("a table that was changed on its way", "the file once more") from None
    if any(len(row.cells) != len(grid.headings) for row in grid.rows):
        raise BadInput("a table with rows of other lengths", "the file once more")
    return grid
