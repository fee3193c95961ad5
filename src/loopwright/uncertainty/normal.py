"""Chances under the normal curve, and what a rounded-up count says."""

from __future__ import annotations

import math
from statistics import NormalDist

from loopwright.uncertainty.estimate import Estimate

__all__ = ["interval_moments", "p_at_least", "quantile"]


def p_at_least(have: Estimate, need: Estimate) -> float:
    r"""Give the probability that ``have`` is at least ``need``, both normal and independent.

    .. math:: P = \Phi\left(\frac{m_h - m_n}{\sqrt{s_h^2 + s_n^2}}\right)

    With no doubt on either side it is 0 or 1, to a relative tolerance of 1e-9; with doubt it is never quite either.

    :raises ValueError: the units differ.
    """
    if have.unit != need.unit:
        raise ValueError(f"cannot compare {have.unit} with {need.unit}")
    spread = math.hypot(have.sd, need.sd)
    if spread == 0:
        return 1.0 if have.mean >= need.mean * (1 - 1e-9) else 0.0
    p = NormalDist().cdf((have.mean - need.mean) / spread)
    return min(max(p, math.ulp(0.0)), math.nextafter(1.0, 0.0))


def quantile(estimate: Estimate, share: float) -> float:
    """Give the value that is not exceeded with probability ``share`` (0 < share < 1), taken as normal."""
    if estimate.sd == 0:
        return estimate.mean
    return NormalDist(estimate.mean, estimate.sd).inv_cdf(share)


def interval_moments(low: float, high: float) -> tuple[float, float]:
    """Give mean and standard deviation of a quantity of which only an interval is known.

    A count rounded up to ``n`` balls says that the need lies in ``(n - 1, n]``: evenly spread, the mean is the
    middle and the standard deviation ``(high - low) / √12``. Source: JCGM 100:2008 (GUM), 4.3.7 (from memory).
    """
    if high < low:
        raise ValueError(f"found an interval from {low} to {high}; wanted low ≤ high")
    return (low + high) / 2, (high - low) / math.sqrt(12)
