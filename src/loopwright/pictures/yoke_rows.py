"""What of a yoke's rows, and of a body knitted flat below one, is seen from the front, from the back and on a sleeve.

Of a round, the front comes first, then one sleeve, the back, the other sleeve. Of a row that is open in front, half of
the front comes first and the other half last. Both run from left to right as seen from the right side.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Piece, Section
from loopwright.pictures.laid_rows import LaidRows, joined, rows_of
from loopwright.pictures.patch import Face
from loopwright.pictures.placing_sleeve import Share

__all__ = ["Shares", "band_stitches", "body_runs", "face_runs", "is_open", "neck_rows", "shares_of", "sleeve_shares"]

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Shares:
    """The shares of a yoke's rows, section by section in knitting order; each of shape (rows,)."""

    section: Section
    front: Floats
    back: Floats
    sleeve: Floats

    @property
    def total(self) -> Floats:
        """Give the stitches of each row."""
        return self.front + self.back + 2 * self.sleeve

    @property
    def reaches_sleeve(self) -> bool:
        """Say whether every row has stitches on the sleeves."""
        return bool(self.sleeve.min() >= 1)


def shares_of(draft: Draft, yoke: Piece) -> list[Shares]:
    """Give the shares of a yoke: as the draft names them, else as the parts have that are joined at the underarm."""
    if all(one.parts for one in yoke.sections):
        return [_named(one) for one in yoke.sections if one.rows]
    body, sleeves = _joined_counts(draft, yoke)
    total = body + 2 * sleeves
    opened = band_stitches(draft)
    front, back = (body - opened) / 2 / total, (body + opened) / 2 / total
    found = []
    for one in yoke.sections:
        if not one.rows:
            continue
        counts = one.stitches.astype(float)
        if _is_back_only(one):
            found.append(Shares(one, np.zeros(one.rows), counts, np.zeros(one.rows)))
        else:
            found.append(Shares(one, counts * front, counts * back, counts * sleeves / total))
    return found


def _is_back_only(section: Section) -> bool:
    return section.key == "back neck"


def _named(section: Section) -> Shares:
    parts = {part.name: part.stitches.astype(float) for part in section.parts}
    return Shares(section, parts["front"], parts["back"], (parts["left sleeve"] + parts["right sleeve"]) / 2)


def _joined_counts(draft: Draft, yoke: Piece) -> tuple[int, int]:
    body = sleeve = 0
    for join in draft.joins:
        if join.kind == "carried on" and yoke.key in (join.one.piece, join.other.piece):
            other = join.other.piece if join.one.piece == yoke.key else join.one.piece
            body, sleeve = (join.one.amount, sleeve) if other == "body" else (body, join.one.amount)
    return body, sleeve


def band_stitches(draft: Draft) -> float:
    """Give the width of the front bands in stitches of the body; 0 where it does not open in front."""
    band = next((one for one in draft.pieces if one.key.endswith(" band")), None)
    return band.height_cm * draft.gauge.stitches_per_10cm / 10 if band else 0.0


def is_open(draft: Draft) -> bool:
    """Say whether it opens in front."""
    return band_stitches(draft) > 0


def neck_rows(draft: Draft) -> dict[str, int]:
    """Give the rows of each section of a yoke along which its neckband is picked up."""
    edges = [join.one for join in draft.joins if join.kind == "picked up" and join.other.piece == "neckband"]
    return {edge.section: edge.amount for edge in edges if edge.along_rows}


def face_runs(draft: Draft, yoke: Piece, shares: list[Shares], face: Face) -> list[LaidRows]:
    """Give front or back of a yoke with straight lines, u in cm from the middle: one run, or the two halves of a front.

    Above the front of a neck the outer edges of the front lie as the back's do. Where it opens in front, both edges of
    the opening are upright below the neck.
    """
    opened = is_open(draft)
    if face == "back":
        return [joined([_back_rows(yoke.key, one, opened=opened) for one in shares])]
    whole = [one for one in shares if one.section.in_the_round and not opened]
    halved = [one for one in shares if one not in whole and one.front.any()]
    wider = max((float((one.front - one.back).max()) for one in whole), default=0.0)
    base = {id(one): sum(other.section.height_cm for other in shares[:at]) for at, one in enumerate(shares)}
    outer = _outer_edges(draft, halved, wider)
    runs = [joined([_front_rows(yoke.key, one) for one in whole]).moved(base[id(whole[0])])] if whole else []
    for first in (True, False):
        rows = [_half_front(yoke.key, one, edge, first=first) for one, edge in zip(halved, outer, strict=True)]
        if rows:
            runs.append(_worked(joined(rows).moved(base[id(halved[0])])))
    return runs


