"""The few facts of a published pattern that computing needs; never its text, which is its author's.

* :class:`PatternFacts`, :class:`FinishedMeasures`, :class:`RoleAmount`: sizes, finished measures, gauge, yarn.
* :func:`read_size_row`: ``86 (94, 102, 110) cm`` as patterns print it.
"""

from loopwright.pattern.facts import Construction, FinishedMeasures, PatternFacts, RoleAmount
from loopwright.pattern.size_row import read_size_names, read_size_row, write_size_row

__all__ = [
    "Construction",
    "FinishedMeasures",
    "PatternFacts",
    "RoleAmount",
    "read_size_names",
    "read_size_row",
    "write_size_row",
]
