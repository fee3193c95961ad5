"""The rows of a table of yarn, each read into a lot and what it says of its yarn; all faults at once."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Final

from loopwright.files.cupboard_table.blend_text import read_blend
from loopwright.files.cupboard_table.columns import Column, Columns, unit_for
from loopwright.files.cupboard_table.grid import Grid, GridRow
from loopwright.files.faults import FileFault, shown
from loopwright.season.cupboard_search import folded
from loopwright.units import (
    BadInput,
    mass_text,
    read_length_cm,
    read_mass_g,
    read_number,
    read_yarn_length_m,
    yarn_length_text,
)

__all__ = ["LotLine", "read_lines"]

_SHADE: Final = re.compile(r"#?[0-9a-fA-F]{6}")
_KEY: Final = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_BARE: Final = re.compile(r"[\d\s.,/½¼¾⅓⅔⅛⅜⅝⅞-]+")
_MOST_PUT_UPS: Final = 10_000


@dataclass(frozen=True, slots=True)
class LotLine:
    """One row that could be read.

    :ivar line: where it stands in the file.
    :ivar lot: the lot in the words of the season file, without its yarn.
    :ivar yarn: what the row says of its yarn, in the words of the season file, its name first.
    :ivar lot_key, yarn_key: the keys that it wishes for; empty where it names none.
    """

    line: int
    lot: Mapping[str, Any]
    yarn: Mapping[str, Any]
    lot_key: str = ""
    yarn_key: str = ""

    @property
    def same_as(self) -> tuple[str, str, str]:
        """Give what, beside the yarn, makes two lots the same: colour, dye lot and note, as they are compared."""
        return (
            folded(self.lot.get("colour", "")),
            folded(self.lot.get("dye_lot", "")),
            folded(self.lot.get("note", "")),
        )


def read_lines(grid: Grid, columns: Columns) -> tuple[tuple[LotLine, ...], tuple[FileFault, ...]]:
    """Read every row; those with a fault are left out and named.

    :param columns: which are clear.
    """
    if not columns.is_clear:
        raise ValueError("wanted columns that are all understood")
    lines, faults = [], []
    for row in grid.rows:
        read = _Row(grid, columns, row)
        line = read.line()
        if read.faults:
            faults += read.faults
        else:
            lines.append(line)
    return tuple(lines), tuple(faults)


class _Row:
    """Reads one row, collecting its faults."""

    def __init__(self, grid: Grid, columns: Columns, row: GridRow) -> None:
        self.grid, self.columns, self.row = grid, columns, row
        self.faults: list[FileFault] = []

    def line(self) -> LotLine:
        lot: dict[str, Any] = {name: self.text(name) for name in ("colour", "dye_lot", "kept_in", "note")}
        lot["shade"] = self.read("shade", _read_shade)
        lot["put_ups"] = self.read("put_ups", _read_count)
        lot["weighed"] = self.quantity("weighed", _mass)
        yarn: dict[str, Any] = {"name": self.text("yarn")}
        yarn["fibres"] = self.read("fibres", read_blend)
        yarn["length"] = self.quantity("length", _length)
        yarn["mass"] = self.quantity("mass", _mass)
        yarn["needle"] = self.quantity("needle", _needle)
        yarn["plies"] = self.read("plies", _read_plies)
        yarn["note"] = self.text("yarn_note")
        if not yarn["name"]:
            self.fault("yarn", "nothing", "the name of the yarn")
        if not lot["put_ups"] and not lot["weighed"] and not self.faults:
            self.faults.append(
                FileFault.make(
                    "no whole balls and no mass",
                    "how many whole balls, or the mass of what is left such as 42 g, or both",
                    file=self.grid.name,
                    line=self.row.line,
                )
            )
        return LotLine(
            line=self.row.line,
            lot={name: value for name, value in lot.items() if value or name == "colour"},
            yarn={name: value for name, value in yarn.items() if value},
            lot_key=self.read("lot_key", _read_key) or "",
            yarn_key=self.read("yarn_key", _read_key) or "",
        )

    def text(self, field: str) -> str:
        column = self.columns.of(field)
        return self.row.cells[column.place].strip() if column else ""

    def read(self, field: str, read: Callable[[str], Any]) -> Any:
        """Read a cell that holds something; a fault is noted and gives None."""
        text = self.text(field)
        if not text:
            return None
        try:
            return read(text)
        except BadInput as error:
            self.fault(field, shown(text), error.wanted, error.hint)
            return None

    def quantity(self, field: str, read: Callable[[str], str]) -> Any:
        """Read a quantity: with its own unit, or a bare number in the unit that the heading names."""
        column = self.columns.of(field)
        unit = unit_for(column) if column else None
        return self.read(field, lambda text: read(f"{text} {unit}" if unit and _BARE.fullmatch(text) else text))

    def fault(self, field: str, found: str, wanted: str, hint: str | None = None) -> None:
        column = self.columns.of(field)
        self.faults.append(
            FileFault.make(
                found,
                wanted,
                file=self.grid.name,
                line=self.row.line,
                path=f"column “{_heading(column)}”",
                hint=hint,
            )
        )


def _heading(column: Column | None) -> str:
    return column.heading if column else ""


def _mass(text: str) -> str:
    """Read a mass and write it as the season file does; nothing for 0 g, since what is used up is no lot."""
    return _within(read_mass_g(text), text, "a mass", mass_text, least=0.01, unit="g")


def _length(text: str) -> str:
    return _within(read_yarn_length_m(text), text, "a length of yarn", yarn_length_text, least=1, unit="m")


def _within(
    value: float, text: str, what: str, write: Callable[[float], str], *, least: float, unit: str, most: float = 1e6
) -> str:
    if value == 0:
        return ""
    if not least <= value <= most:
        raise BadInput(text, f"{what} of {least:g} to {most:g} {unit}")
    return write(value)


def _needle(text: str) -> str:
    mm = read_length_cm(text) * 10
    if not 0.1 <= mm <= 60:
        raise BadInput(text, "a needle's diameter of 0.1 to 60 mm")
    return text


def _read_shade(text: str) -> str:
    if not _SHADE.fullmatch(text):
        raise BadInput(text, "a screen colour such as #7a4b2c, or nothing")
    return f"#{text.lower().removeprefix('#')}"


def _read_key(text: str) -> str:
    if not _KEY.fullmatch(text) or len(text) > 60:
        raise BadInput(text, "a key of small letters, digits and single hyphens, or nothing")
    return text


def _read_plies(text: str) -> int:
    return _whole(text, 10_000, "how many singles are plied")


def _read_count(text: str) -> int:
    return _whole(text, _MOST_PUT_UPS, "whole balls", hint="weigh an opened one: its mass has a column of its own")


def _whole(text: str, most: int, what: str, hint: str | None = None) -> int:
    try:
        number: Fraction = read_number(text)
    except BadInput:
        raise BadInput(text, f"{what}, a whole number") from None
    if number.denominator != 1:
        raise BadInput(text, f"{what}, a whole number", hint=hint)
    if not 0 <= number <= most:
        raise BadInput(text, f"{what}, from 0 to {most:,}")
    return int(number)