def _worked(rows: LaidRows) -> LaidRows:
    """Give the rows from the first to the last that show any stitch."""
    some = np.flatnonzero(rows.shown > 1e-9)
    return rows.sliced(int(some[0]), int(some[-1]) + 1)


def _half(front: Floats, *, first: bool) -> Floats:
    return np.ceil(front / 2) if first else np.floor(front / 2)


def _back_rows(piece: str, one: Shares, *, opened: bool) -> LaidRows:
    width = one.section.stitch_width_cm
    half = one.back / 2 * width
    flat = opened or not one.section.in_the_round
    before = (_half(one.front, first=True) if flat else one.front) + one.sleeve
    return rows_of(piece, one.section, (-half, half), column=before, per_u=1 / width)


def _front_rows(piece: str, one: Shares) -> LaidRows:
    width = one.section.stitch_width_cm
    half = one.front / 2 * width
    return rows_of(piece, one.section, (-half, half), per_u=1 / width)


def _outer_edges(draft: Draft, halved: list[Shares], wider: float) -> list[Floats]:
    """Give how far from the middle the sides of a halved front lie, in stitches."""
    edges = [np.maximum(one.back + wider, one.front) / 2 for one in halved]
    upright = [one.section.key not in neck_rows(draft) for one in halved]
    if not is_open(draft) or not any(upright):
        return edges
    band = band_stitches(draft)
    whole = [
        (band + one.front) / 2 if is_upright else edge
        for one, edge, is_upright in zip(halved, edges, upright, strict=True)
    ]
    place = upright.index(True)
    at = (0, -1) if place > 0 else (-1, 0)
    off = float(whole[place][at[0]] - edges[place][at[0]])
    return [edge if is_upright else edge + off for edge, is_upright in zip(whole, upright, strict=True)]


def _half_front(piece: str, one: Shares, outer: Floats, *, first: bool) -> LaidRows:
    width = one.section.stitch_width_cm
    count = _half(one.front, first=first)
    if first:
        return rows_of(piece, one.section, ((outer - count) * width, outer * width), per_u=1 / width)
    ends = (-outer * width, (count - outer) * width)
    return rows_of(piece, one.section, ends, column=one.total - count, per_u=1 / width)


def sleeve_shares(yoke: Piece, shares: list[Shares], face: Face, *, opened: bool) -> list[Share]:
    """Give the shares that lie on the sleeves."""
    found = []
    for one in shares:
        if not one.reaches_sleeve:
            continue
        flat = opened or not one.section.in_the_round
        first = _half(one.front, first=True) if flat else one.front
        last = _half(one.front, first=False) if flat else np.zeros_like(one.front)
        behind = first + one.sleeve
        columns = (first, one.total - last) if face == "front" else (behind + one.back, behind)
        found.append(Share(yoke.key, one.section, one.sleeve, columns, (True, False)))
    return found


def body_runs(draft: Draft, piece: Piece, face: Face) -> list[LaidRows]:
    """Give a body knitted flat in one, open in front: its back, or its two halves of the front."""
    band = band_stitches(draft)
    parts: list[list[LaidRows]] = [[]] if face == "back" else [[], []]
    for section in piece.sections:
        if not section.rows:
            continue
        width, total = section.stitch_width_cm, section.stitches.astype(float)
        front, side = (total - band) / 4, (total + band) / 4
        if face == "back":
            ends = (-side * width, side * width)
            parts[0].append(rows_of(piece.key, section, ends, column=front, per_u=1 / width))
            continue
        opening = (side - front) * width
        parts[0].append(rows_of(piece.key, section, (opening, side * width), per_u=1 / width))
        ends = (-side * width, -opening)
        parts[1].append(rows_of(piece.key, section, ends, column=total - front, per_u=1 / width))
    return [joined(part) for part in parts]
