"""A chart as it stands in a season file: rows as lines of text, one character a cell, under its own key."""

from __future__ import annotations

import hashlib
import json
import string
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from typing import Annotated, Any, Final, Literal

import numpy as np
from numpy.typing import NDArray
from pydantic import AfterValidator, BeforeValidator, Field, PlainSerializer, StringConstraints, model_validator

from loopwright.chart.grid import MOST_ROLES, MOST_SIDE, Cells, Chart, ChartRole, RepeatBox
from loopwright.chart.symbols import BY_MARK, KNIT, SYMBOLS
from loopwright.fabric import GaugeField
from loopwright.records import Key, Keyed, Record
from loopwright.units import BadInput
from loopwright.yarn.yarn import Shade

__all__ = ["NamedChart", "RepeatPart", "RoleMark", "chart_fields"]

Mark = Annotated[str, StringConstraints(pattern=r"^[A-Za-z0-9]$")]
Side = Annotated[int, Field(ge=1, le=MOST_SIDE)]
_MARKS: Final = string.ascii_lowercase + string.digits + string.ascii_uppercase
_NONE: Final = 255


class RoleMark(Record):
    """A character that stands for a role in the rows."""

    mark: Mark
    role: Key


def _read_marks(value: Any) -> Any:
    if isinstance(value, Mapping):
        return [{"mark": str(mark), "role": role} for mark, role in value.items()]
    return value


def _write_marks(marks: tuple[RoleMark, ...]) -> dict[str, str]:
    return {one.mark: one.role for one in marks}


def _each_once(marks: tuple[RoleMark, ...]) -> tuple[RoleMark, ...]:
    if not 1 <= len(marks) <= MOST_ROLES:
        raise BadInput(found=f"{len(marks)} roles", wanted=f"from 1 to {MOST_ROLES}")
    for names in ([one.mark for one in marks], [one.role for one in marks]):
        twice = next((name for name in names if names.count(name) > 1), None)
        if twice is not None:
            raise BadInput(found=f"'{twice}' twice", wanted="each mark and each role once")
    return marks


class RepeatPart(Record):
    """The part of a chart that is worked again and again.

    :ivar from_stitch, to_stitch: its first and last stitch, counted from the right as below the chart.
    :ivar from_row, to_row: its first and last row; left out, all of them.
    """

    from_stitch: Side
    to_stitch: Side
    from_row: Side = 1
    to_row: Side | None = None


class NamedChart(Keyed):
    """A chart: rows of characters, each a cell, drawn as seen from the right side of the fabric.

    :ivar rows: its rows as they are drawn, the last one first; each character is the mark of a role.
    :ivar stitches: the same for stitches, by the marks of stitches; left out, all are knit.
    :ivar roles: which mark stands for which role, such as ``m = "main"``; the first is the ground.
    :ivar shades: likeness of a role's colour on the screen; left out, that of the garment's yarn.
    :ivar worked: flat or in the round.
    :ivar first_row: the side of the fabric on which row 1 is worked, where it is worked flat.
    :ivar repeat: the part that is worked again and again; left out, the chart is.
    :ivar garment: key of the garment that it is for.
    :ivar swatch: key of the swatch whose counts give its proportions; left out, the garment's.
    :ivar gauge: the counts themselves, where there is no swatch.
    """

    name: str
    rows: tuple[str, ...]
    stitches: tuple[str, ...] = ()
    roles: Annotated[
        tuple[RoleMark, ...],
        BeforeValidator(_read_marks),
        AfterValidator(_each_once),
        PlainSerializer(_write_marks, when_used="json"),
    ]
    shades: dict[str, Shade] = Field(default_factory=dict)
    worked: Literal["flat", "in the round"] = "flat"
    first_row: Literal["right side", "wrong side"] = "right side"
    repeat: RepeatPart | None = None
    garment: str | None = None
    swatch: str | None = None
    gauge: GaugeField | None = None
    note: str = ""

    @model_validator(mode="after")
    def _is_a_chart(self) -> NamedChart:
        names = {one.role for one in self.roles}
        for role in self.shades:
            if role not in names:
                raise BadInput(
                    found=f"a colour for '{role}'", wanted=f"one of its roles ({', '.join(names)})", place="shades"
                )
        _ = self.chart
        return self

    @property
    def fingerprint(self) -> str:
        """Give a short text that is another for every other chart, to see whether it was changed meanwhile."""
        told = [self.model_dump(mode="json"), [one.mark for one in self.roles]]
        return hashlib.sha256(json.dumps(told, sort_keys=True).encode()).hexdigest()[:24]

    @cached_property
    def chart(self) -> Chart:
        """Give the chart itself, with the shades that stand beside it."""
        cells = _grid(self.rows, {one.mark: at for at, one in enumerate(self.roles)}, "rows", "a mark that no role has")
        if self.stitches:
            stitches = _grid(self.stitches, BY_MARK, "stitches", "a mark that no stitch has")
            if stitches.shape != cells.shape:
                raise BadInput(
                    found=f"{stitches.shape[1]} stitches by {stitches.shape[0]} rows of stitches",
                    wanted=f"{cells.shape[1]} by {cells.shape[0]}, as the rows have",
                    place="stitches",
                )
        else:
            stitches = np.full_like(cells, KNIT)
        roles = tuple(ChartRole(one.role, self.shades.get(one.role)) for one in self.roles)
        box = self._box(cells.shape[0], cells.shape[1])
        return Chart(cells, stitches, roles, self.worked == "in the round", self.first_row == "right side", box)

    def _box(self, rows: int, columns: int) -> RepeatBox | None:
        part = self.repeat
        if part is None:
            return None
        top = part.to_row or rows
        if part.to_stitch < part.from_stitch or top < part.from_row or part.to_stitch > columns or top > rows:
            raise BadInput(
                found=f"stitches {part.from_stitch} to {part.to_stitch}, rows {part.from_row} to {top}",
                wanted=f"a part of its {columns} stitches and {rows} rows, the smaller number first",
                place="repeat",
            )
        across = part.to_stitch - part.from_stitch + 1
        return RepeatBox(columns - part.to_stitch, part.from_row - 1, across, top - part.from_row + 1)


