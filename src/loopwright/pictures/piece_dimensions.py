"""The measures of a piece as dimension lines of its drawing: which lie across, which upright, and what they say."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from loopwright.garment.draft import Draft
from loopwright.pictures.piece_heights import Along, heights_of
from loopwright.pictures.piece_shape import PieceShape
from loopwright.pictures.piece_widths import Across, widths_of
from loopwright.pictures.schematic_views import View
from loopwright.units import Reader, write_length

__all__ = ["Dimension", "Place", "dimensions_of"]

Place = Literal["above", "below", "inside", "left", "right"]


@dataclass(frozen=True, slots=True)
class Dimension:
    """One dimension line in cm of the drawing.

    :ivar place: above, below and inside lie across, left and right stand upright.
    :ivar level: where it is measured, on the other axis.
    :ivar low, high: its ends.
    :ivar says: the measure, then what it counts.
    :ivar slack: how far its level may move, down the drawing where it is above 0 and else up.
    """

    place: Place
    level: float
    low: float
    high: float
    says: tuple[str, ...]
    slack: float = 0.0


_ACROSS: dict[tuple[str, str], Place] = {
    ("up", "begin"): "below",
    ("up", "inside"): "inside",
    ("up", "end"): "above",
    ("down", "begin"): "above",
    ("down", "inside"): "inside",
    ("down", "end"): "below",
    ("side", "begin"): "left",
    ("side", "inside"): "right",
    ("side", "end"): "right",
}


def dimensions_of(view: View, shape: PieceShape, draft: Draft, reader: Reader) -> list[Dimension]:
    """Give the dimensions of a piece, in the reader's measures."""
    if view.lying is not None:
        return _of_lying(view, shape, reader)
    widths = widths_of(view.piece)
    if len(widths) == 2 and widths[0].stitches == widths[1].stitches:
        widths = widths[:1]
    return [
        *(_across(one, view, shape, reader) for one in widths),
        *(_along(one, view, shape, reader) for one in heights_of(view.piece, draft)),
    ]


def _of_lying(view: View, shape: PieceShape, reader: Reader) -> list[Dimension]:
    """Give the width from tip to tip and the whole depth of a shawl that is pinned out."""
    (points,) = shape.sections.values()
    tips = float(points[points[:, 0].argmin(), 1])
    rows = sum(one.rows for one in view.piece.sections)
    width = (write_length(shape.right - shape.left, reader), "from tip to tip")
    depth = (write_length(shape.height, reader), f"{rows} rows")
    return [
        Dimension("above", tips, shape.left, shape.right, width),
        Dimension("left", shape.left, 0.0, shape.height, depth),
    ]


def _across(one: Across, view: View, shape: PieceShape, reader: Reader) -> Dimension:
    says: tuple[str, ...] = (write_length(one.width_cm, reader), f"{one.stitches} sts")
    if one.in_the_round:
        whole = "unfolded" if one.is_folded else "round"
        says = (says[0], f"{write_length(2 * one.width_cm, reader)} {whole}", says[1])
    (x0, y0), (x1, y1) = shape.turning.point(one.left, one.at), shape.turning.point(one.right, one.at)
    place = _ACROSS[view.turn, one.where]
    if view.turn == "side":
        return Dimension(place, x0, min(y0, y1), max(y0, y1), says)
    slack = -one.slack if view.turn == "up" else one.slack
    return Dimension(place, y0, min(x0, x1), max(x0, x1), says, slack)


def _along(one: Along, view: View, shape: PieceShape, reader: Reader) -> Dimension:
    says = (write_length(one.height_cm, reader), f"{one.rows} {'rnds' if one.in_the_round else 'rows'}")
    (x0, y0), (x1, y1) = shape.turning.point(0, one.begin), shape.turning.point(0, one.end)
    if view.turn == "side":
        return Dimension("below" if one.chained else "above", shape.height, min(x0, x1), max(x0, x1), says)
    return Dimension("left" if one.chained else "right", shape.left, min(y0, y1), max(y0, y1), says)
