"""Bands picked up along the edges of a garment: round the neck, along the fronts, round the armholes."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Piece
from loopwright.pictures.laid_rows import LaidRows, joined, rows_of
from loopwright.pictures.lie_bent import Along
from loopwright.pictures.lie_flat import Mirrored
from loopwright.pictures.patch import LAYERS, Box, Patch

__all__ = ["armbands", "front_bands", "neckband", "smoothed"]

Floats = NDArray[np.float64]

STEP_CM: Final = 0.35
WINDOW_CM: Final = 0.7
"""An edge of steps is smoothed over this length before a band is drawn along it."""
HAIR_CM: Final = 0.04
OVER_CM: Final = 0.3
"""A band covers this much of the edge that it is picked up from, so that no step of it shows; for looks."""


def smoothed(points: Floats) -> Floats:
    """Give a line of steps as a smooth one, its ends where they were; shape (points, 2)."""
    lengths = np.hypot(*np.diff(points, axis=0).T)
    way = np.concatenate(([0.0], np.cumsum(lengths)))
    count = max(int(way[-1] / STEP_CM), 4)
    at = np.linspace(0, way[-1], count + 1)
    line = np.column_stack([np.interp(at, way, points[:, axis]) for axis in (0, 1)])
    reach = max(round(WINDOW_CM / STEP_CM), 1)
    padded = (
        np.concatenate((2 * line[0] - line[reach:0:-1], line, 2 * line[-1] - line[-2 : -reach - 2 : -1]))
        if (count > reach)
        else line
    )
    if len(padded) == len(line):
        return line
    weight = np.hanning(2 * reach + 3)[1:-1]
    weight /= weight.sum()
    smooth = np.column_stack([np.convolve(padded[:, axis], weight, mode="valid") for axis in (0, 1)])
    return _without_near_straight(smooth)


def _without_near_straight(points: Floats) -> Floats:
    """Give a line with no more points than it needs to stay within a hair of where it was."""
    kept = [0]
    for last in range(2, len(points)):
        first = kept[-1]
        way = points[last] - points[first]
        between = points[first + 1 : last] - points[first]
        away = np.abs(between[:, 0] * way[1] - between[:, 1] * way[0]) / max(float(np.hypot(*way)), 1e-9)
        if away.max() > HAIR_CM:
            kept.append(last - 1)
    return points[[*kept, len(points) - 1]]


def _whole(half: Floats) -> Floats:
    """Give a line from left to right from its right half, which begins in the middle."""
    return np.concatenate((half[::-1] * (-1, 1), half[1:] if abs(half[0, 0]) < 1e-9 else half))


def _outwards(points: Floats, by: float) -> Floats:
    """Give a line moved to the right of its way."""
    along = np.gradient(points, axis=0)
    along /= np.linalg.norm(along, axis=1, keepdims=True)
    return points + by * np.column_stack((-along[:, 1], along[:, 0]))


def _band_rows(piece: Piece, stitches: float, *, first: float = 0.0) -> LaidRows:
    """Give the rows of a band, or of a part of its stitches, u from 0 to 1."""
    parts = []
    for section in piece.sections:
        share = section.stitches / section.first * stitches
        ends = (np.zeros(section.rows), np.ones(section.rows))
        parts.append(rows_of(piece.key, section, ends, column=first, per_u=share))
    whole = joined(parts)
    return replace(whole, ends=whole.ends * (1 + OVER_CM / whole.ends[-1]))


def neckband(draft: Draft, seen: Floats, other: Floats, *, behind: bool) -> list[Patch]:
    """Give the neckband along the neck that faces the viewer and, behind it, along the other side.

    :param seen, other: the right half of the neck of both faces, from the middle; shape (points, 2).
    :param behind: whether the other side of the band shows.
    """
    piece = next((one for one in draft.pieces if one.key == "neckband"), None)
    if piece is None:
        return []
    lines = [smoothed(_whole(half)) for half in (seen, other)]
    lengths = [Along(line).length for line in lines]
    stitches = piece.sections[0].first
    near = stitches * lengths[0] / sum(lengths)
    patches = []
    if behind:
        rows = _band_rows(piece, stitches - near, first=near)
        lie = Mirrored(Along(_outwards(lines[1], OVER_CM)))
        patches.append(Patch(rows, lie, LAYERS["inside band"], inside=True, bounds=_standing(other)))
    bounds = (-math.inf, float(seen[-1, 1]), math.inf, math.inf) if behind else _standing(seen)
    patches.append(
        Patch(_band_rows(piece, near), Along(_outwards(lines[0], OVER_CM)), LAYERS["neckband"], bounds=bounds)
    )
    return patches


def _standing(half: Floats) -> Box:
    """Give the bounds of a band at the back: no wider than the neck, nor above its sides where these are higher."""
    x, y = half[-1].tolist()
    return -x, y if y < half[0, 1] else -math.inf, x, math.inf


def front_bands(draft: Draft, opening: float, hem: float, neck: float) -> list[Patch]:
    """Give the bands along both fronts, the wearer's right over the left, from the hem up to the neck."""
    patches = []
    for key, x, layer in (("left band", opening, "band below"), ("right band", -opening, "band")):
        piece = next((one for one in draft.pieces if one.key == key), None)
        if piece is not None:
            edge = np.array([(x, hem), (x, neck)] if x > 0 else [(x, neck), (x, hem)])
            rows = _band_rows(piece, piece.sections[0].first)
            patches.append(Patch(rows, Along(_outwards(edge, OVER_CM)), LAYERS[layer]))
    return patches


def armbands(draft: Draft, edge: Floats) -> list[Patch]:
    """Give the bands round the armholes of a garment without sleeves.

    :param edge: of the right armhole, from the shoulder to the underarm; shape (points, 2).
    """
    piece = next((one for one in draft.pieces if one.key == "armband"), None)
    if piece is None:
        return []
    rows = _band_rows(piece, piece.sections[0].first / 2)
    line = smoothed(edge)
    beyond = np.array([line[-1] + (2.0, 0.0)])
    lie = Along(_outwards(np.vstack((line, beyond)), OVER_CM))
    longer = replace(rows, per_u=rows.per_u * lie.length / (lie.length - 2.0))
    side = float(edge[-1, 0])
    return [
        Patch(longer, lie, LAYERS["armband"], bounds=(-math.inf, -math.inf, side, math.inf)),
        Patch(longer, Mirrored(lie), LAYERS["armband"], bounds=(-side, -math.inf, math.inf, math.inf)),
    ]
