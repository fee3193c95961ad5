"""The front and the back of a garment before it is knitted: every stitch in its role's colour, in true proportion.

The picture of numbers is made once for a draft and a size; colours are put to the numbers afterwards, so another
colour costs next to nothing. See :mod:`loopwright.pictures.placing` for how the parts lie.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.garment.draft import Draft
from loopwright.pictures.index_layout import colours_of_index
from loopwright.pictures.painting import Painting, painting_of
from loopwright.pictures.patch import Face
from loopwright.pictures.placing import placed
from loopwright.pictures.png import indexed_png, recoloured_png
from loopwright.pictures.raster import draw_patch, levels_of
from loopwright.pictures.raster_lines import draw_body, draw_body_line, draw_outlines
from loopwright.pictures.standing_body import body_outlines
from loopwright.pictures.wide_frame import frame_of

__all__ = ["MOST_PX", "USUAL_PX", "GarmentPicture", "draw_garment", "garment_picture", "garment_png"]

USUAL_PX: Final = 1000
MOST_PX: Final = 2400
"""Of the longer side."""


@dataclass(frozen=True, slots=True, eq=False)
class GarmentPicture:
    """A garment as numbers that stand for roles and shades.

    :ivar index: shape (height, width); what a number stands for: :mod:`loopwright.pictures.index_layout`.
    :ivar scale: pixels to 1 cm.
    :ivar uncoloured: the same as a PNG in grey, of which only the palette changes.
    """

    index: NDArray[np.uint8]
    roles: tuple[str, ...]
    scale: float
    uncoloured: bytes

    def png(self, colours: Mapping[str, Sequence[str]]) -> bytes:
        """Give it as a PNG in colours: the strands of each role as ``#rrggbb``."""
        return recoloured_png(self.uncoloured, colours_of_index(self.roles, colours))


def draw_garment(
    draft: Draft,
    face: Face = "front",
    *,
    painting: Painting | None = None,
    body_cm: Mapping[str, float] | None = None,
    longest_px: int = USUAL_PX,
) -> GarmentPicture:
    """Draw a garment as numbers.

    :param painting: whose yarn knits what; left out, as the draft says.
    :param body_cm: a body to stand behind it, its measures in cm by point.
    :param longest_px: pixels of the longer side, at most :data:`MOST_PX`.
    """
    painting = painting or painting_of(draft)
    lying = placed(draft, face)
    outlines = body_outlines(lying, body_cm) if body_cm else []
    frame = frame_of(lying, outlines, min(max(longest_px, 16), MOST_PX))
    canvas = np.zeros((frame.height, frame.width), dtype=np.uint8)
    layers = np.zeros_like(canvas)
    body = draw_body(canvas, outlines, frame) if outlines else None
    drawn = []
    for patch in lying.patches:
        levels = levels_of(patch, painting, frame.scale)
        draw_patch(canvas, layers, patch, levels, frame)
        drawn.append((patch, levels))
    if body is not None:
        draw_body_line(canvas, layers, body)
    draw_outlines(canvas, layers, drawn, frame)
    canvas.setflags(write=False)
    grey = colours_of_index(painting.roles, {})
    return GarmentPicture(canvas, painting.roles, frame.scale, indexed_png(canvas, grey))


@lru_cache(maxsize=48)
def _kept(
    draft: Draft, face: Face, edges: str | None, body: tuple[tuple[str, float], ...], longest_px: int
) -> GarmentPicture:
    painting = painting_of(draft, edges=edges)
    return draw_garment(draft, face, painting=painting, body_cm=dict(body) or None, longest_px=longest_px)


def garment_picture(
    draft: Draft,
    face: Face = "front",
    *,
    edges: str | None = None,
    body_cm: Mapping[str, float] | None = None,
    longest_px: int = USUAL_PX,
) -> GarmentPicture:
    """Give the picture of a draft, kept from the last time where nothing but colours has changed.

    :param edges: a role that knits ribs, hems and bands where the draft does not say whose yarn does.
    """
    body = tuple(sorted(body_cm.items())) if body_cm else ()
    return _kept(draft, face, edges, body, min(longest_px, MOST_PX))


def garment_png(draft: Draft, colours: Mapping[str, Sequence[str]], face: Face = "front", **how: object) -> bytes:
    """Give the picture of a draft in colours as a PNG; ``how`` as for :func:`garment_picture`."""
    return garment_picture(draft, face, **how).png(colours)  # type: ignore[arg-type]
