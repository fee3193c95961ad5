"""The key below a chart: its roles with their colours, and its symbols with what they mean on either side."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from html import escape
from typing import Final

import numpy as np

from loopwright.chart import SYMBOLS, Chart, Symbol
from loopwright.chart.symbols import KNIT, NO_STITCH
from loopwright.pictures.chart_symbols import SHAPES, placed, wrapped
from loopwright.pictures.svg import INK, NEUTRAL, PAPER, element

__all__ = ["key_height", "key_of", "least_width", "symbols_in"]

NOT_WORKED: Final = "not usually worked"
"""What the table says of a symbol's wrong side where it has none."""

_LINE: Final = 1.9
"""Height of a line of the key over the size of its letters."""
_NEXT_LINE: Final = 1.3
_LETTER: Final = 0.56
"""Width of a usual letter over the size of its type, amply reckoned."""
_ROLE_EMS: Final = 15.0
_SYMBOL_EMS: Final = 27.0
_LEAST_EMS: Final = 32.0


def symbols_in(chart: Chart) -> tuple[Symbol, ...]:
    """Give the symbols that a chart uses, knit left out where every stitch is."""
    used = [int(at) for at in np.unique(chart.stitches)]
    return () if used == [KNIT] else tuple(SYMBOLS[at] for at in used)


def _columns(width: float, size: float, ems: float) -> int:
    return max(1, int(width // (ems * size)))


def _lines_of(symbol: Symbol, size: float, width: float) -> list[str]:
    """Give what stands beside a symbol, as many lines as it takes."""
    letters = int((width - _beside(symbol, size)) / (_LETTER * size))
    return textwrap.wrap(_meaning(symbol), max(letters, 12))


def _beside(symbol: Symbol, size: float) -> float:
    return (1.8 * min(symbol.boxes, 3) + 0.4) * size


def least_width(chart: Chart, size: float) -> float:
    """Give how wide a drawing has to be for its key to be read with ease."""
    return (_LEAST_EMS if symbols_in(chart) else _ROLE_EMS) * size


def _symbol_rows(chart: Chart, size: float, width: float) -> list[list[tuple[Symbol, list[str]]]]:
    """Give the symbols as they stand in rows, each with its lines."""
    across = _columns(width, size, _SYMBOL_EMS)
    told = [(symbol, _lines_of(symbol, size, width / across)) for symbol in symbols_in(chart)]
    return [told[at : at + across] for at in range(0, len(told), across)]


def _row_height(row: Sequence[tuple[Symbol, list[str]]], size: float) -> float:
    return (_LINE + (max(len(lines) for _, lines in row) - 1) * _NEXT_LINE) * size


def key_height(chart: Chart, size: float, width: float) -> float:
    """Give how high the key is; the same measures as for :func:`key_of`."""
    roles = -(-len(chart.roles) // _columns(width, size, _ROLE_EMS))
    symbols = sum(_row_height(row, size) for row in _symbol_rows(chart, size, width))
    return roles * _LINE * size + symbols + 0.6 * size


def key_of(chart: Chart, names: Mapping[str, str], ratio: float, size: float, top: float, width: float) -> str:
    """Draw the key.

    :param names: what roles are called, by role.
    :param ratio: height of a cell over its width.
    :param size: of the letters.
    :param top: where it begins.
    :param width: what it may fill.
    """
    across = _columns(width, size, _ROLE_EMS)
    parts = []
    for at, role in enumerate(chart.roles):
        x, y = at % across * _ROLE_EMS * size, top + at // across * _LINE * size
        parts.append(_cell(x, y, size, ratio, role.shade or PAPER))
        parts.append(_text(names.get(role.name, role.name), x + 2.2 * size, y + size))
    y = top - (-len(chart.roles) // across) * _LINE * size
    across = _columns(width, size, _SYMBOL_EMS)
    for row in _symbol_rows(chart, size, width):
        for at, (symbol, lines) in enumerate(row):
            x = at * width / across
            parts.append(_symbol(symbol, x, y, size, ratio))
            for number, words in enumerate(lines):
                parts.append(_text(words, x + _beside(symbol, size), y + (1 + number * _NEXT_LINE) * size))
        y += _row_height(row, size)
    return element("g", "".join(parts), fill=INK, font_size=size)


def _meaning(symbol: Symbol) -> str:
    """Say what a symbol means: once where both sides do the same, or where it is worked on one side alone."""
    if symbol.wrong_side in (symbol.right_side, NOT_WORKED):
        return f"{symbol.name}: {symbol.right_side}" if symbol.right_side != symbol.name else symbol.name
    return f"{symbol.name}: {symbol.right_side}; wrong side {symbol.wrong_side}"


def _text(words: str, x: float, y: float) -> str:
    return element("text", escape(words), x=x, y=y)


def _cell(x: float, y: float, size: float, ratio: float, fill: str, boxes: int = 1) -> str:
    wide = 1.5 * size
    return element(
        "rect", x=x, y=y, width=wide * boxes, height=wide * ratio, fill=fill, stroke=INK, stroke_width=size / 14
    )


def _symbol(symbol: Symbol, x: float, y: float, size: float, ratio: float) -> str:
    """Draw a symbol in its box; one of many boxes is drawn as wide as three."""
    at = SYMBOLS.index(symbol)
    shape, boxes = SHAPES[at], symbol.boxes
    shown = min(boxes, 3)
    wide = 1.5 * size * shown / boxes
    high = 1.5 * size * ratio
    side = min(wide, high)
    where = (x, y, wide, high) if shape.spans else (x + (wide - side) / 2, y + (high - side) / 2, side, side)
    lines = wrapped(1) if symbol.key == "wrap" else shape.lines
    drawn = _cell(x, y, size, ratio, NEUTRAL if at == NO_STITCH else PAPER, shown)
    if lines:
        drawn += element(
            "path", d=placed(lines, *where), fill="none", stroke=INK, stroke_width=size / 10, stroke_linecap="round"
        )
    if shape.dots and at != NO_STITCH:
        drawn += element("path", d=placed(shape.dots, *where), fill=INK)
    return drawn
