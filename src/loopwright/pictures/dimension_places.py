"""Where dimension lines and their words stand about a piece: inside it, in rows above and below, at its sides.

Everything is placed in turn, each where nothing stands yet, so that the same piece is always drawn alike.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from loopwright.pictures.dimension import Rule
from loopwright.pictures.lettering import Words, apart, text_width
from loopwright.pictures.piece_dimensions import Dimension
from loopwright.pictures.piece_drawing import TIGHT, Look, PieceDrawing
from loopwright.pictures.svg import INK

__all__ = ["place_dimensions"]

FIRST_COLUMN, NEXT_COLUMN = 12.0, 14.0
"""From the piece to the first upright dimension line, and from one to the next."""
OVERHANG = 3.0
"""How far a fine line from the piece reaches past its dimension line."""
BESIDE = 5.0
"""From an upright dimension line to its words."""
LEADING = 1.15
GRAIN_CM = 1e-6


def place_dimensions(drawing: PieceDrawing, dimensions: Sequence[Dimension]) -> None:
    """Place all dimensions; a width for which there is no room inside the piece is drawn below it."""
    outside = [one for one in dimensions if one.place == "inside" and not _inside(drawing, one)]
    over = [one for one in outside if _is_widest_above(drawing, one)]
    for side in ("left", "right"):
        _uprights(drawing, [one for one in dimensions if one.place == side], side)
    under = [one for one in outside if one not in over]
    _rows(drawing, [*(one for one in dimensions if one.place == "above"), *over], above=True)
    _rows(drawing, [*(one for one in dimensions if one.place == "below"), *under], above=False)


def _on_line(look: Look, measure: str, counts: Sequence[str], x: float, y: float) -> list[Words]:
    """Give the words about a line that lies across: its measure above it, its counts below."""
    words = [Words(measure, x, y - 0.4 * look.measure, look.measure, INK, 500)]
    return words + [
        Words(line, x, y + look.count * (1.1 + LEADING * place), look.count) for place, line in enumerate(counts)
    ]


def _inside(drawing: PieceDrawing, one: Dimension) -> bool:
    """Write a width inside the piece, its counts in one line or in several; say whether there was room."""
    low, high, level, slack = (value * drawing.scale for value in (one.low, one.high, one.level, one.slack))
    measure, *counts = one.says
    clear = min(abs(slack), 1.2 * drawing.look.measure + TIGHT)
    y = level + (clear if slack > 0 else -clear)
    for lines in ([", ".join(counts)], counts):
        words = _on_line(drawing.look, measure, lines, (low + high) / 2, y)
        if drawing.is_free([word.box for word in words]):
            drawing.say(*words)
            drawing.rules.append(Rule("dimension", "x", y, low, high))
            return True
    return False


def _is_widest_above(drawing: PieceDrawing, one: Dimension) -> bool:
    """Say whether nothing above a width is wider, so that lines lead up from it beside the piece."""
    shape = drawing.shape
    levels = [one.level * share for share in (0.1, 0.3, 0.5, 0.7, 0.9)]
    ends = [shape.extent(level) for level in levels]
    return all(end is None or (end[0] >= one.low - GRAIN_CM and end[1] <= one.high + GRAIN_CM) for end in ends)


def _rows(drawing: PieceDrawing, dimensions: Sequence[Dimension], *, above: bool) -> None:
    """Write widths above or below the piece, short ones nearest, each row as far out as it needs to be."""
    look, scale = drawing.look, drawing.scale
    rows: list[list[Dimension]] = []
    for one in sorted(dimensions, key=lambda one: (one.high - one.low, one.low)):
        row = next((row for row in rows if not any(_clash(one, other, drawing) for other in row)), None)
        if row is None:
            rows.append([one])
        else:
            row.append(one)
    tops = [0.0, *(box.top for box in drawing.boxes)]
    edge = min(tops) if above else max([drawing.bottom, *(box.bottom for box in drawing.boxes)])
    for row in rows:
        y = edge - 1.35 * look.count - TIGHT if above else edge + 1.2 * look.measure + TIGHT
        words = []
        for one in row:
            low, high = one.low * scale, one.high * scale
            words += _on_line(look, one.says[0], [", ".join(one.says[1:])], (low + high) / 2, y)
            for x in (low, high):
                _witness(drawing, "y", x, one.level * scale, y + (-OVERHANG if above else OVERHANG))
            drawing.rules.append(Rule("dimension", "x", y, low, high))
        drawing.say(*words)
        edge = min(word.box.top for word in words) if above else max(word.box.bottom for word in words)


def _clash(one: Dimension, other: Dimension, drawing: PieceDrawing) -> bool:
    """Say whether two widths cannot share a row: their lines or their words would meet."""
    if one.low < other.high - GRAIN_CM and other.low < one.high - GRAIN_CM:
        return True
    look = drawing.look
    room = sum(
        max(text_width(each.says[0], look.measure), text_width(", ".join(each.says[1:]), look.count)) / 2
        for each in (one, other)
    )
    return abs((one.low + one.high) - (other.low + other.high)) / 2 * drawing.scale < room + TIGHT


def _uprights(drawing: PieceDrawing, dimensions: Sequence[Dimension], side: Literal["left", "right"]) -> None:
    """Write heights beside the piece: lines in columns, long ones further out, all words beyond the last line."""
    if not dimensions:
        return
    look, scale = drawing.look, drawing.scale
    out = -1.0 if side == "left" else 1.0
    edge = drawing.left if side == "left" else drawing.right
    columns: list[list[Dimension]] = []
    for one in sorted(dimensions, key=lambda one: (one.high - one.low, one.low)):
        free = (column for column in columns if not any(_share_height(one, other) for other in column))
        column = next(free, None)
        if column is None:
            columns.append([one])
        else:
            column.append(one)
    lines = [
        (one, edge + out * (FIRST_COLUMN + NEXT_COLUMN * place))
        for place, column in enumerate(columns)
        for one in column
    ]
    beyond = edge + out * (FIRST_COLUMN + NEXT_COLUMN * (len(columns) - 1) + BESIDE)
    wanted = [(one.low + one.high) / 2 * scale for one, _ in lines]
    heights = [look.measure + LEADING * look.count * (len(one.says) - 1) for one, _ in lines]
    for (one, x), middle, height in zip(
        lines, apart(wanted, heights, TIGHT, 0.0, drawing.bottom), heights, strict=True
    ):
        drawing.say(*_beside(look, one.says, beyond, middle - height / 2, side))
        for y in (one.low, one.high):
            ends = drawing.shape.extent(y)
            start = edge if ends is None else ends[0 if side == "left" else 1] * scale
            _witness(drawing, "x", y * scale, start, x + out * OVERHANG)
        drawing.rules.append(Rule("dimension", "y", x, one.low * scale, one.high * scale))
        last = abs(beyond - x) <= BESIDE
        if not (last and one.low * scale - TIGHT < middle < one.high * scale + TIGHT):
            at = min(max(middle, one.low * scale), one.high * scale) if last else (one.low + one.high) / 2 * scale
            drawing.leads.append(((x, at), (beyond - out, middle)))


def _share_height(one: Dimension, other: Dimension) -> bool:
    return one.low < other.high - GRAIN_CM and other.low < one.high - GRAIN_CM


def _beside(look: Look, says: Sequence[str], x: float, top: float, side: Literal["left", "right"]) -> list[Words]:
    anchor: Literal["start", "end"] = "end" if side == "left" else "start"
    words = [Words(says[0], x, top + 0.85 * look.measure, look.measure, INK, 500, anchor)]
    return words + [
        Words(line, x, top + look.measure + look.count * (0.95 + LEADING * place), look.count, anchor=anchor)
        for place, line in enumerate(says[1:])
    ]


def _witness(drawing: PieceDrawing, axis: Literal["x", "y"], at: float, one: float, other: float) -> None:
    drawing.rules.append(Rule("witness", axis, at, min(one, other), max(one, other)))
