"""Will it fit? Ease at each point at her own gauge, sizes ranked, with the reason in words.

* :func:`intended_ease_cm`: ease by style, or as she names it.
* :class:`FitWish`, :func:`fits_of_sizes`: what a fit is judged by, and every size held against it.
* :func:`score_size`, :func:`rank_sizes`: the ranking rule.
* :class:`SizeChoice`, :func:`finished_at_gauge`: a size, or a place between two, and its measures at her gauge.
* :mod:`loopwright.fit.advice`: what to do between sizes.
"""

from loopwright.fit.ease import BODY_MEASURE_OF, intended_ease_cm
from loopwright.fit.score import PointFit, SizeFit, rank_sizes, score_size
from loopwright.fit.sizes import SizeChoice, finished_at_gauge, size_between, size_named
from loopwright.fit.wish import FitWish, fit_of_measures, fits_of_sizes

__all__ = [
    "BODY_MEASURE_OF",
    "FitWish",
    "PointFit",
    "SizeChoice",
    "SizeFit",
    "finished_at_gauge",
    "fit_of_measures",
    "fits_of_sizes",
    "intended_ease_cm",
    "rank_sizes",
    "score_size",
    "size_between",
    "size_named",
]
