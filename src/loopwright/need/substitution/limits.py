"""How far a substitute may differ, trait by trait, and what to call it."""

from __future__ import annotations

import math
from typing import Final, Literal

from loopwright.data import table
from loopwright.records import Record

__all__ = ["LIMITS", "MOST_PENALTY", "VERDICTS", "Limit", "Trait", "Verdict"]

Trait = Literal["thickness", "squeeze", "mass", "wash_length", "wash_width", "drape", "warmth", "elasticity", "care"]
Verdict = Literal["close", "works with care", "another fabric"]
VERDICTS: Final[tuple[Verdict, ...]] = ("close", "works with care", "another fabric")
"""From the best to the worst; a substitute gets the worst verdict of its traits."""
MOST_PENALTY: Final = 9.0
"""Penalty of one trait at most: beyond three times the limit it is no worse for the order."""


class Limit(Record):
    """Up to where a trait is close, and up to where it still works with care.

    :ivar close, with_care: upper ends of the difference, that value included; ``with_care`` is None without an end.
    :ivar weight: in the order of substitutes.
    :ivar basis: why there, in words.
    """

    trait: Trait
    close: float
    with_care: float | None
    weight: float
    unit: str
    basis: str
    source: str
    status: str

    @property
    def end(self) -> float:
        """Give the difference beyond which it makes another fabric."""
        return math.inf if self.with_care is None else self.with_care

    def verdict(self, off: float) -> Verdict:
        """Give the verdict on one difference."""
        return VERDICTS[int(off > self.close) + int(off > self.end)]


def _read() -> dict[Trait, Limit]:
    limits = [
        Limit.model_validate(row | {"with_care": row["with_care"] or None}) for row in table("yarn/swap_limits.csv")
    ]
    return {limit.trait: limit for limit in limits}


LIMITS: Final = _read()
"""The limits by trait. Source: ``data/yarn/swap_limits.csv``, each with its basis."""
