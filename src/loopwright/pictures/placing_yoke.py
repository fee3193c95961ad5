"""Where the parts of a garment with a yoke lie: raglan lines straight, a round yoke as half a ring."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Piece
from loopwright.pictures.laid_rows import LaidRows, joined, rows_of
from loopwright.pictures.lie_bent import Ring
from loopwright.pictures.lie_flat import Flat, Mirrored, Sagging
from loopwright.pictures.patch import LAYERS, Face, Patch, side_profile
from loopwright.pictures.placing_sleeve import SetOn
from loopwright.pictures.placing_trunk import FINE_CM, Trunk, level_runs
from loopwright.pictures.yoke_rows import Shares, band_stitches, body_runs, face_runs, is_open, neck_rows, shares_of

__all__ = ["YokeTrunk", "raglan_trunk", "ring_trunk"]

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class YokeTrunk:
    """Front or back of a garment with a yoke, its edges for the sleeves, and the right half of its neck.

    :ivar neck: from the middle outwards; shape (points, 2).
    """

    trunk: Trunk
    set_on: SetOn
    neck: Floats
    shares: list[Shares]


def _yoke(draft: Draft) -> Piece:
    return draft.piece("yoke")


def _body_patches(draft: Draft, face: Face, top: float, *, inside: bool) -> list[Patch]:
    body = draft.piece("body")
    layer = LAYERS["inside" if inside else "body"]
    runs = body_runs(draft, body, face) if is_open(draft) else level_runs(body, face)
    lie = Flat(0.0, top, down=True) if body.direction == "top down" else Flat(0.0, top + body.height_cm)
    return [Patch(run, Mirrored(lie) if inside else lie, layer, inside) for run in runs]


def raglan_trunk(draft: Draft, face: Face, *, inside: bool = False) -> YokeTrunk:
    """Give front or back of a garment with raglan lines, y = 0 at its top."""
    yoke = _yoke(draft)
    shares = shares_of(draft, yoke)
    height = yoke.height_cm
    lie = Flat(0.0, 0.0, down=True) if yoke.direction == "top down" else Flat(0.0, height)
    layer = LAYERS["inside" if inside else "body"]
    runs = face_runs(draft, yoke, shares, face)
    upper = [Patch(run, Mirrored(lie) if inside else lie, layer, inside) for run in runs]
    patches = [*_body_patches(draft, face, height, inside=inside), *upper]
    levels = np.arange(FINE_CM / 2, height, FINE_CM)
    outer, inner = side_profile(upper, levels)
    seen = np.isfinite(outer)
    edge = np.column_stack((outer[seen], levels[seen]))[::-1]
    above = sum(one.section.height_cm for one in shares if not one.reaches_sleeve)
    opening = band_cm(draft) / 2 if face == "front" else 0.0
    deep = above + sum(rows * yoke.section(key).row_height_cm for key, rows in neck_rows(draft).items())
    inner = np.where(levels <= deep, inner, np.nan)
    neck = _level_neck(inner, levels, edge[edge[:, 1] <= above + FINE_CM], opening)
    edge = edge[edge[:, 1] >= above]
    under, _ = side_profile(patches, np.array([height + FINE_CM]))
    trunk = Trunk(
        tuple(patches),
        (float(under[0]), height),
        (float(edge[-1, 0]), float(edge[-1, 1])),
        height + draft.piece("body").height_cm,
        float(neck[0, 1]),
        opening,
    )
    return YokeTrunk(trunk, SetOn(edge), neck, shares)


def band_cm(draft: Draft) -> float:
    """Give the width of the front bands in cm, 0 where it does not open in front."""
    return band_stitches(draft) / draft.gauge.stitches_per_10cm * 10


def _level_neck(inner: Floats, levels: Floats, raised: Floats, opening: float) -> Floats:
    """Give the right half of a neck from the edge of the front, or over the raised top where it has none.

    :param raised: the outer edge above the sleeves, from below; shape (points, 2).
    """
    at = np.isfinite(inner) & (inner > opening + FINE_CM / 2)
    if at.any():
        points = np.column_stack((inner[at], levels[at]))[::-1]
        return np.vstack(([(0.0, points[0, 1])], points))
    return np.vstack(([(0.0, raised[-1, 1])], raised[::-1]))


# ------------------------------------------------------------------------------------------------------ round yoke
def ring_trunk(draft: Draft, face: Face, *, inside: bool = False) -> YokeTrunk:
    """Give front or back of a garment with a round yoke: half a ring as wide at its ends as its rows are long.

    The side of the neck lies at y = 0. The body below hangs from the arc.
    """
    yoke = _yoke(draft)
    shares = shares_of(draft, yoke)
    whole = next(one for one in shares if one.front.any())
    width = whole.section.stitch_width_cm
    upward = yoke.direction == "bottom up"
    counts = whole.total if upward else whole.total[::-1]
    depth = whole.section.height_cm
    spread = max((float(counts[0]) - float(counts[-1])) / 2 * width / depth, 0.2)
    radius = float(counts[0]) / 2 * width / spread
    front = float((whole.front if face == "front" else whole.back)[0 if upward else -1])
    underarm = spread / 2 * front / float(counts[0]) * 2
    centre = -(radius - depth) * math.cos(spread / 2)
    opened = band_cm(draft) / 2 if face == "front" else 0.0
    ring = Ring(opened, centre, radius if upward else _inner_radius(shares, radius, depth), upward)
    layer = LAYERS["inside" if inside else "yoke"]
    runs = _ring_runs(yoke, shares, face, spread, opened=opened > 0)
    lies = [ring] if opened == 0 else [ring, replace(ring, x=-opened)]
    upper = [Patch(run, Mirrored(lie) if inside else lie, layer, inside) for run, lie in zip(runs, lies, strict=True)]
    top = centre + radius * math.cos(underarm)
    body = _body_patches(draft, face, top, inside=inside)
    hem = top + draft.piece("body").height_cm
    if not inside:
        body = [
            replace(one, lie=Sagging(one.lie, top, hem, centre, radius)) for one in body if isinstance(one.lie, Flat)
        ]
    angles = np.linspace(underarm, spread / 2, 9)
    edge = np.column_stack((opened + radius * np.sin(angles), centre + radius * np.cos(angles)))
    neck = _ring_neck(shares, face, spread, (radius - depth, centre), opened)
    trunk = Trunk(
        (*body, *upper),
        (float(edge[0, 0]), top),
        (float(neck[-1, 0]), float(neck[-1, 1])),
        hem,
        float(neck[0, 1]),
        opened,
    )
    joined_share = float(whole.sleeve[0 if upward else -1]) / _sleeve_stitches(draft)
    return YokeTrunk(trunk, SetOn(edge, joined_share), neck, shares)


def _sleeve_stitches(draft: Draft) -> float:
    sleeve = next(one for one in draft.pieces if one.key.endswith("sleeve"))
    counts = [int(section.stitches.max()) for section in sleeve.sections if section.rows]
    return float(max(counts))


def _inner_radius(shares: list[Shares], radius: float, depth: float) -> float:
    """Give where the first row of a yoke knitted from the top lies: above the ring where its back is raised."""
    return radius - depth - sum(one.section.height_cm for one in shares if not one.front.any())


def _ring_runs(yoke: Piece, shares: list[Shares], face: Face, spread: float, *, opened: bool) -> list[LaidRows]:
    """Give the rows of half a ring, u its angle; the back carries the short rows of its neck."""
    shown = [one for one in shares if one.front.any() or face == "back"]
    base = sum(one.section.height_cm for one in shares[: shares.index(shown[0])])
    if opened:
        return [
            joined([_ring_half(yoke.key, one, spread, first=first) for one in shown]).moved(base)
            for first in (True, False)
        ]
    rows = joined([_ring_rows(yoke.key, one, face, spread, shares) for one in shown]).moved(base)
    return [replace(rows, wraps=face == "front")]


def _ring_rows(piece: str, one: Shares, face: Face, spread: float, shares: list[Shares]) -> LaidRows:
    section = one.section
    if not one.front.any():  # the raised back of the neck: as long as in the ring next to it
        beside = min(float(other.total.min()) for other in shares if other.front.any())
        end = one.back / beside * spread
        return rows_of(piece, section, (-end, end), per_u=one.back / (2 * end))
    end = np.full(section.rows, spread / 2)
    per = one.total / 2 / spread
    if face == "front":
        column = -one.sleeve / 2
    else:
        column = (one.front if section.in_the_round else np.ceil(one.front / 2)) + one.sleeve / 2
    return rows_of(piece, section, (-end, end), column=column, per_u=per)


def _ring_half(piece: str, one: Shares, spread: float, *, first: bool) -> LaidRows:
    section = one.section
    end, nought = np.full(section.rows, spread / 2), np.zeros(section.rows)
    per = (one.front + one.sleeve) / 2 / (spread / 2)
    if first:
        return rows_of(piece, section, (nought, end), per_u=per)
    return rows_of(piece, section, (-end, nought), column=one.total - (one.front + one.sleeve) / 2, per_u=per)


def _ring_neck(shares: list[Shares], face: Face, spread: float, ring: tuple[float, float], opened: float) -> Floats:
    inner, centre = ring
    angles = np.linspace(0.0, spread / 2, 25)
    radii = np.full(25, inner)
    raised = [one for one in shares if not one.front.any()]
    if face == "back" and raised:
        beside = min(float(other.total.min()) for other in shares if other.front.any())
        rise = sum(one.section.height_cm for one in raised)
        ends = [float(count) / beside * spread for one in raised for count in (one.back.min(), one.back.max())]
        radii = inner - rise * np.clip((max(ends) - angles) / max(max(ends) - min(ends), 1e-6), 0, 1)
    return np.column_stack((opened + radii * np.sin(angles), centre + radii * np.cos(angles)))
