"""Where front and back of a straight garment lie: as they are sewn or knitted, shoulders at the top."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from loopwright.garment.draft import Draft, Piece, Section
from loopwright.garment.parts.short_rows import BUST_KEY
from loopwright.pictures.laid_rows import LaidRows, flat_rows, joined
from loopwright.pictures.lie_flat import Flat, Mirrored
from loopwright.pictures.patch import LAYERS, Face, Patch, side_profile

__all__ = ["Trunk", "level_runs", "straight_trunk"]

FINE_CM = 0.1
PLATEAU_CM = 1.6
"""An upright stretch of this length below the slope of the shoulder is the edge of the armhole; our judgement."""


@dataclass(frozen=True, slots=True, eq=False)
class Trunk:
    """Front or back of a garment without its sleeves and bands.

    :ivar underarm: x and y of the right underarm.
    :ivar shoulder: x and y of the end of the right shoulder.
    :ivar neck_bottom: y of the lowest point of the neck.
    :ivar opening: x of the right front's edge where it opens in front, else 0.
    """

    patches: tuple[Patch, ...]
    underarm: tuple[float, float]
    shoulder: tuple[float, float]
    height: float
    neck_bottom: float
    opening: float = 0.0


def level_runs(piece: Piece, face: Face) -> list[LaidRows]:
    """Give the rows of a piece that lie on one side of the wearer, each run as long as one section follows another.

    Bust short rows are left out: a front that lies flat has them folded away.
    """
    skipped = {one.key: one.after for one in piece.sections if one.key == BUST_KEY}
    shown = [one for one in piece.sections if one.rows and one.face in ("whole", face) and one.key not in skipped]
    after = {one.key: skipped.get(one.after, one.after) if one.after else None for one in shown}
    runs: list[LaidRows] = []

    def follow(section: Section, base: float) -> None:
        run = [section]
        while True:
            base_next = base + sum(one.height_cm for one in run)
            following = [one for one in shown if after[one.key] == run[-1].key]
            if len(following) != 1:
                break
            run.append(following[0])
        runs.append(joined([flat_rows(piece.key, one, back=face == "back") for one in run]).moved(base))
        for one in following:
            follow(one, base_next)

    for section in shown:
        if after[section.key] is None:
            follow(section, 0.0)
    return runs


def straight_trunk(draft: Draft, face: Face, *, inside: bool = False) -> Trunk:
    """Give front or back of a garment knitted in straight pieces, y = 0 at its top.

    :param inside: the other side of it is seen, through the neck.
    """
    keys = {piece.key for piece in draft.pieces}
    piece = draft.piece("body" if "body" in keys else face)
    runs = level_runs(piece, face)
    height = float(max(run.ends[-1] for run in runs))
    layer = LAYERS["inside" if inside else "body"]
    lies: list[Flat | Mirrored] = [Flat(0.0, height)]
    opening = 0.0
    if piece.made == 2:
        opening = _opening(draft, runs)
        half = Flat(opening - float(runs[0].left[runs[0].rows // 2]), height)
        lies = [half, Mirrored(half)]
    if inside:
        lies = [Mirrored(lie) for lie in lies]
    patches = tuple(Patch(run, lie, layer, inside) for lie in lies for run in runs)
    underarm_y = height - _underarm_cm(piece, face)
    levels = np.arange(FINE_CM / 2, underarm_y, FINE_CM)
    outer, _ = side_profile(patches, levels)
    tip = _shoulder_end(outer)
    below, _ = side_profile(patches, np.array([underarm_y + FINE_CM]))
    return Trunk(
        patches,
        (float(below[0]), underarm_y),
        (float(outer[tip]), float(levels[tip])),
        height,
        height - _neck_cm(draft, piece, face),
        opening,
    )


def _base_cm(piece: Piece, key: str, face: Face) -> float:
    """Give how high a section begins above the lower edge, bust short rows not counted."""
    bust = sum(one.height_cm for one in piece.sections if one.key == BUST_KEY)
    return piece.base_cm(key) - (bust if face == "front" else 0.0)


def _underarm_cm(piece: Piece, face: Face) -> float:
    """Give how high the underarm lies above the lower edge."""
    mark = next(one for one in piece.landmarks if one.name == "underarm")
    return _base_cm(piece, face if any(one.key == face for one in piece.sections) else mark.section, face)


def _neck_cm(draft: Draft, piece: Piece, face: Face) -> float:
    """Give how high the rows begin along which the neckband is picked up; the top where there are none."""
    begins = [
        _base_cm(piece, one.key, face) + (one.rows - join.one.amount) * one.row_height_cm
        for join in draft.joins
        if join.kind == "picked up" and join.other.piece == "neckband" and join.one.piece == piece.key
        for one in [piece.section(join.one.section)]
        if join.one.along_rows and one.face in ("whole", face)
    ]
    return min(begins, default=piece.height_cm)


def _opening(draft: Draft, runs: list[LaidRows]) -> float:
    """Give x of the right front's edge, so that the sides of front and back lie on each other."""
    back = level_runs(draft.piece("back"), "back")[0]
    front = runs[0]
    at_back, at_front = len(back.left) // 2, len(front.left) // 2
    return float(back.right[at_back] - (front.right[at_front] - front.left[at_front]))


def _shoulder_end(outer: np.ndarray[tuple[int], np.dtype[np.float64]]) -> int:
    """Give the level at which the slope of the shoulder meets the armhole, from the top."""
    count = max(round(PLATEAU_CM / FINE_CM), 1)
    for place in range(len(outer) - count):
        stretch = outer[place : place + count]
        if np.isfinite(stretch).all() and float(np.ptp(stretch)) < 1e-6:
            return place
    return int(np.nanargmax(outer))
