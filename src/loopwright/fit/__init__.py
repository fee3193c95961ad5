"""Will it fit? Ease at each point at her own gauge, sizes ranked, with the reason in words.

* :func:`intended_ease_cm`: ease by style, or as she names it.
* :func:`score_size`, :func:`rank_sizes`: the ranking rule.
* :class:`SizeChoice`, :func:`finished_at_gauge`: a size, or a place between two, and its measures at her gauge.
"""

from loopwright.fit.ease import BODY_MEASURE_OF, intended_ease_cm
from loopwright.fit.score import PointFit, SizeFit, rank_sizes, score_size
from loopwright.fit.sizes import SizeChoice, finished_at_gauge, size_between, size_named

__all__ = [
    "BODY_MEASURE_OF",
    "PointFit",
    "SizeChoice",
    "SizeFit",
    "finished_at_gauge",
    "intended_ease_cm",
    "rank_sizes",
    "score_size",
    "size_between",
    "size_named",
]
