"""What the page of patterns shows: tables already in the reader's words, pasted text with its faults marked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from loopwright.pattern import PatternFacts, RoleAmount
from loopwright.pattern.size_block import (
    MeasureRow,
    Place,
    Reading,
    SizeBlock,
    YarnRow,
    figure_text,
    missing_fields,
    reading_text,
    row_name,
    to_pattern_fields,
)
from loopwright.pattern.size_block.tokens import lines_of
from loopwright.season import Season
from loopwright.season.wording import POINT_NAMES, Wording

__all__ = ["Cell", "PastedView", "PatternView", "RowView", "pasted_view", "pattern_views"]

_MISSING = {
    "name": "a name",
    "construction": "how it is built",
    "gauge": "its tension",
    "sizes": "names of the sizes",
    "ball_length": "the length of a ball",
    "ball_mass": "the mass of a ball",
    "yarn": "amounts of yarn",
    "finished": "finished measures",
}


@dataclass(frozen=True, slots=True)
class Cell:
    """One size of one row: its figures, in one unit or in two."""

    texts: tuple[str, ...]
    faulty: bool = False


@dataclass(frozen=True, slots=True)
class RowView:
    """One row of a table of sizes."""

    name: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class PatternView:
    """One pattern of the season.

    :ivar garments: those that are made from it, each with its key and name.
    """

    key: str
    name: str
    about: str
    facts: tuple[tuple[str, str], ...]
    sizes: tuple[str, ...]
    rows: tuple[RowView, ...]
    garments: tuple[tuple[str, str], ...]
    note: str


@dataclass(frozen=True, slots=True)
class LineView:
    """One pasted line, cut where a mark begins or ends, with what is said of it."""

    number: int
    pieces: tuple[tuple[str, bool], ...]
    faults: tuple[str, ...]
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PastedView:
    """A pasted block shown back.

    :ivar missing: what a pattern needs that the block does not say, in words; ``wanted`` has the fields themselves.
    """

    text: str
    lines: tuple[LineView, ...]
    sizes: tuple[str, ...]
    rows: tuple[RowView, ...]
    facts: tuple[tuple[str, str], ...]
    faults: int
    missing: tuple[str, ...]
    wanted: tuple[str, ...]
    gauge: str
    fabric: str


# --------------------------------------------------------------------------------------- patterns of the season
def pattern_views(season: Season, wording: Wording) -> tuple[PatternView, ...]:
    """Give every pattern of a season in the reader's measures and words."""
    return tuple(_pattern_view(season, pattern, wording) for pattern in season.patterns)


def _pattern_view(season: Season, pattern: PatternFacts, wording: Wording) -> PatternView:
    measures = [(f"To fit {POINT_NAMES[name]}", row) for name, row in pattern.to_fit.rows()]
    measures += [(POINT_NAMES[name].capitalize(), row) for name, row in pattern.finished.rows()]
    rows = [
        RowView(name, tuple(_one_cell(None if cm is None else wording.cm(cm)) for cm in row)) for name, row in measures
    ]
    rows += [_amounts(role, wording) for role in pattern.yarn]
    return PatternView(
        key=pattern.key,
        name=pattern.name,
        about=", ".join(part for part in (f"by {pattern.by}" if pattern.by else "", pattern.construction) if part),
        facts=tuple(_facts(pattern, wording)),
        sizes=pattern.sizes,
        rows=tuple(rows),
        garments=tuple((one.key, one.name) for one in season.garments if one.pattern == pattern.key),
        note=pattern.note,
    )


def _one_cell(text: str | None) -> Cell:
    return Cell((text if text is not None else "–",))


def _amounts(role: RoleAmount, wording: Wording) -> RowView:
    def written(value: float) -> str:
        if role.length_m is not None:
            return wording.yarn(value)
        if role.mass_g is not None:
            return wording.mass(value)
        return f"{value:g} {'ball' if value == 1 else 'balls'}"

    cells = tuple(_one_cell(None if value is None else written(value)) for value in role.row)
    return RowView(f"Yarn, {role.key}", cells)


