"""Holds a size block against itself: both units say the same, sizes rise, figures are those of a person."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

from loopwright.pattern.size_block.tree import BlockFault, Figure, MeasureRow, Reading, SizeBlock
from loopwright.pattern.size_block.words import NAMES, PLAUSIBLE_CM
from loopwright.pattern.size_block.write import figure_text
from loopwright.units import find_unit

__all__ = ["block_faults", "readings_faults"]

_RISING: Final = {"bust_girth", "waist_girth", "hip_girth", "upper_arm_girth", "head_girth"}
"""Girths that never fall from one size to the next; a sleeve may get shorter in the larger sizes."""
_FINISHED_TO_BODY: Final = (Fraction(3, 4), Fraction(2))
"""Between what share of the body's bust a garment's lies, from a ribbed top to a poncho-like one; judged."""
_INCH_CM: Final = Fraction("2.54")


def block_faults(block: SizeBlock) -> Iterator[BlockFault]:
    """Give everything in which a block contradicts itself or good sense."""
    names = block.sizes or tuple(str(at + 1) for at in range(block.columns))
    for row in block.rows:
        yield from readings_faults(row.readings, names)
        yield from _ranges(row, names)
        yield from _implausible(row, names)
        if row.measure in _RISING:
            yield from _falling(row, names)
    for amounts in block.yarn:
        yield from readings_faults(amounts.readings, names)
        yield from _amount_ranges(amounts.readings)
    yield from _far_from_the_body(block, names)


def readings_faults(readings: Sequence[Reading], names: Sequence[str]) -> Iterator[BlockFault]:
    """Compare the figures of one row in its two units, each within half a step of what was printed."""
    if len(readings) < 2:
        return
    first, *others = readings
    for other in others:
        within = _step(first) / 2 + _step(other) / 2
        for name, one, two in zip(names, first.figures, other.figures, strict=False):
            if one.value is None or two.value is None:
                if one.value is not two.value:
                    found = f"{said(one, first)} and {said(two, other)} for {name}"
                    yield _at(two, found, "a figure in both units or in neither")
            elif any(abs(first.in_base(this) - other.in_base(that)) > within for this, that in _ends(one, two)):
                found = f"{said(one, first)} and {said(two, other)} for {name}, which is {_turned(two, other, first)}"
                yield _at(two, found, "the same in both units")


def _ends(one: Figure, two: Figure) -> Iterator[tuple[Fraction, Fraction]]:
    """Give what has to agree: the figures, and the upper ends where both are ranges."""
    if one.value is not None and two.value is not None:
        yield one.value, two.value
    if one.upto is not None and two.upto is not None:
        yield one.upto, two.upto


def _step(reading: Reading) -> Fraction:
    """Give the step, in cm or g, to which the figures of a reading are rounded: the finest that one of them shows.

    Yarn is often rounded to fives or tens; a row of nothing else is taken so.
    """
    values = [one.value for one in reading.figures if one.value is not None]
    finest = max((value.denominator for value in values), default=1)
    step = Fraction(1, finest)
    if reading.unit in {"m", "yd", "g"} and finest == 1:
        step = Fraction(next((by for by in (10, 5) if all(value % by == 0 for value in values)), 1))
    return reading.in_base(step)


def _turned(figure: Figure, reading: Reading, into: Reading) -> str:
    """Write a figure in the unit of another reading."""
    unit = find_unit(into.unit)
    base = reading.in_base(figure.value or Fraction(0))
    value = base / unit.factor if unit is not None else base
    return f"{float(round(value, 1)):g} {into.unit}"


def said(figure: Figure, reading: Reading) -> str:
    """Write a figure with its unit, as a fault repeats it."""
    return "nothing" if figure.value is None else f"{figure_text(figure, reading.unit)} {reading.unit}"


def _at(figure: Figure, found: str, wanted: str, hint: str | None = None) -> BlockFault:
    return BlockFault(figure.place, figure.width, found, wanted, hint)


def _ranges(row: MeasureRow, names: Sequence[str]) -> Iterator[BlockFault]:
    if row.of == "body":
        return
    for reading in row.readings:
        for name, figure in zip(names, reading.figures, strict=False):
            if figure.upto is not None:
                yield _at(figure, f"the range {said(figure, reading)} for {name}", "one figure for each size")


def _amount_ranges(readings: Sequence[Reading]) -> Iterator[BlockFault]:
    for reading in readings:
        for figure in reading.figures:
            if figure.upto is not None:
                yield _at(figure, f"the range {said(figure, reading)}", "one amount for each size")


def _implausible(row: MeasureRow, names: Sequence[str]) -> Iterator[BlockFault]:
    """Find figures that no person has; of each reading the first is named, with how many there are."""
    low, high = PLAUSIBLE_CM[row.measure]
    times = 2 if row.half else 1
    for reading in row.readings:
        sized = [(name, one) for name, one in zip(names, reading.figures, strict=False) if one.value is not None]
        lengths_cm = [reading.in_base(one.value or Fraction(0)) * times for _, one in sized]
        bad = [at for at, length_cm in enumerate(lengths_cm) if not low <= length_cm <= high]
        if not bad:
            continue
        name, figure = sized[bad[0]]
        others = f" and {len(bad) - 1} more like it" if len(bad) > 1 else ""
        as_other = lengths_cm[bad[0]] * (_INCH_CM if reading.metric else 1 / _INCH_CM)
        hint = f"are these {'inches' if reading.metric else 'centimetres'}?" if low <= as_other <= high else None
        wanted = f"from {low} to {high} cm for the {NAMES[row.measure]}"
        yield _at(figure, f"{said(figure, reading)} for {name}{others}", wanted, hint)


def _falling(row: MeasureRow, names: Sequence[str]) -> Iterator[BlockFault]:
    reading = row.first
    known = [(name, one) for name, one in zip(names, reading.figures, strict=False) if one.value is not None]
    for (name, one), (next_name, two) in pairwise(known):
        if (two.value or 0) < (one.value or 0):
            found = f"{said(two, reading)} for {next_name} after {said(one, reading)} for {name}"
            yield _at(two, found, f"the {NAMES[row.measure]} not to fall from size to size")


def _far_from_the_body(block: SizeBlock, names: Sequence[str]) -> Iterator[BlockFault]:
    body, finished = block.row("body", "bust_girth"), block.row("finished", "bust_girth")
    if body is None or finished is None:
        return
    least, most = _FINISHED_TO_BODY
    pairs = zip(names, body.in_cm(), finished.in_cm(), finished.first.figures, strict=False)
    for name, body_cm, finished_cm, figure in pairs:
        if body_cm and finished_cm and not least <= finished_cm / body_cm <= most:
            found = f"{float(finished_cm):g} cm finished for {name}, to fit {float(body_cm):g} cm"
            yield _at(figure, found, "a finished bust nearer to the body's")
