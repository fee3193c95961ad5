"""Turns a size block into the fields of a pattern as a season file has them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any, Final

from loopwright.pattern.facts import FinishedMeasures, ToFit
from loopwright.pattern.size_block.tree import MeasureRow, Reading, SizeBlock
from loopwright.pattern.size_block.words import row_name
from loopwright.pattern.size_block.write import figure_text, gauge_text, number_text, reading_text
from loopwright.units import find_unit

__all__ = ["missing_fields", "to_pattern_fields"]

_AMOUNT: Final = {"length": "length", "mass": "mass"}


def to_pattern_fields(block: SizeBlock) -> dict[str, Any]:
    r"""Give the fields of ``[patterns.x]`` that a block states, with quantities as text, as printed.

    Where a row is printed in two units the metric one is taken, and of a range for a body its middle. Measures that a
    season file has no field for go to the note. What a pattern needs beside these says :func:`missing_fields`.

    >>> from loopwright.pattern.size_block.reader import read_size_block
    >>> to_pattern_fields(read_size_block("Sizes: S (M)\nFinished bust: 34 (37 1/2) in"))
    {'sizes': 'S (M)', 'finished': {'bust_girth': '34 (37 1/2) in'}}
    """
    fields: dict[str, Any] = {}
    names = block.sizes or _names_from_the_body(block)
    if block.fabric is not None:
        fields["fabric"] = block.fabric
    if block.gauge is not None:
        fields["gauge"] = block.gauge_text or gauge_text(block.gauge)
    if block.needle_mm is not None:
        fields["needle"] = f"{number_text(block.needle_mm, 'mm')} mm"
    if names:
        fields["sizes"] = names[0] + (f" ({', '.join(names[1:])})" if len(names) > 1 else "")
    fields.update(_put_up(block))
    if block.yarn:
        fields["yarn"] = {row.role: _amount(row.readings) for row in block.yarn}
    finished = {row.measure: reading_text(_whole(row)) for row in block.rows if _is_field(row)}
    to_fit = {row.measure: reading_text(_middle(_whole(row))) for row in block.rows if _is_to_fit(row)}
    if to_fit:
        fields["to_fit"] = to_fit
    if finished:
        fields["finished"] = finished
    note = " ".join(_noted(block))
    return {**fields, "note": note} if note else fields


def missing_fields(fields: Mapping[str, Any]) -> tuple[str, ...]:
    """Give the fields that a pattern needs to be planned from and that are not there, in words of the season file."""
    missing = [name for name in ("name", "construction", "gauge", "sizes") if not fields.get(name)]
    yarn = fields.get("yarn") or {}
    if any("length" not in amount for amount in yarn.values()):
        missing += [name for name in ("ball_length", "ball_mass") if not fields.get(name)]
    if not yarn:
        missing.append("yarn")
    if not fields.get("finished"):
        missing.append("finished")
    return tuple(missing)


def _is_field(row: MeasureRow) -> bool:
    return row.of == "finished" and row.measure in FinishedMeasures.model_fields


def _is_to_fit(row: MeasureRow) -> bool:
    return row.of == "body" and row.measure in ToFit.model_fields


def _middle(reading: Reading) -> Reading:
    """Give the middle of each range, such as 73.5 for ``71-76``."""
    figures = tuple(
        one if one.upto is None or one.value is None else replace(one, value=(one.value + one.upto) / 2, upto=None)
        for one in reading.figures
    )
    return replace(reading, figures=figures)


def _whole(row: MeasureRow) -> Reading:
    """Give the figures all the way round."""
    if not row.half:
        return row.first
    doubled = tuple(replace(one, value=None if one.value is None else one.value * 2) for one in row.first.figures)
    return replace(row.first, figures=doubled)


def _names_from_the_body(block: SizeBlock) -> tuple[str, ...]:
    """Give the bust that each size is to fit as its name, where the sizes have none of their own."""
    row = block.row("body", "bust_girth") or block.row("body", "head_girth")
    if row is None or any(one.value is None for one in row.first.figures):
        return ()
    names = tuple(figure_text(one, row.first.unit) for one in row.first.figures)
    return names if len(set(names)) == len(names) else ()


def _put_up(block: SizeBlock) -> Iterator[tuple[str, str]]:
    if block.put_up is None:
        return
    for name, reading in (("ball_length", block.put_up.length), ("ball_mass", block.put_up.mass)):
        if reading is not None:
            yield name, reading_text(reading)


def _amount(readings: tuple[Reading, ...]) -> dict[str, str]:
    first = next((reading for reading in readings if reading.metric), readings[0])
    unit = find_unit(first.unit)
    return {"balls" if unit is None else _AMOUNT[unit.kind]: reading_text(first)}


def _noted(block: SizeBlock) -> Iterator[str]:
    for row in block.rows:
        if not (_is_field(row) or _is_to_fit(row)):
            yield f"{row_name(row.of, row.measure, half=row.half)}: {' / '.join(map(reading_text, row.readings))}."
