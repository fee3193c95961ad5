"""What the columns of a table of yarn mean: our own headings, and plain words for them in British and American form."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Final, Literal

from loopwright.files.cupboard_table.grid import Grid
from loopwright.files.faults import FileFault

__all__ = ["ASIDE", "FIELDS", "Column", "Columns", "Field", "understand"]

ASIDE: Final = "leave aside"
"""The meaning of a column that is not taken in."""

Unit = Literal["g", "oz", "lb", "kg", "m", "yd", "mm"]


@dataclass(frozen=True, slots=True)
class Field:
    """Something that a column can hold.

    :ivar key: its name here.
    :ivar heading: as we write it.
    :ivar words: other headings that mean it, folded.
    :ivar of_yarn: whether it belongs to the yarn rather than to the lot.
    """

    key: str
    heading: str
    words: frozenset[str] = frozenset()
    of_yarn: bool = False


_PUT_UP_WORDS: Final = ("put up", "ball", "skein", "hank", "cake", "cone")


def _per_put_up(*nouns: str) -> frozenset[str]:
    """Give ``ball length``, ``length per ball``, ``length of a ball`` and their kin for every word for a put-up."""
    return frozenset(
        words
        for noun in nouns
        for one in _PUT_UP_WORDS
        for words in (f"{one} {noun}", f"{noun} per {one}", f"{noun} of a {one}", f"{noun} of one {one}")
    )


FIELDS: Final = (
    Field("yarn", "yarn", frozenset({"yarn name", "name of the yarn", "name", "quality"})),
    Field("colour", "colour", frozenset({"color", "colourway", "colorway", "colour name", "color name", "shade name"})),
    Field(
        "shade",
        "screen colour",
        frozenset({"screen color", "hex", "hex colour", "hex color", "colour hex", "color hex", "rgb"}),
    ),
    Field(
        "dye_lot",
        "dye lot",
        frozenset({"dyelot", "dye lot number", "dye lot no", "lot", "lot number", "lot no", "batch", "dye batch"}),
    ),
    Field(
        "put_ups",
        "put-ups",
        frozenset(
            {"quantity", "qty"}
            | {
                words
                for one in _PUT_UP_WORDS
                for words in (f"{one}s", f"whole {one}s", f"number of {one}s", f"full {one}s", f"{one} count")
            }
        ),
    ),
    Field(
        "weighed",
        "weighed, g",
        frozenset(
            {"weighed", "opened", "opened yarn", "mass left", "weight left", "remaining mass", "remaining weight"}
            | {"left over", "leftover", "remnant", "remnant mass", "remnant weight", "partial", "grams left"}
            | {"ounces left"}
        ),
    ),
    Field(
        "kept_in",
        "kept in",
        frozenset({"location", "place", "where", "where kept", "storage", "stored in", "box", "bin", "drawer"}),
    ),
    Field("note", "note", frozenset({"notes", "comment", "comments", "remark", "remarks"})),
    Field("lot_key", "lot key"),
    Field(
        "fibres",
        "fibres",
        frozenset({"fibers", "fibre", "fiber", "fibre content", "fiber content", "composition", "blend"})
        | {"fibre blend", "fiber blend", "material", "materials"},
        of_yarn=True,
    ),
    Field(
        "length",
        "put-up length, m",
        _per_put_up("length", "yardage", "metreage", "meterage", "metres", "meters", "yards", "m", "yd"),
        of_yarn=True,
    ),
    Field(
        "mass",
        "put-up mass, g",
        _per_put_up("mass", "weight", "grams", "ounces", "g", "oz") | {"unit weight", "net weight"},
        of_yarn=True,
    ),
    Field("needle", "needle, mm", frozenset({"needle", "needles", "needle size", "needle diameter"}), of_yarn=True),
    Field("plies", "plies", frozenset({"ply", "number of plies"}), of_yarn=True),
    Field("yarn_note", "yarn note", frozenset({"note on the yarn", "yarn notes"}), of_yarn=True),
    Field("yarn_key", "yarn key", of_yarn=True),
)
"""Every field of a table, in the order in which we write them."""
COMPUTED: Final = ("in all, g", "in all, m", "doubt, m", "reserved, m", "free, m", "reserved for")
"""Headings of what we work out for a reader; read again, it is left aside."""

_BY_KEY: Final = {field.key: field for field in FIELDS}
_UNIT_WORDS: Final[Mapping[str, Unit]] = {
    "g": "g", "gram": "g", "grams": "g", "gramme": "g", "grammes": "g",
    "oz": "oz", "ounce": "oz", "ounces": "oz", "lb": "lb", "pounds": "lb", "kg": "kg",
    "m": "m", "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "yd": "yd", "yds": "yd", "yard": "yd", "yards": "yd", "yardage": "yd", "mm": "mm",
}  # fmt: skip
_UNITS_OF: Final = {
    "weighed": ("g", "oz", "lb", "kg"),
    "mass": ("g", "oz", "lb", "kg"),
    "length": ("m", "yd"),
    "needle": ("mm",),
}


@dataclass(frozen=True, slots=True)
class Column:
    """One column of a file.

    :ivar place: from 0.
    :ivar means: key of its field, :data:`ASIDE`, or None where it is not understood.
    :ivar unit: in which its bare numbers are, as the heading says; None where it says none.
    """

    place: int
    heading: str
    means: str | None
    unit: Unit | None

    @property
    def field(self) -> Field | None:
        """Give the field that it holds, if it holds one."""
        return _BY_KEY.get(self.means or "")


@dataclass(frozen=True, slots=True)
class Columns:
    """What the columns of a file mean, as far as it is clear.

    :ivar unclear: those that are not understood; someone has to say what they mean.
    :ivar faults: what keeps the table from being read: a field twice, or one that is needed and not there.
    """

    all: tuple[Column, ...]
    unclear: tuple[Column, ...]
    faults: tuple[FileFault, ...]

    @property
    def is_clear(self) -> bool:
        """Say whether the rows can be read."""
        return not self.unclear and not self.faults

    def of(self, field: str) -> Column | None:
        """Give the column of a field."""
        return next((column for column in self.all if column.means == field), None)


def understand(grid: Grid, said: Mapping[int, str] | None = None) -> Columns:
    """Find what each column means by its heading.

    A heading that could mean two things, such as ``weight``, is not guessed at.

    :param said: what someone says of a column, by its place: the key of a field, or :data:`ASIDE`.
    """
    said = said or {}
    columns = tuple(
        Column(place, heading, _meaning(said.get(place), heading), _unit(heading))
        for place, heading in enumerate(grid.headings)
    )
    unclear = tuple(column for column in columns if column.means is None)
    return Columns(columns, unclear, tuple(_faults(grid, columns, bool(unclear))))


def meaning_of(word: str) -> str:
    """Give the key of the field that a heading of ours or a word for it names.

    :raises KeyError: none does.
    """
    found = ASIDE if _plain(word) in {_plain(ASIDE), "nothing"} else _meaning(None, word)
    if found is None:
        raise KeyError(word)
    return found


def _meaning(said: str | None, heading: str) -> str | None:
    if said is not None and (said == ASIDE or said in _BY_KEY):
        return said
    plain = _plain(heading)
    if not plain or plain in {_plain(one) for one in COMPUTED}:
        return ASIDE
    return _WORDS.get(plain) or _WORDS.get(_without_unit(plain))


def _plain(heading: str) -> str:
    """Give a heading as it is compared: small letters and figures with single spaces."""
    return " ".join(re.findall(r"[^\W_]+|#", heading.casefold()))


def _without_unit(plain: str) -> str:
    """Give a heading without the unit behind it: ``put up length in m`` means what ``put up length`` does."""
    *words, last = plain.split()
    if last not in _UNIT_WORDS:
        return plain
    return " ".join(words[:-1] if words and words[-1] == "in" else words)


_WORDS: Final = {word: field.key for field in FIELDS for word in (*field.words, _plain(field.heading))}


def _unit(heading: str) -> Unit | None:
    """Give the unit that a heading names, if it names one and no other."""
    named = {_UNIT_WORDS[word] for word in _plain(heading).split() if word in _UNIT_WORDS}
    return named.pop() if len(named) == 1 else None


def unit_for(column: Column) -> Unit | None:
    """Give the unit of a column's bare numbers, if it is one that its field can have."""
    return column.unit if column.unit in _UNITS_OF.get(column.means or "", ()) else None


def _faults(grid: Grid, columns: Sequence[Column], some_unclear: bool) -> list[FileFault]:
    faults, seen = [], dict[str, Column]()
    for column in columns:
        if column.field is None:
            continue
        first = seen.setdefault(column.field.key, column)
        if first is not column:
            faults.append(
                FileFault.make(
                    f"a second column for {column.field.heading}",
                    f"one; the first is “{first.heading}”",
                    file=grid.name,
                    line=grid.line,
                    path=f"column “{column.heading}”",
                )
            )
    if not some_unclear:
        faults += [_missing(grid, key) for key in ("yarn", "colour") if key not in seen]
        if "put_ups" not in seen and "weighed" not in seen:
            faults.append(_missing(grid, "put_ups", "or one for weighed, g"))
    return faults


def _missing(grid: Grid, key: str, other: str = "") -> FileFault:
    heading = _BY_KEY[key].heading
    near = get_close_matches(heading, [_plain(one) for one in grid.headings], n=1)
    return FileFault.make(
        f"no column for {heading}",
        f"a column headed {heading}{f', {other}' if other else ''}",
        file=grid.name,
        line=grid.line,
        hint=f"is it “{near[0]}”?" if near else None,
    )
