"""Laying out a schematic: one scale for all pieces, and where each piece stands on the sheet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from loopwright.garment.draft import Draft
from loopwright.pictures.drawn_piece import draw_piece
from loopwright.pictures.lettering import Words, text_width
from loopwright.pictures.piece_dimensions import Dimension, dimensions_of
from loopwright.pictures.piece_drawing import Look, PieceDrawing
from loopwright.pictures.piece_shape import PieceShape, piece_shape
from loopwright.pictures.schematic_views import View, views_of
from loopwright.units import Reader

__all__ = ["NARROW", "WIDE", "Sheet", "lay_out"]

NARROW = Look(width=340, name=15, measure=13.5, count=12, margin=5, most_height=330, most_scale=8)
WIDE = Look(width=860, name=17, measure=15, count=13.5, margin=8, most_height=430, most_scale=12)
GAP_ACROSS, GAP_DOWN = 32.0, 38.0
SMALLER = (1.0, 0.93, 0.86, 0.79, 0.72, 0.65, 0.6)
"""Shares of the largest scale that are tried to bring more pieces side by side: the one that makes the most of the
sheet's height."""
MOST_TRIES = 8
SMALL = 0.35
"""Pieces lower than this share of the tallest come last where pieces stand side by side."""
MOST_STACK = 1.2
"""How much higher than the piece beside them small pieces may stand over one another."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """A schematic laid out.

    :ivar scale: units of the drawing to the centimetre, the same for all pieces.
    :ivar placed: every piece drawn, and where its origin stands.
    """

    look: Look
    scale: float
    placed: tuple[tuple[PieceDrawing, float, float], ...]
    notes: tuple[Words, ...]
    height: float

    def words(self) -> list[Words]:
        """Give all words where they stand."""
        return [
            *(word.moved(right, down) for drawing, right, down in self.placed for word in drawing.words),
            *self.notes,
        ]


@dataclass(frozen=True, slots=True)
class _Prepared:
    """A piece before it has a scale."""

    view: View
    shape: PieceShape
    dimensions: list[Dimension]

    def at(self, scale: float, look: Look, body_cm: Mapping[str, float] | None) -> PieceDrawing:
        return draw_piece(self.view, self.shape, self.dimensions, scale, look, body_cm)


@dataclass(frozen=True, slots=True)
class _Size:
    """The room of a drawing, and how it grows with the scale: by the shape's own width and height."""

    width: float
    height: float
    wide_cm: float
    high_cm: float

    @classmethod
    def of(cls, drawing: PieceDrawing) -> _Size:
        box, shape = drawing.box, drawing.shape
        return cls(box.right - box.left, box.bottom - box.top, shape.right - shape.left, shape.height)

    def grown(self, by: float) -> _Size:
        return _Size(self.width + by * self.wide_cm, self.height + by * self.high_cm, self.wide_cm, self.high_cm)


_Row = list[list[int]]
"""Pieces by number: columns side by side, each of one piece over another."""


def lay_out(draft: Draft, reader: Reader, *, narrow: bool = False, body_cm: Mapping[str, float] | None = None) -> Sheet:
    """Lay a schematic out at the largest scale that lets every piece fit, or a smaller one that takes fewer rows."""
    look = NARROW if narrow else WIDE
    room = look.width - 2 * look.margin
    prepared = []
    for view in views_of(draft):
        shape = piece_shape(view)
        prepared.append(_Prepared(view, shape, dimensions_of(view, shape, draft, reader)))
    if not narrow:
        tallest = max(one.shape.height for one in prepared)
        prepared.sort(key=lambda one: one.shape.height < SMALL * tallest)
    scale, drawings = _fitting(prepared, look, room, body_cm)
    if narrow:
        return _placed(look, scale, drawings, [[[place]] for place in range(len(drawings))], _notes(draft, body_cm))
    sizes = [_Size.of(one) for one in drawings]
    share = min(SMALLER, key=lambda share: _height([one.grown(scale * (share - 1)) for one in sizes], room) / share)
    if share < 1:
        scale *= share
        drawings = [one.at(scale, look, body_cm) for one in prepared]
    rows = _rows([_Size.of(one) for one in drawings], room)
    return _placed(look, scale, drawings, rows, _notes(draft, body_cm))


