"""Putting a piece on paper: its dimensions, the direction of its knitting, its name, and a body behind it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import product

from loopwright.pictures.body_outline import BodyFrame, BodyShape, half_flat_cm, trunk_side
from loopwright.pictures.dimension_places import place_dimensions
from loopwright.pictures.lettering import QUIET, Box, Words, text_width
from loopwright.pictures.piece_dimensions import Dimension
from loopwright.pictures.piece_drawing import Look, PieceDrawing
from loopwright.pictures.piece_shape import PieceShape
from loopwright.pictures.schematic_views import View
from loopwright.pictures.svg import INK

__all__ = ["draw_piece"]

ARROWS = (34.0, 22.0)
"""Lengths of the arrow of knitting."""
ABOVE_ALL = 11.0
"""From everything else to the name over it."""
ARROW_PLACES = (0.5, 0.45, 0.55, 0.4, 0.6, 0.35, 0.65, 0.3, 0.7, 0.25, 0.75)
"""Shares of the height at which an arrow is tried."""


def draw_piece(
    view: View,
    shape: PieceShape,
    dimensions: Sequence[Dimension],
    scale: float,
    look: Look,
    body_cm: Mapping[str, float] | None = None,
) -> PieceDrawing:
    """Draw a piece with its dimensions at so many units to the centimetre."""
    drawing = PieceDrawing(view, shape, scale, look)
    if body_cm is not None and view.on_body:
        side = trunk_side(BodyFrame.of(body_cm), BodyShape.of_body(body_cm, half_flat_cm))
        drawing.body = [(x * scale, y * scale) for x, y in side]
    place_dimensions(drawing, dimensions)
    _name(drawing, arrow_drawn=_direction(drawing))
    return drawing


def _direction(drawing: PieceDrawing) -> bool:
    """Draw the arrow of knitting with its word in the freest place of the piece; say whether there was one."""
    view, count = drawing.view, drawing.look.count
    if view.word == "picked up":
        return False
    middle = (drawing.left + drawing.right) / 2
    for lines, arrow in product(([view.word], view.word.split()), ARROWS):
        half = max(text_width(line, count) for line in lines) / 2
        high = arrow + count * (0.35 + 1.15 * len(lines))
        for share in ARROW_PLACES:
            top = drawing.bottom * share - high / 2
            room = Box(middle - half, top, middle + half, top + high)
            if drawing.is_divided(room) or not drawing.is_free([room]):
                continue
            foot = top + arrow
            drawing.say(
                *(Words(line, middle, foot + count * (1.2 + 1.15 * place), count) for place, line in enumerate(lines))
            )
            up = ((middle, foot), (middle, top))
            across = ((middle - arrow / 2, top + arrow * 0.7), (middle + arrow / 2, top + arrow * 0.7))
            drawing.arrows.append({"up": up, "down": (up[1], up[0]), "side": across}[view.turn])
            return True
    return False


def _name(drawing: PieceDrawing, *, arrow_drawn: bool) -> None:
    """Write the name over everything else, with how many are made and, where no arrow says it, how it is knitted."""
    view, look = drawing.view, drawing.look
    box = drawing.box
    more = ", ".join(part for part in (view.made, "" if arrow_drawn else view.word) if part)
    y = box.top - ABOVE_ALL
    name = Words(view.name, box.left, y, look.name, INK, 600, "start")
    if not more:
        drawing.say(name)
        return
    x = name.box.right + 0.4 * look.name
    if x + text_width(more, look.count) > box.left + look.width - 2 * look.margin:
        name, x = name.moved(0, -1.3 * look.count), box.left
    drawing.say(name, Words(more, x, y, look.count, QUIET, 400, "start"))
