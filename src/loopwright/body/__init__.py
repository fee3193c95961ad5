"""Measures of a person, in the terms of ISO 8559-1.

* :class:`Body`: one person's measures at one date.
* :data:`MEASURES`: every measure with its term, how to take it and how far two readings differ.
"""

from loopwright.body.body import Body, Wearer
from loopwright.body.measures import MEASURES, MeasureFacts

__all__ = ["MEASURES", "Body", "MeasureFacts", "Wearer"]
