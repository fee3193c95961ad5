"""The few facts of a published pattern that computing needs; never its text, which is its author's.

* :class:`PatternFacts`, :class:`FinishedMeasures`, :class:`RoleAmount`: sizes, finished measures, gauge, yarn.
* :class:`ToFit`, :class:`Ease`: whom each size is meant for, and with how much ease.
* :func:`read_size_row`: ``86 (94, 102, 110) cm`` as patterns print it.
* :func:`read_size_block`: a whole size block of several lines; see :mod:`loopwright.pattern.size_block`.
"""

from loopwright.pattern.ease import Ease
from loopwright.pattern.facts import Construction, FinishedMeasures, PatternFacts, RoleAmount, ToFit
from loopwright.pattern.size_block import (
    SizeBlock,
    missing_fields,
    read_size_block,
    to_pattern_fields,
    write_size_block,
)
from loopwright.pattern.size_row import read_size_names, read_size_row, write_size_row

__all__ = [
    "Construction",
    "Ease",
    "FinishedMeasures",
    "PatternFacts",
    "RoleAmount",
    "SizeBlock",
    "ToFit",
    "missing_fields",
    "read_size_block",
    "read_size_names",
    "read_size_row",
    "to_pattern_fields",
    "write_size_block",
    "write_size_row",
]
