"""Reads the figures of a row: one for each size, in one unit or several, however they are parted.

What a comma, a blank, a dash or a stroke means is settled by the row: each way of taking them is tried, the usual one
first, until there are as many figures as sizes. A row is gone over two dozen times at most, so time grows with its
length alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import product
from typing import Final, Literal, NamedTuple

from loopwright.pattern.size_block.tokens import Token
from loopwright.pattern.size_block.tree import BlockFault, Figure, Reading
from loopwright.pattern.size_block.words import unit_symbol
from loopwright.units import read_number

__all__ = ["JOINERS", "Group", "Taken", "merged", "take", "take_all"]

JOINERS: Final = {"or", "and", "approx", "approximately", "about", "ca", "circa", "each", "of", "per", "to", "x", "×"}
_MOST_DIGITS: Final = 7
_TIMES: Final = {"x", "×"}


Dashes = Literal["range", "missing", "between"]


class Way(NamedTuple):
    """One way of taking the signs between figures."""

    commas_inside: bool
    blanks_inside: bool
    dashes: Dashes
    strokes_between: bool


@dataclass(frozen=True, slots=True)
class Group:
    """Figures that one unit closes; None where no unit does."""

    unit: str | None
    figures: tuple[Figure, ...]


@dataclass(slots=True)
class Taken:
    """What was taken from the tokens of a row in one way.

    :ivar left: words that mean nothing here.
    :ivar for_all: the row says that its one figure holds for all sizes.
    """

    groups: list[Group] = field(default_factory=list)
    left: list[Token] = field(default_factory=list)
    faults: list[BlockFault] = field(default_factory=list)
    units: list[str] = field(default_factory=list)
    for_all: bool = False


def take_all(tokens: Sequence[Token], *, yarn: bool = False) -> Iterator[Taken]:
    """Take the figures in every way that makes sense, the usual one first."""
    usual_commas = _commas_inside(tokens)
    kinds = {token.kind for token in tokens}
    has_strokes = any("/" in token.text for token in tokens if token.kind == "number")
    all_dashes: tuple[Dashes, ...] = ("range", "missing", "between")
    dashes = all_dashes if "dash" in kinds else all_dashes[:1]
    strokes = (False, True) if has_strokes else (False,)
    commas = (usual_commas, not usual_commas) if "comma" in kinds else (usual_commas,)
    for dash, stroke, blank, comma in product(dashes, strokes, (True, False), commas):
        yield take(tokens, Way(comma, blank, dash, stroke), yarn=yarn)


def _commas_inside(tokens: Sequence[Token]) -> bool:
    """Say whether a tight comma is a decimal or thousands one: where something else parts the sizes."""
    tight = [_tight(tokens, at) for at, token in enumerate(tokens) if token.kind == "comma"]
    others = any(token.kind == "tab" or token.text in ";|" for token in tokens)
    brackets = any(token.text in "()[]{}" for token in tokens)
    return others or not all(tight) or (len(tight) == 1 and not brackets)


def _tight(tokens: Sequence[Token], at: int) -> bool:
    if not 0 < at < len(tokens) - 1:
        return False
    before, after = tokens[at - 1], tokens[at + 1]
    return before.text.isdecimal() and after.text.isdecimal() and not (tokens[at].spaced or after.spaced)


def take(tokens: Sequence[Token], way: Way, *, yarn: bool = False) -> Taken:
    """Take the figures in one way.

    :param yarn: a figure directly behind a closing bracket begins a new group, as in ``9 (10, 11) 50 g balls``.
    """
    return _Taker(tokens, way, yarn=yarn).take()


class _Taker:
    """Goes once through the tokens of a row."""

    def __init__(self, tokens: Sequence[Token], way: Way, *, yarn: bool) -> None:
        self.tokens, self.way, self.yarn = tokens, way, yarn
        self.at = 0
        self.pending: list[Figure] = []
        self.prefix: str | None = None
        self.taken = Taken()

    def take(self) -> Taken:
        while self.at < len(self.tokens):
            token = self.tokens[self.at]
            if token.kind == "number":
                self.number()
            elif token.kind == "dash":
                self.dash(token)
            else:
                self.sign(token)
        self.close(self.prefix)
        return self.taken

    def close(self, unit: str | None) -> None:
        if self.pending:
            self.taken.groups.append(Group(unit, tuple(self.pending)))
            self.pending = []

    def kind_at(self, at: int) -> str:
        return self.tokens[at].kind if 0 <= at < len(self.tokens) else "end"

    # ----------------------------------------------------------------------------------------------- figures
    def number(self) -> None:
        first = self.at
        if self.yarn and self.pending and first and self.tokens[first - 1].text in {")", "]", "}"}:
            self.close(None)
        if self.strokes():
            return
        value = self.value()
        upto = self.range_end(value)
        tokens = self.tokens[first : self.at]
        width = tokens[-1].end - tokens[0].place.column
        if value is None:
            self.fault(tokens, f'"{tokens[0].text}"', f"a figure of at most {_MOST_DIGITS} digits")
        elif value <= 0:
            self.fault(tokens, f'"{tokens[0].text}"', "a figure above nothing, or a dash for a size without it")
        known = value if value and value > 0 else None
        self.pending.append(Figure(known, upto if known else None, tokens[0].place, max(width, 1)))

    def strokes(self) -> bool:
        """Take ``2/3`` as two sizes, where the way is so."""
        token = self.tokens[self.at]
        top, stroke, bottom = token.text.partition("/")
        if not (self.way.strokes_between and stroke and top.isdecimal()):
            return False
        self.at += 1
        self.pending += [Figure(Fraction(int(part)), None, token.place, len(token.text)) for part in (top, bottom)]
        return True

    def value(self) -> Fraction | None:
        """The number here with what belongs to it, the place then standing behind it; None if it is too long."""
        text = self.tokens[self.at].text
        self.at += 1
        while text.replace(",", "").isdecimal() and len(text) <= _MOST_DIGITS:
            if self.way.commas_inside and self.kind_at(self.at) == "comma" and _tight(self.tokens, self.at):
                text += f",{self.tokens[self.at + 1].text}"
                self.at += 2
            elif self.thousands_follow(text):
                text += self.tokens[self.at].text
                self.at += 1
            else:
                break
        if sum(sign.isdecimal() for sign in text) > _MOST_DIGITS + 2:
            return None
        parts = text.split(",")
        if len(parts) > 2 and any(len(part) != 3 for part in parts[1:]):
            return None
        return read_number(text)

    def thousands_follow(self, text: str) -> bool:
        if not self.way.blanks_inside or self.kind_at(self.at) != "number" or not 1 <= len(text) <= 3:
            return False
        after = self.tokens[self.at]
        one_blank = after.place.column - self.tokens[self.at - 1].end == 1
        behind = self.kind_at(self.at + 1)
        return one_blank and len(after.text) == 3 and after.text.isdecimal() and text[0] != "0" and behind != "number"

    def range_end(self, low: Fraction | None) -> Fraction | None:
        """The upper end of a range that began with ``low``, if one is printed."""
        if self.way.dashes != "range" or low is None or self.kind_at(self.at + 1) != "number":
            return None
        joint = self.tokens[self.at]
        if joint.kind != "dash" and joint.name != "to":
            return None
        back = self.at
        self.at += 1
        high = self.value()
        if high is None or high <= low:
            self.at = back
            return None
        return high

    def dash(self, token: Token) -> None:
        before, after = self.neighbour(-1), self.neighbour(1)
        self.at += 1
        stands_alone = before in {"", "part"} and after in {"", "part", "unit"}
        between = before in {"", "part", "number"} and after in {"", "part", "unit", "number"} and token.spaced
        if stands_alone or (self.way.dashes == "missing" and between):
            self.pending.append(Figure(None, None, token.place, len(token.text)))

    def neighbour(self, step: int) -> str:
        """What stands beside the token here: nothing, a number, a unit, a word, or what parts sizes."""
        at = self.at + step
        if not 0 <= at < len(self.tokens):
            return ""
        token = self.tokens[at]
        if token.kind == "word" or (token.kind == "mark" and unit_symbol(token.name)):
            return "unit" if unit_symbol(token.name) else "word"
        return "number" if token.kind == "number" else "part"

    # ------------------------------------------------------------------------------------------------- signs
    def sign(self, token: Token) -> None:
        self.at += 1
        unit = unit_symbol(token.name) if token.name else None
        if unit is not None:
            self.unit(unit)
        elif token.text == "|" and self.empty_cell():
            self.pending.append(Figure(None, None, token.place, 1))
        elif token.text == "%" and self.pending:
            self.pending.pop()
        elif token.name in _TIMES and self.yarn:
            self.close(None)
        elif token.kind == "word":
            self.word(token)

    def empty_cell(self) -> bool:
        """Say whether a table's stroke is followed by another with nothing in between."""
        at = self.at
        return self.kind_at(at) == "mark" and self.tokens[at].text == "|"

    def unit(self, unit: str) -> None:
        self.taken.units.append(unit)
        if self.prefix is not None:
            more = any(token.kind == "number" for token in self.tokens[self.at :])
            self.close(self.prefix if more else unit)
            self.prefix = unit
        elif self.pending:
            self.close(unit)
        elif not self.taken.groups and self.kind_at(self.at) in {"number", "mark"} and self.figures_follow():
            self.prefix = unit

    def figures_follow(self) -> bool:
        """Say whether figures come before any other unit or word, and no unit closes them."""
        for token in self.tokens[self.at : self.at + 40]:
            if token.kind == "word" or (token.kind == "mark" and unit_symbol(token.name)):
                return False
            if token.kind == "number":
                return not self.yarn
        return False

    def word(self, token: Token) -> None:
        if token.name in {"all", "every"} and self.kind_at(self.at) == "word" and self.tokens[self.at].name == "sizes":
            self.at += 1
            self.taken.for_all = True
        elif token.name in {"ply", "strand", "strands"} and self.pending:
            self.pending.pop()
            self.taken.left.append(token)
        elif token.name not in JOINERS and token.name not in {"for", "in", "on", "sizes"}:
            self.taken.left.append(token)

    def fault(self, tokens: Sequence[Token], found: str, wanted: str) -> None:
        first = tokens[0]
        self.taken.faults.append(BlockFault(first.place, first.end - first.place.column, found, wanted))


def merged(groups: Sequence[Group], units: Sequence[str]) -> tuple[Reading, ...]:
    """Join the groups of one unit: ``34 in (86 cm), 37 in (94 cm)`` is one row of inches and one of centimetres.

    :param units: those that hold where no unit stands; with two, the figures take turns.
    """
    rows: dict[str, list[Figure]] = {}
    for group in groups:
        if group.unit is None and len(units) > 1:
            for at, figure in enumerate(group.figures):
                rows.setdefault(units[at % len(units)], []).append(figure)
        else:
            rows.setdefault(group.unit or (units[0] if units else ""), []).extend(group.figures)
    return tuple(Reading(unit, tuple(figures)) for unit, figures in rows.items())


def spread(reading: Reading, columns: int) -> Reading:
    """Give a reading with its one figure for every size."""
    return replace(reading, figures=reading.figures * columns)
