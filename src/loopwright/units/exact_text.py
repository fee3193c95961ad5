"""Numbers to text for files: nothing is rounded, and reading the text gives back the same float.

The digits are those of `repr`, the shortest that name the float, written without an exponent. Units are
fixed: cm for lengths, m for yarn, g for masses.
"""

import math
from decimal import Decimal

__all__ = ["length_text", "mass_text", "yarn_length_text"]


def length_text(length_cm: float) -> str:
    """A length in cm, so that `read_length_cm(length_text(x), negative=True) == x`.

    >>> length_text(35.56), length_text(36.0)
    ('35.56 cm', '36 cm')
    """
    return f"{_shortest(length_cm)} cm"


def yarn_length_text(length_m: float) -> str:
    """A yarn length in m, so that `read_yarn_length_m(yarn_length_text(x)) == x`.

    >>> yarn_length_text(429.768)
    '429.768 m'
    """
    return f"{_shortest(length_m)} m"


def mass_text(mass_g: float) -> str:
    """A mass in g, so that `read_mass_g(mass_text(x)) == x`.

    >>> mass_text(49.612)
    '49.612 g'
    """
    return f"{_shortest(mass_g)} g"


def _shortest(value: float) -> str:
    if not math.isfinite(value):
        raise ValueError(f"only a finite number can be written, not {value}")
    return f"{Decimal(repr(float(value))):f}".removesuffix(".0")
