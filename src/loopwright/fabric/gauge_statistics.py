r"""From several counts to one gauge with its doubt.

The counts :math:`x_i` are taken as normal about one mean, with a variance that falls with the window in which they
were taken: :math:`x_i \sim N(\mu, \sigma^2/w_i)`. Nothing is said of :math:`\mu` beforehand; :math:`\sigma^2` has
an inverse gamma prior whose mean is (2 % of the gauge)² and that weighs as much as four counts. The posterior is a
normal-inverse-gamma one, hence

.. math:: \bar x = \frac{\sum w_i x_i}{\sum w_i}, \qquad
   se^2 = \frac{E[\sigma^2]}{\sum w_i}, \qquad
   E[\sigma^2] = \frac{4\,(0.02\,\bar x)^2 + \sum w_i (x_i - \bar x)^2}{4 + n - 1}

With one count that is 2 %; with many it becomes the sample's own standard error :math:`s/\sqrt n`. Source: A. Gelman
and others, Bayesian Data Analysis, 3rd edition, section 3.3 (from memory); the 2 % and the weight of four are our
judgement.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from statistics import stdev

from loopwright.records import Record

__all__ = ["COUNT_RELATIVE_SD", "PRIOR_COUNTS", "CountStatistics", "count_statistics", "far_from_the_others"]

COUNT_RELATIVE_SD = 0.02
"""Spread of one count over 10 cm as a share: half a stitch in 25; our judgement."""
PRIOR_COUNTS = 4.0
"""How many counts our judgement weighs against hers; our judgement too."""
FAR_SD = 3.0


class CountStatistics(Record):
    """What several counts say of stitches, or of rows, to 10 cm.

    :ivar counts: how many counts there are.
    :ivar weight: what they weigh together, in counts over 10 cm.
    :ivar mean: weighted mean.
    :ivar sd: sample standard deviation of the counts as they stand; None for a single one.
    :ivar se: standard error of the mean, one standard deviation.
    """

    counts: int
    weight: float
    mean: float
    sd: float | None
    se: float

    @property
    def relative_se(self) -> float:
        """Give the standard error as a share of the mean."""
        return self.se / self.mean


def count_statistics(values: Sequence[float], weights: Sequence[float] | None = None) -> CountStatistics:
    """Give mean, standard deviation and standard error of counts, as the module's head says.

    :param values: each count per 10 cm, one or more.
    :param weights: how much each weighs against a count over 10 cm; left out, one each.
    :raises ValueError: no counts, or not one weight to each.
    """
    weights = [1.0] * len(values) if weights is None else weights
    if not values or len(weights) != len(values):
        raise ValueError(f"found {len(values)} counts and {len(weights)} weights; wanted one or more, one to each")
    weight = math.fsum(weights)
    mean = _mean(values, weights)
    se = math.sqrt(_variance(values, weights, mean) / weight)
    sd = stdev(values) if len(values) > 1 else None
    return CountStatistics(counts=len(values), weight=weight, mean=mean, sd=sd, se=se)


def _mean(values: Sequence[float], weights: Sequence[float]) -> float:
    """Give the weighted mean; of equal values that very value, which a sum would miss in the last digit."""
    if len(set(values)) == 1:
        return values[0]
    return math.fsum(w * x for w, x in zip(weights, values, strict=True)) / math.fsum(weights)


def _variance(values: Sequence[float], weights: Sequence[float], mean: float) -> float:
    """Give the expected variance of one count over 10 cm, after the counts are known."""
    squares = math.fsum(w * (x - mean) ** 2 for w, x in zip(weights, values, strict=True))
    return (PRIOR_COUNTS * (COUNT_RELATIVE_SD * mean) ** 2 + squares) / (PRIOR_COUNTS + len(values) - 1)


def far_from_the_others(values: Sequence[float], weights: Sequence[float] | None = None) -> tuple[int, ...]:
    """Give the places in the list of counts that lie over three standard deviations from what the others expect.

    What the others expect of a further count: their mean, with ``E[σ²] (1/w + 1/Σw)`` for its variance. Of two counts
    that disagree neither is the odd one, so none is named unless there are three.
    """
    weights = [1.0] * len(values) if weights is None else weights
    if len(values) < 3:
        return ()
    far = []
    for number, (value, weight) in enumerate(zip(values, weights, strict=True)):
        others = [x for place, x in enumerate(values) if place != number]
        their_weights = [w for place, w in enumerate(weights) if place != number]
        mean = _mean(others, their_weights)
        spread = _variance(others, their_weights, mean) * (1 / weight + 1 / math.fsum(their_weights))
        if abs(value - mean) > FAR_SD * math.sqrt(spread):
            far.append(number)
    return tuple(far)
