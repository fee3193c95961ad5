"""Numbers as knitters write them, read exactly and written with vulgar fractions.

Vulgar fractions are those of the Unicode standard (blocks Latin-1 Supplement and Number Forms); their
values are taken from their own compatibility mappings, so no value is typed in here. U+2044 is the fraction
slash.
"""

import math
import re
import unicodedata
from fractions import Fraction

from loopwright.units.errors import UnreadableQuantity

__all__ = ["MINUS", "NUMBER_PATTERN", "read_number", "round_half_up", "write_fraction"]

MINUS = "\N{MINUS SIGN}"
WANTED_NUMBER = "a number such as 14, 14.5 or 5 1/2"
_LONGEST_NUMBER = 400
"""Characters: the longest float written out without an exponent takes fewer."""


def _vulgar_values() -> dict[str, Fraction]:
    characters = "¼½¾↉" + "".join(map(chr, range(0x2150, 0x215F)))
    return {c: Fraction(unicodedata.normalize("NFKC", c).replace("⁄", "/")) for c in characters}


_VULGAR = _vulgar_values()
_VULGAR_BY_VALUE = {value: c for c, value in _VULGAR.items() if value}

_SPACE = "[ \u00a0\u2009\u202f]"
_SLASH = "[/⁄∕]"
_HYPHEN = "[-\u2010\u2011\u2013]"
_SIGN = f"[+{MINUS}-]"
_ANY_VULGAR = f"[{''.join(_VULGAR)}]"
_SPACED = rf"[1-9][0-9]{{0,2}}(?:{_SPACE}[0-9]{{3}})+"
_COMMAED = r"[1-9][0-9]{0,2}(?:,[0-9]{3})+"
_WHOLE = rf"(?:{_SPACED}|{_COMMAED}|[0-9]+)"
_OVER = rf"(?:[0-9]+{_SLASH}[0-9]+|⅟[0-9]+)"
_MIXED = rf"{_WHOLE}(?:(?:{_SPACE}*|{_HYPHEN}){_ANY_VULGAR}|(?:{_SPACE}+|{_HYPHEN}){_OVER})"
_DECIMAL = rf"(?:{_SPACED}[.,][0-9]+|{_COMMAED}(?:\.[0-9]+)?|[0-9]+[.,][0-9]+|\.[0-9]+)"

NUMBER_PATTERN = rf"{_SIGN}?(?:{_MIXED}|{_OVER}|{_ANY_VULGAR}|{_DECIMAL}|{_WHOLE})(?![0-9])"
"""Finds the longest number in running text; every match that means something is read by `read_number`."""

_SIGNED = re.compile(rf"(?P<sign>{_SIGN})?(?P<body>.+)")
_MIXED_PARTS = re.compile(
    rf"(?:(?P<whole>{_WHOLE})(?:{_SPACE}*(?={_ANY_VULGAR})|{_SPACE}+|{_HYPHEN}))?"
    rf"(?:(?P<vulgar>{_ANY_VULGAR})|(?P<top>[0-9]+){_SLASH}(?P<bottom>[0-9]+)|⅟(?P<unit>[0-9]+))"
)
_DECIMAL_PARTS = re.compile(
    rf"(?:(?P<commaed>{_COMMAED})(?:\.(?P<after>[0-9]+))?"
    rf"|(?P<whole>{_SPACED}|[0-9]+)(?:[.,](?P<decimals>[0-9]+))?|\.(?P<only>[0-9]+))"
)


def read_number(text: str) -> Fraction:
    """The exact value of a number written by hand.

    Read are: `14`, `14.5`, `14,5`, `.5`, `1 200`, `1,200`, `1,200.50`, `5½`, `5 ½`, `3 1/2`, `3-1/2`,
    `1/2`, every vulgar fraction of Unicode, the fraction slash (U+2044), and a leading `-`, `−` (U+2212) or
    `+`.

    A comma is a thousands mark when exactly three digits follow it at the end and one to three digits, not
    beginning with 0, stand before it: `1,200` is one thousand two hundred, while `14,5`, `0,125` and
    `1234,567` have decimal commas. A point is always a decimal point: `1.200` is one and a fifth.

    Whether a negative number makes sense is for the caller to say.

    Raises:
        UnreadableQuantity: the text is empty, is no number (`nan`, `inf`, `--3`, `1e5`), divides by zero,
            or is a mixed number whose fraction is not below one (`3 5/4`).

    >>> read_number("5½"), read_number("14,5"), read_number("1,200")
    (Fraction(11, 2), Fraction(29, 2), Fraction(1200, 1))
    """
    stripped = text.strip()
    signed = _SIGNED.fullmatch(stripped) if len(stripped) <= _LONGEST_NUMBER else None
    if signed is None:
        raise UnreadableQuantity(text, WANTED_NUMBER)
    size = _read_mixed(text, signed["body"])
    if size is None:
        size = _read_decimal(text, signed["body"])
    return -size if signed["sign"] in ("-", MINUS) else size


def _read_mixed(text: str, body: str) -> Fraction | None:
    parts = _MIXED_PARTS.fullmatch(body)
    if parts is None:
        return None
    bottom = parts["bottom"] or parts["unit"]
    if bottom is not None and int(bottom) == 0:
        raise UnreadableQuantity(text, WANTED_NUMBER, hint="nothing can be divided by 0")
    part = Fraction(int(parts["top"] or 1), int(bottom)) if bottom else _VULGAR[parts["vulgar"]]
    if parts["whole"] is None:
        return part
    if part >= 1:
        raise UnreadableQuantity(text, WANTED_NUMBER, hint="the fraction after a whole number must be below 1")
    return _digits(parts["whole"]) + part


def _read_decimal(text: str, body: str) -> Fraction:
    parts = _DECIMAL_PARTS.fullmatch(body)
    if parts is None:
        raise UnreadableQuantity(text, WANTED_NUMBER)
    decimals = parts["after"] or parts["decimals"] or parts["only"] or ""
    whole = _digits(parts["commaed"] or parts["whole"] or "0")
    return whole + Fraction(int(decimals or "0"), 10 ** len(decimals))


def _digits(text: str) -> Fraction:
    """The whole number in `text` once its thousands marks are dropped."""
    return Fraction(int(re.sub("[^0-9]", "", text)))


def round_half_up(value: Fraction) -> int:
    """The nearest whole number; a half goes away from zero, as in trade and on the counter.

    >>> round_half_up(Fraction(5, 2)), round_half_up(Fraction(-5, 2))
    (3, -3)
    """
    size = math.floor(abs(value) + Fraction(1, 2))
    return -size if value < 0 else size


def write_fraction(value: Fraction | float, denominator: int = 8) -> str:
    """A number to the nearest `1/denominator`, as a whole number and a fraction in lowest terms.

    Args:
        value: any finite number; a half step rounds away from zero.
        denominator: how fine to write, at least 1: 8 for eighths.

    >>> write_fraction(5.5), write_fraction(3.13), write_fraction(Fraction(3, 16), 16), write_fraction(-0.5)
    ('5½', '3⅛', '3/16', '−½')
    """
    if denominator < 1:
        raise ValueError(f"denominator must be at least 1, not {denominator}")
    steps = round_half_up(Fraction(value) * denominator)
    whole, part = divmod(abs(steps), denominator)
    rest = Fraction(part, denominator)
    sign = MINUS if steps < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    if rest in _VULGAR_BY_VALUE:
        return f"{sign}{whole or ''}{_VULGAR_BY_VALUE[rest]}"
    gap = f"{whole} " if whole else ""
    return f"{sign}{gap}{rest.numerator}/{rest.denominator}"
