"""How a picture of a garment is cut out: the garment, hands and a little of the neck and of the body below it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from loopwright.pictures.patch import Placed
from loopwright.pictures.raster import Frame

__all__ = ["frame_of"]

MARGIN: Final = 0.025
"""Round the garment, of the longer side."""
NECK_CM: Final = 8.0
BELOW_CM: Final = 6.0
"""Of a body, what is seen above the side of its neck and below the hem."""


def frame_of(lying: Placed, outlines: Sequence[NDArray[np.float64]], longest_px: float) -> Frame:
    """Give the frame round a garment.

    :param outlines: of the body behind it, the two arms first; it goes on below the picture.
    """
    left, top, right, bottom = lying.box()
    if outlines:
        shown = np.vstack(outlines[:2])
        left, right = min(left, float(shown[:, 0].min())), max(right, float(shown[:, 0].max()))
        if lying.is_worn:
            top, bottom = min(top, lying.neck_y - NECK_CM), max(bottom + BELOW_CM, float(shown[:, 1].max()))
        else:
            top, bottom = min(top, float(shown[:, 1].min())), bottom + BELOW_CM
    margin = MARGIN * max(right - left, bottom - top)
    wide, high = right - left + 2 * margin, bottom - top + (1 if outlines else 2) * margin
    scale = longest_px / max(wide, high)
    return Frame(left - margin, top - margin, scale, max(round(wide * scale), 1), max(round(high * scale), 1))
