"""Joining several estimates of one thing, and adding estimates of many."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.uncertainty.estimate import Estimate
from loopwright.units import write_percent

__all__ = ["combine_by_precision", "total"]


def combine_by_precision(estimates: Sequence[Estimate], says: str) -> Estimate:
    r"""Combine independent estimates of one quantity, each weighted by its precision.

    .. math:: \bar x = \frac{\sum x_i/s_i^2}{\sum 1/s_i^2}, \qquad s^2 = \frac{1}{\sum 1/s_i^2}

    When they disagree more than their doubts allow, the standard deviation is widened by the ratio
    :math:`\sqrt{\chi^2/(n-1)}` if that exceeds one. Source: weighted mean, any statistics handbook; widening:
    R. T. Birge, Physical Review 40 (1932) 207 (from memory).

    :param estimates: one or more, in one unit; an exact one (sd 0) is taken alone.
    :param says: what the combined figure is, for its derivation.
    :raises ValueError: no estimates, or more than one unit.
    """
    if not estimates:
        raise ValueError("found no estimates to combine; wanted at least one")
    units = {estimate.unit for estimate in estimates}
    if len(units) > 1:
        raise ValueError(f"found the units {sorted(units)}; wanted one unit")
    if len(estimates) == 1:
        return estimates[0]
    exact = [estimate for estimate in estimates if estimate.sd == 0]
    if exact:
        return exact[0]
    weights = [1 / estimate.sd**2 for estimate in estimates]
    mean = math.fsum(w * e.mean for w, e in zip(weights, estimates, strict=True)) / math.fsum(weights)
    sd = 1 / math.sqrt(math.fsum(weights))
    chi_square = math.fsum(w * (e.mean - mean) ** 2 for w, e in zip(weights, estimates, strict=True))
    widening = max(1.0, math.sqrt(chi_square / (len(estimates) - 1)))
    shares = " and ".join(
        f"{write_percent(weight / math.fsum(weights))} of {estimate.mean:.4g}"
        for weight, estimate in zip(weights, estimates, strict=True)
    )
    note = f"; they disagree, so the doubt is widened × {widening:.2f}" if widening > 1 else ""
    return Estimate.worked(
        says,
        f"weighted by precision: {shares}{note}",
        mean,
        sd * widening,
        estimates[0].unit,
        source="weighted mean; widening after Birge 1932",
        after=[step for estimate in estimates for step in estimate.steps],
    )


def total(estimates: Sequence[Estimate], *, unit: str, correlation: float = 0.0) -> Estimate:
    r"""Add estimates whose errors have one correlation coefficient between each pair.

    .. math:: s^2 = \sum_i s_i^2 + 2\rho \sum_{i<j} s_i s_j = (1-\rho)\sum s_i^2 + \rho\left(\sum s_i\right)^2

    A model's error is shared by all parts (correlation 1), counting noise is not (0).

    :param unit: unit of the sum, given so that an empty sum has one.
    :raises ValueError: a unit differs, or the correlation is outside 0 to 1.
    """
    if not 0 <= correlation <= 1:
        raise ValueError(f"found a correlation of {correlation}; wanted 0 to 1")
    for estimate in estimates:
        if estimate.unit != unit:
            raise ValueError(f"found {estimate.unit}; wanted {unit}")
    mean = math.fsum(estimate.mean for estimate in estimates)
    squares = math.fsum(estimate.sd**2 for estimate in estimates)
    plain = math.fsum(estimate.sd for estimate in estimates)
    sd = math.sqrt((1 - correlation) * squares + correlation * plain**2)
    return Estimate.worked(
        "sum",
        " + ".join(f"{estimate.mean:.4g}" for estimate in estimates) or "nothing to add",
        mean,
        sd,
        unit,
    )
