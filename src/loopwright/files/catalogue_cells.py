"""What stands in the cells of a catalogue: numbers with decimal points or commas, lengths, masses, prices, fibres."""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import get_close_matches
from typing import Final

from loopwright.need.substitution import FIBRE_NAMES
from loopwright.units import BadInput, Money, read_mass_g, read_money, read_number, read_yarn_length_m

__all__ = ["Decimals", "read_fibres", "read_length", "read_mass", "read_price"]

_COMMA_PROVEN: Final = re.compile(r"\d,(?:\d{1,2}|\d{4,})(?!\d)")
_POINT_PROVEN: Final = re.compile(r"\d\.(?:\d{1,2}|\d{4,})(?!\d)|,\d{3}\.")
_EITHER: Final = re.compile(r"(?<![\d.,])[1-9]\d{0,2},\d{3}(?![\d.,])")
_POINTED_THOUSANDS: Final = re.compile(r"(?<![\d.,])[1-9]\d{0,2}(?:\.\d{3})+(?![\d.])")
_HAS_UNIT: Final = re.compile(r"[^\W\d_]")
_SUM_TOLERANCE: Final = 0.5

_QUALIFIERS: Final = frozenset(
    {
        "extrafine",
        "extra",
        "fine",
        "superfine",
        "organic",
        "pure",
        "virgin",
        "new",
        "baby",
        "kid",
        "suri",
        "huacaya",
        "mulberry",
        "tussah",
        "spun",
        "raw",
        "recycled",
        "combed",
        "carded",
        "brushed",
        "peace",
        "long",
        "staple",
        "hair",
        "down",
        "fibre",
        "fiber",
    }
)
"""Words that leave a fibre what it is here."""
_SYNONYMS: Final = {
    **dict.fromkeys(("merino wool", "wool merino", "merinos"), "merino"),
    **dict.fromkeys(("lambswool", "lamb's wool", "sheep's wool", "sheep wool", "shetland", "shetland wool"), "wool"),
    **dict.fromkeys(("bluefaced leicester", "wensleydale", "romney", "lustre wool", "longwools"), "longwool"),
    **dict.fromkeys(
        ("superwash", "superwash merino", "merino superwash", "superwash merino wool", "wool superwash"),
        "superwash wool",
    ),
    **dict.fromkeys(("washable wool", "washable merino"), "superwash wool"),
    **dict.fromkeys(("polyamide", "polyamid", "nylons"), "nylon"),
    **dict.fromkeys(("polyacrylic", "acrylics", "polyacryl"), "acrylic"),
    **dict.fromkeys(("flax", "flax linen"), "linen"),
    **dict.fromkeys(("rayon", "viscose rayon"), "viscose"),
    **dict.fromkeys(("bamboo", "viscose bamboo", "bamboo rayon", "viscose from bamboo"), "bamboo viscose"),
    **dict.fromkeys(("mercerized cotton", "cotton mercerised", "cotton mercerized"), "mercerised cotton"),
    **dict.fromkeys(("alpaca wool",), "alpaca"),
    **dict.fromkeys(("other fibres", "other fibers", "others", "elastane", "metallic"), "other"),
}
_NAME = r"[^\W\d_](?:[^\W\d_]|[ '’-])*"
_PERCENT = r"\d{1,3}(?:[.,]\d+)?"
_NUMBER_FIRST: Final = re.compile(rf"\s*(?P<percent>{_PERCENT})\s*%?\s*(?:of\s+)?(?P<name>{_NAME})\s*[,;/+&|]*")
_NAME_FIRST: Final = re.compile(rf"\s*(?P<name>{_NAME}?)\s*:?\s*(?P<percent>{_PERCENT})\s*%?\s*(?:[,;/+&|]|and\b)*")
_BLEND_WANTED: Final = "fibres with their percent, such as 80 % merino, 20 % nylon"


