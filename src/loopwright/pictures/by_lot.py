"""A garment in the colours of the lots that knit it, and which section lies where on the picture.

A piece that is made twice is two sections here, one on each side of the wearer, for each may have its own lot.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft, Section
from loopwright.pictures.index_layout import EDGE, FIRST_ROLE, ROLE_ENTRIES, colours_of_index
from loopwright.pictures.painting import Painting
from loopwright.pictures.patch import Face, Patch, Placed
from loopwright.pictures.placing import placed
from loopwright.pictures.png import indexed_png
from loopwright.pictures.raster import draw_patch, levels_of
from loopwright.pictures.raster_lines import draw_outlines
from loopwright.pictures.wide_frame import frame_of

__all__ = ["BY_LOT_PX", "Knitted", "Regions", "lots_png", "regions_of", "regions_png"]

BY_LOT_PX: Final = 720
"""Of the longer side."""

Knitted = Mapping[tuple[str, str], Mapping[str, Sequence[tuple[tuple[str, ...], float]]]]
"""By (piece, section) and role, what knits it in the order of knitting: the lots of the strands, and the share of its
stitches. Of a piece that is made twice, ``sleeve 1`` is on the wearer's left, ``sleeve 2`` on the right."""


@dataclass(frozen=True, slots=True, eq=False)
class Regions:
    """Which section is seen at each pixel.

    :ivar numbers: shape (height, width); 0 where there is none, else the place in ``sections`` and 1.
    :ivar rows: the row of the section there, of the same shape.
    :ivar sections: (piece, section), as in :data:`Knitted`.
    """

    numbers: NDArray[np.uint8]
    rows: NDArray[np.uint16]
    sections: tuple[tuple[str, str], ...]


def _by_copy(draft: Draft, face: Face) -> Placed:
    """Give the parts in their places, a piece made twice told by its side."""
    lying = placed(draft, face)
    made = {piece.key: piece.made for piece in draft.pieces}
    return replace(lying, patches=tuple(_told_by_side(patch, made, face) for patch in lying.patches))


def _told_by_side(patch: Patch, made: Mapping[str, int], face: Face) -> Patch:
    is_left = (float(patch.outline()[:, 0].mean()) > 0) == (face == "front")

    def name(piece: str) -> str:
        if made.get(piece, 1) == 2:
            return f"{piece} {1 if is_left else 2}"
        if piece in ("left sleeve", "right sleeve"):
            return "left sleeve" if is_left else "right sleeve"
        return piece

    stretches = tuple(replace(one, piece=name(one.piece)) for one in patch.rows.stretches)
    return replace(patch, rows=replace(patch.rows, stretches=stretches))


def _laid(lying: Placed) -> dict[tuple[str, str], Section]:
    """Give the sections that are seen, by piece and key."""
    return {(one.piece, one.section.key): one.section for patch in lying.patches for one in patch.rows.stretches}


@lru_cache(maxsize=8)
def regions_of(draft: Draft, face: Face, longest_px: int = BY_LOT_PX) -> Regions:
    """Give which section is seen where."""
    lying = _by_copy(draft, face)
    frame = frame_of(lying, [], longest_px)
    numbers = np.zeros((frame.height, frame.width), dtype=np.uint8)
    rows = np.zeros(numbers.shape, dtype=np.uint16)
    sections = _laid(lying)
    places = {key: place for place, key in enumerate(sections, 1)}
    alike = Painting(("",), {key: np.zeros(one.rows, dtype=np.intp) for key, one in sections.items()})
    for patch in lying.patches:
        window = frame.window(patch.box)
        if window[0].start >= window[0].stop or window[1].start >= window[1].stop:
            continue
        u, v = np.broadcast_arrays(*patch.lie.from_picture(*frame.middles(window)))
        inside, _ = levels_of(patch, alike, frame.scale).inside(u.astype(np.float32), v.astype(np.float32))
        row = np.clip(np.searchsorted(patch.rows.ends, v[inside], side="right") - 1, 0, patch.rows.rows - 1)
        own = patch.rows.stretches
        numbers[window][inside] = np.concatenate(
            [np.full(one.rows, places[one.piece, one.section.key], dtype=np.uint8) for one in own]
        )[row]
        rows[window][inside] = np.concatenate([one.first + np.arange(one.rows, dtype=np.uint16) for one in own])[row]
    numbers.setflags(write=False)
    rows.setflags(write=False)
    return Regions(numbers, rows, tuple(sections))


def regions_png(regions: Regions) -> bytes:
    """Give the regions as a PNG: red, green and blue of a pixel are its number."""
    return indexed_png(regions.numbers, np.repeat(np.arange(256, dtype=np.uint8)[:, None], 3, axis=1))


