"""Numbers to text for people: rounded to what a tape, a scale or a needle can show, in the reader's measures.

Nothing here is meant to be computed with again; for files see `exact_text`. Rounding takes a half away from
zero.
"""

import math
from decimal import Decimal
from fractions import Fraction

from loopwright.units.factors import INCH, OUNCE, YARD
from loopwright.units.fraction import MINUS, round_half_up, write_fraction
from loopwright.units.money import Money
from loopwright.units.reader import Reader

__all__ = [
    "write_gauge",
    "write_hours",
    "write_length",
    "write_mass",
    "write_money",
    "write_percent",
    "write_share",
    "write_yarn_length",
]

_FINEST = 16
_SMALL = 10
"""Below ten metres, yards or grams one decimal is shown; below ten hours, the minutes."""
_GAUGE_WINDOW_IN_10CM = 4 * INCH.factor / 10
_WHOLE_PER_CENT = 100


def write_length(length_cm: float, reader: Reader, digits: int = 1) -> str:
    """A length for the reader: `36 cm`, `36.5 cm`, `14¼ in`.

    Args:
        length_cm: in cm; may be negative, as ease can be.
        reader: her measures.
        digits: decimals of the centimetre; inches are written in halves (0), quarters (1), eighths (2) or
            sixteenths (3 and more).

    >>> write_length(36, Reader()), write_length(36, Reader("imperial"))
    ('36 cm', '14¼ in')
    """
    exact = _finite(length_cm, "length_cm")
    if reader.measures == "metric":
        return _decimal_text(exact, digits, "cm")
    return _fraction_text(exact / INCH.factor, min(2 ** (digits + 1), _FINEST), "in")


def write_yarn_length(length_m: float, reader: Reader) -> str:
    """A length of yarn: whole metres or yards, one decimal below ten.

    >>> write_yarn_length(430, Reader()), write_yarn_length(430, Reader("imperial"))
    ('430 m', '470 yd')
    """
    exact = _finite(length_m, "length_m")
    if reader.measures == "metric":
        return _decimal_text(exact, _digits_for(exact), "m")
    yards = exact * 100 / YARD.factor
    return _decimal_text(yards, _digits_for(yards), "yd")


def write_mass(mass_g: float, reader: Reader) -> str:
    """A mass: whole grams (one decimal below ten), or ounces in quarters.

    >>> write_mass(50, Reader()), write_mass(50, Reader("imperial"))
    ('50 g', '1¾ oz')
    """
    exact = _finite(mass_g, "mass_g")
    if reader.measures == "metric":
        return _decimal_text(exact, _digits_for(exact), "g")
    return _fraction_text(exact / OUNCE.factor, 4, "oz")


def write_gauge(stitches_per_10cm: float, rows_per_10cm: float | None, reader: Reader) -> str:
    """A gauge over 10 cm, or over 4 in reckoned exactly as 10.16 cm; counts to one decimal.

    >>> write_gauge(22, 30, Reader()), write_gauge(22, None, Reader("imperial"))
    ('22 sts × 30 rows to 10 cm', '22.4 sts to 4 in')
    """
    metric = reader.measures == "metric"
    times = Fraction(1) if metric else _GAUGE_WINDOW_IN_10CM
    stitches = _decimal_text(_finite(stitches_per_10cm, "stitches_per_10cm") * times, 1, "sts")
    rows = ""
    if rows_per_10cm is not None:
        rows = " × " + _decimal_text(_finite(rows_per_10cm, "rows_per_10cm") * times, 1, "rows")
    return f"{stitches}{rows} to {'10 cm' if metric else '4 in'}"


def write_hours(hours: float) -> str:
    """A duration: whole hours, with minutes below ten hours.

    >>> write_hours(41.2), write_hours(2.5), write_hours(0.75)
    ('41 h', '2 h 30 min', '45 min')
    """
    exact = _finite(hours, "hours")
    if exact < 0:
        raise ValueError(f"hours must not be negative: {hours}")
    minutes = round_half_up(exact * 60)
    if exact and not minutes:
        return "under 1 min"
    if minutes >= _SMALL * 60:
        return f"{round_half_up(exact):,} h"
    whole, rest = divmod(minutes, 60)
    parts = [f"{whole} h"] * bool(whole) + [f"{rest} min"] * bool(rest or not whole)
    return " ".join(parts)


def write_percent(share: float, *, digits: int = 0) -> str:
    """A share in per cent as a working shows it, with a space before the sign; it may be 0 or 100.

    Args:
        share: 1 is the whole.
        digits: after the point.

    >>> write_percent(0.6175), write_percent(0.696, digits=1)
    ('62 %', '69.6 %')
    """
    return f"{share * 100:.{digits}f} %"


def write_share(share: float) -> str:
    """A share in whole per cent that never claims certainty it has not: `over 99 %`, `under 1 %`.

    Args:
        share: from 0 to 1; only exactly 1 is written `100 %` and only exactly 0 `0 %`.

    >>> write_share(0.953), write_share(0.9999), write_share(0.0001)
    ('95 %', 'over 99 %', 'under 1 %')
    """
    if not 0 <= share <= 1:
        raise ValueError(f"a share lies between 0 and 1, not {share}")
    per_cent = round_half_up(_as_printed(share) * _WHOLE_PER_CENT)
    if share < 1 and per_cent == _WHOLE_PER_CENT:
        return "over 99 %"
    if share > 0 and per_cent == 0:
        return "under 1 %"
    return f"{per_cent} %"


def write_money(money: Money) -> str:
    """An amount with its currency code in front and all its decimals.

    >>> write_money(Money(123450, "NZD")), write_money(Money(-500, "JPY"))
    ('NZD 1,234.50', 'JPY −500')
    """
    return f"{money.currency} {money.amount:,f}".replace("-", MINUS)


def _finite(value: float, name: str) -> Fraction:
    if not math.isfinite(value):
        raise ValueError(f"{name} must be finite, not {value}")
    return _as_printed(value)


def _as_printed(value: float) -> Fraction:
    """The number that Python prints for a float, so that 0.995 is rounded as a person would round it."""
    return Fraction(repr(float(value)))


def _digits_for(value: Fraction) -> int:
    return 1 if abs(value) < _SMALL else 0


def _decimal_text(value: Fraction, digits: int, symbol: str) -> str:
    """Rounded to so many decimals, zeros at the end dropped; a positive value never becomes 0."""
    steps = round_half_up(value * 10**digits)
    least = Decimal(1).scaleb(-digits)
    if not steps:
        return f"under {least} {symbol}" if value > 0 else f"0 {symbol}"
    text = f"{Decimal(steps).scaleb(-digits):,f}"
    if digits:
        text = text.rstrip("0").rstrip(".")
    return f"{text} {symbol}".replace("-", MINUS)


def _fraction_text(value: Fraction, denominator: int, symbol: str) -> str:
    """Rounded to a fraction; what would vanish is written in sixteenths, or as less than one."""
    if value > 0 and not round_half_up(value * denominator):
        if not round_half_up(value * _FINEST):
            return f"under {write_fraction(Fraction(1, _FINEST), _FINEST)} {symbol}"
        return f"{write_fraction(value, _FINEST)} {symbol}"
    return f"{write_fraction(value, denominator)} {symbol}"