def _fitting(
    prepared: Sequence[_Prepared], look: Look, room: float, body_cm: Mapping[str, float] | None
) -> tuple[float, list[PieceDrawing]]:
    """Give the largest scale at which every piece fits the sheet's width, and the pieces at it."""
    scale = min(look.most_height / max(one.shape.height for one in prepared), look.most_scale)
    drawings: list[PieceDrawing] = []
    for _ in range(MOST_TRIES):
        drawings = [one.at(scale, look, body_cm) for one in prepared]
        sizes = [_Size.of(one) for one in drawings]
        over = max((one.width - room) / one.wide_cm for one in sizes)
        if over <= 0:
            break
        scale = max(scale - over, scale / 2) * 0.999
    return scale, drawings


def _rows(sizes: Sequence[_Size], room: float) -> list[_Row]:
    """Put pieces side by side in their order as far as they fit, small ones over one another beside a large one."""
    rows: list[_Row] = []
    used = high = 0.0
    for place, one in enumerate(sizes):
        last = rows[-1][-1] if rows else []
        stacked = sum(sizes[other].height + GAP_DOWN for other in last) + one.height
        widest = max((sizes[other].width for other in last), default=0.0)
        if rows and len(rows[-1]) > 1 and stacked <= MOST_STACK * high and used + max(one.width - widest, 0) <= room:
            last.append(place)
            used += max(one.width - widest, 0)
        elif rows and used + GAP_ACROSS + one.width <= room:
            rows[-1].append([place])
            used, high = used + GAP_ACROSS + one.width, max(high, one.height)
        else:
            rows.append([[place]])
            used, high = one.width, one.height
    return rows


def _height(sizes: Sequence[_Size], room: float) -> float:
    rows = _rows(sizes, room)
    return sum(max(sum(sizes[place].height for place in column) for column in row) + GAP_DOWN for row in rows)


def _placed(
    look: Look, scale: float, drawings: Sequence[PieceDrawing], rows: Sequence[_Row], notes: Sequence[str]
) -> Sheet:
    """Give the sheet with its rows from the top, each in the middle of the width."""
    placed = []
    y = look.margin
    for row in rows:
        boxes = [[drawings[place].box for place in column] for column in row]
        widths = [max(box.right - box.left for box in column) for column in boxes]
        x = (look.width - sum(widths) - GAP_ACROSS * (len(row) - 1)) / 2
        lowest = y
        for column, column_boxes, width in zip(row, boxes, widths, strict=True):
            top = y
            for place, box in zip(column, column_boxes, strict=True):
                placed.append((drawings[place], x + (width - box.right + box.left) / 2 - box.left, top - box.top))
                top += box.bottom - box.top + GAP_DOWN
            x += width + GAP_ACROSS
            lowest = max(lowest, top)
        y = lowest
    words = [
        Words(line, look.margin, y + look.count * (0.4 + 1.35 * place), look.count, anchor="start")
        for place, line in enumerate(line for note in notes for line in _wrapped(note, look))
    ]
    bottom = words[-1].box.bottom if words else y - GAP_DOWN
    return Sheet(look, scale, tuple(placed), tuple(words), bottom + look.margin)


def _wrapped(text: str, look: Look) -> list[str]:
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if text_width(longer, look.count) > look.width - 2 * look.margin:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines


def _notes(draft: Draft, body_cm: Mapping[str, float] | None) -> list[str]:
    notes = []
    if any(join.kind in ("sewn", "set in", "sewn row to stitch") for join in draft.joins):
        notes.append("Flat pieces are measured with their seam stitches, as they are pinned out.")
    if body_cm is not None:
        notes.append("In grey: the body, its girths laid flat like the piece.")
    return notes
