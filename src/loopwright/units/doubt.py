"""A mean and its standard deviation to text, no more exact than it is.

The deviation is shown to two significant digits and the mean to the same decimal place (the rule of the
Guide to the Expression of Uncertainty in Measurement, JCGM 100:2008, 7.2.6: at most two significant digits;
from memory).
"""

import math
from decimal import ROUND_HALF_UP, Decimal, localcontext

from loopwright.units.factors import INCH, OUNCE, YARD
from loopwright.units.fraction import MINUS
from loopwright.units.reader import Reader

__all__ = ["write_doubt", "write_length_doubt", "write_mass_doubt", "write_yarn_length_doubt"]

_DIGITS_OF_ANY_FLOAT = 700
_SIGNIFICANT = 2


def write_doubt(mean: float, sd: float, symbol: str = "") -> str:
    """A mean and its standard deviation: `960 ± 45 m`.

    Args:
        mean: finite.
        sd: the standard deviation in the same unit, finite, not negative; 0 writes the mean alone.
        symbol: the unit to write behind both.

    >>> write_doubt(961.3, 44.8, "m"), write_doubt(1234, 126, "g"), write_doubt(2.5, 0.04, "cm")
    ('961 ± 45 m', '1,230 ± 130 g', '2.500 ± 0.040 cm')
    """
    if not math.isfinite(mean) or not math.isfinite(sd) or sd < 0:
        raise ValueError(f"mean and sd must be finite and sd not negative, not {mean} and {sd}")
    behind = f" {symbol}" if symbol else ""
    exact = Decimal(repr(float(mean)))
    if sd == 0:
        return f"{exact.normalize():,f}{behind}".replace("-", MINUS)
    with localcontext(prec=_DIGITS_OF_ANY_FLOAT):
        doubt = Decimal(repr(float(sd)))
        doubt = _to_place(doubt, doubt.adjusted() - _SIGNIFICANT + 1)
        place = doubt.adjusted() - _SIGNIFICANT + 1
        rounded = _to_place(exact, place)
    decimals = max(0, -place)
    return f"{_plain(rounded, decimals)} ± {_plain(doubt, decimals)}{behind}"


def write_length_doubt(mean_cm: float, sd_cm: float, reader: Reader) -> str:
    """A length in cm with its doubt, in cm or decimal inches.

    >>> write_length_doubt(99, 1.5, Reader()), write_length_doubt(99, 1.5, Reader("imperial"))
    ('99.0 ± 1.5 cm', '38.98 ± 0.59 in')
    """
    if reader.measures == "metric":
        return write_doubt(mean_cm, sd_cm, "cm")
    return write_doubt(mean_cm / float(INCH.factor), sd_cm / float(INCH.factor), "in")


def write_yarn_length_doubt(mean_m: float, sd_m: float, reader: Reader) -> str:
    """A length of yarn in m with its doubt, in metres or yards.

    >>> write_yarn_length_doubt(960, 45, Reader()), write_yarn_length_doubt(960, 45, Reader("imperial"))
    ('960 ± 45 m', '1,050 ± 49 yd')
    """
    if reader.measures == "metric":
        return write_doubt(mean_m, sd_m, "m")
    yard_m = float(YARD.factor / 100)
    return write_doubt(mean_m / yard_m, sd_m / yard_m, "yd")


def write_mass_doubt(mean_g: float, sd_g: float, reader: Reader) -> str:
    """A mass in g with its doubt, in grams or decimal ounces.

    >>> write_mass_doubt(412, 18, Reader()), write_mass_doubt(412, 18, Reader("imperial"))
    ('412 ± 18 g', '14.53 ± 0.63 oz')
    """
    if reader.measures == "metric":
        return write_doubt(mean_g, sd_g, "g")
    return write_doubt(mean_g / float(OUNCE.factor), sd_g / float(OUNCE.factor), "oz")


def _to_place(value: Decimal, place: int) -> Decimal:
    """Rounded half-up to a multiple of `10**place`."""
    return value.quantize(Decimal(1).scaleb(place), rounding=ROUND_HALF_UP)


def _plain(value: Decimal, decimals: int) -> str:
    return f"{value:,.{decimals}f}".replace("-", MINUS)
