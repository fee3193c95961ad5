"""Measures of a person, in the terms of ISO 8559-1: history, gaps filled with their doubt, and what cannot be.

* :class:`Body`: one person's measures now, and what they were; :class:`EarlierMeasures`: those of an earlier day.
* :data:`MEASURES`: every measure with its term, how to take it, what is usual and how far two readings differ.
* :func:`complete`: missing measures estimated from known ones; :class:`Completion`.
* :func:`body_doubts`: measures that do not agree; :class:`BodyDoubt`.
* :func:`growths`, :func:`days_too_old`: what changed, and when a child must be measured again.
* :func:`size_table`: a table of body measures by size.
* :func:`remeasured`: new values in, former ones into the history.
"""

from loopwright.body.body import Body, Wearer
from loopwright.body.completion import Completion, complete
from loopwright.body.dated import MEASURE_KEYS, EarlierMeasures, Measures
from loopwright.body.doubt import BodyDoubt
from loopwright.body.growth import CHILD_MEASURES_LAST_DAYS, Growth, days_too_old, growths, readings
from loopwright.body.measures import MEASURES, MeasureFacts, UsualRange
from loopwright.body.remeasure import remeasured
from loopwright.body.sanity import body_doubts
from loopwright.body.sizes import SIZE_TABLES, SizeTable, size_table

__all__ = [
    "CHILD_MEASURES_LAST_DAYS",
    "MEASURES",
    "MEASURE_KEYS",
    "SIZE_TABLES",
    "Body",
    "BodyDoubt",
    "Completion",
    "EarlierMeasures",
    "Growth",
    "MeasureFacts",
    "Measures",
    "SizeTable",
    "UsualRange",
    "Wearer",
    "body_doubts",
    "complete",
    "days_too_old",
    "growths",
    "readings",
    "remeasured",
    "size_table",
]