def lots_png(
    draft: Draft, face: Face, knitted: Knitted, colours: Mapping[str, str], *, longest_px: int = BY_LOT_PX
) -> bytes:
    """Give the picture as a PNG, with a fine line where one row's lots are not those of the row beside it.

    :param knitted: lots by section; what is left out is drawn as if the lot "" knitted it.
    :param colours: likeness of each lot as ``#rrggbb``; a lot left out is neutral grey.
    :raises BadInput: more lots than a picture can tell apart.
    """
    lying = _by_copy(draft, face)
    frame = frame_of(lying, [], longest_px)
    regions = regions_of(draft, face, longest_px)
    painted = _Painted.of(_laid(lying), knitted)
    names = painted.painting.roles
    strands = {name: [colours[lot] for lot in name.split("+") if lot in colours] for name in names}
    palette = colours_of_index(names, strands)
    canvas = np.zeros(regions.numbers.shape, dtype=np.uint8)
    layers = np.zeros_like(canvas)
    drawn = []
    for patch in lying.patches:
        levels = levels_of(patch, painted.painting, frame.scale)
        draw_patch(canvas, layers, patch, levels, frame)
        drawn.append((patch, levels))
    line = _line_between(painted.alike[regions.numbers, regions.rows]) & (canvas >= FIRST_ROLE)
    roles = (canvas[line].astype(np.int16) - FIRST_ROLE) // ROLE_ENTRIES
    canvas[line] = (FIRST_ROLE + roles * ROLE_ENTRIES + EDGE).astype(np.uint8)
    draw_outlines(canvas, layers, drawn, frame)
    return indexed_png(canvas, palette)


@dataclass(frozen=True, slots=True, eq=False)
class _Painted:
    """The lots in place.

    :ivar painting: its roles are lots, the strands of a marl joined by ``+``.
    :ivar alike: rows with the same lots have the same number; shape (sections + 1, most rows), 0 for no section.
    """

    painting: Painting
    alike: NDArray[np.int32]

    @classmethod
    def of(cls, sections: Mapping[tuple[str, str], Section], knitted: Knitted) -> _Painted:
        names: dict[str, int] = {}
        rows: dict[tuple[str, str], NDArray[np.intp]] = {}
        cells: dict[tuple[str, str], NDArray[np.integer]] = {}
        kinds: dict[tuple[int, ...], int] = {}
        most = max((one.rows for one in sections.values()), default=0)
        alike = np.zeros((len(sections) + 1, max(most, 1)), dtype=np.int32)
        for place, (key, section) in enumerate(sections.items(), 1):
            lots = _lots_of_rows(section, knitted.get(key, {}), names)
            stacked = np.stack(list(lots.values()), axis=1)
            alike[place, : section.rows] = [
                kinds.setdefault(tuple(sorted(set(row))), len(kinds) + 1) for row in stacked.tolist()
            ]
            if section.cells is None:
                rows[key] = _of_runs(section, lots)
            else:
                by_number = np.stack([lots[role] for role in section.cells.roles], axis=1)
                cells[key] = np.take_along_axis(by_number, section.cells.cells.astype(np.intp), axis=1)
        return cls(Painting(tuple(names), rows, cells), alike)


def _of_runs(section: Section, lots: Mapping[str, NDArray[np.intp]]) -> NDArray[np.intp]:
    """Give the lot of each row where whole rows are alike; shape (rows,)."""
    if not section.roles:
        return next(iter(lots.values()))
    whose = [run.role for run in section.role_runs for _ in range(run.rows)]
    return np.array([lots[role][row] for row, role in enumerate(whose)], dtype=np.intp)


def _lots_of_rows(
    section: Section, own: Mapping[str, Sequence[tuple[tuple[str, ...], float]]], names: dict[str, int]
) -> dict[str, NDArray[np.intp]]:
    """Give the number of the lot of each role row by row, each of shape (rows,).

    :param own: of this section; where the draft does not say whose yarn knits it, the first stands for all of it.
    :param names: numbers of the lots, to which new ones are added.
    """
    known = next(iter(own.values()), ()) if not section.is_coloured else ()
    found = {}
    for role, stitches in section.stitches_by_role().items():
        portions = known or own.get(role, ()) or (((), 1.0),)
        done = np.cumsum(stitches) / max(int(stitches.sum()), 1)
        ends = np.cumsum([share for _, share in portions])[:-1]
        numbers = np.array([names.setdefault("+".join(lots), len(names)) for lots, _ in portions], dtype=np.intp)
        found[role] = numbers[np.searchsorted(ends, done - 1e-9, side="left")]
    return found


def _line_between(kinds: NDArray[np.int32]) -> NDArray[np.bool_]:
    """Give the pixels whose right or lower neighbour is of another kind, both of which are of some."""
    line = np.zeros(kinds.shape, dtype=np.bool_)
    for here, there in (((slice(None), slice(-1)), (slice(None), slice(1, None))), (slice(-1), slice(1, None))):
        one, other = kinds[here], kinds[there]
        line[here] |= (one != other) & (one > 0) & (other > 0)
    return line
