"""The limits that a photograph is read by, each with its basis, from ``data/colour/photo_limits.csv``."""

from __future__ import annotations

from typing import Final

from loopwright.colour.limits import Limit
from loopwright.data import table

__all__ = ["PHOTO_LIMITS"]

PHOTO_LIMITS: Final = {
    row["key"]: Limit(float(row["value"]), row["unit"], row["meaning"], row["source"], row["status"])
    for row in table("colour/photo_limits.csv")
}
"""The limits by key. Sides in pixels hold for a picture whose longer side has 400 of them."""
