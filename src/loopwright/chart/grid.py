"""A chart: a grid of roles and stitches, as seen from the right side, its first row at the bottom."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.chart.symbols import BOXES, KNIT, NO_STITCH, SYMBOLS
from loopwright.units import BadInput

__all__ = ["MOST_ROLES", "MOST_SIDE", "Cells", "Chart", "ChartRole", "RepeatBox", "named_roles", "plain_chart"]

MOST_SIDE: Final = 1000
"""Stitches or rows of one chart."""
MOST_ROLES: Final = 62
"""Roles of one chart: a file has a letter or digit for each."""

Cells = NDArray[np.uint8]
"""One number for each cell: shape (rows, columns), row 0 at the bottom, column 0 at the left."""


@dataclass(frozen=True, slots=True)
class ChartRole:
    """What a colour does in the chart, with a likeness for the screen where one is known, ``#rrggbb`` in sRGB."""

    name: str
    shade: str | None = None


@dataclass(frozen=True, slots=True)
class RepeatBox:
    """The part that is worked again and again, counted from 0 at the left and the bottom."""

    column: int
    row: int
    columns: int
    rows: int


@dataclass(frozen=True, slots=True, eq=False)
class Chart:
    """A grid of roles and stitches.

    :ivar cells: place in ``roles`` of each cell's role; shape (rows, columns), row 0 at the bottom.
    :ivar stitches: place in :data:`~loopwright.chart.SYMBOLS` of each cell's stitch; the same shape.
    :ivar in_the_round: every row is read from right to left; flat, every other one from left to right.
    :ivar first_row_right_side: whether the first row of flat work is a right-side row.
    :ivar repeat: the box of the repeat; left out, nothing is said of it.
    :raises BadInput: the grid is empty, too large or not one, a cell names what is not there, a role stands twice, the
        repeat lies outside, or a crossing is not whole.
    """

    cells: Cells
    stitches: Cells
    roles: tuple[ChartRole, ...]
    in_the_round: bool = False
    first_row_right_side: bool = True
    repeat: RepeatBox | None = None

    def __post_init__(self) -> None:
        """Keep copies that cannot be written to."""
        for name in ("cells", "stitches"):
            kept = np.array(getattr(self, name), dtype=np.uint8)
            kept.setflags(write=False)
            object.__setattr__(self, name, kept)
        _check(self)

    @property
    def rows(self) -> int:
        """Give the number of rows."""
        return int(self.cells.shape[0])

    @property
    def columns(self) -> int:
        """Give the number of stitches in a row."""
        return int(self.cells.shape[1])

    @property
    def worked(self) -> NDArray[np.bool_]:
        """Say of each cell whether it is worked: a box of *no stitch* is not."""
        worked: NDArray[np.bool_] = self.stitches != NO_STITCH
        return worked

    @property
    def wraps(self) -> bool:
        """Say whether a row's end is followed by its own beginning: in the round, or as a repeat all across."""
        whole = self.repeat is not None and self.repeat.columns == self.columns
        return self.in_the_round or whole

    def reads_leftwards(self, row: int) -> bool:
        """Say whether a row, counted from 0, is read from right to left.

        Common practice, read in four tutorials: rounds and right-side rows are, wrong-side rows are not.
        """
        return self.in_the_round or (row % 2 == 0) == self.first_row_right_side

    def part(self, box: RepeatBox) -> Chart:
        """Give a part of the chart by itself."""
        inside = np.s_[box.row : box.row + box.rows, box.column : box.column + box.columns]
        side = self.first_row_right_side == (box.row % 2 == 0)
        return replace(
            self, cells=self.cells[inside], stitches=self.stitches[inside], first_row_right_side=side, repeat=None
        )

    def __eq__(self, other: object) -> bool:
        """Say whether another chart has the same cells, roles and reading."""
        if not isinstance(other, Chart):
            return NotImplemented
        return (
            self.roles == other.roles
            and self.in_the_round == other.in_the_round
            and self.first_row_right_side == other.first_row_right_side
            and self.repeat == other.repeat
            and np.array_equal(self.cells, other.cells)
            and np.array_equal(self.stitches, other.stitches)
        )

    def __hash__(self) -> int:
        return hash((self.cells.tobytes(), self.stitches.tobytes(), self.roles, self.repeat))


