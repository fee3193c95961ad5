"""What is drawn of a draft: its pieces once each, how each is turned, and what is said beside it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Piece
from loopwright.garment.draft.lie import lying_outline_cm
from loopwright.pictures.yoke_shares import pieces_with_shares

__all__ = ["Turn", "View", "views_of"]

Turn = Literal["up", "down", "side"]
"""Which way the knitting grows on the drawing: up, down, or to the right."""

_TURNS: dict[str, Turn] = {"bottom up": "up", "top down": "down", "sideways": "side"}
_WORDS: dict[Turn, str] = {"up": "knit up", "down": "knit down", "side": "knit sideways"}


@dataclass(frozen=True, eq=False)
class View:
    """One piece as it is drawn.

    :ivar name: of the piece, or of all the pieces that are alike.
    :ivar made: how many are made, in words; empty for one.
    :ivar word: the direction of knitting in words.
    :ivar on_body: whether it lies round the trunk, so that a body can stand behind it.
    :ivar lying: outline of a shawl as it is pinned out, which its rows do not show; shape (points, 2), in cm.
    """

    piece: Piece
    name: str
    made: str
    turn: Turn
    word: str
    on_body: bool = False
    lying: NDArray[np.float64] | None = None


def views_of(draft: Draft) -> tuple[View, ...]:
    """Give the views of a draft in the order of its pieces; pieces that are alike are drawn once."""
    lying = lying_outline_cm(draft)
    if lying is not None:
        (piece,) = draft.pieces
        count = f"{piece.sections[-1].last} sts in the last row"
        return (View(piece, piece.name, count, "down", _WORDS["down"], lying=lying),)
    alike: dict[object, list[Piece]] = {}
    for piece in pieces_with_shares(draft):
        alike.setdefault(_likeness(piece), []).append(piece)
    views = [_view(draft, pieces) for pieces in alike.values()]
    trunk = next((place for place, view in enumerate(views) if _is_trunk(view.piece)), None)
    if trunk is not None:
        views[trunk] = replace(views[trunk], on_body=True)
    return tuple(views)


def _likeness(piece: Piece) -> object:
    """Give what two pieces share when they are drawn alike."""
    return piece.direction, tuple(
        (one.fabric, one.in_the_round, one.stitches.tobytes(), one.left_edge.tobytes(), one.row_height_cm, one.face)
        for one in piece.sections
    )


def _is_trunk(piece: Piece) -> bool:
    """Say whether a body can stand behind the piece, its neck at the piece's top: it reaches from hem to neck."""
    names = {one.name for one in piece.landmarks}
    return piece.made == 1 and {"hem", "underarm"} <= names and piece.height_cm > 0


def _view(draft: Draft, pieces: list[Piece]) -> View:
    piece = pieces[0]
    band = len(piece.sections) == 1 and piece.sections[0].begins == "picked up"
    turn: Turn = "side" if band and _lies_along_rows(draft, piece) else _TURNS[piece.direction]
    made = sum(one.made for one in pieces)
    mirrored = any(one.mirrored for one in pieces)
    words = f"make {made}" + (", mirrored" if mirrored else "") if made > 1 else ""
    return View(piece, _joined(one.name for one in pieces), words, turn, "picked up" if band else _WORDS[turn])


def _lies_along_rows(draft: Draft, piece: Piece) -> bool:
    """Say whether a flat band is picked up along rows alone, so that it stands upright where it is worn."""
    edges = [join.one for join in draft.joins if join.other.piece == piece.key and join.kind == "picked up"]
    return not piece.sections[0].in_the_round and bool(edges) and all(one.along_rows for one in edges)


def _joined(names: Iterable[str]) -> str:
    """Give several names as one, such as ``left and right sleeve``."""
    distinct = list(dict.fromkeys(names))
    sides = [name.split(" ", 1) for name in distinct]
    if len({side[-1] for side in sides}) == 1 and len(distinct) > 1:
        return f"{' and '.join(side[0] for side in sides)} {sides[0][-1]}"
    *most, last = distinct
    return f"{', '.join(most)} and {last}" if most else last
