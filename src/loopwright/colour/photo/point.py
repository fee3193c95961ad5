"""A place in a picture, as it is written: pixels, or per cent of each side."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from typing import Final

from loopwright.units import BadInput

__all__ = ["Point", "read_point"]

_WANTED: Final = "a place in the picture, from its left and from its top, such as 640,480 in pixels or 50%,25%"
_NUMBER: Final = re.compile(r"\s*(\d{1,6}(?:\.\d{1,6})?)\s*(%?)\s*", re.ASCII)


@dataclass(frozen=True, slots=True)
class Point:
    """A place in a picture.

    :ivar across, down: share of the width from the left and of the height from the top, 0 to 1.
    """

    across: float
    down: float

    def __post_init__(self) -> None:
        """Check the range."""
        for share in (self.across, self.down):
            if not (math.isfinite(share) and 0 <= share <= 1):
                raise BadInput(f"{share * 100:g} % of a side", "a place inside the picture, 0 to 100 %")

    def place(self, height: int, width: int) -> tuple[int, int]:
        """Give the row and the column of a picture of this size that hold the place."""
        return min(int(self.down * height), height - 1), min(int(self.across * width), width - 1)


def read_point(text: str, width: int, height: int) -> Point:
    """Read a place: ``640,480`` counts pixels from the left and from the top, ``50%,25%`` shares of the sides.

    :param width, height: of the picture in pixels, upright.
    :raises BadInput: it is written in another way, or lies outside.
    """
    parts = [_NUMBER.fullmatch(part) for part in text.split(",")]
    if len(parts) != 2 or parts[0] is None or parts[1] is None:
        raise BadInput(text, _WANTED)
    shares = []
    for part, side in zip(parts, (width, height), strict=True):
        assert part is not None  # both were matched
        number, percent = float(part[1]), part[2]
        shares.append(number / 100 if percent else number / side)
    if max(shares) > 1:
        raise BadInput(text, f"a place inside the picture, which is {width} × {height} pixels")
    return Point(*shares)
