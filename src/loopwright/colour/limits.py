"""The limits that verdicts on colours go by, each with its basis, from ``data/colour/limits.csv``."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from loopwright.data import table

__all__ = ["LIMITS", "Limit"]


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit.

    :ivar value: in ``unit``, ΔE00 or L*.
    :ivar meaning: what begins or ends there.
    :ivar status: ``read`` in its source, or our ``proposal``.
    """

    value: float
    unit: str
    meaning: str
    source: str
    status: str


LIMITS: Final = {
    row["key"]: Limit(float(row["value"]), row["unit"], row["meaning"], row["source"], row["status"])
    for row in table("colour/limits.csv")
}
"""The limits by key: ``different``, ``near``, ``hue``, ``borderline``, ``stripe``."""
