"""What the pages of charts show, ready to be laid out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any, Final

from loopwright.chart import NamedChart, read_row, row_words
from loopwright.chart.symbols import SYMBOLS
from loopwright.documents.view import AnswerView, answer_view
from loopwright.pictures.chart_key import symbols_in
from loopwright.pictures.chart_symbols import SHAPES
from loopwright.pictures.chart_view import GREYS, ChartLook, chart_drawing
from loopwright.season import Season
from loopwright.season.cautions import caution
from loopwright.season.chart_answers import chart_answers
from loopwright.season.chart_report import ChartReport, chart_report, with_shades
from loopwright.season.colour_places import FIELD_NAMES
from loopwright.season.wording import Wording

__all__ = ["ChartCard", "RowLine", "about", "cards", "drawing_of", "editor_data", "lying_on", "row_lines", "views"]

MOST_CELLS_ON_A_CARD: Final = 12_000


@dataclass(frozen=True, slots=True)
class ChartCard:
    """One chart in the list."""

    key: str
    name: str
    about: str
    figure: str
    note: str


@dataclass(frozen=True, slots=True)
class RowLine:
    """One row in words: its number, the way it is read, what is worked."""

    number: int
    way: str
    words: str


def about(season: Season, named: NamedChart) -> str:
    """Say in a line how large a chart is and what it is for."""
    chart = named.chart
    noun = "rounds" if chart.in_the_round else "rows"
    garment = season.garment_by_key.get(named.garment or "")
    use = f", for {garment.name}" if garment else ""
    return f"{chart.columns} stitches by {chart.rows} {noun}{use}"


def cards(season: Season) -> tuple[ChartCard, ...]:
    """Give the charts of a season in their order; very large ones without a drawing."""
    return tuple(
        ChartCard(named.key, named.name, about(season, named), _small(season, named), named.note)
        for named in season.charts
    )


def _small(season: Season, named: NamedChart) -> str:
    if named.chart.cells.size > MOST_CELLS_ON_A_CARD:
        return ""
    chart = with_shades(season, named)
    says = f"{named.name}: {about(season, named)}"
    return chart_drawing(chart, says, replace(_look(season, named), numbers=False, key=False, carry=False))


def _look(season: Season, named: NamedChart) -> ChartLook:
    return ChartLook(ratio=chart_report(season, named.key).ratio)


def drawing_of(season: Season, named: NamedChart, report: ChartReport, *, key: bool = True, carry: bool = True) -> str:
    """Draw a chart with its numbers."""
    names = tuple((one.role, f"{one.role}, {one.name}" if one.name != one.role else one.role) for one in report.roles)
    look = ChartLook(report.ratio, key=key, names=names, carry=carry)
    return chart_drawing(report.chart, f"{named.name}: {about(season, named)}", look)


def views(report: ChartReport, wording: Wording) -> tuple[AnswerView, ...]:
    """Give the answers about a chart."""
    return tuple(answer_view(answer, wording) for answer in chart_answers(report, wording))


def row_lines(named: NamedChart) -> tuple[RowLine, ...]:
    """Give every row in working order, the first one first."""
    chart = named.chart
    many = len(chart.roles) > 1
    lines = []
    for row in range(chart.rows):
        read = read_row(chart, row)
        side = "round" if chart.in_the_round else "right side" if read.right_side else "wrong side"
        way = f"{side}, {'right to left' if read.leftwards else 'left to right'}"
        lines.append(RowLine(read.number, way, row_words(read, with_roles=many)))
    return tuple(lines)


def lying_on(season: Season, named: NamedChart) -> Iterator[str]:
    """Say of each garment whose colours name a chart that it has to be taken off first."""
    for garment in season.garments:
        parts = dict.fromkeys(field for field, run in garment.colours.named() if run.chart == named.key)
        if parts:
            where = Wording.listed([f"the {FIELD_NAMES[part]}" for part in parts])
            yield f"{garment.name} has it on {where}: take it off there first."


def cautions(report: ChartReport) -> tuple[Any, ...]:
    """Give what stands beside the floats of a small child's garment."""
    return (caution("floats"),) if report.for_young_child else ()


def editor_data(named: NamedChart, report: ChartReport, *, imperial: bool) -> dict[str, Any]:
    """Give what the drawing bench starts from, for JSON: the chart, its roles, the symbols, and what floats may be."""
    chart, box = report.chart, named.chart.repeat
    names = {one.role: one.name for one in report.roles}
    return {
        "columns": chart.columns,
        "rows": list(named.rows),
        "stitches": list(named.stitches) or None,
        "roles": [
            {
                "mark": mark.mark,
                "role": mark.role,
                "name": names.get(mark.role, mark.role),
                "shade": role.shade or GREYS[at % len(GREYS)],
                "own": mark.role in named.shades,
            }
            for at, (mark, role) in enumerate(zip(named.roles, chart.roles, strict=True))
        ],
        "symbols": [
            {
                "key": one.key,
                "name": one.name,
                "mark": one.mark,
                "boxes": one.boxes,
                "mirror": one.mirror,
                "lines": shape.lines,
                "dots": shape.dots,
                "spans": shape.spans,
            }
            for one, shape in zip(SYMBOLS, SHAPES, strict=True)
        ],
        "used": [one.key for one in symbols_in(named.chart)],
        "inTheRound": chart.in_the_round,
        "firstRowRightSide": chart.first_row_right_side,
        "repeat": None
        if box is None
        else {"column": box.column, "row": box.row, "columns": box.columns, "rows": box.rows},
        "ratio": report.ratio,
        "stitchMm": report.stitch_width_mm,
        "limit": report.limit,
        "imperial": imperial,
        "known": named.fingerprint,
    }
