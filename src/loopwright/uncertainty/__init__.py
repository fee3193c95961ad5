"""Numbers that know their doubt, where they came from and how they were worked out.

* :class:`Origin`: measured, stated, computed, table or guess.
* :class:`Step`, :class:`Estimate`: a mean with its standard deviation and its derivation.
* :func:`combine_by_precision`, :func:`total`: join estimates of one thing; add estimates of many.
* :func:`p_at_least`, :func:`interval_moments`: chances, and what a rounded-up count says.
"""

from loopwright.uncertainty.combine import combine_by_precision, total
from loopwright.uncertainty.estimate import Estimate, Step
from loopwright.uncertainty.normal import interval_moments, p_at_least, quantile
from loopwright.uncertainty.origin import Origin

__all__ = [
    "Estimate",
    "Origin",
    "Step",
    "combine_by_precision",
    "interval_moments",
    "p_at_least",
    "quantile",
    "total",
]
