"""How large a picture is before it is drawn, so that a page keeps its place while it is on its way."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.documents.look import LookOfGarment
from loopwright.pictures.patch import Face
from loopwright.pictures.placing import placed
from loopwright.pictures.standing_body import body_outlines
from loopwright.pictures.wide_frame import frame_of

__all__ = ["Extent", "picture_extent"]


@dataclass(frozen=True, slots=True)
class Extent:
    """A picture before it is drawn.

    :ivar width, height: in pixels.
    :ivar has_body: whether a body stands behind the garment.
    """

    width: int
    height: int
    has_body: bool


def picture_extent(look: LookOfGarment, face: Face, longest_px: int) -> Extent:
    """Give the extent of a garment's picture from where its parts lie alone."""
    lying = placed(look.draft, face)
    outlines = body_outlines(lying, look.body_cm) if look.body_cm else []
    frame = frame_of(lying, outlines, longest_px)
    return Extent(frame.width, frame.height, bool(outlines))
