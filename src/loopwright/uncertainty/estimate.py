"""A number with its doubt, its origin and its working."""

from __future__ import annotations

import math
from collections.abc import Sequence

from pydantic import BaseModel, ConfigDict, field_validator

from loopwright.uncertainty.origin import Origin

__all__ = ["Estimate", "Step"]


class Step(BaseModel):
    """One line of a derivation: what it says, the numbers put in, and what came out."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    says: str
    """What this line works out, in words."""
    working: str = ""
    """The arithmetic with the numbers put in, such as ``980 m × 28/27``."""
    value: float
    sd: float = 0.0
    unit: str
    origin: Origin
    source: str = ""
    """The publication, or *common practice, no source*, or *our judgement*."""


class Estimate(BaseModel):
    """A mean with a standard deviation, in one unit, with its origin and derivation.

    :ivar mean: expected value.
    :ivar sd: standard deviation, 0 when the value is known exactly.
    :ivar unit: unit as shown, such as ``m``, ``g``, ``h``, ``sts``.
    :ivar origin: the origin of the figure as a whole.
    :ivar steps: the derivation, in the order of working.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)

    mean: float
    sd: float
    unit: str
    origin: Origin
    steps: tuple[Step, ...] = ()

    @field_validator("sd")
    @classmethod
    def _sd_is_not_negative(cls, sd: float) -> float:
        if sd < 0:
            raise ValueError(f"found a standard deviation of {sd}; wanted 0 or more")
        return sd

    @classmethod
    def known(cls, says: str, mean: float, unit: str, origin: Origin, *, sd: float = 0.0, source: str = "") -> Estimate:
        """Make an estimate whose derivation is the one statement ``says``."""
        return cls.worked(says, "", mean, sd, unit, origin=origin, source=source)

    @classmethod
    def worked(
        cls,
        says: str,
        working: str,
        mean: float,
        sd: float,
        unit: str,
        *,
        origin: Origin = Origin.COMPUTED,
        source: str = "",
        after: Sequence[Step] = (),
    ) -> Estimate:
        """Make an estimate whose derivation ends in the line that gives it.

        :param says: what is worked out, in words.
        :param working: the arithmetic with the numbers put in.
        :param after: the lines before it.
        """
        step = Step(says=says, working=working, value=mean, sd=sd, unit=unit, origin=origin, source=source)
        return cls(mean=mean, sd=sd, unit=unit, origin=origin, steps=(*after, step))

    @property
    def relative_sd(self) -> float:
        """Give the standard deviation as a share of the mean (0 when the mean is 0)."""
        return self.sd / abs(self.mean) if self.mean else 0.0

    def times(self, factor: Estimate, says: str, working: str = "", source: str = "") -> Estimate:
        """Multiply by an independent factor without a unit; relative doubts add in square.

        First-order propagation: ``(sd/mean)² = (sd_a/a)² + (sd_b/b)²``. Source: JCGM 100:2008 (GUM), 5.1.2
        (the law of propagation of uncertainty; from memory).
        """
        mean = self.mean * factor.mean
        sd = math.hypot(self.sd * factor.mean, factor.sd * self.mean)
        steps = (*self.steps, *factor.steps)
        return Estimate.worked(says, working, mean, sd, self.unit, source=source, after=steps)

    def plus(self, other: Estimate, says: str, working: str = "") -> Estimate:
        """Add an independent estimate in the same unit."""
        if other.unit != self.unit:
            raise ValueError(f"cannot add {other.unit} to {self.unit}")
        mean, sd = self.mean + other.mean, math.hypot(self.sd, other.sd)
        return Estimate.worked(says, working, mean, sd, self.unit, after=(*self.steps, *other.steps))
