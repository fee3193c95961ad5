"""Colours as text: ``#rrggbb``, six hexadecimal digits of sRGB."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

import numpy as np
import numpy.typing as npt

from loopwright.colour.spaces import Floats
from loopwright.units import BadInput

__all__ = ["read_hex", "read_hexes", "write_hex"]

_WANTED: Final = "a colour as #rrggbb"
_DIGITS: Final = re.compile(r"[0-9a-f]*", re.IGNORECASE)


def read_hex(text: str) -> Floats:
    """Read ``#rrggbb``, in small or capital letters.

    :returns: sRGB, shape (3,), 0 to 1.
    :raises BadInput: it is written in another way; the hint gives the colour as it should stand, if it can be told.
    """
    found = text.strip()
    digits = found.removeprefix("#")
    if not _DIGITS.fullmatch(digits) or len(digits) != 6:
        raise BadInput(text, _WANTED, hint=_hint(digits))
    if digits == found:
        raise BadInput(text, _WANTED, hint=f'did you mean "#{digits}"?')
    return np.array([*bytes.fromhex(digits)], dtype=np.float64) / 255


def _hint(digits: str) -> str | None:
    if not digits:
        return None
    wrong = _DIGITS.sub("", digits)
    if wrong:
        return f'"{wrong[0]}" is no digit of 0 to 9 and a to f'
    if len(digits) == 3:
        return f'did you mean "#{"".join(digit * 2 for digit in digits)}"?'
    return f"it has {len(digits)} digits, not six"


def read_hexes(texts: Iterable[str]) -> Floats:
    """Read several colours, each as :func:`read_hex` does.

    :returns: sRGB, shape (n, 3).
    :raises BadInput: one is written in another way.
    """
    return np.array([read_hex(text) for text in texts], dtype=np.float64).reshape(-1, 3)


def write_hex(srgb: npt.ArrayLike) -> str:
    """Write sRGB as ``#rrggbb``: each value times 255, rounded half up; what no screen can show is clipped.

    :param srgb: shape (3,).
    :raises ValueError: the shape is another, or a value is no number.
    """
    values = np.asarray(srgb, dtype=np.float64)
    if values.shape != (3,) or not np.isfinite(values).all():
        raise ValueError(f"found {values}; wanted three finite numbers")
    whole = np.floor(np.clip(values, 0, 1) * 255 + 0.5).astype(int)
    return "#" + "".join(f"{value:02x}" for value in whole.tolist())
