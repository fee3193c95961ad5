"""Where every part of a drafted garment lies on a picture of its front or its back.

Pieces lie flat, at their true width and height, to one scale: a tube half its stitches wide, sleeves folded along the
top of the arm. Sleeves leave the armhole as they are sewn or knitted on and bend down; what a set-in sleeve has under
the armhole's edge is hidden. A round yoke is spread as half a ring, and the body hangs from it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Piece
from loopwright.garment.draft.lie import lying_outline_cm
from loopwright.pattern import Construction
from loopwright.pictures.laid_rows import LaidRows, joined, rows_of
from loopwright.pictures.lie_bent import Bend
from loopwright.pictures.lie_flat import Flat, Lie
from loopwright.pictures.lie_spread import CrescentSpread, HalfRoundSpread, TriangleSpread
from loopwright.pictures.patch import LAYERS, Face, Patch, Placed, side_profile
from loopwright.pictures.placing_bands import armbands, front_bands, neckband
from loopwright.pictures.placing_sleeve import SetOn, sleeve_patches
from loopwright.pictures.placing_trunk import FINE_CM, Trunk, level_runs, straight_trunk
from loopwright.pictures.placing_yoke import raglan_trunk, ring_trunk
from loopwright.pictures.yoke_rows import is_open, sleeve_shares

__all__ = ["placed"]

Floats = NDArray[np.float64]
NECK_CM = 3.0
"""How far below the neck the inside of the other face is drawn, so that nothing shows through."""


def placed(draft: Draft, face: Face) -> Placed:
    """Give a garment seen from the front or the back."""
    if lying_outline_cm(draft) is not None:
        return Placed((_shawl(draft),))
    keys = {piece.key for piece in draft.pieces}
    if "yoke" in keys:
        return _with_yoke(draft, face)
    if "body" in keys or {"front", "back"} <= keys:
        return _straight(draft, face)
    (piece,) = draft.pieces
    patches = tuple(Patch(run, Flat(0.0, piece.height_cm), LAYERS["body"]) for run in level_runs(piece, face))
    return Placed(patches, is_hat=draft.construction == Construction.HAT.value)


def _other(face: Face) -> Face:
    return "back" if face == "front" else "front"


# ------------------------------------------------------------------------------------------------- straight garments
def _straight(draft: Draft, face: Face) -> Placed:
    trunk, other = straight_trunk(draft, face), straight_trunk(draft, _other(face), inside=True)
    edge = _armhole(trunk)
    sleeves, bend = _sleeves(draft, SetOn(edge))
    neck, far = _neck(trunk), _neck(other)
    bands = neckband(draft, neck, far, behind=face == "front")
    patches = [
        *_near_neck(other.patches, neck),
        *bands[:-1],
        *sleeves,
        *trunk.patches,
        *bands[-1:],
        *(armbands(draft, edge[::-1]) if not sleeves else ()),
        *(front_bands(draft, trunk.opening, trunk.height, float(neck[0, 1])) if face == "front" else ()),
    ]
    return Placed(tuple(patches), bend, is_worn=True)


def _sleeves(draft: Draft, set_on: SetOn) -> tuple[list[Patch], Bend | None]:
    piece = next((one for one in draft.pieces if one.key == "sleeve"), None)
    return ([], None) if piece is None else sleeve_patches(piece, set_on)


def _armhole(trunk: Trunk) -> Floats:
    """Give the edge of the right armhole from the underarm up to the shoulder."""
    levels = np.arange(trunk.shoulder[1], trunk.underarm[1], FINE_CM)[::-1]
    outer, _ = side_profile(trunk.patches, levels)
    seen = np.isfinite(outer)
    points = np.column_stack((outer[seen], levels[seen]))
    return np.vstack(([trunk.underarm], points, [trunk.shoulder]))


def _neck(trunk: Trunk) -> Floats:
    """Give the right half of the neck, from the middle up to the shoulder."""
    levels = np.arange(FINE_CM / 2, max(trunk.neck_bottom, FINE_CM), FINE_CM)
    _, inner = side_profile(trunk.patches, levels)
    at = np.isfinite(inner) & (inner > trunk.opening + FINE_CM / 2)
    if not at.any():
        return np.array([(0.0, 0.0), (1.0, 0.0)])
    last = int(np.flatnonzero(~at)[0]) if (~at).any() else len(at)
    points = np.column_stack((inner[:last], levels[:last]))[::-1]
    return np.vstack(([(0.0, points[0, 1])], points, [(points[-1, 0], 0.0)]))


def _near_neck(patches: Iterable[Patch], neck: Floats) -> list[Patch]:
    """Give as much of the inside of the other face as can be seen through the neck."""
    widest, lowest = neck.max(axis=0).tolist()
    bounds = (-widest, -math.inf, widest, lowest + NECK_CM)
    near = [replace(patch, bounds=bounds) for patch in patches]
    return [patch for patch in near if patch.box[0] < patch.box[2] and patch.box[1] < patch.box[3]]


# ------------------------------------------------------------------------------------------------- yokes
def _with_yoke(draft: Draft, face: Face) -> Placed:
    has_lines = all(one.parts for one in draft.piece("yoke").sections)
    make = raglan_trunk if has_lines else ring_trunk
    seen, far = make(draft, face), make(draft, _other(face), inside=True)
    sleeve = next(one for one in draft.pieces if one.key.endswith("sleeve"))
    shares = sleeve_shares(draft.piece("yoke"), seen.shares, face, opened=is_open(draft)) if has_lines else []
    sleeves, bend = sleeve_patches(sleeve, seen.set_on, shares=shares, yoked=True)
    necks = [one.neck for one in (seen, far)]
    if has_lines:
        fold = _fold_at_top(sleeves[0].rows, bend)
        necks = [np.vstack((neck, fold)) for neck in necks]
    bands = neckband(draft, necks[0], necks[1], behind=face == "front")
    patches = [
        *_near_neck(far.trunk.patches, necks[0]),
        *bands[:-1],
        *sleeves,
        *seen.trunk.patches,
        *bands[-1:],
        *(front_bands(draft, seen.trunk.opening, seen.trunk.height, float(necks[0][0, 1])) if face == "front" else ()),
    ]
    return Placed(tuple(patches), bend, is_worn=True, neck_y=float(necks[0][-1, 1]))


def _fold_at_top(rows: LaidRows, bend: Bend) -> Floats:
    """Give where the fold of the right sleeve begins, at the side of the neck; shape (1, 2)."""
    end = rows.right[-1 if bend.length else 0]
    return np.column_stack(bend.to_picture(np.array([end]), np.array([bend.length])))


# ------------------------------------------------------------------------------------------------- shawls
def _shawl(draft: Draft) -> Patch:
    """Give a shawl pinned out: every stitch of the same area, every row round the rows before it."""
    (piece,) = draft.pieces
    outline = lying_outline_cm(draft)
    assert outline is not None  # it is a shawl
    width, depth = float(np.ptp(outline[:, 0])), float(outline[:, 1].max())
    lies: dict[str, Lie] = {
        Construction.TRIANGLE_SHAWL.value: TriangleSpread(width, depth),
        Construction.HALF_ROUND_SHAWL.value: HalfRoundSpread(width, depth),
        Construction.CRESCENT_SHAWL.value: CrescentSpread(width, depth, -float(outline[:, 1].min())),
    }
    return Patch(_shares_of_area(piece), lies[draft.construction], LAYERS["body"])


def _shares_of_area(piece: Piece) -> LaidRows:
    parts = []
    areas = []
    for section in piece.sections:
        ends = (np.zeros(section.rows), np.ones(section.rows))
        parts.append(rows_of(piece.key, section, ends, per_u=section.stitches.astype(float)))
        areas.append(section.stitches * section.stitch_width_cm * section.row_height_cm)
    whole = joined(parts)
    share = np.concatenate(([0.0], np.cumsum(np.concatenate(areas))))
    return LaidRows(
        share / share[-1], whole.left, whole.right, whole.column, whole.per_u, whole.stitches, whole.stretches
    )