def _facts(pattern: PatternFacts, wording: Wording) -> Iterable[tuple[str, str]]:
    gauge = pattern.gauge
    yield wording.word("tension").capitalize(), wording.gauge(gauge.stitches_per_10cm, gauge.rows_per_10cm)
    yield "Fabric", wording.fabric(pattern.fabric)
    if pattern.needle_mm is not None:
        yield "Needle", f"{pattern.needle_mm:g} mm"
    if pattern.wearer is not None:
        yield "For", f"a {pattern.wearer}"
    if pattern.opens_in_front:
        yield "Front", "open, with bands"
    if pattern.ball_length_m is not None and pattern.ball_mass_g is not None:
        yield "Ball", f"{wording.yarn(pattern.ball_length_m)} in {wording.mass(pattern.ball_mass_g)}"


# ------------------------------------------------------------------------------------------------- a pasted block
def pasted_view(block: SizeBlock, text: str, extra: Mapping[str, Any]) -> PastedView:
    """Give a pasted block as it was understood.

    :param extra: fields that were typed beside it.
    """
    faulty = {fault.place for fault in block.faults}
    fields = to_pattern_fields(block)
    wanted = missing_fields({**fields, **{name: value for name, value in extra.items() if value}})
    rows = [_row_view(row_name(row.of, row.measure, half=row.half), row, faulty) for row in block.rows]
    rows += [_row_view(f"Yarn, {row.role}", row, faulty) for row in block.yarn]
    return PastedView(
        text=text,
        lines=_lines(block, text),
        sizes=block.sizes or tuple(str(at + 1) for at in range(block.columns)),
        rows=tuple(rows),
        facts=tuple(_pasted_facts(block, fields)),
        faults=len(block.faults),
        missing=tuple(_MISSING[name] for name in wanted),
        wanted=wanted,
        gauge=fields.get("gauge", ""),
        fabric=fields.get("fabric", ""),
    )


def _row_view(name: str, row: MeasureRow | YarnRow, faulty: set[Place]) -> RowView:
    cells = zip(*(reading.figures for reading in row.readings), strict=True)
    return RowView(
        name,
        tuple(
            Cell(
                tuple(_cell_text(reading, at) for reading in row.readings),
                any(figure.place in faulty for figure in figures),
            )
            for at, figures in enumerate(cells)
        ),
    )


def _cell_text(reading: Reading, at: int) -> str:
    figure = reading.figures[at]
    return "–" if figure.value is None else f"{figure_text(figure, reading.unit)} {reading.unit}"


def _pasted_facts(block: SizeBlock, fields: Mapping[str, Any]) -> Iterable[tuple[str, str]]:
    if block.gauge is not None:
        yield "Tension", fields["gauge"]
    if block.fabric is not None:
        yield "Fabric", block.fabric
    if block.needle_mm is not None:
        yield "Needle", fields["needle"]
    if block.put_up is not None:
        parts = (block.put_up.mass, block.put_up.length)
        yield "Ball", " / ".join(reading_text(part) for part in parts if part is not None)


def _lines(block: SizeBlock, text: str) -> tuple[LineView, ...]:
    lines = []
    for number, line in enumerate(lines_of(text), 1):
        faults = [fault for fault in block.faults if fault.place.line == number]
        remarks = [remark for remark in block.remarks if remark.place.line == number]
        spans = [(fault.place.column - 1, fault.place.column - 1 + fault.width) for fault in faults]
        said = tuple(_said(fault.found, fault.wanted, fault.hint) for fault in faults)
        left = tuple(f"“{remark.text}” {remark.says}" for remark in remarks)
        lines.append(LineView(number, _pieces(line, spans), said, left))
    return tuple(lines)


def _said(found: str, wanted: str, hint: str | None) -> str:
    return f"Found {found}; wanted {wanted}{f' ({hint})' if hint else ''}."


def _pieces(line: str, spans: Sequence[tuple[int, int]]) -> tuple[tuple[str, bool], ...]:
    """Cut a line at its marks; marks that meet become one."""
    pieces: list[tuple[str, bool]] = []
    at = 0
    for start, end in sorted(spans):
        if end <= at:
            continue
        begin = max(start, at)
        if begin > at:
            pieces.append((line[at:begin], False))
        pieces.append((line[begin:end], True))
        at = end
    if line[at:]:
        pieces.append((line[at:], False))
    return tuple(pieces)
