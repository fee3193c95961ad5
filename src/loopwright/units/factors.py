"""The one table of units: what they are called and how large they are, exactly.

Base units are fixed: lengths in centimetres, masses in grams, times in minutes. Every factor is a `Fraction`.

Sources: the international yard and pound agreement of 1959 (1 yd = 0.9144 m and 1 lb = 453.59237 g, both
exact; hence 1 in = 2.54 cm, 1 ft = 30.48 cm, 1 oz = 1 lb / 16 = 28.349523125 g); the SI brochure for the
metric units and for the hour of 60 minutes.
"""

from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction
from typing import Literal

__all__ = [
    "CENTIMETRE",
    "FOOT",
    "GRAM",
    "HOUR",
    "INCH",
    "KILOGRAM",
    "KILOMETRE",
    "METRE",
    "MILLIMETRE",
    "MINUTE",
    "OUNCE",
    "POUND",
    "UNITS",
    "YARD",
    "Kind",
    "Unit",
    "find_unit",
    "nearest_unit",
]

Kind = Literal["length", "mass", "time"]

YARD_CM = Fraction("91.44")
POUND_G = Fraction("453.59237")


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit of length (base cm), mass (base g) or time (base min).

    Args:
        symbol: how the unit is written by us, such as `cm`.
        kind: what it measures.
        factor: how many base units make one of it, exact.
        aliases: other spellings that are read; capitals and a dot at the end do not matter.
        metric: whether it belongs to the metric system (the hour and the minute count as metric).
    """

    symbol: str
    kind: Kind
    factor: Fraction
    aliases: tuple[str, ...] = ()
    metric: bool = True


MILLIMETRE = Unit("mm", "length", Fraction(1, 10), ("millimetre", "millimetres", "millimeter", "millimeters"))
CENTIMETRE = Unit("cm", "length", Fraction(1), ("cms", "centimetre", "centimetres", "centimeter", "centimeters"))
METRE = Unit("m", "length", Fraction(100), ("metre", "metres", "meter", "meters"))
KILOMETRE = Unit("km", "length", Fraction(100_000), ("kilometre", "kilometres", "kilometer", "kilometers"))
INCH = Unit("in", "length", YARD_CM / 36, ("ins", "inch", "inches", '"', "″", "”", "''", "′′"), metric=False)
FOOT = Unit("ft", "length", YARD_CM / 3, ("foot", "feet", "'", "′", "’"), metric=False)
YARD = Unit("yd", "length", YARD_CM, ("yds", "yard", "yards"), metric=False)
GRAM = Unit("g", "mass", Fraction(1), ("gr", "gm", "gms", "gram", "grams", "gramme", "grammes"))
KILOGRAM = Unit(
    "kg",
    "mass",
    Fraction(1000),
    ("kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"),
)
OUNCE = Unit("oz", "mass", POUND_G / 16, ("ozs", "ounce", "ounces"), metric=False)
POUND = Unit("lb", "mass", POUND_G, ("lbs", "pound", "pounds"), metric=False)
MINUTE = Unit("min", "time", Fraction(1), ("mins", "minute", "minutes"))
HOUR = Unit("h", "time", Fraction(60), ("hr", "hrs", "hour", "hours"))

UNITS: tuple[Unit, ...] = (
    MILLIMETRE,
    CENTIMETRE,
    METRE,
    KILOMETRE,
    INCH,
    FOOT,
    YARD,
    GRAM,
    KILOGRAM,
    OUNCE,
    POUND,
    MINUTE,
    HOUR,
)


def _spelled(units: tuple[Unit, ...]) -> dict[str, Unit]:
    """Every spelling in lower case and its unit; a spelling claimed twice is a fault in the table."""
    spellings: dict[str, Unit] = {}
    for unit in units:
        for name in (unit.symbol, *unit.aliases):
            if spellings.setdefault(name, unit) is not unit or name != name.lower():
                raise AssertionError(f"the spelling {name!r} of {unit.symbol} is taken or not in lower case")
    return spellings


_BY_SPELLING = _spelled(UNITS)


def find_unit(text: str) -> Unit | None:
    """The unit that `text` names, or None.

    Capitals and a dot at the end are ignored: no two units here differ by capitals alone.

    >>> find_unit("Inches").symbol, find_unit("yds.").symbol, find_unit("furlong")
    ('in', 'yd', None)
    """
    return _BY_SPELLING.get(text.strip().removesuffix(".").lower())


def nearest_unit(text: str, kind: Kind) -> Unit | None:
    """The unit of this kind whose spelling is most like `text`, or None if none is much like it.

    >>> nearest_unit("inchs", "length").symbol
    'in'
    """
    spellings = [name for name, unit in _BY_SPELLING.items() if unit.kind == kind]
    close = get_close_matches(text.strip().removesuffix(".").lower(), spellings, n=1, cutoff=0.6)
    return _BY_SPELLING[close[0]] if close else None
