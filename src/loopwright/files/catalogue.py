"""Reads a catalogue of yarns: a CSV of a shop or of her own, its columns found by their headings."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Final, TypeVar

import numpy as np
from numpy.typing import NDArray

from loopwright.files.catalogue_cells import Decimals, read_fibres, read_length, read_mass, read_price
from loopwright.files.catalogue_columns import Columns, Field, delimiter_of, map_columns
from loopwright.files.faults import FileFault, shown
from loopwright.need.substitution import FIBRE_NAMES, YarnCatalogue
from loopwright.need.substitution.catalogue import NO_PRICE
from loopwright.need.substitution.fibre_traits import fibre_place
from loopwright.units import BadInput, LoopwrightError

__all__ = ["CatalogueFaults", "read_catalogue", "read_catalogue_text"]

MOST_BYTES: Final = 500_000_000
MOST_SHOWN: Final = 30
_WANTED_FILE: Final = "a catalogue of yarns, .csv"

Value = TypeVar("Value")
Row = tuple[int, list[str]]
Prices = tuple[NDArray[np.int64], NDArray[np.int16], tuple[str, ...]]


class CatalogueFaults(LoopwrightError):
    """A catalogue that cannot be read, with every fault that was found, in the order of the lines.

    :ivar faults: one or more.
    """

    def __init__(self, faults: Iterable[FileFault]) -> None:
        self.faults = sorted(faults, key=lambda fault: fault.line)
        super().__init__(self.faults)

    def __str__(self) -> str:
        """One line for each fault; of very many the first and how many more there are."""
        lines = [str(fault) for fault in self.faults[:MOST_SHOWN]]
        more = len(self.faults) - len(lines)
        return "\n".join([*lines, *([f"and {more} more faults"] if more else [])])


def read_catalogue(path: Path | str) -> YarnCatalogue:
    """Read a catalogue of yarns.

    :raises BadInput: no such file, not readable, larger than 500 MB, or not UTF-8 text.
    :raises CatalogueFaults: faults in what it says, each with its line and column.
    """
    path = Path(path)
    try:
        if not path.is_file():
            raise BadInput("no such file" if not path.exists() else "something that is no file", _WANTED_FILE)
        if path.stat().st_size > MOST_BYTES:
            raise BadInput(f"{path.stat().st_size / 1e6:.0f} MB", "a catalogue of at most 500 MB")
        text = path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError as error:
        raise BadInput("text that is not UTF-8", "UTF-8; save it again in that encoding", place=str(path)) from error
    except OSError as error:
        raise BadInput((error.strerror or "unreadable").lower(), _WANTED_FILE, place=str(path)) from error
    except BadInput as fault:
        raise fault.at(str(path)) from fault
    return read_catalogue_text(text, str(path))


def read_catalogue_text(text: str, name: str) -> YarnCatalogue:
    """Read a catalogue from text.

    The first row has the headings. Columns may be parted by commas, semicolons or tabs; columns that are not known are
    passed over, empty rows too. An empty cell of fibres or price means *not stated*.

    :param name: name of the file, for the faults.
    :raises CatalogueFaults: faults, each with its line and column.
    """
    rows, delimiter = _rows(text.removeprefix("\N{ZERO WIDTH NO-BREAK SPACE}"), name)
    if not rows:
        raise CatalogueFaults([FileFault.make("nothing", "a row of headings, then yarns", file=name, line=1)])
    (line, headings), *body = rows
    columns, faults = map_columns(headings, name, line)
    if faults:
        raise CatalogueFaults(faults)
    if not body:
        raise CatalogueFaults([FileFault.make("headings and no yarn", "a yarn a row", file=name, line=line)])
    return _Reading(columns, body, name, delimiter).catalogue()


def _rows(text: str, name: str) -> tuple[list[Row], str]:
    first = next((line for line in text.splitlines() if line.strip()), "")
    delimiter = delimiter_of(first)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    rows: list[Row] = []
    try:
        begun = 1
        for cells in reader:
            if "".join(cells).strip():
                rows.append((begun, cells))
            begun = reader.line_num + 1
    except csv.Error as error:
        fault = FileFault.make(f"cells that cannot be told apart ({error})", "CSV", file=name, line=reader.line_num)
        raise CatalogueFaults([fault]) from error
    return rows, delimiter


class _Reading:
    """Reads the rows by column; every different text of a column is read once."""

    def __init__(self, columns: Columns, body: list[Row], name: str, delimiter: str) -> None:
        self.columns, self.file = columns, name
        self.lines = [line for line, _ in body]
        self.faults: list[FileFault] = []
        self.cells: dict[Field, list[str]] = {
            field: [cells[place].strip() if place < len(cells) else "" for _, cells in body]
            for field, place in columns.place.items()
        }
        numbers: tuple[Field, ...] = ("length", "mass", "price")
        self.decimals = Decimals({text for field in numbers for text in self.cells.get(field, ())}, delimiter)

    def catalogue(self) -> YarnCatalogue:
        plain, unit = self.decimals.plain, self.columns.unit
        names = self.cells["name"]
        self._column("name", _name)
        length = self._column("length", lambda text: read_length(plain(text), unit["length"]))
        mass = self._column("mass", lambda text: read_mass(plain(text), unit["mass"]))
        blends = self._column("fibres", read_fibres)
        prices = self._prices()
        self._repeats(length, mass)
        if self.faults:
            raise CatalogueFaults(self.faults)
        return YarnCatalogue.made(
            names,
            np.array([length[text] for text in self.cells["length"]], dtype=np.float64),
            np.array([mass[text] for text in self.cells["mass"]], dtype=np.float64),
            _share_matrix(self.cells["fibres"], blends),
            prices,
        )

    def _column(self, field: Field, read: Callable[[str], Value]) -> dict[str, Value]:
        """Read every different text of a column; a fault is noted for each line that has it."""
        values, bad = {}, {}
        for text in dict.fromkeys(self.cells[field]):
            try:
                values[text] = read(text)
            except BadInput as fault:
                bad[text] = fault
        if bad:
            for line, text in zip(self.lines, self.cells[field], strict=True):
                if text in bad:
                    self._fault(line, field, shown(text) if text else "nothing", bad[text].wanted, bad[text].hint)
        return values

    def _fault(self, line: int, field: Field, found: str, wanted: str, hint: str | None = None) -> None:
        self.faults.append(
            FileFault.make(found, wanted, file=self.file, line=line, path=self.columns.heading[field], hint=hint)
        )

    def _prices(self) -> Prices | None:
        """Read price and currency together; they are one text then, such as ``12.50 NZD``."""
        if "price" not in self.cells:
            return None
        usual = self.columns.unit["price"]
        codes = self.cells.get("currency")
        if codes is not None:
            self.cells["price"] = [
                f"{text} {code}" if text and code and not text[-1].isalpha() and not text[0].isalpha() else text
                for text, code in zip(self.cells["price"], codes, strict=True)
            ]
        money = self._column("price", lambda text: read_price(self.decimals.plain(text), usual) if text else None)
        found = dict.fromkeys(price.currency for price in money.values() if price is not None)
        place = {currency: number for number, currency in enumerate(found)}
        coded = {
            text: (NO_PRICE, 0) if price is None else (price.minor, place[price.currency])
            for text, price in money.items()
        }
        rows = np.array([coded.get(text, (NO_PRICE, 0)) for text in self.cells["price"]], dtype=np.int64)
        return rows[:, 0].copy(), rows[:, 1].astype(np.int16), tuple(found)

    def _repeats(self, length: dict[str, float], mass: dict[str, float]) -> None:
        rows = zip(*(self.cells[field] for field in ("name", "length", "mass")), strict=True)
        seen: dict[tuple[str, float | None, float | None], int] = {}
        for line, (name, metres, grams) in zip(self.lines, rows, strict=True):
            first = seen.setdefault((name.casefold(), length.get(metres), mass.get(grams)), line)
            if first != line and name:
                wanted = f"each put-up of a yarn once; the first is on line {first}"
                self._fault(line, "name", f"{shown(name)} of this length and mass a second time", wanted)


def _name(text: str) -> str:
    if not text:
        raise BadInput(text, "the name of a yarn")
    return text


def _share_matrix(texts: list[str], blends: dict[str, dict[str, float]]) -> NDArray[np.float32]:
    """Give the matrix of shares: every different blend once, then a row for each yarn."""
    kinds = np.zeros((len(blends), len(FIBRE_NAMES)), dtype=np.float32)
    place = {}
    for number, (text, parts) in enumerate(blends.items()):
        place[text] = number
        for fibre, percent in parts.items():
            kinds[number, fibre_place(fibre)] = percent / 100
    matrix: NDArray[np.float32] = kinds[np.array([place[text] for text in texts], dtype=np.intp)]
    return matrix