def plain_chart(
    columns: int, rows: int, roles: tuple[ChartRole, ...] = (ChartRole("main"),), *, in_the_round: bool = False
) -> Chart:
    """Give a chart of knit stitches in its first role.

    :raises BadInput: there is no stitch or no row, or too many.
    """
    for number, what in ((columns, "stitches"), (rows, "rows")):
        if not 1 <= number <= MOST_SIDE:
            raise BadInput(found=f"{number} {what}", wanted=f"from 1 to {MOST_SIDE}", place=what)
    cells = np.zeros((rows, columns), dtype=np.uint8)
    return Chart(cells, np.full_like(cells, KNIT), roles, in_the_round)


def named_roles(shades: Sequence[str]) -> tuple[ChartRole, ...]:
    """Give roles for colours that have no names: the first is the main one, the others are contrasts."""
    return tuple(ChartRole("main" if at == 0 else f"contrast-{at}", shade) for at, shade in enumerate(shades))


def _check(chart: Chart) -> None:
    if chart.cells.ndim != 2 or chart.cells.shape != chart.stitches.shape:
        raise BadInput(
            found=f"roles in {chart.cells.shape} and stitches in {chart.stitches.shape}", wanted="two grids of one size"
        )
    rows, columns = chart.cells.shape
    if not (1 <= rows <= MOST_SIDE and 1 <= columns <= MOST_SIDE):
        raise BadInput(
            found=f"{columns} stitches by {rows} rows", wanted=f"from 1 to {MOST_SIDE} of each", hint=_too_large(rows)
        )
    names = [role.name for role in chart.roles]
    if not 1 <= len(names) <= MOST_ROLES:
        raise BadInput(found=f"{len(names)} roles", wanted=f"from 1 to {MOST_ROLES}", place="roles")
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise BadInput(found=f"the role '{twice}' twice", wanted="each role once", place="roles")
    for grid, most, what in ((chart.cells, len(names), "role"), (chart.stitches, len(SYMBOLS), "stitch")):
        if int(grid.max()) >= most:
            row, column = np.argwhere(grid >= most)[0]
            raise BadInput(
                found=f"{what} number {int(grid[row, column])}",
                wanted=f"under {most}",
                place=f"row {row + 1}, stitch {columns - column}",
            )
    _check_box(chart)
    _check_crossings(chart)


def _too_large(rows: int) -> str | None:
    return None if rows else "is the file empty?"


def _check_box(chart: Chart) -> None:
    box = chart.repeat
    if box is None:
        return
    if (
        min(box.columns, box.rows) < 1
        or min(box.column, box.row) < 0
        or box.column + box.columns > chart.columns
        or box.row + box.rows > chart.rows
    ):
        raise BadInput(
            found="a repeat that lies outside the chart",
            wanted=f"a part of its {chart.columns} stitches and {chart.rows} rows",
            place="repeat",
        )


def _check_crossings(chart: Chart) -> None:
    """Refuse a crossing of which a part is missing: a run of its boxes must be so many times as long as it is wide."""
    wide = BOXES[chart.stitches] > 1
    if not wide.any():
        return
    for row in np.flatnonzero(wide.any(axis=1)):
        line = chart.stitches[row]
        edges = np.flatnonzero(np.diff(line)) + 1
        starts, ends = np.r_[0, edges], np.r_[edges, line.size]
        for start, end in zip(starts, ends, strict=True):
            boxes = int(BOXES[line[start]])
            if (end - start) % boxes:
                name = SYMBOLS[int(line[start])].name
                raise BadInput(
                    found=f"{end - start} boxes of {name}",
                    wanted=f"{boxes} boxes for each",
                    place=f"row {row + 1}, stitch {chart.columns - end + 1}",
                )
