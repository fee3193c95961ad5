"""Writes a size block so that reading the text gives the same block."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from loopwright.fabric import Gauge
from loopwright.pattern.size_block.tree import Figure, Reading, SizeBlock
from loopwright.pattern.size_block.words import row_name
from loopwright.units import find_unit

__all__ = ["figure_text", "gauge_text", "number_text", "reading_text", "write_size_block"]


def write_size_block(block: SizeBlock) -> str:
    """Write a block, one row to a line: ``Finished bust: 86 (94, 102, 110) cm / 34 (37, 40, 43 1/4) in``."""
    return "".join(f"{line}\n" for line in _lines(block))


def _lines(block: SizeBlock) -> Iterator[str]:
    if block.sizes:
        yield f"Sizes: {_bracketed(block.sizes)}"
    for row in block.rows:
        name = row_name(row.of, row.measure, half=row.half)
        yield f"{name}: {' / '.join(reading_text(reading) for reading in row.readings)}"
    for amounts in block.yarn:
        label = {"main": "Main colour", "contrast": "Contrast colour"}.get(amounts.role, amounts.role.replace("-", " "))
        yield f"{label.capitalize()}: {' / '.join(reading_text(reading) for reading in amounts.readings)}"
    if block.put_up is not None:
        parts = (block.put_up.mass, block.put_up.length)
        yield f"Ball: {' / '.join(reading_text(part) for part in parts if part is not None)}"
    if block.gauge is not None:
        yield f"Tension: {gauge_text(block.gauge)}{f' in {block.fabric}' if block.fabric else ''}"
    if block.needle_mm is not None:
        yield f"Needles: {number_text(block.needle_mm, 'mm')} mm"


def reading_text(reading: Reading) -> str:
    """Write the figures of a row in one unit: ``86 (94, -, 110) cm``."""
    return f"{_bracketed([figure_text(figure, reading.unit) for figure in reading.figures])} {reading.unit}"


def _bracketed(texts: list[str] | tuple[str, ...]) -> str:
    return texts[0] + (f" ({', '.join(texts[1:])})" if len(texts) > 1 else "")


def figure_text(figure: Figure, unit: str) -> str:
    """Write one figure: ``94.5``, ``43 1/4``, ``71-76``, or a dash."""
    if figure.value is None:
        return "-"
    upto = f"-{number_text(figure.upto, unit)}" if figure.upto is not None else ""
    return number_text(figure.value, unit) + upto


def number_text(value: Fraction, unit: str) -> str:
    """Write a number exactly: with a fraction where tapes have one, else as a decimal."""
    found = find_unit(unit)
    whole, rest = divmod(value, 1)
    odd = rest.denominator
    for factor in (2, 5):
        while odd % factor == 0:
            odd //= factor
    on_tape = rest.denominator in {2, 4, 8, 16} and found is not None and not found.metric
    if rest and (on_tape or odd != 1):
        return f"{whole} {rest.numerator}/{rest.denominator}" if whole else f"{rest.numerator}/{rest.denominator}"
    digits = 0
    while (value * 10**digits).denominator != 1:
        digits += 1
    scaled = str(int(value * 10**digits)).rjust(digits + 1, "0")
    return f"{scaled[:-digits]}.{scaled[-digits:]}" if digits else scaled


def gauge_text(gauge: Gauge) -> str:
    """Write a gauge as a season file has it, so that reading gives the same numbers."""
    stitches = repr(gauge.stitches_per_10cm).removesuffix(".0")
    rows = "" if gauge.rows_per_10cm is None else f" x {repr(gauge.rows_per_10cm).removesuffix('.0')} rows"
    return f"{stitches} sts{rows} = 10 cm"