def _grid(lines: Sequence[str], places: Mapping[str, int], field: str, fault: str) -> Cells:
    """Read lines of marks, the last row first, into cells, row 0 first."""
    if not lines or not lines[0]:
        raise BadInput(found="no row" if not lines else "an empty row", wanted="rows of marks", place=field)
    if len(lines) > MOST_SIDE or len(lines[0]) > MOST_SIDE:
        raise BadInput(
            found=f"{len(lines[0])} stitches by {len(lines)} rows", wanted=f"at most {MOST_SIDE} of each", place=field
        )
    values = np.full(256, _NONE, dtype=np.uint8)
    for mark, at in places.items():
        values[ord(mark)] = at
    cells = np.empty((len(lines), len(lines[0])), dtype=np.uint8)
    for at, line in enumerate(lines):
        number = len(lines) - at
        if len(line) != len(lines[0]):
            raise BadInput(
                found=f"{len(line)} stitches in row {number}",
                wanted=f"{len(lines[0])}, as in row {len(lines)}",
                place=f"{field}.{at}",
            )
        cells[number - 1] = values[np.frombuffer(line.encode("latin-1", "replace"), dtype=np.uint8)]
        strange = np.flatnonzero(cells[number - 1] == _NONE)
        if strange.size:
            column = int(strange[0])
            raise BadInput(
                found=f"'{line[column]}' at stitch {len(line) - column} of row {number}, {fault}",
                wanted=f"one of {' '.join(places)}",
                place=f"{field}.{at}",
            )
    return cells


def chart_fields(chart: Chart, marks: Mapping[str, str] | None = None) -> dict[str, Any]:
    """Give a chart in the words of the season file: rows, stitches, roles, shades, reading and repeat.

    What is as usual is None, which takes a field away.

    :param marks: marks of roles that are to stay as they are, by role.
    """
    by_role = _marks_for([role.name for role in chart.roles], marks or {})
    letters = np.array([by_role[role.name] for role in chart.roles])
    plain = bool((chart.stitches == KNIT).all())
    symbols = np.array([one.mark for one in SYMBOLS])
    box = chart.repeat
    return {
        "rows": _lines(letters[chart.cells]),
        "stitches": None if plain else _lines(symbols[chart.stitches]),
        "roles": {by_role[role.name]: role.name for role in chart.roles},
        "shades": {role.name: role.shade for role in chart.roles if role.shade} or None,
        "worked": "in the round" if chart.in_the_round else None,
        "first_row": None if chart.first_row_right_side else "wrong side",
        "repeat": None if box is None else _part(chart, box),
    }


def _part(chart: Chart, box: RepeatBox) -> dict[str, int]:
    right = chart.columns - box.column - box.columns + 1
    part = {"from_stitch": right, "to_stitch": right + box.columns - 1}
    if (box.row, box.rows) != (0, chart.rows):
        part |= {"from_row": box.row + 1, "to_row": box.row + box.rows}
    return part


def _lines(marks: NDArray[np.str_]) -> list[str]:
    return ["".join(line) for line in marks[::-1].tolist()]


def _marks_for(roles: Iterable[str], kept: Mapping[str, str]) -> dict[str, str]:
    """Give each role a mark: the one that it had, else its first letter that is free, else any that is."""
    marks: dict[str, str] = {}
    wanted = list(roles)
    for role in wanted:
        if role in kept:
            marks[role] = kept[role]
    for role in wanted:
        if role not in marks:
            free = [mark for mark in _MARKS if mark not in marks.values()]
            marks[role] = next((letter for letter in role if letter in free), free[0])
    return {role: marks[role] for role in wanted}
