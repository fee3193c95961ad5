"""Size rows as patterns print them: ``86 (94, 102, 110) cm``."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from decimal import Decimal

from loopwright.units import BadInput, read_length_cm, read_mass_g, read_number, read_yarn_length_m

__all__ = ["EXAMPLES", "read_size_names", "read_size_row", "write_size_row"]

_MISSING = {"-", "–", "—", ""}
_UNIT_AT_END = re.compile(r"^(?P<numbers>.*?[\d½¼¾⅓⅔⅛⅜⅝⅞)\]–—-])\s*(?P<unit>[A-Za-z\"'″′]*)\.?$", re.DOTALL)
_READERS: dict[str, Callable[[str], float]] = {
    "length": read_length_cm,
    "yarn": read_yarn_length_m,
    "mass": read_mass_g,
}
_LEAST, _MOST = 0.01, 1e6
EXAMPLES = {
    "length": "86 (94, 102, 110) cm",
    "yarn": "900 (980, 1060) m",
    "mass": "350 (400, 450) g",
    "count": "9 (10, 11, 12)",
}


def _split(text: str, *, figures: bool = True) -> list[str]:
    """Split a row into its sizes, at brackets and commas.

    Where commas with a blank (or semicolons) part the sizes, a comma inside a figure is a decimal one:
    ``86,5 (94,5; 102,5)``; so is the only comma of a row without brackets: ``52,5``. Else every comma parts:
    ``80(88,96)``. Names have no decimals.
    """
    inside = re.sub(r"[()\[\]]", "; ", text)
    spaced = ";" in text or re.search(r",\s", text) is not None
    alone = figures and inside == text and text.count(",") == 1
    parts = re.split(r";|,(?=\s)" if spaced or alone else r"[;,]", inside)
    return [part.strip() for part in parts if part.strip()]


def read_size_names(text: str) -> tuple[str, ...]:
    """Give the size names of ``XS (S, M, L)`` or ``86 (94, 102)``.

    :raises BadInput: no size, or one name twice.
    """
    names = tuple(_split(text, figures=False))
    if not names:
        raise BadInput(found=f'"{text}"', wanted="size names, such as XS (S, M, L)")
    if len(set(names)) < len(names):
        raise BadInput(found=f'"{text}", one name twice', wanted="each size named once")
    return names


def read_size_row(text: str, kind: str) -> tuple[float | None, ...]:
    """Give one number per size, in cm, m, g or plain counts; a dash is a size without that figure.

    :param text: such as ``86 (94, 102, 110) cm``; the unit stands once, at the end, or at each number.
    :param kind: ``length`` (cm), ``yarn`` (m), ``mass`` (g) or ``count``.
    :raises BadInput: a number that cannot be read, no unit, or nothing but dashes.
    """
    wanted = f"one figure per size, such as {EXAMPLES[kind]}"
    matched = _UNIT_AT_END.match(text.strip())
    if not matched:
        raise BadInput(found=f'"{text}"', wanted=wanted)
    unit = matched["unit"]
    values: list[float | None] = []
    for part in _split(matched["numbers"]):
        values.append(None if part in _MISSING else _read_one(part, unit, kind, text, wanted))
    if not any(value is not None for value in values):
        raise BadInput(found=f'"{text}"', wanted=wanted)
    return tuple(values)


def _read_one(part: str, unit: str, kind: str, text: str, wanted: str) -> float:
    if kind == "count":
        if unit and unit not in {
            "balls",
            "ball",
            "skeins",
            "skein",
            "hanks",
            "hank",
            "cones",
            "cone",
            "cakes",
        }:
            raise BadInput(found=f'"{text}" with the unit "{unit}"', wanted=wanted)
        value = float(read_number(part))
    else:
        has_unit = re.search(r"[A-Za-z\"'″′]\s*$", part) is not None
        try:
            value = _READERS[kind](part if has_unit else f"{part} {unit}".strip())
        except BadInput as fault:
            raise BadInput(found=f'"{part}" in "{text}"', wanted=fault.wanted, hint=fault.hint) from fault
    if value <= 0:
        raise BadInput(found=f'"{part}" in "{text}"', wanted="a figure above nothing for each size")
    if not _LEAST <= value <= _MOST:
        raise BadInput(found=f'"{part}" in "{text}"', wanted=f"figures from {_LEAST:g} to {_MOST:g} for each size")
    return value


def write_size_row(values: Sequence[float | None], unit: str) -> str:
    """Write a row so that :func:`read_size_row` gives the same numbers: ``86 (94.5, -) cm``.

    :param unit: ``cm``, ``m``, ``g`` or empty for counts.
    """
    texts = ["-" if value is None else _plain(value) for value in values]
    rest = f" ({', '.join(texts[1:])})" if len(texts) > 1 else ""
    return f"{texts[0]}{rest} {unit}".strip()


def _plain(value: float) -> str:
    return f"{Decimal(repr(value)):f}".removesuffix(".0")