class Decimals:
    """Whether the comma or the point is decimal in a file; found out from all of its numbers together.

    Where columns are parted by commas the point is decimal, and a comma as :func:`~loopwright.units.read_number`
    reads it.
    """

    def __init__(self, cells: Iterable[str], delimiter: str) -> None:
        self.free = delimiter != ","
        self.comma = self.point = False
        if self.free:
            for cell in cells:
                self.comma = self.comma or bool(_COMMA_PROVEN.search(cell))
                self.point = self.point or bool(_POINT_PROVEN.search(cell))

    def plain(self, text: str) -> str:
        """Give a cell with a decimal point and without marks of thousands.

        :raises BadInput: the cell goes against the others, or could be read both ways.
        """
        if not self.free:
            return text
        if self.comma and self.point and (_COMMA_PROVEN.search(text) or _POINT_PROVEN.search(text)):
            raise BadInput(text, "decimal commas alone or decimal points alone; the file has both")
        if self.comma:
            return _POINTED_THOUSANDS.sub(lambda whole: whole[0].replace(".", ""), text).replace(",", ".")
        if not self.point and _EITHER.search(text):
            raise BadInput(text, "a number that reads one way", hint="without a mark of thousands, such as 1200")
        return text


def read_length(text: str, unit: str) -> float:
    """Give metres from a cell.

    :param unit: that the heading names; a unit in the cell goes before it.
    """
    metres = read_yarn_length_m(_with_unit(text, unit, "a length with its unit, such as 115 m or 125 yd"))
    return _within(metres, 1.0, 1e6, text, "a length of a put-up from 1 m to 1,000 km")


def read_mass(text: str, unit: str) -> float:
    """Give grams from a cell; see :func:`read_length`."""
    grams = read_mass_g(_with_unit(text, unit, "a mass with its unit, such as 50 g or 1 3/4 oz"))
    return _within(grams, 0.01, 1e6, text, "a mass of a put-up from 0.01 g to 1,000 kg")


def read_price(text: str, currency: str) -> Money:
    """Give a price from a cell; a currency in the cell goes before that of its heading or column."""
    return read_money(text if _HAS_UNIT.search(text) or not currency else f"{text} {currency}")


def _with_unit(text: str, unit: str, wanted: str) -> str:
    if _HAS_UNIT.search(text):
        return text
    if not unit:
        if text:
            read_number(text)
        raise BadInput(text, wanted, hint="or name the unit in the heading, such as length (m) or mass (g)")
    return f"{text} {unit}"


def _within(value: float, low: float, high: float, text: str, wanted: str) -> float:
    if not low <= value <= high:
        raise BadInput(text, wanted)
    return value


def read_fibres(text: str) -> dict[str, float]:
    """Give the percent by mass of each fibre from ``80 % merino, 20 % nylon``, ``wool 55 / hemp 45`` or ``wool``.

    :returns: percent by fibre; nothing for an empty cell.
    :raises BadInput: an unknown fibre, no percent, or percents that do not sum to 100 (0.5 for rounding).
    """
    if not text.strip():
        return {}
    if not any(letter.isdigit() for letter in text):
        return {_fibre_named(text): 100.0}
    parts: dict[str, float] = {}
    form = _NUMBER_FIRST if text.strip()[0].isdigit() else _NAME_FIRST
    place = 0
    while place < len(text.rstrip()):
        part = form.match(text, place)
        if part is None:
            raise BadInput(text, _BLEND_WANTED)
        percent = float(part["percent"].replace(",", "."))
        if percent <= 0:
            raise BadInput(text, f"{_BLEND_WANTED}, each above 0 %")
        fibre = _fibre_named(part["name"])
        parts[fibre] = parts.get(fibre, 0.0) + percent
        place = part.end()
    whole = sum(parts.values())
    if abs(whole - 100) > _SUM_TOLERANCE:
        raise BadInput(text, "fibres that sum to 100 %", hint=f"these sum to {whole:g} %")
    return parts


def _fibre_named(written: str) -> str:
    words = written.lower().replace("’", "'").replace("-", " ").split()
    words = [word for word in words if word != "and"]
    for name in (" ".join(words), " ".join(word for word in words if word not in _QUALIFIERS)):
        if name in FIBRE_NAMES:
            return name
        if name in _SYNONYMS:
            return _SYNONYMS[name]
    near = get_close_matches(" ".join(words), [*FIBRE_NAMES, *_SYNONYMS], n=1)
    raise BadInput(
        written.strip(),
        f"a fibre: {', '.join(FIBRE_NAMES[:-1])}, or other",
        hint=f"did you mean '{near[0]}'?" if near else None,
    )
