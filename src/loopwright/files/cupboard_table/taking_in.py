"""A table of yarn beside a cupboard: what is new, what is there already, and what keeping it would change."""

from __future__ import annotations

from collections.abc import Callable, Container, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final, Literal

from pydantic import ValidationError

from loopwright.files.cupboard_table.columns import Columns
from loopwright.files.cupboard_table.grid import Grid
from loopwright.files.cupboard_table.lines import LotLine, read_lines
from loopwright.files.faults import FileFault
from loopwright.records import FROM_FILE
from loopwright.season import Season
from loopwright.season.change import Entries
from loopwright.season.cupboard_search import folded
from loopwright.units import read_mass_g
from loopwright.yarn import Lot, Yarn

__all__ = ["COMPARED", "Added", "Choice", "Matched", "TakenIn", "entries_to_keep", "take_in"]

Choice = Literal["leave", "update", "add"]
"""What is done with lots that are there already: left as they are, given the amounts of the file, or added again."""
KeyMaker = Callable[[str, Container[str]], str]
"""Makes a key from a name that is not among those taken."""

_SAME_BAND: Final = 0.02
"""Put-ups whose length and mass differ by less, as a share, are one yarn: bands round; our judgement."""
_AMOUNTS: Final = ("put_ups", "weighed")
COMPARED: Final = {"put_ups": "whole balls", "weighed": "opened", "kept_in": "kept in", "shade": "screen colour"}
"""What of two lots that are the same is compared, and what it is called."""


@dataclass(frozen=True, slots=True)
class Added:
    """A lot that is not there yet, under the key that it would have."""

    line: int
    key: str
    yarn_name: str
    fields: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Matched:
    """A lot that is there already: same yarn, colour, dye lot and note.

    :ivar key: of the lot that is there.
    :ivar again: the lot as the file has it, should it be added as one of its own.
    :ivar differs: what the file says otherwise: name of the field, here, in the file.
    """

    line: int
    key: str
    again: Added
    differs: tuple[tuple[str, str, str], ...]

    @property
    def is_equal(self) -> bool:
        """Say whether the file says nothing otherwise."""
        return not self.differs


@dataclass(frozen=True, slots=True)
class TakenIn:
    """What keeping a table would do. Nothing is kept where there is a fault.

    :ivar yarns: fields of the yarns that are not there yet, by the key that they would have.
    """

    yarns: Mapping[str, Mapping[str, Any]]
    added: tuple[Added, ...]
    matched: tuple[Matched, ...]
    faults: tuple[FileFault, ...]

    @property
    def differing(self) -> tuple[Matched, ...]:
        """Give the lots that are there and about which the file says something otherwise."""
        return tuple(one for one in self.matched if one.differs)

    @property
    def equal(self) -> tuple[Matched, ...]:
        """Give the lots that are there just as the file has them."""
        return tuple(one for one in self.matched if not one.differs)


def take_in(grid: Grid, columns: Columns, season: Season, make_key: KeyMaker) -> TakenIn:
    """Compare a table with a season's cupboard; nothing is changed.

    Two lots are the same when yarn, colour, dye lot and note are, capitals aside. Each lot that is there stands for
    one line at most: what the file has twice and the cupboard once is one lot more, not none.

    :param make_key: gives keys for what is new.
    """
    lines, faults = read_lines(grid, columns)
    yarns = _Yarns(grid, season, make_key)
    settled = [(line, key) for line in lines if (key := yarns.key_of(line)) is not None]
    found = _matches(settled, season.cupboard)
    taken = {lot.key for lot in season.cupboard}
    added, matched, more = [], [], list[FileFault]()
    for line, yarn in settled:
        there = found.get(line.line)
        one = _added(line, yarn, yarns.name_of(yarn), taken, make_key)
        fault = _lot_fault(grid, line, one)
        if fault is not None:
            more.append(fault)
        elif there is None:
            added.append(one)
        else:
            matched.append(Matched(line.line, there.key, one, _differences(there, line)))
    all_faults = sorted((*faults, *yarns.faults, *more), key=lambda fault: fault.line)
    return TakenIn(yarns.new, tuple(added), tuple(matched), tuple(all_faults))


def entries_to_keep(taken: TakenIn, choice: Choice) -> tuple[Entries, Entries]:
    """Give what is added to a season and what is changed in it, by table and key, in the words of its file.

    A yarn of which nothing is kept is left out.

    :raises ValueError: there are faults.
    """
    if taken.faults:
        raise ValueError("a table with faults is not kept")
    lots = [*taken.added, *(one.again for one in taken.matched if choice == "add")]
    changed: dict[str, dict[str, Any]] = {
        one.key: {name: one.again.fields.get(name) for name in (*_AMOUNTS, *(_changed(one)))}
        for one in (taken.differing if choice == "update" else ())
    }
    kept = {lot.fields["yarn"] for lot in lots}
    added: Entries = {
        "yarns": {key: dict(fields) for key, fields in taken.yarns.items() if key in kept},
        "cupboard": {lot.key: dict(lot.fields) for lot in lots},
    }
    return added, {"cupboard": changed} if changed else {}


def _changed(one: Matched) -> list[str]:
    """Give the other fields that are taken over: those that the file says; what it is silent about stays."""
    return [name for name, _, said in one.differs if name not in _AMOUNTS and said]


