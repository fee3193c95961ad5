"""A chart as SVG: cells in the proportion of the knitted stitch, symbols, numbers, reading arrows, repeat and key."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.chart import SYMBOLS, Chart, ChartRole
from loopwright.chart.svg_form import carried
from loopwright.chart.symbols import KNIT, NO_STITCH
from loopwright.colour import lightness, read_hex
from loopwright.pictures.chart_key import key_height, key_of, least_width
from loopwright.pictures.chart_symbols import SHAPES, placed, wrapped
from loopwright.pictures.svg import INK, NEUTRAL, PAPER, element, number, picture

__all__ = ["GREYS", "ChartLook", "chart_drawing", "shaded"]

CELL_WIDTH: Final = 30.0
GREYS: Final = ("#f1f1ef", "#4b4f51", "#b4b6b6", "#7b7f81", "#d3d4d3", "#626668", "#9a9c9c", "#2f3234")
"""What stands for a role whose colour is not known: the ground light, then far apart."""
LIGHT_INK_BELOW: Final = 55.0
"""On cells darker than this L* symbols are drawn light: our judgement."""
_WRAP: Final = next(at for at, one in enumerate(SYMBOLS) if one.key == "wrap")
_EVERY_ROW_TO: Final = 40
_FIVES_TO: Final = 30
_MOST_LETTERS: Final = 110


@dataclass(frozen=True, slots=True)
class ChartLook:
    """How a chart is drawn.

    :ivar ratio: height of a cell over its width: stitches over rows of the gauge.
    :ivar numbers: rows and stitches numbered, with arrows in reading direction.
    :ivar key: roles and symbols named below.
    :ivar names: what a role is called in the key, by role; left out, the role.
    :ivar carry: whether the drawing carries the chart, so that it can be read again.
    """

    ratio: float = 22 / 30
    numbers: bool = True
    key: bool = True
    names: tuple[tuple[str, str], ...] = ()
    carry: bool = True


def shaded(chart: Chart) -> Chart:
    """Give the chart with a grey for every role whose colour is not known."""
    roles = tuple(
        role if role.shade else ChartRole(role.name, GREYS[at % len(GREYS)]) for at, role in enumerate(chart.roles)
    )
    return replace(chart, roles=roles)


def chart_drawing(chart: Chart, says: str, look: ChartLook | None = None, *, class_: str = "chart-figure") -> str:
    """Draw a chart as it is read: row 1 at the bottom, stitches numbered from the right.

    Flat, odd rows are numbered at the right and even ones at the left (the other way round where row 1 is a wrong-side
    row), in the round all at the right; a heavier line stands at every fifth or tenth. All this is common practice.

    :param says: read aloud instead of it.
    """
    look = look or ChartLook()
    wide, high = CELL_WIDTH, CELL_WIDTH * look.ratio
    width, height = chart.columns * wide, chart.rows * high
    type_size = max(13.0, width / _MOST_LETTERS, height / (_MOST_LETTERS * 1.2))
    margin = type_size * 3.6 if look.numbers else 2.0
    under = type_size * 2.0 if look.numbers else 2.0
    drawn = shaded(chart)
    parts = [
        _cells(drawn, wide, high),
        _symbols(drawn, wide, high),
        _lines(chart, wide, high),
        _box(chart, wide, high),
    ]
    if look.numbers:
        parts.append(_row_numbers(chart, wide, high, type_size))
        parts.append(_stitch_numbers(chart, wide, height, type_size))
    left = margin if any(not chart.reads_leftwards(row) for row in range(min(chart.rows, 2))) else 2.0
    total_width, total_height = width + left + margin, height + 2 + under
    if look.key:
        total_width = max(total_width, left + least_width(drawn, type_size))
        parts.append(key_of(drawn, dict(look.names), look.ratio, type_size, height + under, total_width - left))
        total_height += key_height(drawn, type_size, total_width - left)
    inside = element("g", "".join(parts), transform=f"translate({number(left)} 2)")
    told = (carried(chart) if look.carry else "") + inside
    return picture(told, total_width, total_height, says, class_=class_, keep_shape=True)


def _runs(line: NDArray[np.int64]) -> Sequence[tuple[int, int, int]]:
    """Give stretches of equal values of a row: first, end, value."""
    edges = np.r_[0, np.flatnonzero(np.diff(line)) + 1, line.size]
    return [(int(a), int(b), int(line[a])) for a, b in itertools.pairwise(edges)]


def _cells(chart: Chart, wide: float, high: float) -> str:
    """Draw the cells, one shape for each role, stretches of a row as one."""
    paths: dict[int, list[str]] = {}
    shown = np.where(chart.stitches == NO_STITCH, -1, chart.cells.astype(np.int64))
    for row in range(chart.rows):
        y = number((chart.rows - 1 - row) * high)
        for first, end, role in _runs(shown[row]):
            across = number((end - first) * wide)
            paths.setdefault(role, []).append(f"M{number(first * wide)} {y}h{across}v{number(high)}h-{across}z")
    return "".join(
        element("path", d="".join(path), fill=NEUTRAL if role < 0 else chart.roles[role].shade or PAPER)
        for role, path in sorted(paths.items())
    )


def inks(chart: Chart) -> list[str]:
    """Give the ink of symbols on each role: dark on light, light on dark."""
    return [PAPER if lightness(read_hex(role.shade or PAPER)) < LIGHT_INK_BELOW else INK for role in chart.roles]


def _symbols(chart: Chart, wide: float, high: float) -> str:
    """Draw the symbols, one shape for each ink."""
    ink_of = inks(chart)
    lines: dict[str, list[str]] = {}
    dots: dict[str, list[str]] = {}
    side = min(wide, high)
    for row in np.flatnonzero(((chart.stitches != KNIT) & (chart.stitches != NO_STITCH)).any(axis=1)):
        y = (chart.rows - 1 - int(row)) * high
        for first, end, stitch in _runs(chart.stitches[row].astype(np.int64)):
            shape = SHAPES[stitch]
            boxes = end - first if stitch == _WRAP else SYMBOLS[stitch].boxes
            if stitch in (KNIT, NO_STITCH):
                continue
            for column in range(first, end, boxes):
                ink = ink_of[int(chart.cells[row, column])]
                if shape.spans:
                    where = (column * wide, y, wide, high)
                else:
                    where = (column * wide + (wide - side) / 2, y + (high - side) / 2, side, side)
                stroked = wrapped(boxes) if stitch == _WRAP else shape.lines
                lines.setdefault(ink, []).append(placed(stroked, *where))
                dots.setdefault(ink, []).append(placed(shape.dots, *where))
    drawn = [
        element(
            "path",
            d="".join(path),
            fill="none",
            stroke=ink,
            stroke_width=1.8,
            stroke_linecap="round",
            stroke_linejoin="round",
        )
        for ink, path in lines.items()
        if any(path)
    ]
    return "".join(drawn) + "".join(
        element("path", d="".join(path), fill=ink) for ink, path in dots.items() if any(path)
    )


def every(chart: Chart) -> int:
    """Give at which stitch and row the heavier lines stand."""
    return 5 if max(chart.rows, chart.columns) <= _FIVES_TO else 10


def _lines(chart: Chart, wide: float, high: float) -> str:
    step, width, height = every(chart), chart.columns * wide, chart.rows * high
    thin, thick = list[str](), list[str]()
    for column in range(chart.columns + 1):
        line = f"M{number((chart.columns - column) * wide)} 0V{number(height)}"
        (thick if column % step == 0 or column == chart.columns else thin).append(line)
    for row in range(chart.rows + 1):
        line = f"M0 {number((chart.rows - row) * high)}H{number(width)}"
        (thick if row % step == 0 or row == chart.rows else thin).append(line)
    return element("path", d="".join(thin), stroke=INK, stroke_opacity=0.28, stroke_width=1, fill="none") + element(
        "path", d="".join(thick), stroke=INK, stroke_opacity=0.8, stroke_width=1.3, fill="none"
    )


def _box(chart: Chart, wide: float, high: float) -> str:
    box = chart.repeat
    if box is None:
        return ""
    return "".join(
        element(
            "rect",
            x=box.column * wide,
            y=(chart.rows - box.row - box.rows) * high,
            width=box.columns * wide,
            height=box.rows * high,
            fill="none",
            stroke=stroke,
            stroke_width=width,
        )
        for stroke, width in ((PAPER, 6), (INK, 3.2))
    )


def _row_numbers(chart: Chart, wide: float, high: float, size: float) -> str:
    """Number the rows at the side where each begins, with an arrow that points the way it is read."""
    step = 1 if chart.rows <= _EVERY_ROW_TO and size <= high else every(chart)
    right = chart.columns * wide
    texts, arrows = [], []
    for row in range(chart.rows):
        if row and (row + 1) % step:
            continue
        middle = (chart.rows - row - 0.5) * high
        leftwards = chart.reads_leftwards(row)
        x, point, back = (right, 0.35, 1.15) if leftwards else (0.0, -0.35, -1.15)
        tip, tail = x + point * size, x + back * size
        barb = 0.22 * size * (1 if leftwards else -1)
        arrows.append(
            f"M{number(tail)} {number(middle)}H{number(tip)}M{number(tip + barb)} {number(middle - 0.2 * size)}"
            f"L{number(tip)} {number(middle)}L{number(tip + barb)} {number(middle + 0.2 * size)}"
        )
        texts.append(
            element(
                "text",
                str(row + 1),
                x=tail + (0.25 * size if leftwards else -0.25 * size),
                y=middle + 0.36 * size,
                text_anchor="start" if leftwards else "end",
            )
        )
    drawn = element("path", d="".join(arrows), fill="none", stroke=INK, stroke_width=max(1.0, size / 13))
    return element("g", "".join(texts), fill=INK, font_size=size) + drawn


def _stitch_numbers(chart: Chart, wide: float, bottom: float, size: float) -> str:
    """Number the stitches below, from the right, where they are read first."""
    step = 1 if chart.columns <= _FIVES_TO and size * 1.3 <= wide else every(chart)
    texts = "".join(
        element("text", str(stitch), x=(chart.columns - stitch + 0.5) * wide, y=bottom + 1.15 * size)
        for stitch in range(1, chart.columns + 1)
        if stitch == 1 or stitch % step == 0
    )
    return element("g", texts, fill=INK, font_size=size, text_anchor="middle")
