"""Which column of a catalogue is what: headings in words, their units, and what parts the columns."""

from __future__ import annotations

import csv
import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final, Literal

from loopwright.files.faults import FileFault, shown
from loopwright.units import find_unit

__all__ = ["Columns", "Field", "delimiter_of", "map_columns"]

Field = Literal["name", "fibres", "length", "mass", "price", "currency"]
NEEDED: Final[tuple[Field, ...]] = ("name", "fibres", "length", "mass")

_HEADINGS: Final[dict[str, tuple[Field, str]]] = {
    **dict.fromkeys(("name", "yarn", "yarn name", "name of yarn", "quality"), ("name", "")),
    **dict.fromkeys(
        ("fibres", "fibers", "fibre", "fiber", "fibre content", "fiber content", "content", "composition"),
        ("fibres", ""),
    ),
    **dict.fromkeys(("material", "materials", "blend", "fibre blend", "fiber blend"), ("fibres", "")),
    **dict.fromkeys(("length", "yarn length", "ball length", "put up length", "length per ball"), ("length", "")),
    **dict.fromkeys(("metres", "meters", "metreage", "meterage", "metres per ball", "m per ball"), ("length", "m")),
    **dict.fromkeys(("yards", "yardage", "yards per ball"), ("length", "yd")),
    **dict.fromkeys(("mass", "weight", "ball mass", "ball weight", "net weight", "put up mass"), ("mass", "")),
    **dict.fromkeys(("grams", "grammes", "grams per ball", "g per ball"), ("mass", "g")),
    **dict.fromkeys(("ounces", "ounces per ball"), ("mass", "oz")),
    **dict.fromkeys(("price", "cost", "price per ball", "ball price", "price each"), ("price", "")),
    "currency": ("currency", ""),
}
_SEPARATORS: Final = (",", ";", "\t")
_CODE_LENGTH: Final = 3


@dataclass(frozen=True, slots=True)
class Columns:
    """Where each field stands in a row.

    :ivar place: of a field, counted from 0.
    :ivar heading: as the file has it.
    :ivar unit: that the heading names: ``m``, ``yd``, ``g``, ``oz`` or a currency; empty for none.
    """

    place: dict[Field, int]
    heading: dict[Field, str]
    unit: dict[Field, str]


def delimiter_of(line: str) -> str:
    """Give what parts the columns: of comma, semicolon and tab the one that yields most known headings."""

    def known(delimiter: str) -> tuple[int, int]:
        cells = next(csv.reader([line], delimiter=delimiter), [])
        return sum(_field_of(cell) is not None for cell in cells), len(cells)

    return max(_SEPARATORS, key=known)


def map_columns(headings: Sequence[str], file: str, line: int) -> tuple[Columns, list[FileFault]]:
    """Find the fields in the row of headings.

    :returns: the columns, and a fault for each field that is missing or stands there twice.
    """
    columns = Columns({}, {}, {})
    faults = []
    for place, heading in enumerate(headings):
        found = _field_of(heading)
        if found is None:
            continue
        field, unit = found
        if field in columns.place:
            first = columns.heading[field]
            faults.append(
                FileFault.make(
                    f"two columns for {field}: {shown(first)} and {shown(heading)}", "one", file=file, line=line
                )
            )
            continue
        columns.place[field], columns.heading[field], columns.unit[field] = place, heading.strip(), unit
    missing = [field for field in NEEDED if field not in columns.place]
    if missing:
        there = ", ".join(heading.strip() for heading in headings if heading.strip()) or "none"
        names = " and ".join(f"one for {field} ({_examples(field)})" for field in missing)
        faults.append(FileFault.make(f"the columns {there}", names, file=file, line=line))
    return columns, faults


def _examples(field: Field) -> str:
    return " or ".join([name for name, (of, _) in _HEADINGS.items() if of == field][:2])


def _field_of(heading: str) -> tuple[Field, str] | None:
    """Give the field and the unit of a heading such as ``Length (m)``, ``metres`` or ``price NZD``; else None."""
    words = re.sub(r"[_()\[\]:,/-]+", " ", heading).split()
    plain = " ".join(words).lower()
    if plain in _HEADINGS:
        return _HEADINGS[plain]
    if len(words) < 2:
        return None
    before = [word.lower() for word in words[:-1]]
    base = " ".join(before[:-1] if before[-1] in {"in", "of"} else before)
    if base not in _HEADINGS:
        return None
    field, _ = _HEADINGS[base]
    return (field, words[-1]) if _is_unit(field, words[-1]) else None


def _is_unit(field: Field, word: str) -> bool:
    if field == "price":
        return len(word) == _CODE_LENGTH and word.isascii() and word.isalpha()
    unit = find_unit(word)
    return unit is not None and unit.kind == field