# ------------------------------------------------------------------------------------------------- the yarns
class _Yarns:
    """The yarns of a season and those that a table brings along."""

    def __init__(self, grid: Grid, season: Season, make_key: KeyMaker) -> None:
        self.grid, self.make_key = grid, make_key
        self.known: dict[str, list[Yarn]] = {}
        self.keys: dict[str, Yarn] = {}
        self.new: dict[str, Mapping[str, Any]] = {}
        self.faults: list[FileFault] = []
        for yarn in season.yarns:
            self._know(yarn)

    def _know(self, yarn: Yarn) -> None:
        self.known.setdefault(folded(yarn.name), []).append(yarn)
        self.keys[yarn.key] = yarn

    def name_of(self, key: str) -> str:
        return self.keys[key].name

    def key_of(self, line: LotLine) -> str | None:
        """Give the key of a line's yarn, known or new; None where there is a fault."""
        candidates = self.known.get(folded(line.yarn["name"]), [])
        by_key = [yarn for yarn in candidates if yarn.key == line.yarn_key]
        same = [yarn for yarn in by_key or candidates if _same_band(yarn, line)]
        if len(same) == 1 or (same and by_key):
            return same[0].key
        if len(same) > 1:
            keys, called = ", ".join(yarn.key for yarn in same), line.yarn["name"]
            self._fault(line, f"“{called}”, which several yarns are called", f"one of the yarn keys {keys}")
            return None
        if candidates:
            there = candidates[0]
            said = " and ".join(line.yarn[name] for name in ("length", "mass") if name in line.yarn)
            here = f"{there.length_m:g} m and {there.mass_g:g} g"
            self._fault(line, f"put-ups of {said}", f"{here}, as “{there.name}” has here, or another name for the yarn")
            return None
        return self._new(line)

    def _new(self, line: LotLine) -> str | None:
        missing = " and ".join(name for name in ("length", "mass") if name not in line.yarn)
        if missing:
            self._fault(
                line,
                f"the yarn “{line.yarn['name']}”, which is not there yet, without the {missing} of a put-up",
                "columns for put-up length and put-up mass, such as 225 m and 100 g, or a yarn that is there",
            )
            return None
        wished = line.yarn_key if line.yarn_key not in self.keys else ""
        key = wished or self.make_key(line.yarn["name"], self.keys)
        try:
            yarn = Yarn.model_validate({"key": key, **line.yarn}, context=FROM_FILE)
        except ValidationError as error:
            self._fault(line, f"the yarn “{line.yarn['name']}”", _reason(error))
            return None
        self.new[key] = line.yarn
        self._know(yarn)
        return key

    def _fault(self, line: LotLine, found: str, wanted: str) -> None:
        self.faults.append(FileFault.make(found, wanted, file=self.grid.name, line=line.line))


def _same_band(yarn: Yarn, line: LotLine) -> bool:
    """Say whether a line agrees with a yarn on the put-up, as far as it says something."""
    said = (("length", yarn.length_m), ("mass", yarn.mass_g))
    stated = {"length": _metres, "mass": read_mass_g}
    return all(abs(stated[name](line.yarn[name]) / here - 1) <= _SAME_BAND for name, here in said if name in line.yarn)


def _metres(text: str) -> float:
    return float(Yarn.model_validate({"key": "y", "name": "", "length": text, "mass": "1 g"}).length_m)


def _reason(error: ValidationError) -> str:
    first = error.errors()[0]
    cause = (first.get("ctx") or {}).get("error")
    return str(getattr(cause, "wanted", "") or first["msg"])


# -------------------------------------------------------------------------------------------------- the lots
def _matches(settled: Sequence[tuple[LotLine, str]], there: Sequence[Lot]) -> dict[int, Lot]:
    """Pair lines with lots that are the same, first those that agree in everything; by line."""
    free: dict[tuple[str, ...], list[Lot]] = {}
    for lot in there:
        free.setdefault((lot.yarn, folded(lot.colour), folded(lot.dye_lot), folded(lot.note)), []).append(lot)
    found: dict[int, Lot] = {}
    for exactly in (True, False):
        for line, yarn in settled:
            lots = free.get((yarn, *line.same_as), [])
            place = next((at for at, lot in enumerate(lots) if not (exactly and _differences(lot, line))), None)
            if line.line not in found and place is not None:
                found[line.line] = lots.pop(place)
    return found


def _differences(lot: Lot, line: LotLine) -> tuple[tuple[str, str, str], ...]:
    """Give what a line says otherwise; about where it is kept and its likeness a line may be silent."""
    weighed = line.lot.get("weighed")
    in_file = {
        "put_ups": str(line.lot.get("put_ups", 0)),
        "weighed": "" if weighed is None else f"{read_mass_g(weighed):g} g",
        "kept_in": line.lot.get("kept_in", ""),
        "shade": line.lot.get("shade", ""),
    }
    here = {
        "put_ups": str(lot.put_ups),
        "weighed": "" if lot.mass_g is None else f"{lot.mass_g:g} g",
        "kept_in": lot.kept_in,
        "shade": lot.shade or "",
    }
    return tuple(
        (name, here[name], in_file[name])
        for name in COMPARED
        if here[name] != in_file[name] and (name in _AMOUNTS or in_file[name])
    )


def _added(line: LotLine, yarn: str, yarn_name: str, taken: set[str], make_key: KeyMaker) -> Added:
    wished = line.lot_key if line.lot_key and line.lot_key not in taken else ""
    key = wished or make_key(f"{yarn_name} {line.lot.get('colour', '')}", taken)
    taken.add(key)
    return Added(line.line, key, yarn_name, {"yarn": yarn, **line.lot})


def _lot_fault(grid: Grid, line: LotLine, one: Added) -> FileFault | None:
    """Give what is wrong with the lot as a whole, if something is."""
    try:
        Lot.model_validate({"key": one.key, **one.fields}, context=FROM_FILE)
    except ValidationError as error:
        return FileFault.make("a lot that cannot be kept", _reason(error), file=grid.name, line=line.line)
    return None
