"""A chart as CSV: a few lines that say what it is, then its rows as they are drawn, the last one first.

::

    chart,1
    worked,in the round
    first row,right side
    role,main,#dccdae
    role,contrast,
    repeat,1,12,1,8
    row,2,main,main purl,contrast
    row,1,contrast,main,main

``repeat`` gives its first and last stitch, counted from the right, and its first and last row. A cell is a role, then
the stitch's key where it is not knit. A file that does not begin with ``chart`` is read as a bare grid: every line is a
row, the last one first, and each text in it becomes a role.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence
from typing import Final

import numpy as np

from loopwright.chart.grid import MOST_ROLES, MOST_SIDE, Chart, ChartRole, RepeatBox, named_roles
from loopwright.chart.symbols import BY_KEY, KNIT, SYMBOLS
from loopwright.units import BadInput

__all__ = ["chart_csv", "read_chart_csv"]

_VERSION: Final = "1"
_WORKED: Final = {"flat": False, "in the round": True}
_SIDES: Final = {"right side": True, "wrong side": False}
_ROLE: Final = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_SHADE: Final = re.compile(r"#[0-9a-fA-F]{6}")
_WORDS: Final = ("worked", "first row", "role", "repeat", "row")


def chart_csv(chart: Chart) -> str:
    """Write a chart as CSV; :func:`read_chart_csv` gives the very same chart back."""
    file = io.StringIO()
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow(["chart", _VERSION])
    writer.writerow(["worked", "in the round" if chart.in_the_round else "flat"])
    writer.writerow(["first row", "right side" if chart.first_row_right_side else "wrong side"])
    writer.writerows(["role", role.name, role.shade or ""] for role in chart.roles)
    box = chart.repeat
    if box is not None:
        right = chart.columns - box.column - box.columns + 1
        writer.writerow(["repeat", right, right + box.columns - 1, box.row + 1, box.row + box.rows])
    words = [
        [role.name if at == KNIT else f"{role.name} {one.key}" for at, one in enumerate(SYMBOLS)]
        for role in chart.roles
    ]
    for row in range(chart.rows - 1, -1, -1):
        pairs = zip(chart.cells[row].tolist(), chart.stitches[row].tolist(), strict=True)
        writer.writerow(["row", row + 1, *(words[role][stitch] for role, stitch in pairs)])
    return file.getvalue()


def read_chart_csv(text: str) -> Chart:
    """Read a chart from CSV.

    :raises BadInput: what cannot be read, with its row and stitch, or its line and column.
    """
    try:
        lines = list(csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), strict=True))
    except csv.Error as error:
        raise BadInput(found=str(error), wanted="values with commas between them", place="the file") from error
    filled = [(number, line) for number, line in enumerate(lines, 1) if any(cell.strip() for cell in line)]
    if not filled:
        raise BadInput(found="", wanted="a chart", place="line 1")
    first = filled[0][1]
    if first[0].strip() != "chart":
        return _bare(filled)
    if len(first) < 2 or first[1].strip() != _VERSION:
        raise BadInput(found=",".join(first), wanted=f"chart,{_VERSION}", place="line 1")
    return _full(filled[1:])


# ------------------------------------------------------------------------------------------------- with its head
def _full(lines: Sequence[tuple[int, list[str]]]) -> Chart:
    in_the_round, right_side = False, True
    roles: list[ChartRole] = []
    box: tuple[int, list[str]] | None = None
    rows: list[tuple[int, list[str]]] = []
    for number, line in lines:
        word, cells = line[0].strip(), [cell.strip() for cell in line[1:]]
        place = f"line {number}"
        if word == "row":
            rows.append((number, cells))
        elif word == "role":
            roles.append(_role(cells, place))
        elif word == "repeat":
            box = (number, cells)
        elif word in {"worked", "first row"}:
            choice = _WORKED if word == "worked" else _SIDES
            said = cells[0] if cells else ""
            if said not in choice:
                raise BadInput(found=said, wanted=" or ".join(choice), place=place)
            if word == "worked":
                in_the_round = choice[said]
            else:
                right_side = choice[said]
        else:
            raise BadInput(found=word, wanted=f"one of {', '.join(_WORDS)}", place=f"{place}, column 1")
    cells_of, stitches = _grid(rows, roles)
    chart = Chart(cells_of, stitches, tuple(roles), in_the_round, right_side)
    return chart if box is None else _with_box(chart, *box)


def _role(cells: Sequence[str], place: str) -> ChartRole:
    name, shade = (*cells, "", "")[:2]
    if not _ROLE.fullmatch(name):
        raise BadInput(found=name, wanted="a role in small letters, digits and hyphens", place=f"{place}, column 2")
    if shade and not _SHADE.fullmatch(shade):
        raise BadInput(found=shade, wanted="a screen colour such as #8a4b2f", place=f"{place}, column 3")
    return ChartRole(name, shade.lower() or None)


def _grid(rows: Sequence[tuple[int, list[str]]], roles: Sequence[ChartRole]) -> tuple[np.ndarray, np.ndarray]:
    if not rows or not roles:
        raise BadInput(found="no row" if not rows else "no role", wanted="roles and rows", place="the file")
    if len(rows) > MOST_SIDE:
        raise BadInput(found=f"{len(rows)} rows", wanted=f"at most {MOST_SIDE}", place="the file")
    width = len(rows[-1][1]) - 1
    known: dict[str, tuple[int, int]] = {}
    for at, role in enumerate(roles):
        known[role.name] = (at, KNIT)
        known |= {f"{role.name} {key}": (at, stitch) for key, stitch in BY_KEY.items()}
    cells, stitches = (np.empty((len(rows), max(width, 0)), dtype=np.uint8) for _ in range(2))
    for at, (line, texts) in enumerate(rows):
        number = len(rows) - at
        if not texts or texts[0] != str(number):
            raise BadInput(
                found=texts[0] if texts else "", wanted=f"the number {number}", place=f"line {line}, column 2"
            )
        if len(texts) - 1 != width:
            raise BadInput(
                found=f"{len(texts) - 1} stitches", wanted=f"{width}, as in row 1", place=f"row {number} (line {line})"
            )
        for column, text in enumerate(texts[1:]):
            if text not in known:
                raise _unknown(text, known, roles, f"row {number}, stitch {width - column} (line {line})")
            cells[number - 1, column], stitches[number - 1, column] = known[text]
    return cells, stitches


def _unknown(text: str, known: Iterable[str], roles: Sequence[ChartRole], place: str) -> BadInput:
    role, _, stitch = text.partition(" ")
    if stitch and role in known:
        return BadInput(found=f"the stitch '{stitch}'", wanted=f"one of {', '.join(BY_KEY)}", place=place)
    names = ", ".join(one.name for one in roles)
    return BadInput(found=text, wanted=f"a role of this chart ({names})", place=place)


def _with_box(chart: Chart, line: int, cells: Sequence[str]) -> Chart:
    numbers = [int(cell) for cell in cells if cell.isdecimal()]
    place = f"line {line}"
    if len(numbers) != 4 or len(cells) != 4:
        raise BadInput(found=",".join(cells), wanted="first and last stitch, first and last row", place=place)
    right, left, low, high = numbers
    box = RepeatBox(chart.columns - left, low - 1, left - right + 1, high - low + 1)
    try:
        return Chart(
            chart.cells, chart.stitches, chart.roles, chart.in_the_round, chart.first_row_right_side, repeat=box
        )
    except BadInput as fault:
        raise fault.at(place) from None


# --------------------------------------------------------------------------------------------------- a bare grid
def _bare(lines: Sequence[tuple[int, list[str]]]) -> Chart:
    width = len(lines[-1][1])
    texts: dict[str, int] = {}
    if len(lines) > MOST_SIDE or width > MOST_SIDE:
        raise BadInput(found=f"{width} by {len(lines)} cells", wanted=f"at most {MOST_SIDE} of each", place="the file")
    cells = np.empty((len(lines), width), dtype=np.uint8)
    for at, (number, line) in enumerate(reversed(lines)):
        if len(line) != width:
            raise BadInput(found=f"{len(line)} cells", wanted=f"{width}, as in the last line", place=f"line {number}")
        for column, text in enumerate(cell.strip() for cell in line):
            place = f"line {number}, column {column + 1}"
            if not text:
                raise BadInput(found="", wanted="a colour, a letter or a role", place=place)
            if text not in texts and len(texts) == MOST_ROLES:
                raise BadInput(found=f"'{text}', one text too many", wanted=f"at most {MOST_ROLES} roles", place=place)
            cells[at, column] = texts.setdefault(text, len(texts))
    return Chart(cells, np.full_like(cells, KNIT), _roles_of(list(texts)))


def _roles_of(texts: Sequence[str]) -> tuple[ChartRole, ...]:
    """Give roles for the texts of a bare grid: colours as shades, keys as they stand, all else numbered."""
    if all(_SHADE.fullmatch(text) for text in texts):
        return named_roles([text.lower() for text in texts])
    names = [re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-") for text in texts]
    if all(names) and len(set(names)) == len(names):
        return tuple(ChartRole(name) for name in names)
    return tuple(ChartRole(role.name) for role in named_roles(["#000000"] * len(texts)))
