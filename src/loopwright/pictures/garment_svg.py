"""The front or back of a garment as SVG: a polygon for the rows of a role, and a V for every stitch of a small one.

For a large garment the picture of pixels is smaller and quicker; a chart is drawn stitch by stitch, so its garment must
be small.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.colour import mix_strands, read_hex, read_hexes, write_hex
from loopwright.garment.draft import Draft
from loopwright.pictures.body_outline import BODY_FILL
from loopwright.pictures.laid_rows import LaidRows
from loopwright.pictures.painting import Painting, painting_of
from loopwright.pictures.patch import Face, Patch
from loopwright.pictures.placing import placed
from loopwright.pictures.standing_body import body_outlines
from loopwright.pictures.svg import INK, NEUTRAL, PAPER, element, number, picture
from loopwright.pictures.wide_frame import frame_of
from loopwright.units import BadInput

__all__ = ["MOST_CELLS", "MOST_STITCHES", "garment_svg"]

MOST_STITCHES: Final = 6000
"""Most stitches that are drawn one by one; a larger garment shows its colours alone."""
MOST_CELLS: Final = 20_000
"""Most stitches of a chart."""
WIDTH: Final = 800.0
DARKER: Final = 0.8

Floats = NDArray[np.float64]


def garment_svg(
    draft: Draft,
    colours: Mapping[str, Sequence[str]],
    face: Face = "front",
    *,
    painting: Painting | None = None,
    body_cm: Mapping[str, float] | None = None,
    says: str = "",
) -> str:
    """Draw a garment as SVG text.

    :param colours: the strands of each role as ``#rrggbb``; of a marl their mixture is drawn.
    :param painting: whose yarn knits what; left out, as the draft says.
    :param body_cm: a body to stand behind it, its measures in cm by point.
    :param says: read aloud instead of it.
    :raises BadInput: a chart on more stitches than a drawing can hold.
    """
    painting = painting or painting_of(draft)
    lying = placed(draft, face)
    outlines = body_outlines(lying, body_cm) if body_cm else []
    frame = frame_of(lying, outlines, WIDTH)
    fills = {role: write_hex(mix_strands(read_hexes(colours.get(role) or (NEUTRAL,)))) for role in painting.roles}
    stitches = sum(float(patch.rows.shown.sum()) for patch in lying.patches)
    charted = sum(one.worked for piece, one in draft.sections() if (piece.key, one.key) in painting.cells)
    if charted > MOST_CELLS:
        raise BadInput(found=f"a chart on {charted:,} stitches", wanted=f"at most {MOST_CELLS:,} in a drawing; a .png")
    to_px = _Scale(frame.left, frame.top, frame.scale)
    parts = [element("rect", width=frame.width, height=frame.height, fill=PAPER)]
    parts += [element("path", d=to_px.path(outline), fill=BODY_FILL) for outline in outlines]
    for patch in lying.patches:
        parts += _patch(patch, painting, fills, to_px, with_stitches=stitches <= MOST_STITCHES)
    inside = element("svg", "".join(parts), width=frame.width, height=frame.height)  # the body goes on beyond its edge
    return picture(inside, frame.width, frame.height, says or draft.construction, class_="worn", keep_shape=True)


class _Scale:
    """From cm of the plane to the drawing."""

    def __init__(self, left: float, top: float, scale: float) -> None:
        self.origin, self.scale = np.array([left, top]), scale

    def path(self, points: Floats, *, closed: bool = True) -> str:
        places = (points - self.origin) * self.scale
        return "M" + "L".join(f"{number(x)} {number(y)}" for x, y in places.tolist()) + ("Z" if closed else "")


def _patch(
    patch: Patch, painting: Painting, fills: Mapping[str, str], to_px: _Scale, *, with_stitches: bool
) -> Iterator[str]:
    for role, rows in _runs(patch.rows, painting):
        fill = _darker(fills[role]) if patch.inside else fills[role]
        outline = to_px.path(_on_picture(patch, rows.outline()))
        yield element("path", d=outline, fill=fill, stroke=fill, stroke_width=0.3)
    yield from _cells(patch, painting, fills, to_px)
    if with_stitches and not patch.inside:
        legs = "".join(to_px.path(line, closed=False) for line in _legs(patch))
        yield element("path", d=legs, fill="none", stroke=INK, stroke_opacity=0.28, stroke_width=0.5)
    edge = to_px.path(patch.outline())
    yield element("path", d=edge, fill="none", stroke=INK, stroke_width=0.8, stroke_linejoin="round")


def _on_picture(patch: Patch, points: Floats) -> Floats:
    return np.column_stack(patch.lie.to_picture(points[:, 0], points[:, 1]))


def _runs(rows: LaidRows, painting: Painting) -> Iterator[tuple[str, LaidRows]]:
    """Give the rows role by role, each run of rows of one role together; charted rows by the chart's first role."""
    names = [
        painting.roles[int(painting.of(one.piece, one.section)[row, 0])]
        for one in rows.stretches
        for row in range(one.first, one.first + one.rows)
    ]
    first = 0
    for name, group in groupby(names):
        count = len(list(group))
        yield name, rows.sliced(first, first + count)
        first += count


def _cells(patch: Patch, painting: Painting, fills: Mapping[str, str], to_px: _Scale) -> Iterator[str]:
    """Give the stitches of charts, a path for each role."""
    quads: dict[str, list[str]] = {}
    first = 0
    for one in patch.rows.stretches:
        if (one.piece, one.section.key) in painting.cells:
            roles = painting.of(one.piece, one.section)
            for row in range(one.rows):
                for column, corners in _row_cells(patch.rows, first + row):
                    role = painting.roles[int(roles[one.first + row, min(column, roles.shape[1] - 1)])]
                    quads.setdefault(role, []).append(to_px.path(_on_picture(patch, corners)))
        first += one.rows
    for role, paths in quads.items():
        yield element("path", d="".join(paths), fill=fills[role])


def _row_cells(rows: LaidRows, row: int) -> Iterator[tuple[int, Floats]]:
    left, right, per, begin = (float(one[row]) for one in (rows.left, rows.right, rows.per_u, rows.column))
    low, high = rows.ends[row], rows.ends[row + 1]
    end = begin + (right - left) * per
    for column in range(int(np.floor(min(begin, end) + 1e-9)), int(np.ceil(max(begin, end) - 1e-9))):
        ends = sorted(np.clip([left + (column - begin) / per, left + (column + 1 - begin) / per], left, right))
        yield column, np.array([(ends[0], low), (ends[1], low), (ends[1], high), (ends[0], high)])


def _legs(patch: Patch) -> Iterator[Floats]:
    """Give the two legs of every stitch, a V that is open where the knitting goes on."""
    rows = patch.rows
    for row in range(rows.rows):
        low, high = rows.ends[row], rows.ends[row + 1]
        for _, corners in _row_cells(rows, row):
            (one, _), (other, _) = corners[0], corners[1]
            foot, top = low + 0.1 * (high - low), high - 0.05 * (high - low)
            inset = 0.1 * (other - one)
            yield _on_picture(patch, np.array([(one + inset, top), ((one + other) / 2, foot), (other - inset, top)]))


def _darker(colour: str) -> str:
    return write_hex(read_hex(colour) * DARKER)
