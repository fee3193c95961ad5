"""Text to number at the edge: lengths, yarn lengths, masses, times and shares, each with its unit.

A number without a unit is refused: 14 may be inches or centimetres, and only the writer knows. Reading is
exact up to the last step, which rounds once to the nearest float.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from loopwright.units.errors import UnreadableQuantity
from loopwright.units.factors import Kind, Unit, find_unit, nearest_unit
from loopwright.units.fraction import MINUS, read_number
from loopwright.units.tokens import Cursor, Token, lex

__all__ = [
    "Quantity",
    "exact_float",
    "read_length_cm",
    "read_mass_g",
    "read_minutes",
    "read_quantity",
    "read_share",
    "read_yarn_length_m",
    "unit_hint",
]


@dataclass(frozen=True, slots=True)
class _Asked:
    """What is asked for: its kind, the words for it in an error, two units to offer when none is given."""

    kind: Kind
    words: str
    offered: tuple[str, str]


_LENGTH = _Asked("length", "a length with its unit, such as 36 cm or 14 in", ("cm", "in"))
_YARN = _Asked("length", "a yarn length with its unit, such as 430 m or 470 yd", ("m", "yd"))
_MASS = _Asked("mass", "a mass with its unit, such as 50 g or 1 3/4 oz", ("g", "oz"))
_TIME = _Asked("time", "a time with its unit, such as 45 min or 1 h 30 min", ("min", "h"))
_BY_KIND: dict[Kind, _Asked] = {"length": _LENGTH, "mass": _MASS, "time": _TIME}
_WANTED_SHARE = "a share from 0 % to 100 %, such as 95 %"


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact number of a unit, as a reader found it.

    Args:
        value: how many.
        unit: of what.
    """

    value: Fraction
    unit: Unit

    @property
    def in_base(self) -> Fraction:
        """The same in the base unit of its kind (cm, g or min), exact."""
        return self.value * self.unit.factor


def read_quantity(text: str, kind: Kind, *, negative: bool = False) -> Quantity:
    """One quantity of the given kind, exact.

    Several parts from large to small add up in the smallest unit: `5 ft 6 in` is 66 in, `1 h 30 min` is 90
    min.

    Args:
        text: a number with its unit, or several; see `read_number` for the numbers.
        kind: length, mass or time.
        negative: whether a leading minus is accepted (ease may be negative, a ball may not).

    Raises:
        UnreadableQuantity: no number, no unit, an unknown unit or one of another kind, something left over.

    >>> read_quantity("5 ft 6 in", "length").value
    Fraction(66, 1)
    """
    return _read(text, _BY_KIND[kind], negative=negative)


def read_length_cm(text: str, *, negative: bool = False) -> float:
    """A length in centimetres, from `36 cm`, `14 in`, `14"`, `5 ft 6 in`, `1.2 m`.

    >>> read_length_cm("14 in")
    35.56
    """
    return _base_float(text, _LENGTH, negative=negative)


def read_yarn_length_m(text: str) -> float:
    """A length of yarn in metres, from `430 m`, `470 yd`, `1.2 km`; never negative.

    >>> read_yarn_length_m("470 yd")
    429.768
    """
    return _base_float(text, _YARN, divisor=100)


def read_mass_g(text: str) -> float:
    """A mass in grams, from `50 g`, `3½ oz`, `1 lb 2 oz`; never negative.

    >>> round(read_mass_g("3 1/2 oz"), 2)
    99.22
    """
    return _base_float(text, _MASS)


def read_minutes(text: str) -> float:
    """A duration in minutes, from `45 min`, `1 h 30 min`, `2½ hours`; never negative.

    >>> read_minutes("1 h 30 min")
    90.0
    """
    return _base_float(text, _TIME)


def read_share(text: str) -> float:
    """A share between 0 and 1, from a percentage such as `95 %`, `12.5%` or `95 per cent`.

    A bare number is refused: `1` might be one per cent or the whole.

    >>> read_share("95 %")
    0.95
    """
    cursor = Cursor(lex(text))
    number = cursor.take()
    said = cursor.skip("%", "percent") or (cursor.skip("per") and cursor.skip("cent"))
    if number.kind != "number" or not said or not cursor.at_end:
        bare = number.kind == "number" and cursor.at_end
        raise UnreadableQuantity(text, _WANTED_SHARE, hint="add the % sign" if bare else None)
    share = _number(number, text, _WANTED_SHARE) / 100
    if not 0 <= share <= 1:
        raise UnreadableQuantity(text, _WANTED_SHARE)
    return float(share)


def exact_float(value: Fraction, text: str, wanted: str) -> float:
    """The float nearest to an exact value; a value beyond all floats is refused as unreadable `text`."""
    try:
        return float(value)
    except OverflowError:
        raise UnreadableQuantity(text, wanted, hint="it is too large") from None


def unit_hint(word: str, kind: Kind) -> str | None:
    """What to try when `word` is no unit of the wanted kind: the nearest, or what it does measure."""
    other = find_unit(word)
    if other is not None:
        return f'"{other.symbol}" is a unit of {other.kind}'
    near = nearest_unit(word, kind)
    return f'did you mean "{near.symbol}"?' if near else None


@lru_cache(maxsize=8192)
def _base_float(text: str, asked: _Asked, *, negative: bool = False, divisor: int = 1) -> float:
    """The quantity in base units over `divisor`, rounded once; what thousands of lots repeat is read once."""
    return exact_float(_read(text, asked, negative=negative).in_base / divisor, text, asked.words)


def _read(text: str, asked: _Asked, *, negative: bool) -> Quantity:
    cursor = Cursor(lex(text))
    minus = cursor.peek().text.startswith(("-", MINUS))
    value, unit = _read_part(cursor, text, asked)
    total = abs(value)
    while not cursor.at_end:
        more, smaller = _read_part(cursor, text, asked)
        if more < 0 or smaller.factor >= unit.factor:
            raise UnreadableQuantity(text, asked.words, hint="parts go from the large unit to the small one")
        total, unit = total * unit.factor / smaller.factor + more, smaller
    if minus and total and not negative:
        raise UnreadableQuantity(text, asked.words, hint="it cannot be negative")
    return Quantity(-total if minus else total, unit)


def _read_part(cursor: Cursor, text: str, asked: _Asked) -> tuple[Fraction, Unit]:
    """One number and its unit, the cursor then standing behind them."""
    number = cursor.take()
    if number.kind != "number":
        raise UnreadableQuantity(text, asked.words)
    value = _number(number, text, asked.words)
    word = cursor.take()
    if word.kind == "end":
        first, second = (f"{number.text} {symbol}" for symbol in asked.offered)
        raise UnreadableQuantity(text, asked.words, hint=f"which unit? write {first} or {second}")
    unit = find_unit(word.text)
    if unit is None or unit.kind != asked.kind:
        raise UnreadableQuantity(text, asked.words, hint=unit_hint(word.text, asked.kind))
    return value, unit


def _number(token: Token, text: str, wanted: str) -> Fraction:
    """The number in a token; a fault names the whole text."""
    try:
        return read_number(token.text)
    except UnreadableQuantity as fault:
        raise UnreadableQuantity(text, wanted, hint=fault.hint) from fault
